/**
 * The reach of a hold against a plain simulation: day by day, every tank that shares water with what is
 * exposed, or gets fish from it, becomes exposed. Slow, obvious, and written without looking at the other.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, isoDay, type Day } from '../../../src/core/day.ts';
import { LOOK_BACK_DAYS, openHolds } from '../../../src/questions/holds/reach.ts';
import { heads } from '../../support/brood.ts';
import { day, roomOn, tank } from '../../support/events.ts';
import type { Line } from '../../support/events.ts';
import { groupRef, loopLine, rigLine, tankLine, undoLine } from '../../support/setup.ts';

const TANKS = ['T1', 'T2', 'T3', 'T4', 'T5'];
const START = day('2026-01-01');
/** The day of the hold, counted from the start. */
const HOLD = 30;
const LAST = 45;

interface Switch {
  readonly on: number;
  readonly tank: string;
}
interface Carried {
  readonly on: number;
  readonly from: string;
  readonly to: string;
}

/** The day after so many days, as the journal writes it. */
const iso = (after: number): string => isoDay(addDays(START, after));

/** A net used in both tanks that day, or a sponge that went one way. */
interface Together extends Carried {
  readonly way: 'both' | 'to';
}

function journal(switches: readonly Switch[], carried: readonly Carried[], shared: readonly Together[] = []): Line[] {
  const off = new Map(TANKS.map((name) => [name, false]));
  const flips = switches.map(({ on, tank: name }): Line => {
    const was = off.get(name) ?? false;
    off.set(name, !was);
    return was ? undoLine(iso(on), name, 'off the loop') : rigLine(iso(on), name, 'off the loop');
  });
  const move = ({ on, from, to }: Carried, count: number): Line => [
    iso(on),
    tank(from),
    { kind: 'moved', fish: groupRef('Ash'), count: heads(count), which: 'any', to, with: null, restStay: false },
  ];
  return [
    loopLine(iso(0), 'Long'),
    ...TANKS.map((name) => tankLine(iso(0), name, name === 'T5' ? null : 'Long')),
    [iso(0), tank('T1'), { kind: 'bought', count: heads(500), species: 'krib', price: null, from: null, group: 'Ash' }],
    ...TANKS.slice(1).map((to) => move({ on: 0, from: 'T1', to }, 100)),
    ...flips,
    ...carried.map((one) => move(one, 1)),
    ...shared.map(({ on, from, to, way }): Line => [
      iso(on),
      tank(from),
      { kind: 'shared', thing: way === 'both' ? 'net' : 'sponge', tanks: [to], way },
    ]),
    [iso(HOLD), tank('T1'), { kind: 'hold begun', text: 'velvet' }],
  ];
}

/** First day of exposure by tank, by simulation. */
function simulate(
  switches: readonly Switch[],
  carried: readonly Carried[],
  shared: readonly Together[] = [],
): Map<string, number> {
  const exposed = new Map<string, number>([['T1', HOLD - LOOK_BACK_DAYS]]);
  let sump: number | null = null;
  const connected = (name: string, on: number): boolean => {
    if (name === 'T5') return false;
    const flips = switches.filter((one) => one.tank === name && one.on <= on);
    // On the day of a switch it was on the loop for a part of the day, whichever way it went.
    return flips.length % 2 === 0 || flips.some((one) => one.on === on);
  };
  for (let on = HOLD - LOOK_BACK_DAYS; on <= LAST; on += 1) {
    for (let grew = true; grew;) {
      grew = false;
      const add = (name: string): void => {
        if (exposed.has(name)) return;
        exposed.set(name, on);
        grew = true;
      };
      for (const name of TANKS) {
        if (!connected(name, on)) continue;
        if (exposed.has(name) && sump === null) {
          sump = on;
          grew = true;
        }
        if (sump !== null) add(name);
      }
      for (const one of carried) if (one.on === on && exposed.has(one.from)) add(one.to);
      for (const one of shared) {
        if (one.on !== on) continue;
        if (exposed.has(one.from)) add(one.to);
        if (one.way === 'both' && exposed.has(one.to)) add(one.from);
      }
    }
  }
  return exposed;
}

const switchOn = fc.record({ on: fc.integer({ min: 1, max: LAST }), tank: fc.constantFrom('T1', 'T2', 'T3', 'T4') });
const carriedOn = fc
  .record({ on: fc.integer({ min: 1, max: LAST }), from: fc.constantFrom(...TANKS), to: fc.constantFrom(...TANKS) })
  // What came into the sick tank before the sign is traced back; that has tests of its own.
  .filter(({ on, from, to }) => from !== to && !(to === 'T1' && on <= HOLD));

const sharedOn = fc
  .tuple(carriedOn, fc.constantFrom<Together['way']>('both', 'to'))
  .map(([one, way]): Together => ({ ...one, way }));

test('reach is what a day-by-day simulation exposes, on the same days', () => {
  fc.assert(
    fc.property(
      fc.array(switchOn, { maxLength: 8 }),
      fc.array(carriedOn, { maxLength: 5 }),
      fc.array(sharedOn, { maxLength: 4 }),
      (drawn, carried, shared) => {
        const switches = [...drawn].sort((a, b) => a.on - b.on);
        const room = roomOn(iso(LAST), journal(switches, carried, shared));
        const found = new Map(openHolds(room)[0]?.tanks.map((one): [string, Day] => [one.tank, one.since]));
        const truth = simulate(switches, carried, shared);
        const days = [...truth].map(([name, on]): [string, Day] => [name, addDays(START, on)]);
        expect(new Map([...found].sort())).toEqual(new Map(days.sort()));
      },
    ),
    { numRuns: 400 },
  );
});

test('trap 5: a tank valved off before the look-back, with no fish from elsewhere, is never reached', () => {
  fc.assert(
    fc.property(fc.array(switchOn, { maxLength: 8 }), fc.array(carriedOn, { maxLength: 5 }), (drawn, moves) => {
      const others = drawn.filter(({ tank: name }) => name !== 'T4').sort((a, b) => a.on - b.on);
      const carried = moves.filter(({ to }) => to !== 'T4');
      const room = roomOn(iso(LAST), journal([{ on: HOLD - LOOK_BACK_DAYS - 1, tank: 'T4' }, ...others], carried));
      expect(openHolds(room)[0]?.tanks.map((one) => one.tank)).not.toContain('T4');
    }),
  );
});

test('fish that came into the sick tank in the look-back: the tank they left is reached too', () => {
  const carried = [{ on: HOLD - 5, from: 'T5', to: 'T1' }];
  const alone = [{ on: 2, tank: 'T1' }];
  const [hold] = openHolds(roomOn(iso(HOLD), journal(alone, carried)));
  expect(hold?.tanks.map((one) => one.tank)).toEqual(['T1', 'T5']);
  expect(hold?.tanks[1]?.route).toMatchObject([{ from: 'T1', to: 'T5', how: 'fish came from it', by: 'Ash' }]);
  const early = [{ on: HOLD - LOOK_BACK_DAYS - 1, from: 'T5', to: 'T1' }];
  expect(openHolds(roomOn(iso(HOLD), journal(alone, early)))[0]?.tanks.map((one) => one.tank)).toEqual(['T1']);
});

import { describe, expect, it } from 'vitest';
import { datedAhead } from '../../src/checks/dated-ahead.ts';
import { forgottenUndo } from '../../src/checks/forgotten-undo.ts';
import { twice } from '../../src/checks/twice.ts';
import { addDays, isoDay } from '../../src/core/day.ts';
import type { Event, EventBase } from '../../src/journal/event.ts';
import { emptyDraft } from '../../src/state/empty.ts';
import type { Rig } from '../../src/state/measures.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { addRig } from '../../src/state/rigs.ts';
import { day, eventsOf, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';

const TODAY = day('2026-06-30');

function facts(lines: readonly Line[]): {
  room: ReturnType<typeof foldRoom>;
  events: readonly Event[];
  today: typeof TODAY;
} {
  const events = eventsOf(lines);
  return { room: foldRoom(events, TODAY), events, today: TODAY };
}

describe('a forgotten undo', () => {
  const place: EventBase['place'] = { file: 'fishroom.txt', line: 4, from: 15, to: 24 };
  const rig: Rig = {
    kind: 'air filter',
    where: 'A2',
    day: addDays(TODAY, -40),
    minute: null,
    until: null,
    lasts: null,
    to: null,
    stays: false,
    begun: place,
    closed: null,
    again: [],
  };
  const open = (...rigs: readonly Rig[]): ReturnType<typeof forgottenUndo> => {
    const room = emptyDraft(TODAY);
    for (const one of rigs) addRig(room, one);
    return forgottenUndo({ room, events: [], today: TODAY });
  };

  it('is doubted at its own line, with the line that undoes it', () => {
    const [found, ...others] = open(rig);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ kind: 'forgotten-undo', weight: 'doubt', at: place });
    expect(found?.says).toContain('40 days');
    expect(found?.write).toContain(`${isoDay(TODAY)} A2: air filter out`);
  });

  it('is none where it was undone, stays, or is four weeks old', () => {
    const closed = { day: addDays(TODAY, -1), minute: null, place };
    expect(open({ ...rig, closed }, { ...rig, stays: true }, { ...rig, day: addDays(TODAY, -28) })).toEqual([]);
  });
});

describe('a line dated ahead', () => {
  it('is doubted once, at its date', () => {
    const found = datedAhead(
      facts([
        ['2026-06-01', tank('A1'), { kind: 'all well' }],
        ['2027-06-01', tank('A1'), { kind: 'all well' }],
      ]),
    );
    expect(found).toMatchObject([{ kind: 'dated-ahead', at: { line: 2, from: 0, to: 10 } }]);
  });

  it('is none the day after today, nor where the whole journal lies ahead', () => {
    expect(
      datedAhead(
        facts([
          ['2026-06-01', tank('A1'), { kind: 'all well' }],
          ['2026-07-01', tank('A1'), { kind: 'all well' }],
        ]),
      ),
    ).toEqual([]);
    expect(datedAhead(facts([['2027-06-01', tank('A1'), { kind: 'all well' }]]))).toEqual([]);
  });
});

describe('the same written twice on one day', () => {
  const dose = (grams: number): Line => [
    '2026-06-01',
    tank('A1'),
    { kind: 'dosed', dose: { unit: 'g', low: grams, likely: grams, high: grams }, product: 'salt' },
  ];

  it('is doubted at the later line and names the earlier', () => {
    expect(twice(facts([dose(5), dose(5)]))).toMatchObject([
      { kind: 'same-twice', weight: 'doubt', at: { line: 2 }, also: [{ line: 1 }] },
    ]);
  });

  it('is none where anything differs, or where twice is no more than once', () => {
    expect(twice(facts([dose(5), dose(6)]))).toEqual([]);
    expect(
      twice(
        facts([
          ['2026-06-01', tank('A1'), { kind: 'all well' }],
          ['2026-06-01', tank('A1'), { kind: 'all well' }],
        ]),
      ),
    ).toEqual([]);
  });
});

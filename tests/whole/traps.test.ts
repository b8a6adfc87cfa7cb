/** Twenty mistakes that records of a fish room lead to, each tried from the lines of a journal. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import { broods } from '../../src/questions/broods.ts';
import type { BroodRow } from '../../src/questions/broods.ts';
import { likelyCounts } from '../../src/questions/counts.ts';
import { dangers } from '../../src/questions/danger.ts';
import { due } from '../../src/questions/due.ts';
import { holds } from '../../src/questions/holds.ts';
import { kinOfTwo } from '../../src/questions/kin.ts';
import { ageOf, laidDay } from '../../src/questions/laying.ts';
import { loops } from '../../src/questions/loops.ts';
import { pairs } from '../../src/questions/pairs.ts';
import { sale } from '../../src/questions/sale.ts';
import { tanks } from '../../src/questions/tanks.ts';
import { water } from '../../src/questions/water.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

function brood(room: Room, name = 'Rowan-1'): BroodRow {
  const [row] = broods(room, name).broods;
  if (!row) throw new Error(`no ${name}`);
  return row;
}

function pair(room: Room, name = 'Rowan') {
  const [row] = pairs(room, name).pairs;
  if (!row) throw new Error(`no ${name}`);
  return row;
}

function long(room: Room) {
  const row = loops(room).find(({ name }) => name === 'Long');
  if (!row) throw new Error('no loop');
  return row;
}

function list(room: Room, days = 14): string[] {
  return due(room, { days, minutes: null }).rows.map(({ place, what, why }) => `${place}: ${what} — ${why}`);
}

const span = ({ low, high }: DayWindow): string =>
  [low, high].map((day) => (day === null ? '' : isoDay(day))).join('/');

describe('twenty traps', () => {
  it('trap 1: eggs first seen were laid since the last look, not that day', () => {
    const room = journalOn('2026-02-06', '2026-02-03 A1: no eggs\n2026-02-05 A1: eggs seen\n');
    expect(span(brood(room).spawned)).toBe('2026-02-03/2026-02-05');
    expect(brood(room).age).toMatchObject({ low: 1, high: 3 });
  });

  it('trap 2: a split brood is counted once, and the rest that stayed is not lost', () => {
    const lines = `2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming
2026-03-10 A1: Rowan-1 counted 60
2026-03-10 A1: moved 40 Rowan-1 to C2, rest stay
`;
    const row = brood(journalOn('2026-03-11', lines));
    expect(row.total).toMatchObject({ low: 60, high: 60 });
    expect(row.tanks.map(({ tank, count }) => [tank, count.low, count.high])).toEqual([
      ['A1', 20, 20],
      ['C2', 40, 40],
    ]);
    const rest = brood(journalOn('2026-03-11', lines.replace('moved 40', 'moved about 55')));
    // The number that moved allows that none is left; the keeper says that some are.
    expect(rest.tanks[0]?.count).toMatchObject({ low: 1, high: 18 });
    expect(rest.total).toMatchObject({ low: 60, high: 60 });
    const all = brood(
      journalOn(
        '2026-03-20',
        `${lines.replace('moved 40 Rowan-1 to C2, rest stay', 'moved all Rowan-1 to C2')}2026-03-18 A1: Rowan-1 counted 3\n`,
      ),
    );
    expect(all.tanks.map(({ tank, count }) => [tank, count.low, count.high]).toSorted()).toEqual([
      ['A1', 3, 3],
      ['C2', 57, 57],
    ]);
  });

  it('trap 3: two layers of six do not mark the full clean done', () => {
    const lines = '2026-01-10 Long: cleaned 6 of 6 layers\n2026-02-10 Long: cleaned 2 of 6 layers\n';
    const row = long(journalOn('2026-02-20', `2026-01-05 Long: clean prefilter every 6 weeks\n${lines}`));
    expect(row.lastFull && isoDay(row.lastFull.on)).toBe('2026-01-10');
    expect(row.cleaned && isoDay(row.cleaned.on)).toBe('2026-02-10');
    // Six weeks from the full clean, or the four that two of six layers buy (½ + ½ · 2/6): never six from the tenth of February.
    expect(row.nextClean?.likely && isoDay(row.nextClean.likely)).toBe('2026-02-21');
    expect(row.easedUntil && isoDay(row.easedUntil)).toBe('2026-03-10');
  });

  const MOVED = `2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming
2026-03-10 A1: Rowan-1 counted 30
2026-03-20 A1: moved 10 Rowan-1 to C2
`;
  it('trap 4: a hold reaches the loop, and fish that were moved out before', () => {
    const room = journalOn('2026-04-02', `${MOVED}2026-03-30 A1: hold "velvet"\n`);
    const [hold] = holds(room).holds;
    expect(hold?.tanks.map(({ tank }) => tank).toSorted()).toEqual(['A1', 'A2', 'B1', 'C2']);
  });

  it('trap 5: a tank valved off before the exposure is clean, and the plumbing of those days counts', () => {
    const off = journalOn('2026-04-02', '2026-03-01 A2: off the loop\n2026-03-30 A1: hold "velvet"\n');
    expect(
      holds(off)
        .holds[0]?.tanks.map(({ tank }) => tank)
        .toSorted(),
    ).toEqual(['A1', 'B1']);
    const late = journalOn('2026-04-02', '2026-03-29 A2: off the loop\n2026-03-30 A1: hold "velvet"\n');
    expect(
      holds(late)
        .holds[0]?.tanks.map(({ tank }) => tank)
        .toSorted(),
    ).toEqual(['A1', 'A2', 'B1']);
  });

  it('trap 6: the largest is not averaged with the mean', () => {
    const start = '2026-02-02 A1: spawned brood Rowan-1\n2026-02-11 A1: Rowan-1 free-swimming, about 40\n';
    const size = (more: string): number => {
      const read = brood(journalOn('2026-05-03', `${start}2026-05-02 A1: Rowan-1 average 25 mm\n${more}`)).size;
      return read?.likely ?? 0;
    };
    const alone = size('');
    const with30 = size('2026-05-02 A1: Rowan-1 largest 30 mm\n');
    expect(alone).toBeGreaterThan(22);
    // The mean of 25 and 30 would be two and a half millimetres more.
    expect(Math.abs(with30 - alone)).toBeLessThan(1.5);
  });

  it('trap 7: survival is never above all of them, though the first number was a glance', () => {
    const lines = `2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming, about 20
2026-03-10 A1: Rowan-1 counted 44
`;
    const { survival } = brood(journalOn('2026-03-11', lines));
    const [swim] = survival?.stages ?? [];
    expect(swim?.share).toEqual({ low: 1, likely: 1, high: 1 });
    expect(swim?.from.count.low).toBe(44);
    // They were 44 from the first: the curve starts there, and falls by none.
    expect(survival?.start.likely).toBe(44);
    expect(survival?.fates.unseen).toBe(0);
    const sold = lines.replace('2026-03-10', '2026-03-05 A1: sold 10 Rowan-1 at 2.00 each\n2026-03-10');
    expect(brood(journalOn('2026-03-11', sold)).survival?.start.likely).toBe(54);
    const lost = brood(journalOn('2026-03-20', `${lines}2026-03-20 A1: Rowan-1 counted 22\n`)).survival;
    expect(lost?.steps.at(-1)?.survival).toBeCloseTo(0.5, 6);
  });

  it('trap 8: selling the largest is no shrinkage', () => {
    const start = `2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming, about 40
2026-05-01 A1: Rowan-1 counted 40
2026-05-01 A1: Rowan-1 average 28 mm
`;
    const sold = journalOn(
      '2026-05-20',
      `${start}2026-05-10 A1: sold 20 largest Rowan-1 at 5.00 each\n2026-05-20 A1: Rowan-1 average 26 mm\n`,
    );
    const row = brood(sold);
    expect(row.rate?.likely ?? 0).toBeGreaterThan(0);
    // The same length of fish that were not picked out would say that they are smaller.
    const kept = brood(journalOn('2026-05-20', `${start}2026-05-20 A1: Rowan-1 average 26 mm\n`));
    expect(row.size?.likely ?? 0).toBeGreaterThan(kept.size?.likely ?? 0);
    expect(sold.problems).toEqual([]);
    // The sold are no deaths either.
    expect(row.survival?.fates).toMatchObject({ leftAlive: 20, died: 0 });
    expect(row.survival?.steps.at(-1)?.survival ?? 1).toBeGreaterThan(0.9);
  });

  it('trap 9: a few is neither none nor exactly three', () => {
    const lines = `2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming
2026-03-10 A1: Rowan-1 counted 40
2026-03-12 A1: Rowan-1 died a few
`;
    const room = journalOn('2026-03-12', lines);
    expect(brood(room).total).toMatchObject({ low: 34, high: 37 });
    const likely = likelyCounts(room, room.stock.broods.get('Rowan-1') ?? fail()).total;
    expect(likely?.low).toBeGreaterThanOrEqual(33);
    expect(likely?.high).toBeLessThanOrEqual(37);
  });

  it('trap 10: two silent days end no dispute, and an open one is not left out of how long they last', () => {
    const room = journalOn('2026-02-20', '2026-02-14 A1: chasing\n');
    const row = pair(room);
    expect(row.dispute?.days).toBe(7);
    expect(row.dispute?.advice.step).toBe('ask');
    expect(row.numbers?.disputes.durations).toMatchObject({ ended: 0, atLeast: 1, median: null });
  });

  it('trap 11: no removal on day one of an ordinary dispute, no waiting on a wounded fish', () => {
    const step = (sign: string): string | undefined =>
      pair(journalOn('2026-02-14', `2026-02-14 A1: ${sign}\n`)).dispute?.advice.step;
    expect(step('chasing')).toBe('wait');
    expect(step('torn fin')).toBe('wait');
    expect(step('wounded')).toBe('separate');
    expect(step('gasping')).toBe('separate');
  });

  it('trap 12: nobody is late to spawn while guarding', () => {
    const failed = (day: string, gone: string, number: number): string =>
      `${day} A1: spawned brood Rowan-${String(number)}\n${gone} A1: Rowan-${String(number)} eggs gone\n`;
    const before =
      failed('2026-01-05', '2026-01-07', 1) +
      failed('2026-01-26', '2026-01-28', 2) +
      failed('2026-02-16', '2026-02-18', 3);
    const last = '2026-03-09 A1: spawned brood Rowan-4\n';
    const guarding = pair(journalOn('2026-04-10', `${before}${last}2026-03-19 A1: Rowan-4 free-swimming\n`)).spawning;
    expect([guarding.lateDays, guarding.waits]).toEqual([null, 'guarding Rowan-4']);
    // The same days without young to guard: 32 since the last, beyond its own 21 and 7 more.
    const idle = pair(journalOn('2026-04-10', `${before}${last}2026-03-11 A1: Rowan-4 eggs gone\n`)).spawning;
    expect([idle.lateDays, idle.waits]).toEqual([4, null]);
  });

  it('trap 13: older young are no danger in a sibling-safe colony, and are one in a pair’s tank', () => {
    const broodsOf = (tank: string, name: string): string => `2026-02-02 ${tank}: spawned brood ${name}-1
2026-02-12 ${tank}: ${name}-1 free-swimming
2026-05-10 ${tank}: spawned brood ${name}-2
2026-05-20 ${tank}: ${name}-2 free-swimming
`;
    expect(dangers(journalOn('2026-05-21', broodsOf('A1', 'Rowan'))).map(({ weight }) => weight)).toEqual(['danger']);
    const safe = `2026-01-02 species krib: Pelvicachromis taeniatus; cave spawner; sibling-safe\n`;
    expect(dangers(journalOn('2026-05-21', safe + broodsOf('A1', 'Rowan')))).toEqual([]);
  });

  it('trap 14: age counts from laying, everywhere, also for young released from a mouth', () => {
    const lines = `2026-01-02 species victoria: Haplochromis sp.; mouthbrooder
2026-01-02 pair Reed: victoria; male; female; in C2
2026-02-02 C2: spawned brood Reed-1
2026-02-23 C2: Reed-1 released, 20
`;
    const room = journalOn('2026-03-04', lines);
    const row = brood(room, 'Reed-1');
    expect(row.age).toMatchObject({ low: 30, high: 30 });
    const reed = room.stock.broods.get('Reed-1') ?? fail();
    expect(ageOf(room, reed)).toMatchObject({ low: 30, high: 30 });
    expect(laidDay(room, reed)).toBe(room.on - 30);
    expect(pair(room, 'Reed').spawning.last).toMatchObject({ low: room.on - 30, high: room.on - 30 });
    expect(row.released && span(row.released)).toMatch(/\/2026-02-23$/);
  });

  it('trap 15: ammonia without pH and temperature is a range, and is read as nitrogen as the kit was set', () => {
    const toxic = (line: string, unit = 'N') => {
      const room = journalOn('2026-02-05', `2026-01-02 room: nitrogen as ${unit}\n2026-02-05 C1: test ${line}\n`);
      return water(room, { place: 'C1', target: null })?.[0]?.ammonia;
    };
    const bare = toxic('TAN 0.5');
    expect(bare?.missing.length).toBe(2);
    expect(bare?.toxic.high ?? 0).toBeGreaterThan(10 * (bare?.toxic.low ?? 1));
    const wide = (line: string): number => (toxic(line)?.toxic.high ?? 0) / (toxic(line)?.toxic.low ?? 1);
    expect([toxic('TAN 0.5, pH 8')?.missing, toxic('TAN 0.5, 26 C')?.missing]).toEqual([['temperature'], ['pH']]);
    expect(wide('TAN 0.5, pH 8')).toBeGreaterThan(1.5);
    expect(wide('TAN 0.5, 26 C')).toBeGreaterThan(50);
    expect(wide('TAN 0.5, pH 8, 26 C')).toBeCloseTo(1, 9);
    expect(bare?.verdict).not.toMatch(/safe/i);
    // 0.5 mg/L as N at pH 8.2 and 26 °C: 0.044 (Emerson et al. 1975, worked).
    expect(toxic('TAN 0.5, pH 8.2, 26 C')?.toxic.likely).toBeCloseTo(0.044, 3);
    expect(toxic('TAN 0.608, pH 8.2, 26 C', 'ion')?.toxic.likely ?? 1).toBeLessThan(0.044);
  });

  it('trap 16: a change of the loop is a share of the water really on it, and a tank on air gets none', () => {
    const lines = `2026-01-05 A1: live volume 130 L
2026-02-01 A2: off the loop; air filter in
2026-02-05 Long: water change 100 L
`;
    const room = journalOn('2026-02-06', lines);
    const rows = water(room, { place: null, target: null }) ?? [];
    const loop = rows.find(({ name }) => name === 'Long');
    expect(loop?.tanks).not.toContain('A2');
    const share = loop?.changes[0]?.share ?? 0;
    expect(share).toBeCloseTo(100 / (loop?.litres?.likely ?? 0), 3);
    expect(rows.find(({ tanks: on }) => on.includes('A2'))?.changes ?? []).toEqual([]);
    // Half of one tank on the loop is its live litres out of all of the loop's.
    const half = (change: string, place: string): number | null | undefined =>
      water(journalOn('2026-02-06', `${lines.split('2026-02-05')[0] ?? ''}2026-02-05 ${change}\n`), {
        place,
        target: null,
      })?.[0]?.changes[0]?.share;
    expect(half('A1: water change 50 %', 'Long')).toBeCloseTo(65 / (loop?.litres?.likely ?? 0), 3);
    // Litres count on the water that is in a tank, 85 % of 54 L where nobody measured, not on the glass.
    expect(half('C1: water change 27 L', 'C1')).toBeCloseTo(27 / (0.85 * 54), 2);
    expect(half('C1: live volume 40 L; water change 20 L', 'C1')).toBeCloseTo(0.5, 6);
  });

  it('trap 17: a level that falls without a clean means less flow, not a cleaner prefilter', () => {
    const lines = `2026-01-10 Long: cleaned 6 of 6 layers; level 20 mm
2026-01-20 Long: level 32 mm
2026-01-30 Long: level 44 mm
2026-02-05 Long: level 25 mm
`;
    const row = long(journalOn('2026-02-05', lines));
    expect(row.notes.join(' ')).toMatch(/flow|pump|drain/);
    expect([row.spill, row.outlook]).toEqual([null, null]);
  });

  it('trap 18: blank records make nobody unrelated, and a shared tank makes no pair', () => {
    const room = journalOn('2026-02-05', '2026-01-03 pair Elm: krib; male; female; in C2\n');
    const [couple] = kinOfTwo(room, 'Rowan', 'Elm')?.couples ?? [];
    const words = JSON.stringify(couple);
    expect(words).not.toMatch(/unrelated(?! founders)/);
    expect(words).toMatch(/on record|at least/);
    expect(pair(room, 'Elm').state).toBe('not said');
  });

  it('trap 19: only the low number is for sale, less what is kept and what is still promised', () => {
    const lines = `2026-01-02 species krib: Pelvicachromis taeniatus; cave spawner; sale at 10 mm or 4 weeks; price 6.00
2026-02-02 A1: spawned brood Rowan-1
2026-02-11 A1: Rowan-1 free-swimming
2026-03-20 A1: Rowan-1 counted about 40
2026-03-20 A1: moved all Rowan-1 to C2
2026-03-21 C2: kept back 6 Rowan-1
2026-03-21 C2: reserved 5 Rowan-1 until 2026-03-30 to "a neighbour"
`;
    const lot = (on: string) =>
      sale(journalOn(on, lines), { ahead: 0, auction: null, projected: false }).lots.find(
        ({ stock }) => stock === 'Rowan-1',
      );
    const sure = lot('2026-03-22');
    expect(sure?.count.low).toBeLessThanOrEqual(30);
    expect(sure?.free).toBe((sure?.count.low ?? 0) - 6 - 5);
    // The promise has lapsed; what is kept back is still in the tank.
    expect(lot('2026-04-15')?.free).toBe((lot('2026-04-15')?.count.low ?? 0) - 6);
  });

  it('trap 20: a temporary air filter is not mature, and a backdated line moves the forecast', () => {
    const room = journalOn('2026-02-20', '2026-02-18 A1: off the loop; air filter in\n');
    const a1 = tanks(room, { free: false }).rows.find(({ name }) => name === 'A1');
    expect(a1?.rigs.map(({ kind }) => kind)).toContain('air filter');
    expect(
      list(room)
        .filter((row) => row.startsWith('A1: '))
        .join('\n'),
    ).toMatch(/test/);
    const levels = `2026-01-10 Long: cleaned 6 of 6 layers; level 20 mm
2026-01-20 Long: level 30 mm
2026-01-30 Long: level 40 mm
`;
    const before = long(journalOn('2026-02-01', levels)).spill;
    const after = long(journalOn('2026-02-01', `${levels}2026-01-28 Long: level 55 mm\n`)).spill;
    expect(before?.likely).not.toEqual(after?.likely);
    const inOrder = levels.replace('2026-01-30', '2026-01-28 Long: level 55 mm\n2026-01-30');
    expect(after).toEqual(long(journalOn('2026-02-01', inOrder)).spill);
    // A line that is taken back leaves nothing of its forecast.
    const taken = long(
      journalOn('2026-02-01', `${levels}2026-01-28 Long: level 55 mm\n2026-01-28 Long: mistake level 55 mm\n`),
    );
    expect(taken.spill).toEqual(before);
  });
});

function fail(): never {
  throw new Error('not there');
}

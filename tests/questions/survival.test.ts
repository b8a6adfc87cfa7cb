import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { likelyCounts, priorCount } from '../../src/questions/counts.ts';
import { fateWords, survivalOf } from '../../src/questions/survival.ts';
import type { SeenBrood } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { countCase } from '../tools/countcase.ts';
import { journalOn, journalRoom } from '../support/journal.ts';

function broodIn(room: Room, name = 'Rowan-1'): SeenBrood {
  const brood = room.stock.broods.get(name);
  if (!brood) throw new Error(`no ${name}`);
  return brood;
}

const LIFE = `2026-02-02 A1: spawned brood Rowan-1, about 90 eggs
2026-02-10 A1: Rowan-1 free-swimming, about 70
2026-03-10 A1: Rowan-1 counted 50
2026-03-10 A1: moved all Rowan-1 to C1
2026-04-01 C1: Rowan-1 died 2
2026-04-10 C1: sold 20 Rowan-1 at 5.00 each
2026-05-01 C1: Rowan-1 counted 25
`;

describe('what became of a brood', () => {
  const room = journalOn('2026-05-02', LIFE);
  const survival = survivalOf(room, broodIn(room));

  it('tells fates apart: found dead, sold alive, lost unseen', () => {
    // 90 eggs guessed, 50 counted: 40 unseen; 2 found dead; 20 sold; 50 − 2 − 20 = 28, but 25 counted.
    expect(survival?.fates).toEqual({ died: 2, missing: 0, eaten: 0, culled: 0, leftAlive: 20, unseen: 43 });
    expect(survival && fateWords(survival.fates)).toBe(
      '2 found dead, 20 sold, given away or grown into groups, 43 lost between counts, unseen',
    );
  });
  it('counts the sold as alive in the curve', () => {
    // 90 → 70 → 50 by 36 days; then 2 of 50, then 3 of the 28 that were left after the sale.
    const at = survival?.steps.map(({ day, survival: share }) => [day, Number(share.toFixed(6))]);
    expect(at).toEqual([
      [8, Number((70 / 90).toFixed(6))],
      [36, Number((50 / 90).toFixed(6))],
      [58, Number(((50 / 90) * (48 / 50)).toFixed(6))],
      [88, Number(((50 / 90) * (48 / 50) * (25 / 28)).toFixed(6))],
    ]);
  });
  it('gives stage to stage as an interval', () => {
    const stages = survival?.stages.map(({ from, to, share }) => [from.at, to.at, share.low, share.high]);
    // Eggs 50 (as later counted) to 180; swimming 50 to 140.
    expect(stages?.[0]).toEqual(['eggs', 'swimming', 50 / 180, 1]);
    expect(stages?.[1]).toEqual(['swimming', 'first count', 50 / 140, 1]);
    expect(stages?.[2]?.slice(0, 2)).toEqual(['first count', 'first sale']);
    // 20 sold and 25 left of 50: 45 to 48 of them lived to the sale.
    expect(stages?.[2]?.[2]).toBeCloseTo(45 / 50, 9);
  });
  it('keeps its feet where nobody said a number', () => {
    const quiet = journalOn('2026-02-20', '2026-02-02 A1: spawned brood Rowan-1\n');
    expect(survivalOf(quiet, broodIn(quiet))).toBeNull();
    expect(likelyCounts(quiet, broodIn(quiet)).total).toBeNull();
  });
});

describe('how many are likely there', () => {
  it('is the number itself on the day of a sure count', () => {
    const room = journalOn('2026-03-10', LIFE);
    expect(likelyCounts(room, broodIn(room)).total).toEqual({ low: 50, likely: 50, high: 50 });
  });
  it('widens downwards as days go by without a count, and never above what was counted', () => {
    const soon = journalOn('2026-05-20', LIFE);
    const late = journalOn('2026-11-20', LIFE);
    const [a, b] = [likelyCounts(soon, broodIn(soon)).total, likelyCounts(late, broodIn(late)).total];
    expect(a?.high).toBe(25);
    expect(b?.low).toBeLessThan(a?.low ?? 0);
    expect(b?.high).toBeLessThanOrEqual(25);
  });
  it('takes the bounds of a guess as right four times of five', () => {
    const room = journalOn(
      '2026-03-11',
      '2026-03-01 A1: spawned brood Rowan-1\n2026-03-11 A1: Rowan-1 free-swimming\n2026-03-11 A1: Rowan-1 counted 30-50\n',
    );
    const total = likelyCounts(room, broodIn(room)).total;
    // The factor to either bound is √(50/30) = 1.29: from 40, 31 to 52.
    expect([total?.low, total?.likely, total?.high]).toEqual([31, 40, 52]);
  });
  it('follows the parts of a brood that was split', () => {
    const split = `${LIFE}2026-05-02 C1: moved 10 Rowan-1 to C2\n`;
    const room = journalOn('2026-05-02', split);
    const { parts, total } = likelyCounts(room, broodIn(room));
    expect(parts.get('C2')).toEqual({ low: 10, likely: 10, high: 10 });
    expect(parts.get('C1')).toEqual({ low: 15, likely: 15, high: 15 });
    expect(total).toEqual({ low: 25, likely: 25, high: 25 });
  });
  it('is kept within the day’s knowledge: nothing leaks back from later lines', () => {
    const then = journalOn('2026-02-12', LIFE);
    const cut = journalOn('2026-02-12', LIFE.split('\n').slice(0, 2).join('\n'));
    expect(likelyCounts(then, broodIn(then)).total).toEqual(likelyCounts(cut, broodIn(cut)).total);
  });
  it('says why, with the numbers put in', () => {
    const room = journalOn('2026-05-20', LIFE);
    const { because } = likelyCounts(room, broodIn(room));
    expect(because.source).toBe('losses usual for cave spawners (common practice, no source)');
    expect(because.steps).toContain('1 May: counted 25 in C1');
    expect(because.steps.some((step) => step.includes('% a day unseen'))).toBe(true);
  });
  it('holds the truth of simulated broods four times of five, more narrowly than the first guess alone', () => {
    let cases = 0;
    let held = 0;
    let width = 0;
    let alone = 0;
    for (let seed = 1000; cases < 60; seed++) {
      const { journal, on, brood: name, truth } = countCase(seed);
      if (truth === 0) continue;
      const room = journalRoom(on, journal);
      const brood = broodIn(room, name);
      const window = likelyCounts(room, brood).total;
      const first = priorCount(room, brood);
      if (!window || !first) throw new Error(`seed ${String(seed)} has no number`);
      cases++;
      if (window.low <= truth && truth <= window.high) held++;
      width += window.high - window.low;
      alone += first.high - first.low;
    }
    expect(held / cases).toBeGreaterThan(0.7);
    expect(width).toBeLessThan(alone);
  });
});

describe('survival, whatever was written', () => {
  const line = fc.oneof(
    fc.integer({ min: 1, max: 60 }).map((n) => `Rowan-1 counted ${String(n)}`),
    fc.integer({ min: 2, max: 60 }).map((n) => `Rowan-1 counted about ${String(n)}`),
    fc.integer({ min: 1, max: 5 }).map((n) => `Rowan-1 died ${String(n)}`),
    fc.integer({ min: 1, max: 5 }).map((n) => `Rowan-1 missing ${String(n)}`),
    fc.integer({ min: 1, max: 9 }).map((n) => `sold ${String(n)} Rowan-1 at 5.00 each`),
  );
  it('no share is below none or above one, and no curve rises', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const days = lines.map((text, index) => `2026-03-${String(index + 11)} A1: ${text}`);
        const room = journalOn(
          '2026-04-01',
          `2026-02-01 A1: spawned brood Rowan-1\n2026-02-10 A1: Rowan-1 free-swimming, about 40\n${days.join('\n')}\n`,
        );
        const brood = broodIn(room);
        const survival = survivalOf(room, brood);
        for (const { share } of survival?.stages ?? []) {
          expect(share.low).toBeGreaterThanOrEqual(0);
          expect(share.high).toBeLessThanOrEqual(1);
          expect(share.low).toBeLessThanOrEqual(share.high);
        }
        const curve = survival?.steps.map(({ survival: alive }) => alive) ?? [];
        expect(curve).toEqual(curve.toSorted((a, b) => b - a));
        expect(curve.every((alive) => alive >= 0 && alive <= 1)).toBe(true);
        const likely = likelyCounts(room, brood).total;
        if (likely) expect(likely.low).toBeLessThanOrEqual(likely.high);
      }),
      { numRuns: 60 },
    );
  });
});

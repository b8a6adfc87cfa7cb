/** The share of a brood that may be sold today: as a number, in the words of `why`, and by what is usual for such fish. */
import { describe, expect, it } from 'vitest';
import { saleableFrom, type Saleable } from '../../src/questions/saleable.ts';
import { journalOn } from '../support/journal.ts';

const SWAM = '2026-02-02 A1: spawned\n2026-02-12 A1: free-swimming, 30\n';
const READ = `${SWAM}2026-05-01 A1: Rowan-1 average 25 mm\n`;
const set = (words: string): string => `2026-01-03 species krib: sale at ${words}\n`;
const of = (on: string, lines: string, name = 'Rowan-1'): Saleable => {
  const room = journalOn(on, lines);
  const body = room.stock.broods.get(name) ?? room.stock.groups.get(name);
  const found = body === undefined ? null : saleableFrom(room, body);
  if (found === null) throw new Error('nothing says');
  return found;
};
const step = (found: Saleable, start: string): string =>
  found.because.steps.find((one) => one.startsWith(start)) ?? `no step ${start}`;

describe('the share that may be sold today', () => {
  it('of young whose day of laying is not sure may be none or all, and most likely all once the likely day is over', () => {
    // Eggs found on 6 February: laid from the 1st on, so 12 weeks old between 26 April and 1 May.
    const found = of('2026-04-28', `${set('12 weeks')}2026-02-06 A1: eggs seen\n2026-02-12 A1: free-swimming, 30\n`);
    expect(found.share).toEqual({ low: 0, likely: 1, high: 1 });
    expect(found.because.steps.at(-1)).toBe('share that can be sold today: 0–100 %');
  });
  it('is told in hundredths, and so are those at sale size at the shortest and the longest', () => {
    expect(of('2026-04-27', set('12 weeks') + SWAM).because.steps.at(-1)).toBe('share that can be sold today: 100 %');
    const found = of('2026-05-01', set('25 mm') + READ);
    const { low, high } = found.share;
    expect([low > 0.05, high < 0.95]).toEqual([true, true]);
    expect(step(found, 'at the shortest')).toContain(`so ${String(Math.round(low * 100))} % at 25 mm`);
    expect(step(found, 'at the longest')).toContain(`so ${String(Math.round(high * 100))} % at 25 mm`);
    expect(found.because.steps.at(-1)).toBe(
      `share that can be sold today: ${String(Math.floor(low * 100))}–${String(Math.ceil(high * 100))} %`,
    );
  });
  it('by what is usual goes by length alone: as by the same size set for the species', () => {
    // Cave spawners sell at 20–30 mm (common practice, no source).
    const [usual, own] = [of('2026-05-01', READ), of('2026-05-01', set('25 mm') + READ)];
    expect([usual.share, usual.half, usual.rule]).toEqual([own.share, own.half, own.rule]);
    const bought = of('2026-04-10', '2026-04-10 group Oak: krib; 9; size 30 mm; in C1\n', 'Oak');
    expect(bought.share.likely).toBeGreaterThan(0.8);
  });
});

/** Young that were parted by size: how long each side is, and how many of the rest may be promised. */
import { describe, expect, it } from 'vitest';
import { sortedIn } from '../../../src/questions/growing/sorted.ts';
import { saleableFrom, sizeOn } from '../../../src/questions/saleable.ts';
import { sale } from '../../../src/questions/sale.ts';
import { broods } from '../../../src/questions/broods.ts';
import { broodsText } from '../../../src/reports/broods.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { day } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';

const GROWN = `2026-01-04 room: units metric
2026-01-04 tank A1: 100 x 40 x 40 cm; alone
2026-01-04 tank D1: 100 x 40 x 40 cm; alone
2026-01-04 tank D2: 100 x 40 x 40 cm; alone
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm
2026-01-04 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-10 A1: spawned, about 90 eggs
2026-01-19 A1: free-swimming, about 70
2026-04-20 A1: Rowan-1 counted 60
2026-05-01 A1: Rowan-1 size 30-38 mm
`;
const SORTED = `${GROWN}2026-05-10 A1: moved 20 largest Rowan-1 to D1, rest stay\n`;
const asked = (on: string, lines: string) => {
  const room = journalOn(on, lines);
  const brood = room.stock.broods.get('Rowan-1');
  if (brood === undefined) throw new Error('no brood');
  return { room, brood, size: (tank: string | null) => sizeOn(room, brood, room.on, tank) };
};
const free = (on: string, lines: string): string[] =>
  sale(journalOn(on, lines), { ahead: 0, auction: null, projected: false }).lots.flatMap(
    ({ name, tank, grown, ready }) => (name === 'Rowan-1' ? [`${tank} ${String(ready ? grown : 0)}`] : []),
  );

describe('a brood of which the largest were moved', () => {
  it('has one length before, and two intervals after: from no sorting at all to the ends of one bell', () => {
    const before = asked('2026-05-09', SORTED);
    expect(sortedIn(before.room, before.brood, 'A1')).toBeNull();
    expect(before.size('A1')).toEqual(before.size(null));
    const { room, brood, size } = asked('2026-05-11', SORTED);
    // 20 of 60: the bell is cut at −0.4307 spreads, where it is 0.3636 high; 0.12 × 0.3636 / (1/3) = 0.131, / (2/3) = 0.065.
    const larger = sortedIn(room, brood, 'D1');
    const rest = sortedIn(room, brood, 'A1');
    expect(larger?.times.low).toBe(1);
    expect(larger?.times.likely).toBeCloseTo(1.1309, 3);
    expect(rest?.times.likely).toBeCloseTo(0.9346, 3);
    expect(rest?.times.high).toBe(1);
    expect(larger?.words).toBe('the largest of them, from A1 on 10 May');
    expect(rest?.words).toBe('the rest, after the largest went from A1 to D1 on 10 May');
    const all = size(null);
    expect(size('D1')?.low).toBe(all?.low);
    expect(size('D1')?.high).toBeGreaterThan(all?.high ?? Infinity);
    expect(size('A1')?.high).toBe(all?.high);
    expect(size('A1')?.low).toBeLessThan(all?.low ?? 0);
    expect(sortedIn(room, brood, 'D2')).toBeNull();
  });

  it('promises nothing of the rest by the size of the largest', () => {
    // Before, 13 of 60 surely had 35 mm: fewer than the 20 that went, so none is surely left behind.
    expect(free('2026-05-09', SORTED)).toEqual(['A1 13']);
    expect(free('2026-05-11', SORTED)).toEqual(['D1 5', 'A1 0']);
    // Unsorted, both sides share them.
    expect(free('2026-05-11', SORTED.replace('20 largest', '20'))).toEqual(['A1 10', 'D1 5']);
    const { room, brood } = asked('2026-05-11', SORTED);
    const there = saleableFrom(room, brood, room.on, 'A1');
    expect(there?.share.low).toBe(0);
    expect(there?.because.steps.join(' ')).toContain('as nobody knows how well they were sorted');
    expect(there?.all.high).toBeGreaterThan(saleableFrom(room, brood)?.all.high ?? Infinity);
  });

  it('leaves no fish off for a share that is all but whole', () => {
    // At 40 mm and more of which 35 are asked hardly one in thousands lacks.
    const whole = GROWN.replace('sale at 35 mm', 'sale at 15 mm');
    expect(free('2026-05-09', whole)).toEqual(['A1 60']);
    expect(free('2026-05-09', GROWN.replace('sale at 35 mm', 'sale at 25 mm'))).toEqual(['A1 58']);
  });

  it('counts the rest on as they grow: those that reach the size later are none of the largest', () => {
    const [low] = free('2026-07-10', SORTED).filter((lot) => lot.startsWith('A1'));
    expect(Number(low?.split(' ')[1])).toBeGreaterThan(20);
  });

  it('takes a length read in one tank since for those of that tank, and for no other', () => {
    const read = `${SORTED}2026-05-11 A1: Rowan-1 size 28-34 mm\n`;
    const { room, brood, size } = asked('2026-05-12', read);
    const rest = size('A1');
    expect(sortedIn(room, brood, 'A1')?.read).toBe(true);
    expect(rest?.low).toBeGreaterThan(29);
    expect(rest?.high).toBeLessThan(35);
    // What was read of the rest says nothing new of those that went.
    expect(size('D1')).toEqual(asked('2026-05-12', SORTED).size('D1'));
    const steps = saleableFrom(room, brood, room.on, 'A1')?.because.steps.join(' ');
    expect(steps).toContain('93 % of the mean of all of them, measured since');
  });

  it('turns the sides about where the smallest went', () => {
    const { room, brood } = asked('2026-05-11', SORTED.replace('largest', 'smallest'));
    expect(sortedIn(room, brood, 'D1')?.times.high).toBe(1);
    expect(sortedIn(room, brood, 'A1')?.times.low).toBe(1);
    expect(sortedIn(room, brood, 'D1')?.bestGone).toBeCloseTo(2 / 3, 6);
    expect(sortedIn(room, brood, 'A1')?.bestGone).toBe(0);
  });

  it('knows no side any more where others came to them', () => {
    const { room, brood } = asked('2026-05-15', `${SORTED}2026-05-14 A1: moved 10 Rowan-1 to D1\n`);
    const mixed = sortedIn(room, brood, 'D1');
    expect(mixed?.times.low).toBeLessThan(1);
    expect(mixed?.times.high).toBeGreaterThan(1);
    expect(mixed?.words).toContain('longer and shorter ones');
    expect(sortedIn(room, brood, 'A1')?.words).toContain('the rest');
  });

  it('is told with both lengths, and that the one of the row is that of all of them', () => {
    const answer = broods(journalOn('2026-05-11', SORTED));
    const text = broodsText(answer, plainLook(day('2026-05-11'), 200));
    expect(text).toContain('mm of all of them; since sorted: A1 30–38 mm (the rest');
    expect(text).toContain('D1 32–43 mm (the largest of them');
    expect(broodsText(broods(journalOn('2026-05-09', SORTED)), plainLook(day('2026-05-09')))).not.toContain('sorted');
  });
});

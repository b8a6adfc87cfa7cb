import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { broods } from '../../src/questions/broods.ts';
import { broodsJson, broodsText } from '../../src/reports/broods.ts';
import { plainLook } from '../../src/reports/look.ts';
import { roomOn, type Line } from '../support/events.ts';
import { largest, sample, soldAt } from '../support/fishroom.ts';

const lines: Line[] = [...sample, soldAt('krib', 35, 16), largest('2026-03-10', 'A1', 12)];

describe('broods', () => {
  it('answers the sample on 10 March: two tanks, 36 days, not saleable, the days when it will be', () => {
    const r = roomOn('2026-03-10', lines);
    expect(r.problems).toEqual([]);
    const [row, ...others] = broods(r).broods;
    expect(others).toEqual([]);
    expect(broodsJson({ on: r.on, asked: null, broods: row ? [row] : [] })).toMatchObject({
      broods: [
        {
          id: 'rowan-1',
          name: 'Rowan-1',
          group: 'Rowan',
          species: 'krib',
          tanks: [
            { tank: 'A1', count: { low: 1, likely: 25, high: 106 } },
            { tank: 'C1', count: { low: 34, likely: 45, high: 56 } },
          ],
          total: { low: 35, likely: 70, high: 140 },
          spawned: '2026-02-02',
          ageDays: 36,
          stage: 'young',
          ready: { low: '2026-05-25', likely: '2026-05-25', high: '2026-05-25' },
          readyNow: false,
        },
      ],
    });
  });
  it('is ready by age after 16 weeks, whatever the length', () => {
    expect(broods(roomOn('2026-05-24', lines)).broods[0]?.isReady).toBe(false);
    expect(broods(roomOn('2026-05-25', lines)).broods[0]?.isReady).toBe(true);
  });
  it('waits for size and age where the rule asks for both', () => {
    const both: Line[] = [...sample, soldAt('krib', 35, 16, true)];
    const ready = broods(roomOn('2026-05-25', both)).broods[0]?.ready;
    expect(ready?.rule).toBe('35 mm and 16 weeks');
    expect(ready?.share.likely).toBeLessThan(0.1);
    expect(ready?.window.high === null || (ready?.window.high ?? 0) > (ready?.window.low ?? 0)).toBe(true);
  });
  it('takes the usual sale size of the way of breeding where no rule is set', () => {
    const ready = broods(roomOn('2026-03-10', sample)).broods[0]?.ready;
    expect(ready?.rule).toBe('25 mm');
    expect(ready?.because.source).toBe('usual for cave spawners (common practice, no source)');
  });
  it('reads on 80 columns', () => {
    const r = roomOn('2026-03-10', lines);
    const text = broodsText(broods(r), plainLook(r.on));
    expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
    expect(text).toMatchInlineSnapshot(`
      "Tue 10 Mar 2026: 1 brood; Rowan-1 for sale 25 May

      brood    where                age      stage    mm  next  for sale
      Rowan-1  A1 about 25 (1–106)  36 days  young  9–12        25 May
               C1 about 45 (34–56)
      "
    `);
  });
  it('knows what comes next', () => {
    const next = (on: string) => {
      const found = broods(roomOn(on, lines)).broods[0]?.next;
      return found
        ? `${found.what} ${[found.window.low, found.window.high].map((day) => (day === null ? '' : isoDay(day))).join('/')}`
        : null;
    };
    expect(next('2026-02-03')).toBe('hatch 2026-02-04/2026-02-07');
    expect(next('2026-02-09')).toBe('swim 2026-02-07/2026-02-17');
    expect(next('2026-02-15')).toBe('first move 2026-03-05/2026-03-24');
    expect(next('2026-03-10')).toBe('sale 2026-05-25/2026-05-25');
  });
});

/** Readings that ask for something: what, how soon, with which caution, and what would follow from it. */
import { describe, expect, it } from 'vitest';
import { readingsDue } from '../../../src/questions/due/readings.ts';
import { rowsOf, type Told } from './rows.ts';

const KRIB = '2026-01-02 species krib: water 24-27 C, pH 5.5-6.8, GH 2-8 dGH\n';
const rows = (lines: string, on = '2026-03-20'): readonly Told[] => rowsOf(readingsDue, on, lines);
const row = (id: string, lines: string): Told => {
  const found = rows(lines).find((one) => one.id === id);
  if (found === undefined)
    throw new Error(
      `no ${id} among ${rows(lines)
        .map((one) => one.id)
        .join()}`,
    );
  return found;
};
const ids = (lines: string, on?: string): string[] => rows(lines, on).map(({ id }) => id);
const read = (words: string, tank = 'C1'): string => `2026-03-18 ${tank}: test ${words}\n`;

describe('nitrite and nitrate', () => {
  it('ask for a change, with what would follow in ammonia and the caution of tap water', () => {
    const found = row('c1-no2', read('NO2 1, TAN 1, pH 7, 25 C'));
    expect(found).toMatchObject({
      place: 'C1',
      what: 'change water, then test again',
      due: '2026-03-18',
      weight: 2,
      why: 'NO2 1 mg/L as N on 18 Mar: harms at any level that a kit shows',
      close: 'C1: water change 30 %; test NO2 …',
      key: 'NO2',
      pressing: false,
      steps: [
        'NO2 1 mg/L as N on 18 Mar',
        'no line says how the kit counts nitrogen, so as N, the harsher way; as the ion it is NO2 0.3 mg/L as N',
      ],
      lines: [1],
    });
    expect(found.caution).toMatch(/^tap water: no chlorine/);
    expect(found.after).toMatch(/^toxic ammonia after it: /);
    expect(row('c1-no3', read('NO3 60'))).toMatchObject({ weight: 1, close: 'C1: water change 30 %; test NO3 …' });
  });
  it('say where it decides that nobody said how the kit counts', () => {
    // As the ion NO3 40 is 40 / 4.4266 = 9.04 mg/L as N, under the mark of 10; 45 is 10.2, above it.
    const hint =
      'counted as N since no line says how the kit does: as the ion it is under the mark (room: nitrogen as N';
    expect(row('c1-no3', read('NO3 40')).why).toContain(hint);
    expect(row('c1-no3', read('NO3 45')).why).not.toContain('counted as N');
    expect(row('c1-no2', read('NO2 0.1')).why).toContain(hint);
    // 0.5 × 0.0573 = 0.029 as N at pH 8 and 26 C: over 1.216 it is 0.024, over the mark as well.
    const total = read('TAN 0.5, pH 8, 26 C');
    expect(row('c1-tan', total).why).not.toContain('counted as N');
    // 0.36 × 0.0573 = 0.0206 as N is over 0.02; over 1.216 it is 0.017.
    expect(row('c1-tan', read('TAN 0.36, pH 8, 26 C')).why).toContain(hint);
    const said = (as: string): string => `2026-01-02 room: nitrogen as ${as}\n`;
    expect(row('c1-no3', said('N') + read('NO3 40'))).toMatchObject({ steps: ['NO3 40 mg/L as N on 18 Mar'] });
    expect(ids(said('ion') + read('NO3 40'))).toEqual([]);
  });
  it('after a change ask for a test alone', () => {
    expect(row('c1-no2', `${read('NO2 1')}2026-03-19 C1: water change 50 %\n`)).toMatchObject({
      what: 'test NO2 again',
      why: 'NO2 1 mg/L as N on 18 Mar: harms at any level that a kit shows; 1 change since',
      close: 'C1: test NO2 …',
      after: null,
      lines: [1, 2],
    });
  });
  it('ask for nothing at their marks, nor once they are a month old', () => {
    expect(ids(read('NO2 0.05, NO3 10, chlorine 0.02'))).toEqual([]);
    expect(ids(read('NO2 0.06, NO3 11, chlorine 0.03'))).toEqual(['c1-no2', 'c1-no3', 'c1-chlorine']);
    expect(ids(read('NO2 1'), '2026-04-17')).toEqual(['c1-no2']);
    expect(ids(read('NO2 1'), '2026-04-18')).toEqual([]);
  });
});

it('chlorine presses, and asks to condition the water: more of the tap takes none of it out', () => {
  const found = row('c1-chlorine', read('chlorine 0.1'));
  expect(found).toMatchObject({
    what: 'condition the water now, then test again',
    weight: 3,
    pressing: true,
    why: 'chlorine 0.1 mg/L on 18 Mar: about 0.3 mg/L kills',
    close: 'C1: test chlorine …',
    caution: 'free-chlorine kits miss chloramine',
    after: null,
  });
  const changed = row('c1-chlorine', `${read('chlorine 0.1')}2026-03-19 C1: water change 30 %\n`);
  expect(changed.what).toBe(found.what);
  expect(changed.why).toBe(`${found.why}; 1 change since`);
});

describe('toxic ammonia', () => {
  it('weighs by what is sure of it: harm from 0.05, a doubt from 0.02 mg/L as N', () => {
    // At 25 C, pH 8 the toxic share is 5.37 % (Emerson et al. 1975).
    const weight = (words: string): number => row('c1-tan', read(`${words}, pH 8, 25 C`)).weight;
    expect([weight('TAN 3'), weight('TAN 0.5')]).toEqual([3, 2]);
    expect(row('c1-tan', read('TAN 3, pH 8, 25 C'))).toMatchObject({
      pressing: true,
      what: 'change water, then test again',
    });
    expect(ids(read('TAN 0.3, pH 8, 25 C'))).toEqual([]);
    expect(ids(read('TAN 0, pH 8, 25 C'))).toEqual([]);
  });
  it('asks for the pH and the temperature where only they make it doubtful', () => {
    const found = row('c1-tan', read('TAN 2'));
    expect(found).toMatchObject({
      what: 'test pH and temperature with the ammonia',
      weight: 2,
      pressing: false,
      close: 'C1: test pH …, TAN …, … C',
    });
    expect(found.why).toMatch(/\(pH and temperature not known\)$/);
    // At pH 8.5 and 30 C, the most that is taken, the share is 20 % (Emerson et al. 1975): 0.04 may harm, 0.05 does.
    expect([row('c1-tan', read('TAN 0.2')).weight, row('c1-tan', read('TAN 0.3')).weight]).toEqual([1, 2]);
    // So much that it harms whatever they are.
    expect(row('c1-tan', read('TAN 8, pH 8.4')).what).toBe('change water, then test again');
  });
  it('by a pH from before a dose that raises it asks for the pH, if it could be over the mark', () => {
    const dosed = '2026-03-19 C1: dosed 5 g baking soda\n';
    expect(row('c1-ph-after-the-dose', read('TAN 1, pH 7, 25 C') + dosed)).toMatchObject({
      what: 'test pH again, the dose can have raised it',
      due: '2026-03-19',
      weight: 2,
      why: 'baking soda on 19 Mar, pH last read on 18 Mar',
      close: 'C1: test pH …, TAN …, … C',
      key: 'pH',
      pressing: false,
      lines: [2, 1],
    });
    expect(ids(read('TAN 0.1, pH 7, 25 C') + dosed)).toEqual([]);
    expect(ids(read('TAN 1, pH 7, 25 C') + dosed.replace('baking soda', 'salt'))).toEqual([]);
    expect(ids(`${read('TAN 1, pH 7, 25 C')}${dosed}2026-03-20 C1: test pH 7.1, TAN 1, 25 C\n`)).toEqual([]);
    // Two doses: the last.
    const two = `${dosed}2026-03-20 C1: dosed 5 g baking soda\n`;
    expect(row('c1-ph-after-the-dose', read('TAN 1, pH 7, 25 C') + two).due).toBe('2026-03-20');
  });
});

describe('water that its fish are not kept in', () => {
  it('is told with how far it is off, its species and a reading to fill in', () => {
    expect(row('c1-temperature', KRIB + read('20 C'))).toMatchObject({
      place: 'C1',
      what: 'warm it slowly and read again',
      weight: 2,
      why: '20 C on 18 Mar; krib kept at 24–27 C',
      close: 'C1: test … C',
      caution: null,
      key: 'temperature',
      pressing: false,
      steps: ['20 C on 18 Mar', 'krib: 24–27'],
      lines: [2, 1],
    });
    expect(row('c1-temperature', KRIB + read('29 C'))).toMatchObject({
      what: 'cool it slowly and read again',
      weight: 1,
    });
    expect(row('c1-gh', KRIB + read('GH 20 dGH'))).toMatchObject({
      what: 'bring GH down slowly',
      weight: 2,
      why: 'GH 20 dH on 18 Mar; krib kept at 2–8',
      close: 'C1: test GH … dH',
      after: null,
    });
    expect(row('c1-gh', KRIB + read('GH 9 dGH')).weight).toBe(1);
  });
  it('of a pH that is brought up tells the ammonia that would follow; down there is none', () => {
    const low = row('c1-ph', KRIB + read('pH 5, TAN 1, 25 C'));
    expect(low).toMatchObject({ what: 'bring pH up slowly', close: 'C1: test pH …', weight: 1 });
    expect(low.caution).toMatch(/^what raises pH/);
    expect(low.after).toMatch(/^toxic ammonia after it: /);
    expect(row('c1-ph', KRIB + read('pH 8'))).toMatchObject({
      what: 'bring pH down slowly',
      caution: null,
      after: null,
    });
    expect(row('c1-ph', KRIB + read('pH 8')).weight).toBe(2);
  });
  it('asks for nothing inside the range, at its ends, and where nobody lives or nothing is said', () => {
    expect(ids(KRIB + read('24 C, pH 6.8, GH 2 dGH'))).toEqual([]);
    expect(ids(KRIB + read('20 C', 'C2'))).toEqual([]);
    expect(ids(read('12 C'))).toEqual([]);
  });
  it('of a loop is told of each tank’s own warmth, and of pH once', () => {
    const loop = `${KRIB}${read('20 C, pH 8', 'A1')}${read('25 C', 'A2')}`;
    expect(ids(loop)).toEqual(['a1-temperature', 'long-ph']);
    expect(ids(`${loop}2026-03-19 A1: test 25 C, pH 6.5\n`)).toEqual([]);
  });
});

/** A power cut: who goes first, how fast it cools, what runs down into the sump. */
import { describe, expect, it } from 'vitest';
import { exactly } from '../../src/core/interval.ts';
import { loops } from '../../src/questions/loops.ts';
import { powerCut } from '../../src/questions/powercut.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { readJournal } from '../../src/language/read.ts';
import { day } from '../support/events.ts';
import { tankside } from '../support/run.ts';

const ROOM = `2026-01-04 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm; spare 20 L
2026-01-04 tank A1: 100 x 40 x 40 cm; on Long
2026-01-04 tank A2: 100 x 40 x 40 cm; on Long
2026-01-04 tank C1: 54 L; alone; sponge filter
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; water 23-27 C
2026-01-04 group Ash: krib; 40; size 50 mm; in A1
2026-01-04 group Elm: krib; 2; size 50 mm; in A2
2026-01-04 group Oak: krib; 2; size 50 mm; in C1
2026-01-05 A1: test 26 C
`;
const CUT = `2026-01-06 08:00 A1: test 26 C
2026-01-06 08:00 room: power off
2026-01-06 12:00 A1: test 24 C
2026-01-06 13:00 room: power on
`;
const room = (text: string, on = '2026-01-10') => {
  const read = readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no' }));
  expect(read.problems).toEqual([]);
  return foldRoom(read.events, day(on));
};

describe('the ranking', () => {
  it('puts the fullest first, and a tank with an air line of its own behind an equal one without', () => {
    const { rows } = powerCut(room(ROOM));
    expect(rows[0]?.name).toBe('A1');
    expect(rows.map(({ name, air }) => [name, air])).toContainEqual(['C1', 'own air line']);
    expect(rows.map(({ name, air }) => [name, air])).toContainEqual(['A2', 'only the loop']);
  });

  it('weighs fish by their length: 40 of 50 mm are about 2.6 g each in 136 L', () => {
    // W = 0.02 × 5^3.03 = 2.624 g
    const row = powerCut(room(ROOM)).rows.find(({ name }) => name === 'A1');
    expect(row?.gramsPerLitre?.low).toBeLessThanOrEqual((40 * 2.624) / 136);
    expect(row?.gramsPerLitre?.high).toBeGreaterThanOrEqual((40 * 2.624) / 136);
  });
});

describe('cooling', () => {
  it('is fitted from a logged cut, and from there to the coldest that the fish are kept in', () => {
    const row = powerCut(room(ROOM + CUT), exactly(18)).rows.find(({ name }) => name === 'A1');
    // ln((26 − 18)/(24 − 18)) / 4 h = 0.0719 an hour; the 24 C are of the cut, so from 26 C to 23 C: ln(8/5) / 0.0719 = 6.535 h
    expect(row?.cools).toMatchObject({ least: 23, from: 'its own cut' });
    expect(row?.cools?.hours.low).toBeCloseTo(6.535, 2);
  });

  it('is fitted from two readings of the cut where nobody read before it', () => {
    const none = ROOM.replace('2026-01-05 A1: test 26 C\n', '');
    const cut = CUT.replace('2026-01-06 08:00 A1: test 26 C', '').replace(
      '2026-01-06 12:00',
      '2026-01-06 09:00 A1: test 26 C\n2026-01-06 13:00',
    );
    const text = `${none}${cut.replace('2026-01-06 13:00 room', '2026-01-06 13:30 room')}`;
    // Four hours from 26 C to 24 C, so the same rate; nobody read it since, so not how long from now.
    expect(powerCut(room(text), exactly(18)).noCooling).toBeNull();
    const now = powerCut(room(`${text}2026-01-08 A1: test 26 C\n`), exactly(18)).rows.find(({ name }) => name === 'A1');
    expect(now?.cools?.hours.low).toBeCloseTo(6.535, 2);
    const one = powerCut(room(text.replace('2026-01-06 09:00 A1: test 26 C\n', '')), exactly(18));
    expect(one.noCooling).toContain('early and again later');
  });

  it('of a smaller tank goes faster, by the cube root of the litres', () => {
    const text = `${ROOM}${CUT}2026-01-07 C1: test 24 C\n`;
    const cools = powerCut(room(text), exactly(18)).rows.find(({ name }) => name === 'C1')?.cools;
    expect(cools?.from).toBe('the cut of A1');
    expect(cools?.hours.low).toBeCloseTo(2.535 / Math.cbrt(136 / 45.9), 2);
  });

  it('is not known without a cut that tells it, and says what to jot', () => {
    const { rows, noCooling } = powerCut(room(ROOM));
    expect(rows.every(({ cools }) => cools === null)).toBe(true);
    expect(noCooling).toContain('power off');
  });
});

describe('drain-down', () => {
  it('sets what runs down against the spare room of the sump', () => {
    // two surfaces of 0.4 m², 8 to 30 mm: 6.4 to 24 L
    const [row] = loops(room(ROOM));
    expect(row?.drain?.litres.low).toBeCloseTo(6.4, 9);
    expect(row?.drain?.litres.high).toBeCloseTo(24, 9);
    expect(row?.drain?.verdict).toBe('may overflow');
    expect(loops(room(ROOM.replace('spare 20 L', 'spare 60 L')))[0]?.drain?.verdict).toBe('fits');
    expect(loops(room(ROOM.replace('spare 20 L', 'spare 2 L')))[0]?.notes).toContain('a power cut overflows the sump');
    expect(loops(room(ROOM.replace('; spare 20 L', '')))[0]?.drain?.verdict).toBe('not known');
  });
});

describe('tankside water --cut', () => {
  const asked = (argv: readonly string[]) =>
    tankside(argv, { today: '2026-01-10', files: { '/room/fishroom.txt': ROOM + CUT } });

  it('lists the tanks, with the caution, on 80 columns and without the word that no answer says', async () => {
    const { out, status } = await asked(['water', '--cut', '--air', '18C']);
    expect(status).toBe(0);
    expect(out).toContain('A1 goes first');
    expect(out.replace(/\s+/g, ' ')).toContain('generator never indoors');
    expect(out).not.toMatch(/\bsafe/i);
    expect(out.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  it('refuses air that no room has, and explains each row', async () => {
    expect(await asked(['water', '--cut', '--air', 'cold'])).toMatchObject({ status: 2, out: '' });
    expect((await asked(['why', 'a1-power-cut'])).out).toContain('goes');
    const json: unknown = JSON.parse((await asked(['water', '--cut', '--json'])).out);
    expect(json).toMatchObject({ cut: [{ name: 'A1', air: 'only the loop' }, {}, {}] });
  });
});

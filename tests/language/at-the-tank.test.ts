/** Short lines as they are jotted with one wet finger: what each means, and what is asked back of those that may mean two things. */
import { describe, expect, test } from 'vitest';
import { printClause } from '../../src/language/print.ts';
import { tankside } from '../support/run.ts';
import { eventsOf, problemsIn } from '../support/lines.ts';

const DAY = '2026-03-10 ';

const facts = (line: string): unknown => eventsOf(`${DAY}${line}\n`).map(({ place: _, seq: __, ...says }) => says);
const offered = (line: string): string | undefined => problemsIn(`${DAY}${line}`)[0]?.write.replace(DAY, '');

describe('is read as meant', () => {
  test.each([
    // Water
    ['C1: wc a third', 'C1: water change 33.33 %'],
    ['C1: changed two thirds', 'C1: water change 66.67 %'],
    ['C1: wc quarter', 'C1: water change 25 %'],
    ['C1: wc three quarters', 'C1: water change 75 %'],
    ['C1: did 30% wc', 'C1: water change 30 %'],
    ['C1: did a 20 L wc', 'C1: water change 20 L'],
    ['C1: did half wc', 'C1: water change 50 %'],
    ['C1: 30% change', 'C1: water change 30 %'],
    ['C1: pH 6.8, was 7.2', 'C1: test pH 6.8 "was 7.2"'],
    ['C1: KH 2 from 4', 'C1: test KH 2 "from 4"'],
    ['C1: pH 7.2 -> 6.8, KH 4', 'C1: test pH 6.8, KH 4 "pH 7.2"'],
    ['C1: pH 7.2 / KH 4 / GH 8', 'C1: test pH 7.2, KH 4, GH 8'],
    // 0.48 to 0.71 mg/L for each µS/cm: table of a conductivity meter's manual (Nova-Tech pH/CON 300, appendix 1).
    ['C1: tds 180', 'C1: test 253-375 µS/cm "tds 180"'],
    ['C1: tds 180 ppm, pH 7', 'C1: test pH 7, 253-375 µS/cm "tds 180 ppm"'],
    ['Long: full clean every 6 weeks', 'Long: clean prefilter every 6 weeks'],
    ['C1: rinsed sponge every 2 weeks', 'C1: rinse sponge every 2 weeks'],
    ['C1: dosed a capful prime', 'C1: dosed 1 capful "prime"'],
    // Eggs and young
    ['A1: eggs to C2', 'A1: moved young to C2'],
    ['A1: wrigglers to C2', 'A1: moved young to C2'],
    ['A1: moved 20 eggs to C1', 'A1: moved 20 young to C1'],
    ['A1: pulled 20 eggs to C1', 'A1: moved 20 young to C1'],
    ['A1: saw 6 fry', 'A1: fry seen 6'],
    ['B1: saw about 6 babies', 'B1: fry seen about 6'],
    ['A1: free swimmers, about 40', 'A1: free-swimming, about 40'],
    // Fish told apart, and fish before their number
    ['C1: 2 m 1 f dead', 'C1: died 2 males, 1 female'],
    ['C1: 2 m, 1 f and 3 fry dead', 'C1: died 2 males, 1 female, 3 young'],
    ['C1: 2m dead', 'C1: died 2 males'],
    ['C1: Ash 2 dead', 'C1: Ash died 2'],
    ['C1: Ash 6 to C2', 'C1: moved 6 Ash to C2'],
    ['C1: 2m 4f to C2', 'C1: moved 2 males, 4 females to C2'],
    ['C1: 2 m and 4 f to C2', 'C1: moved 2 males, 4 females to C2'],
    ['A1: parents ate 6 fry', 'A1: eaten 6 young "parents"'],
    ['C1: Eaten "by the snails"', 'C1: eaten all young "by the snails"'],
    // A day that is ahead
    ['C1: to do "new air stone" on sunday', 'C1: to do "new air stone" by 2026-03-15'],
    ['C1: to do "new air stone" on 14 Mar', 'C1: to do "new air stone" by 2026-03-14'],
    ['C1: wanted 6 krib on 14 Mar', 'C1: wanted 6 krib by 2026-03-14'],
    // A length or an age, and no range
    ['species ram: cave spawner; sale at 22 or 12 weeks', 'species ram: cave spawner; sale at 22 mm or 12 weeks'],
    ['species ram: cave spawner; sale at 10 or 12 weeks', 'species ram: cave spawner; sale at 10 mm or 12 weeks'],
    // When
    ['C1: moved 2 to C2 on 2026-03-08', 'C1: moved 2 to C2 2026-03-08'],
    ['C1: moved 2 to C2 on sunday', 'C1: moved 2 to C2 2026-03-08'],
    ['C1: dosed salt on friday', 'C1: dosed "salt" 2026-03-06'],
    // Health and food
    // A clause behind an `and`
    ['C1: fed bbs and w/c', 'C1: fed bbs; w/c'],
    ['C1: fed bbs and wc', 'C1: fed bbs; wc'],
    ['C1: dosed salt and wc 30%', 'C1: dosed salt; wc 30%'],
    ['C1: sick, not catching', 'C1: sick not catching'],
    ['C1: fed 1 spoon bbs', 'C1: fed brine shrimp "1 spoon"'],
    ['A1: fed fry micros and parents flake', 'A1: fed microworm, flake "fry, parents"'],
    ['M1: added yeast', 'M1: fed yeast'],
    ['M1: yeast added', 'M1: fed yeast'],
    ['C1: Ash sold out', 'C1: sold all Ash'],
    // A species in place of a name
    ['C1: sold 6 kribs for 24', 'C1: sold 6 krib for 24'],
    ['C1: 2 dead kribs', 'C1: krib died 2'],
    ['C1: 6 krib to C2', 'C1: moved 6 krib to C2'],
    // One or the other
    ['C1: counted 11 or 12', 'C1: counted 11-12'],
    ['C1: 2 or 3 dead', 'C1: died 2-3'],
    ['A1: spawned 2 or 3 days ago', 'A1: spawned 2-3 days ago'],
    // What stands behind
    ['Q1: bought 2 krib f from Jo for 20', 'Q1: bought 2 females krib for 20 from "Jo"'],
    ['Q1: bought 6 krib juvs', 'Q1: bought 6 young krib'],
    ['C1: sold 6 for 24 cash', 'C1: sold 6 for 24 "cash"'],
    ['A1: treat salt 2 g/L daily for 3 days', 'A1: treat "salt" 2 g/L, every day, 3 doses'],
    ['A1: treat salt 2 g/L for 10 days', 'A1: treat "salt" 2 g/L "for 10 days"'],
    // Plans
    ['room: order salt by friday', 'room: to do "order salt" by 2026-03-13'],
    ['room: need salt', 'room: to do "salt"'],
  ])('«%s» is «%s»', (said, meant) => {
    expect(facts(said)).toEqual(facts(meant));
  });

  test.each([
    ['fed a pinch', 'a pinch'],
    ['fed lightly', 'lightly'],
  ])('«%s» says how much and not what', (clause, remark) => {
    expect(facts(`C1: ${clause}`)).toMatchObject([{ kind: 'fed', food: '', remark }]);
  });

  test('a bucket is one of them', () => {
    const lines = `${DAY}room: bucket 12 L\n${DAY}C1: wc a bucket\n`;
    expect(eventsOf(lines).at(-1)).toMatchObject({ kind: 'water changed', amount: { unit: 'L', low: 12, high: 12 } });
  });

  test('a species stands for whatever fish of it are there', () => {
    expect(facts('C1: 2 krib dead')).toMatchObject([{ kind: 'lost', fish: { kind: 'implied', species: 'krib' } }]);
  });

  test('sick without words is sick, and tidied stays so', () => {
    for (const [clause, remark] of [
      ['sick', null],
      ['ill', null],
      ['f sick', 'f'],
      ['sick female', 'female'],
      ['2 females sick', '2 females'],
    ] as const) {
      expect(facts(`C1: ${clause}`)).toMatchObject([{ kind: 'sick', text: null, catching: null, remark }]);
    }
    const printed = (clause: string): string[] => eventsOf(`${DAY}C1: ${clause}`).map((event) => printClause(event));
    expect(printed('sick')).toEqual(['sick']);
    expect(printed('ill, not catching')).toEqual(['sick, not catching']);
    expect(printed('female sick')).toEqual(['female sick']);
    expect(printed('sick "unknown"')).toEqual(['sick "unknown"']);
  });

  test('what a culture is fed is no feed of a tank', () => {
    expect(facts('M1: fed oats')).toMatchObject([{ kind: 'fed', food: 'oats', subject: { culture: 'M1' } }]);
    expect(facts('M1: fed')).toMatchObject([{ kind: 'fed', food: '', subject: { culture: 'M1' } }]);
  });

  test('a reading after `was` is kept as a remark and tells nothing of today', () => {
    expect(facts('C1: pH 6.8, was 7.2')).toMatchObject([
      { reading: { ph: { low: 6.8, high: 6.8 } }, remark: 'was 7.2' },
    ]);
  });
});

describe('is asked back, with a line that would be read', () => {
  test.each([
    ['C1: temp 24 -> 27', 'C1: temp 27, was 24'],
    ['C1: heater on 26', 'C1: heater on; temp 26'],
    ['C1: vac 10 L', 'C1: water change 10 L'],
    ['C1: siphoned 20 %', 'C1: water change 20 %'],
    ['C1: vacced', 'C1: note vacced'],
    ['C1: vacced half', 'C1: note vacced half'],
    ['C1: 1/3 wc', 'C1: wc 1/3'],
    ['C1: pH7.2 KH4', 'C1: pH 7.2 KH 4'],
    ['C1: KH 2 (was 4)', 'C1: KH 2 "was 4"'],
    ['C1: culled 1 (bent spine)', 'C1: culled 1 "bent spine"'],
    ['C1: sold 6 (24)', 'C1: note sold 6 (24)'],
    ['C1: heater 26', 'tank C1: heater 26'],
    ['M1: fed microworms', 'M1: harvested'],
    ['M1: harvest', 'M1: harvested'],
    ['C1: frozen bbs', 'C1: fed frozen bbs'],
    ['Long: 2 layers', 'Long: cleaned 2 layers'],
    // Who they are for
    ['C1: Bob wants 6', 'C1: reserved 6 to Bob'],
    ['room: Bob wants 6 krib at 30 mm', 'room: wanted 6 krib at 30 mm to Bob'],
    ['C1: res 6 Bob', 'C1: res 6 to Bob'],
    ['C1: Bob reserved 6', 'C1: reserved 6 to Bob'],
    ['C1: Bob took 6', 'C1: sold 6 to Bob'],
    ['C1: gave Sue 6', 'C1: gave to Sue 6'],
    ['C1: 6 to Bob', 'C1: sold 6 to Bob'],
    ['C1: 6 for Bob', 'C1: reserved 6 for Bob'],
    ['C1: reserved 6 for 30', 'C1: reserved 6 "for 30"'],
    ['Q1: bought 6 krib from C1', 'C1: moved 6 to Q1'],
    ['C1: moved 2 to C2 on 2026-03-20', 'C1: to do "moved 2 to C2 on 2026-03-20" by 2026-03-20'],
    // One of them, or all?
    ['C1: dead', 'C1: some dead'],
    ['C1: krib dead', 'C1: some krib dead'],
    ['C1: found dead, wc 30 %', 'C1: some found dead, wc 30 %'],
    ['C1: change air stone', 'C1: to do "change air stone"'],
    ['C1: change "air stone"', 'C1: to do "change air stone"'],
    ['C1: change', 'C1: to do "change"'],
    ['C1: no change', 'C1: note no change'],
    ['C1: no wc, fed', 'C1: note no wc, fed'],
    ['C1: krib eaten', 'C1: some krib eaten'],
    ['C1: jumped', 'C1: some jumped'],
    ['A1: ate the fry', 'A1: ate some fry'],
    ['A1: parents ate fry', 'A1: parents ate some fry'],
    ['C1: 5m 6f', 'C1: counted 5m 6f'],
    // A clause that hangs on the words of another
    ['C1: fed+wc', 'C1: fed; wc'],
    ['C1: fed bbs wc 30%', 'C1: fed bbs; wc 30%'],
    ['C1: counted 38 25mm', 'C1: counted 38; 25mm'],
    ['C1: off loop for meds', 'C1: off loop "for meds"'],
    ['C1: salt added 30 g', 'C1: note salt added 30 g'],
    ['C1: 30 g salt added', 'C1: dosed 30 g salt'],
    ['A1: hatched, moved to pit', 'A1: hatched; note moved to pit'],
    // A slip after the fish
    ['A1: Rowan ded', 'A1: Rowan died'],
    ['C1: 2 ded', 'C1: 2 died'],
    ['Rowan ded', 'Rowan: died'],
  ])('«%s»', (line, write) => {
    expect(offered(line)).toBe(write);
  });

  test('a word of its own is no slip of another', () => {
    expect(offered('C1: few runts')).toBe('C1: note few runts');
    expect(offered('A1: dad on duty')).toBe('A1: note dad on duty');
    expect(offered('A1: dim light')).toBe('A1: note dim light');
    expect(offered('A1: cleaning')).toBe('A1: note cleaning');
    expect(offered('C1: air stone in')).toBe('C1: note air stone in');
  });

  test('what does not belong is told with the words that were written', () => {
    expect(problemsIn(`${DAY}C1: air pump off`)[0]?.says).toBe('«air» is not understood with `pump off`');
    expect(problemsIn(`${DAY}A1: A2 heater on`)[0]?.says).toContain('`heater on`');
  });

  test('what is told of a thing is not taken for its declaration', () => {
    expect(problemsIn(`${DAY}C1: water cloudy`)[0]?.kind).toBe('unknown-clause');
    expect(problemsIn(`${DAY}Long: sump low`)[0]?.kind).toBe('unknown-clause');
  });
});

describe('jotted', () => {
  const ROOM = `2026-01-04 tank A1: 54 L; alone
2026-01-04 tank C1: 54 L; alone
2026-01-04 loop Long: sump 240 L; prefilter 6 layers
2026-01-04 species krib: cave spawner
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-10 A1: spawned brood Rowan-1
2026-01-18 A1: free-swimming about 60
`;
  const told = async (line: string): Promise<string> => {
    const { out, err } = await tankside(['jot', line], { today: '2026-03-10', files: { '/room/fishroom.txt': ROOM } });
    return `${out}${err}`.replace(/\s+/g, ' ');
  };

  test('of two stocks in a tank the young are offered, in a line that is read whole', async () => {
    expect(await told('A1: 2 dead')).toContain(`write: ${DAY}A1: Rowan-1 2 dead`);
    expect(await told('A1: lost 2')).toContain(`write: ${DAY}A1: Rowan-1 died 2`);
    expect(await told('A1: jumped')).toContain(`write: ${DAY}A1: Rowan-1 some jumped`);
  });

  test('no remark that is offered makes a fact of the words before it', async () => {
    expect(await told('Long: cleaned pump')).toContain(`write: ${DAY}Long: did "cleaned pump"`);
    expect(await told('A1: Rowan-1 swapped with C1')).toContain('note');
    expect(await told('A1: ate well')).toContain(`write: ${DAY}A1: note ate well`);
    expect(await told('A1: Rowan-1 stripped down')).toContain(`write: ${DAY}A1: note Rowan-1 stripped down`);
  });
});

/** A pair that lost a partner is told as what is left of it, and is not waited for to spawn. */
import { describe, expect, test } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import { pairs } from '../../../src/questions/pairs.ts';
import type { PairRow } from '../../../src/questions/pairs.ts';
import { walk } from '../../../src/questions/walk.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { pairsJson, pairsText } from '../../../src/reports/pairs.ts';
import type { Room } from '../../../src/state/draft.ts';
import { day } from '../../support/events.ts';
import { journalRoom } from '../../support/journal.ts';

const ROOM = `2026-01-04 tank A1: 54 L; alone
2026-01-04 tank A2: 54 L; alone
2026-01-04 tank B1: 54 L; alone
2026-01-04 species krib: cave spawner
2026-01-04 species limia: livebearer
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-04 pair Ash: krib; male; female; in A2
2026-01-04 trio Sedge: krib; male; females Fern and Lark; in B1
2026-01-05 A1: spawned
2026-01-14 A1: free-swimming, about 40
`;
const DIED = '2026-02-03 A1: male died\n';
const after = (lines: string, on = '2026-03-01'): Room => journalRoom(on, ROOM + lines);
const row = (lines: string, name: string, on?: string): PairRow | undefined =>
  pairs(after(lines, on)).pairs.find((pair) => pair.name === name);
const walked = (lines: string, tank: string): string | undefined =>
  walk(after(lines)).tanks.find((one) => one.tank === tank)?.fish[0]?.what;

describe('a pair whose male died', () => {
  test('stands in the walk as what is left', () => {
    expect(walked('', 'A1')).toBe('krib pair');
    expect(walked(DIED, 'A1')).toBe('krib, 1 female of the pair, male died 3 Feb');
  });

  test('has no next spawn, and its row says since when', () => {
    expect(row('', 'Rowan')?.next).not.toBeNull();
    expect(row(DIED, 'Rowan')).toMatchObject({ state: 'single', next: null });
    expect(row(DIED, 'Rowan', '2026-01-30')).toMatchObject({ state: 'not said', left: null });
    const answer = pairs(after(DIED));
    expect(pairsText(answer, plainLook(day('2026-03-01')))).toMatch(/Rowan +A1 +single +male died 3 Feb/);
    expect(JSON.stringify(pairsJson(answer))).toContain('"left":"1 female of the pair, male died 3 Feb"');
    const named = pairsText(pairs(after(DIED), 'Rowan'), plainLook(day('2026-03-01')));
    expect(named).toContain('Rowan: krib, 1 female of the pair in A1, single; male died 3 Feb');
  });

  test('is a pair again with a new mate', () => {
    const mated = `${DIED}2026-02-20 A1: new male from Ash\n`;
    expect(walked(mated, 'A1')).toBe('krib pair');
    expect(walked(mated, 'A2')).toBe('krib, 1 female of the pair, male went to another group 20 Feb');
  });
});

test.each([
  ['B1: Fern died', 'krib, 1 male and Lark of the trio, Fern died 3 Feb'],
  ['B1: Sedge male died', 'krib, Fern and Lark of the trio, male died 3 Feb'],
  ['B1: Fern died; Lark died', 'krib, 1 male of the trio, Fern died 3 Feb, Lark died 3 Feb'],
])('of a trio «%s» leaves %s', (line, expected) => {
  expect(walked(`2026-02-03 ${line}\n`, 'B1')).toBe(expected);
});

test('in several tanks each tells who is there', () => {
  const parted = '2026-02-03 B1: Sedge male died\n2026-02-04 B1: moved Lark to A2\n';
  const fish = (tank: string) => walk(after(parted)).tanks.find((one) => one.tank === tank)?.fish;
  expect(fish('B1')?.map(({ name, what }) => [name, what])).toEqual([
    ['Sedge', 'krib, Fern of the trio, male died 3 Feb'],
  ]);
  expect(fish('A2')?.map(({ name, what }) => [name, what])).toContainEqual([
    'Sedge',
    'krib, Lark of the trio, male died 3 Feb',
  ]);
});

describe('a female livebearer', () => {
  const ELM = `2026-01-04 tank C1: 54 L; alone
2026-01-04 pair Elm: limia; male; female; in C1
2026-01-05 C1: born 18
2026-01-09 C1: male died
`;
  const ids = (on: string): string[] => due(after(ELM, on), { days: 0, minutes: null }).rows.map(({ id }) => id);
  test('drops young for months after her male died, and is not called late', () => {
    expect(ids('2026-01-31')).toContain('c1-young-due');
    expect(row(ELM, 'Elm', '2026-02-20')).toMatchObject({ state: 'single', spawning: { lateDays: null } });
    expect(row(ELM, 'Elm', '2026-02-20')?.next).not.toBeNull();
    expect(row(ELM, 'Elm', '2026-04-10')?.next).toBeNull();
  });
});

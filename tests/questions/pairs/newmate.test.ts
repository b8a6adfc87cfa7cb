/** Days to the next spawn are counted anew from a new mate, or from when the two were together again. */
import { describe, expect, it } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import { pairs } from '../../../src/questions/pairs.ts';
import type { PairRow } from '../../../src/questions/pairs.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { pairsText } from '../../../src/reports/pairs.ts';
import type { Room } from '../../../src/state/draft.ts';
import { day } from '../../support/events.ts';
import { journalRoom } from '../../support/journal.ts';

const ROOM = `2026-01-01 tank A1: 54 L; alone
2026-01-01 tank A2: 54 L; alone
2026-01-01 tank B1: 54 L; alone
2026-01-01 species krib: cave spawner
2026-01-01 species limia: livebearer
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 harem Sedge: krib; male; females Fern and Lark; in A2
2026-01-05 A1: spawned
2026-01-06 A1: eggs gone
2026-01-05 A2: Fern spawned
2026-01-06 A2: eggs gone
`;
const NEW = '2026-03-01 A1: male died\n2026-05-01 A1: new male from "a friend"\n';
const room = (on: string, lines: string): Room => journalRoom(on, ROOM + lines);
const row = (on: string, lines: string, name = 'Rowan'): PairRow => {
  const found = pairs(room(on, lines)).pairs.find((pair) => pair.name === name);
  if (found === undefined) throw new Error('no such pair');
  return found;
};
const late = (on: string, lines: string, name?: string): number | null => row(on, lines, name).spawning.lateDays;
/** Days after which the next is late, where eggs were lost at once. */
const USUAL = row('2026-01-20', '').spawning.interval?.days.high ?? NaN;

describe('a new mate', () => {
  it('is given the usual days of its own before a spawn is late', () => {
    expect(USUAL).toBe(28);
    expect(late('2026-02-10', '')).toBe(36 - USUAL);
    expect(row('2026-05-20', NEW).spawning).toMatchObject({ lateDays: null, waits: 'new mate on 1 May' });
    expect(late('2026-05-23', NEW)).toBe(0);
    expect(late('2026-06-01', NEW)).toBe(3);
    expect(row('2026-05-23', NEW).next).toMatchObject({ high: day('2026-05-29') });
  });

  it('stands in the row, its reason and the list of the day', () => {
    const at = room('2026-06-01', NEW);
    const found = due(at, { days: 0, minutes: null }).rows.find(({ id }) => id === 'a1-late-to-spawn');
    expect(found?.why).toMatch(/^Rowan: none seen since the new mate came on 1 May; .* are usual, 3 days over$/);
    expect(found?.lines).toEqual([{ file: 'fishroom.txt', line: 13 }]);
    const { spawning } = row('2026-06-01', NEW);
    expect(spawning.because.steps).toContain('counted since the new mate came on 1 May');
    expect(pairsText(pairs(at, 'Rowan'), plainLook(day('2026-06-01'))).replace(/\s+/g, ' ')).toContain(
      'the new mate came on 1 May, counted from then; 3 days late',
    );
  });

  it('counts for nothing once they spawned, and is the same for a livebearer as before', () => {
    const spawned = `${NEW}2026-05-10 A1: spawned\n2026-05-11 A1: eggs gone\n`;
    expect(row('2026-05-23', spawned).spawning.from).toMatchObject({ says: null });
    const limia = `2026-01-01 pair Elm: limia; male; female; in B1\n2026-01-05 B1: born 12\n2026-02-01 B1: male died\n2026-02-02 B1: new male from "a friend"\n`;
    expect(row('2026-02-10', limia, 'Elm').spawning.from).toMatchObject({ says: null });
  });

  it('that is one more female of a harem begins nothing anew for the others', () => {
    const more = '2026-03-01 A2: new female from "a friend"\n';
    expect(row('2026-03-30', more, 'Sedge').spawning.from).toMatchObject({ says: null });
  });
});

it('the days without a mate are no interval of theirs', () => {
  const spawned = (...days: string[]): string =>
    days.map((on) => `${on} A1: spawned\n${on.slice(0, 8)}28 A1: eggs gone\n`).join('');
  const before = spawned('2026-02-05', '2026-03-07', '2026-04-06');
  const own = (lines: string): unknown => row('2026-09-28', before + lines).spawning.interval;
  expect(own('')).toMatchObject({ days: { likely: 30 } });
  const parted = '2026-04-29 A1: male died\n2026-07-20 A1: new male from "a friend"\n';
  expect(own(`${parted}${spawned('2026-08-05', '2026-09-04')}`)).toMatchObject({
    days: { low: 23, likely: 30, high: 37 },
    basis: 'the median of its own 3 intervals, and 7 days',
  });
});

it('a livebearer drops young on without a mate: her days between them stand', () => {
  const born = (...days: string[]): string => days.map((on) => `${on} B1: born 12\n`).join('');
  const before = `2026-01-01 pair Elm: limia; male; female; in B1\n${born('2026-01-10', '2026-02-08')}`;
  const parted = '2026-02-12 B1: moved the male to A1\n2026-03-01 A1: Elm male moved to B1\n';
  expect(
    row('2026-04-20', `${before}${parted}${born('2026-03-09', '2026-04-07')}`, 'Elm').spawning.interval,
  ).toMatchObject({
    basis: 'the median of its own 3 intervals, and 7 days',
  });
});

describe('two that were apart', () => {
  const apart = '2026-02-01 A1: moved the male to B1\n';
  it.each(['A1: male back', 'B1: Rowan male moved to A1'])('begin anew by «%s»', (line) => {
    const found = row('2026-06-01', `${apart}2026-05-01 ${line}\n`).spawning;
    expect(found).toMatchObject({ lateDays: 3, from: { says: 'they were together again on 1 May' } });
  });

  it.each([
    'A1: moved Rowan to B1',
    'A1: moved the male to B1, moved the female to B1',
    'A1: moved the male to B1\n2026-05-01 A1: moved the female to B1',
  ])('begin nothing anew by moving house together: «%s»', (moved) => {
    expect(row('2026-05-23', `2026-05-01 ${moved}\n`).spawning.from).toMatchObject({ says: null });
  });

  it('begin anew on the day of the last move where one waited for the other in a third tank', () => {
    const met = `${apart}2026-05-01 A1: Rowan female moved to A2\n2026-05-01 B1: Rowan male moved to A2\n`;
    expect(row('2026-06-01', met).spawning.from).toMatchObject({ says: 'they were together again on 1 May' });
  });
});

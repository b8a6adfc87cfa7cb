/** When older young have to be out for the next: what the row says, what it goes by, and when it is no row. */
import { describe, expect, it } from 'vitest';
import { youngDue } from '../../../src/questions/due/young.ts';
import { rowOf, rowsOf, type Told } from './rows.ts';

/** Laid on 10 January; cave spawners swim 5 to 15 days after laying at no known temperature (common practice, no source). */
const OLDER = '2026-01-10 A1: spawned\n2026-01-20 A1: free-swimming, 40\n';
const one = (on: string, lines: string): Told => rowOf(youngDue, on, OLDER + lines);
const ids = (on: string, lines: string, days = 7): string[] => rowsOf(youngDue, on, lines, days).map(({ id }) => id);
const NEXT = '2026-02-20 A1: spawned\n';

describe('older young in the way of the next', () => {
  it('are told with their number, the day, and what to leave where it is', () => {
    expect(one('2026-02-20', NEXT)).toEqual({
      id: 'a1-rowan-1-leave',
      place: 'A1',
      what: 'Rowan-1 out by 23 Feb',
      due: '2026-02-20..2026-02-23..2026-02-23',
      weight: 2,
      why: 'Rowan-2 swims 25 Feb – 7 Mar; 40 older ones would eat them; 12 is free; leave the cave and its rocks where they are',
      close: 'A1: moved all Rowan-1 to tank 12',
      caution: null,
      after: null,
      key: 'Rowan-1',
      pressing: false,
      steps: [
        'Rowan-1: laid 10 Jan, 40 in A1',
        'Rowan-2 swims 25 Feb – 7 Mar',
        'first of those days 25 Feb, less 2: 23 Feb',
      ],
      lines: [3, 2],
    });
  });
  it('whose number nobody knows are told without one', () => {
    const unknown = OLDER.replace(', 40', '') + NEXT;
    expect(rowOf(youngDue, '2026-02-20', unknown).why).toContain('; the older ones would eat them;');
    const guess = OLDER.replace('40', 'about 40') + NEXT;
    expect(rowOf(youngDue, '2026-02-20', guess).why).toMatch(/; about 40 \(.*\) older ones would eat them;/);
  });
  it('of a spawn that is only suspected say so', () => {
    expect(one('2026-02-20', '2026-02-20 A1: maybe spawned\n')).toMatchObject({
      what: 'Rowan-1 out by 22 Feb',
      due: '2026-02-19..2026-02-22..2026-02-22',
    });
    expect(one('2026-02-20', '2026-02-20 A1: maybe spawned\n').why).toMatch(
      /^if Rowan spawned, the young swim 24 Feb – 7 Mar;/,
    );
  });
  it('are late for no day before anything was known of the next, and it swims no sooner than it was last seen', () => {
    const late = one('2026-03-01', '2026-02-28 A1: wrigglers\n');
    expect(late.due).toBe('2026-02-22..2026-02-28..2026-02-28');
    expect(late.why).toMatch(/^Rowan-2 swims 28 Feb – 13 Mar;/);
  });
  it('leave at once where the parents chase them, which counts from the day on which both was known', () => {
    const chased = one('2026-02-22', `2026-02-18 A1: chasing fry\n${NEXT}`);
    expect(chased).toMatchObject({
      what: 'Rowan-1 out by 20 Feb',
      due: '2026-02-18..2026-02-20..2026-02-20',
      lines: [4, 2, 3],
    });
    expect(chased.why).toContain('; the parents chase them since 18 Feb;');
    expect(chased.steps.at(-1)).toBe('the parents chase the young since 18 Feb: they want to spawn');
    expect(one('2026-02-22', `${NEXT}2026-02-21 A1: chasing fry\n`).what).toBe('Rowan-1 out by 21 Feb');
    // Those were others, before these were laid.
    expect(one('2026-02-22', `2026-01-05 A1: chasing fry\n${NEXT}`).what).toBe('Rowan-1 out by 23 Feb');
  });
  it('wait while the pair disputes', () => {
    const lines = '2026-02-19 A1: eggs seen\n2026-02-20 A1: chasing\n';
    expect(one('2026-02-20', lines).why).toContain('; 12 is free; not while the pair disputes;');
    expect(one('2026-02-20', '2026-02-19 A1: eggs seen\n').why).not.toContain('disputes');
  });
  it('of a mouthbrooder make room for those that are released, and no cave is theirs', () => {
    const mouths = `2026-01-01 species mb: Pseudocrenilabrus nicholsi; mouthbrooder
2026-01-01 tank N1: 200 L; alone
2026-01-01 pair Iris: mb; male; female; in N1
2026-01-20 N1: holding
2026-02-10 N1: released 20
2026-03-10 N1: holding
`;
    expect(rowOf(youngDue, '2026-03-25', mouths).why).toBe(
      'Iris-2 is released 10 Mar – 8 Apr; 20 older ones would eat them; 12 is free',
    );
  });
});

describe('the next', () => {
  const about = '2026-02-20 A1: about to spawn\n';
  it('that is only announced counts for five days, from today on', () => {
    expect(one('2026-02-22', about)).toMatchObject({
      what: 'Rowan-1 out by 25 Feb',
      due: '2026-02-22..2026-02-25..2026-02-25',
      why: 'Rowan is about to spawn: the next would swim from 27 Feb; 40 older ones would eat them; 12 is free',
      lines: [3, 2],
    });
    expect(one('2026-02-25', about).what).toBe('Rowan-1 out by 28 Feb');
    expect(ids('2026-02-26', OLDER + about)).toEqual([]);
  });
  it('is announced by those that live there alone, and by no colony', () => {
    expect(ids('2026-02-22', `${OLDER}2026-02-20 A2: about to spawn\n`)).toEqual([]);
    const gone = `${OLDER}2026-02-20 A1: moved all Rowan to C2\n2026-02-20 C2: about to spawn\n`;
    expect(ids('2026-02-22', gone)).toEqual([]);
  });
  it('is the one that swims first, of several clutches', () => {
    const lines = `2026-01-10 A2: Fern spawned
2026-01-20 A2: free-swimming, 40
2026-02-14 A2: Fern spawned
2026-02-19 A2: Lark spawned brood Sedge-9
2026-02-20 A2: Sedge-2 wrigglers
`;
    expect(rowOf(youngDue, '2026-02-20', lines).why).toMatch(/^Sedge-2 swims 20 Feb – /);
  });
  it('that nobody saw swim is waited for no longer than two weeks after its last day', () => {
    expect(ids('2026-03-21', OLDER + NEXT)).toHaveLength(1);
    expect(ids('2026-03-22', OLDER + NEXT)).toEqual([]);
    expect(ids('2026-02-22', `${OLDER}${NEXT}2026-02-21 A1: Rowan-2 eggs gone\n`)).toEqual([]);
  });
});

describe('older young stay', () => {
  // Cave spawners leave others alone up to an age gap of so many days (`science/guilds`).
  const second = (first: string): string =>
    `2026-01-${first} A1: spawned\n2026-02-01 A1: Rowan-1 free-swimming, 40\n2026-02-01 A1: spawned\n`;
  it('where they are hardly older', () => {
    expect(ids('2026-02-01', second('27'))).toEqual([]);
    expect(ids('2026-02-01', second('20'))).toEqual(['a1-rowan-1-leave']);
  });
  it('where they are three left-overs of a centimetre', () => {
    const few = (count: number, mm: number): string =>
      `2026-01-14 A1: spawned\n2026-01-22 A1: free-swimming, ${String(count)}\n2026-02-08 A1: Rowan-1 average ${String(mm)} mm\n2026-02-08 A1: spawned\n`;
    expect(ids('2026-02-08', few(3, 9))).toEqual([]);
    expect(ids('2026-02-08', few(4, 9))).toEqual(['a1-rowan-1-leave']);
    expect(ids('2026-02-08', few(3, 16))).toEqual(['a1-rowan-1-leave']);
  });
  it('as eggs, as wrigglers, and once they are gone', () => {
    expect(ids('2026-02-20', `2026-02-15 A1: spawned brood Rowan-1\n2026-02-19 A1: wrigglers\n${NEXT}`)).toEqual([]);
    expect(ids('2026-02-20', `${OLDER}2026-02-19 A1: moved all Rowan-1 to C2\n${NEXT}`)).toEqual([]);
  });
});

describe('older young that already swim with younger ones', () => {
  const both = `${OLDER}${NEXT}2026-03-02 A1: Rowan-2 free-swimming, 50\n`;
  it('are taken away from them, once and not twice, and need only be watched where they are little longer', () => {
    expect(rowOf(youngDue, '2026-03-02', both)).toMatchObject({
      id: 'a1-rowan-1-rowan-2',
      what: 'take Rowan-1 away from Rowan-2',
      due: '2026-03-02',
      weight: 2,
      close: 'A1: moved all Rowan-1 to tank 12',
      key: 'Rowan-1',
      pressing: false,
    });
    const third = `${both}2026-03-12 A1: spawned\n`;
    expect(ids('2026-03-12', third)).toEqual(['a1-rowan-1-rowan-2', 'a1-rowan-2-leave']);
    const alike = `2026-02-10 A1: spawned\n2026-02-20 A1: free-swimming, 40\n2026-02-18 A2: Lark spawned
2026-02-28 A2: free-swimming, 30\n2026-03-19 A2: moved all Sedge-1 to A1\n`;
    expect(ids('2026-03-20', alike)).toEqual([]);
  });
});

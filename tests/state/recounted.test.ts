/** A count that another of its day replaces: it bounds and contradicts nothing any more; what was told in between stays. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';
import { doubtsTold, partTold, totalTold } from '../support/told.ts';

const SURE = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 52\n';
const GUESS = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, about 70\n';
const TWO = `${SURE}2026-03-01 A1: Rowan-1 moved 20 to A2\n`;

const roomOf = (lines: string): Room => journalOn('2026-04-30', lines);
/** The lines of one day, A1's unless they say. */
const day = (on: string, ...lines: readonly string[]): string =>
  lines.map((line) => `2026-03-${on} ${line.includes(':') ? line : `A1: ${line}`}\n`).join('');

describe('a low count, mended after some died', () => {
  const low = day('02', 'Rowan-1 counted 10', 'Rowan-1 died 2');
  it('leaves the earlier sure count, less those that died', () => {
    const mended = `${SURE}${low}${day('02', 'Rowan-1 counted 50')}`;
    expect([doubtsTold(roomOf(mended)), totalTold(roomOf(mended))]).toEqual([[], '50–50']);
    expect(doubtsTold(roomOf(`${SURE}${low}${day('02', 'Rowan-1 counted 51')}`))).toEqual(['counts-contradict 5 2']);
  });
  it('by a guess: the earlier sure count bounds what is counted later', () => {
    const guessed = `${SURE}${low}${day('02', 'Rowan-1 counted about 40')}`;
    expect(doubtsTold(roomOf(`${guessed}${day('03', 'Rowan-1 counted 50')}`))).toEqual([]);
    expect(doubtsTold(roomOf(`${guessed}${day('03', 'Rowan-1 counted 51')}`))).toEqual(['counts-contradict 6 2']);
  });
  it('where only guesses stood before it, bounds nothing', () => {
    const guessed = `${GUESS}${low}${day('02', 'Rowan-1 counted about 40')}`;
    expect(totalTold(roomOf(guessed))).toBe('20–80');
    expect(doubtsTold(roomOf(`${guessed}${day('03', 'Rowan-1 counted 90')}`))).toEqual(['guess-corrected 6 5']);
  });
  it('in one of two tanks leaves what surely went there', () => {
    const other = day('02', 'A2: Rowan-1 counted 10', 'A2: Rowan-1 died 2');
    const mended = roomOf(`${TWO}${other}${day('02', 'A2: Rowan-1 counted 18')}`);
    expect([doubtsTold(mended), partTold(mended, 'A1'), partTold(mended, 'A2')]).toEqual([[], '32–32', '18–18']);
    expect(doubtsTold(roomOf(`${TWO}${other}${day('02', 'A2: Rowan-1 counted 19')}`))).toEqual([
      'counts-contradict 6 3',
    ]);
    const then = `${TWO}${other}${day('02', 'A2: Rowan-1 counted 18')}`;
    expect(doubtsTold(roomOf(`${then}${day('03', 'A1: Rowan-1 counted 33')}`))).toEqual(['counts-contradict 7 2']);
    expect(doubtsTold(roomOf(`${then}${day('03', 'Rowan-1: counted 51')}`))).toEqual(['counts-contradict 7 2']);
  });
  it('in a tank that nothing sure bounded, bounds nothing there', () => {
    const guessed = `${GUESS}2026-03-01 A1: Rowan-1 moved about 20 to A2\n`;
    const other = day('02', 'A2: Rowan-1 counted 10', 'A2: Rowan-1 died 2', 'A2: Rowan-1 counted about 20');
    const room = roomOf(`${guessed}${other}${day('03', 'A2: Rowan-1 counted 26')}`);
    expect([doubtsTold(room), partTold(room, 'A2')]).toEqual([['guess-corrected 7 6'], '26–26']);
  });
  it('of the whole brood in two tanks, leaves the sure count of the whole', () => {
    const whole = `${TWO}${day('02', 'Rowan-1: counted 10', 'Rowan-1 died 2')}`;
    expect(doubtsTold(roomOf(`${whole}${day('02', 'Rowan-1: counted 50')}`))).toEqual([]);
    expect(totalTold(roomOf(`${whole}${day('02', 'Rowan-1: counted 50')}`))).toBe('50–50');
    expect(doubtsTold(roomOf(`${whole}${day('02', 'Rowan-1: counted 51')}`))).toEqual(['counts-contradict 6 2']);
  });
});

describe('a high count, mended', () => {
  it('contradicts nothing any more, and its fish are not there', () => {
    const high = `${SURE}${day('02', 'Rowan-1 counted 60', 'Rowan-1 died 2')}`;
    expect(doubtsTold(roomOf(high))).toEqual(['counts-contradict 3 2']);
    const mended = roomOf(`${high}${day('02', 'Rowan-1 counted 48')}`);
    expect([doubtsTold(mended), totalTold(mended)]).toEqual([[], '48–48']);
    expect(doubtsTold(roomOf(`${high}${day('02', 'Rowan-1 counted 48')}${day('03', 'Rowan-1 counted 49')}`))).toEqual([
      'counts-contradict 6 5',
    ]);
  });
  it('before anything else was told, leaves the other tank bounded as it was', () => {
    const mended = `${TWO}${day('02', 'Rowan-1 counted 60', 'Rowan-1 counted 30')}`;
    expect([doubtsTold(roomOf(mended)), totalTold(roomOf(mended))]).toEqual([[], '50–50']);
    expect(doubtsTold(roomOf(`${mended}${day('03', 'A2: Rowan-1 counted 25')}`))).toEqual(['counts-contradict 6 3']);
  });
  it('of a guess leaves the guess before it, or stands alone where something was told in between', () => {
    const alone = `${GUESS}${day('01', 'Rowan-1 counted about 40', 'Rowan-1 counted about 160')}`;
    expect(totalTold(roomOf(alone))).toBe('80–140');
    const between = day('01', 'Rowan-1 counted about 40', 'Rowan-1 largest 12 mm', 'Rowan-1 counted about 160');
    expect(totalTold(roomOf(`${GUESS}${between}`))).toBe('80–320');
  });
});

describe('what was told between two counts of one day', () => {
  const lines = `${SURE}${day('01', 'Rowan-1 moved 5 to C1')}`;
  const between = (told: string): Room =>
    roomOf(`${lines}${day('02', 'Rowan-1 counted 47', told, 'Rowan-1 counted 45')}`);
  it('stays: fish moved, fish of another tank counted', () => {
    const moved = between('Rowan-1 moved 10 to C1');
    expect([partTold(moved, 'A1'), partTold(moved, 'C1')]).toEqual(['45–45', '15–15']);
    const counted = between('C1: Rowan-1 counted 3');
    expect([partTold(counted, 'A1'), partTold(counted, 'C1')]).toEqual(['45–45', '3–3']);
  });
  it('of another brood changes nothing', () => {
    const other = '2026-02-04 A2: Fern spawned\n2026-02-12 A2: Sedge-1 free-swimming, 30\n';
    const told = day('02', 'Rowan-1 counted 152', 'A2: Sedge-1 died 2', 'Rowan-1 counted about 60');
    const room = roomOf(`${GUESS}${other}${told}`);
    expect([doubtsTold(room), totalTold(room)]).toEqual([[], '35–120']);
  });
  it('bounds what is counted later: the count of another tank, and what surely died', () => {
    const tanks = `${TWO}${day('02', 'Rowan-1 counted 60', 'A2: Rowan-1 counted 18', 'Rowan-1 counted 30')}`;
    expect(doubtsTold(roomOf(`${tanks}${day('03', 'A2: Rowan-1 counted 18')}`))).toEqual([]);
    expect(doubtsTold(roomOf(`${tanks}${day('03', 'A2: Rowan-1 counted 19')}`))).toEqual(['counts-contradict 7 5']);
    const died = (count: string, left: string): string[] => {
      const between = ['Rowan-1 counted 60', `A2: Rowan-1 died ${count}`, 'Rowan-1 died 3', 'Rowan-1 counted 28'];
      return doubtsTold(roomOf(`${TWO}${day('01', 'A2: Rowan-1 died 2')}${day('02', ...between)}${day('03', left)}`));
    };
    const seen = (left: number): string => `A2: Rowan-1 counted ${String(left)}`;
    expect([died('1', seen(17)), died('about 3', seen(17))]).toEqual([[], ['guess-corrected 9 3']]);
    expect([died('1', seen(18)), died('about 3', seen(18))]).toEqual([
      ['counts-contradict 9 3'],
      ['counts-contradict 9 3'],
    ]);
    expect([died('1', 'Rowan-1: counted 46'), died('1', 'Rowan-1: counted 47')]).toEqual([
      [],
      ['counts-contradict 9 2'],
    ]);
  });
});

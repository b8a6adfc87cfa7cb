/** Two sure counts of one moment: doubted where they come from two lines and nothing accounts for the difference. */
import { describe, expect, it } from 'vitest';
import { twoCounts } from '../../src/checks/two-counts.ts';
import type { Problem } from '../../src/core/problem.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from '../support/events.ts';
import { readLines, ROOM } from '../support/lines.ts';
import { tankside } from '../support/run.ts';

const BROOD = `2026-01-10 A1: spawned brood Rowan-1
2026-01-20 A1: free-swimming
2026-02-20 A1: Rowan-1 moved 40 to C2
`;
const SETUP = (ROOM + BROOD).split('\n').length - 1;

function found(lines: string, file?: (line: number) => string): readonly Problem[] {
  const read = readLines(BROOD + lines);
  expect(read.problems).toEqual([]);
  const events = read.events.map((event) =>
    file ? { ...event, place: { ...event.place, file: file(event.place.line - SETUP) } } : event,
  );
  return twoCounts({ room: foldRoom(events, day('2026-06-30')), events, today: day('2026-06-30') });
}

/** The line of each doubt and those beside it, counted from the first after the brood's. */
function places(lines: string): number[][] {
  return found(lines).map(({ at, also }) => [at, ...also].map(({ line }) => line - SETUP));
}

const of = (...clauses: string[]): string => clauses.map((clause) => `2026-03-01 ${clause}\n`).join('');

describe('two sure counts of one moment', () => {
  it('are doubted at the later, beside the earlier, and the later goes on to count', () => {
    const lines = of('C2: counted 34', 'C2: counted 30');
    expect(places(lines)).toEqual([[2, 1]]);
    const [one] = found(lines);
    expect(one).toMatchObject({ kind: 'two-counts', weight: 'doubt' });
    expect(one?.says).toContain('30 Rowan-1 counted in C2, and 34 on the same day: these contradict each other');
    const room = foldRoom(readLines(BROOD + lines).events, day('2026-03-01'));
    expect(room.stock.broods.get('Rowan-1')?.parts.get('C2')).toEqual({ low: 30, likely: 30, high: 30 });
  });

  it('of grown fish, of other files, at the same time of day, and of looks that count too', () => {
    expect(places(of('C1: Ash counted 12', 'C1: Ash counted 11'))).toEqual([[2, 1]]);
    expect(places(of('07:40 C2: counted 34', '07:40 C2: counted 35'))).toEqual([[2, 1]]);
    const files = found(of('C2: counted 34', 'C2: counted 30'), (line) => (line === 2 ? 'old.txt' : 'fishroom.txt'));
    expect(files).toMatchObject([{ at: { file: 'old.txt' }, also: [{ file: 'fishroom.txt' }] }]);
    const look = '2026-01-25 A1: free-swimming, 60\n2026-01-25 A1: free-swimming, 55\n';
    expect(found(look).map(({ write }) => write?.split(',')[0])).toEqual(['the wrong one once more after «mistake»']);
  });

  it('are doubted once where several differ, and those that say the same are not among them', () => {
    expect(places(of('C2: counted 34', 'C2: counted 30', 'C2: counted 33', 'C2: counted 30'))).toEqual([[4, 1, 3]]);
    expect(places(of('C2: counted 30', 'C2: counted 30'))).toEqual([]);
  });

  it('are settled by the line that is offered, whether or not the count named its fish', () => {
    for (const count of ['C2: counted 34', 'C2: Rowan-1 counted 34']) {
      const lines = of(count, 'C2: counted 30');
      const [line = ''] = (found(lines)[0]?.write ?? '').split('   (');
      expect(line).toMatch(/^2026-03-01 C2: mistake /);
      expect(found(`${lines}${line}\n`)).toEqual([]);
    }
  });

  it('are none where a guess, another tank, another time of day or the same line has the other', () => {
    expect(found(of('C2: counted about 34', 'C2: counted 30'))).toEqual([]);
    expect(found(of('C2: counted 34', 'C2: counted about 30'))).toEqual([]);
    expect(found(of('C2: counted 34', 'A1: Rowan-1 counted 5'))).toEqual([]);
    expect(found(of('07:40 C2: counted 34', '19:00 C2: counted 30'))).toEqual([]);
    expect(found(of('C2: counted 34; counted 30'))).toEqual([]);
  });
});

describe('two copies of a journal merged into one', () => {
  it('are told by check with both lines, as a doubt and no failure', async () => {
    const journal = ROOM + BROOD + of('C2: counted 34', 'C2: counted 30');
    const { status, out } = await tankside(['check'], {
      files: { '/room/fishroom.txt': journal },
      today: '2026-03-02',
    });
    expect(status).toBe(0);
    expect(out).toContain(`fishroom.txt, line ${String(SETUP + 2)}, look again`);
    expect(out).toContain(`see fishroom.txt, line ${String(SETUP + 1)}:`);
  });
});

describe('what happened between two counts', () => {
  it('accounts for as many as went or came, and for no more', () => {
    expect(found(of('C2: counted 34', 'C2: died 3', 'C2: counted 31'))).toEqual([]);
    expect(places(of('C2: counted 34', 'C2: died 3', 'C2: counted 30'))).toEqual([[3, 1]]);
    expect(found(of('C2: counted 34', 'C2: moved 10 to A2', 'C2: counted 24'))).toEqual([]);
    expect(found(of('C2: counted 34', 'A1: Rowan-1 moved 5 to C2', 'C2: counted 39'))).toEqual([]);
    expect(places(of('C2: counted 34', 'A1: Rowan-1 moved 5 to C2', 'C2: counted 40'))).toEqual([[3, 1]]);
  });

  it('does so only between them, in that tank, and in that direction', () => {
    expect(places(of('C2: died 3', 'C2: counted 34', 'C2: counted 31'))).toEqual([[3, 2]]);
    expect(places(of('C2: counted 34', 'C2: counted 31', 'C2: died 3'))).toEqual([[2, 1]]);
    expect(places(of('C2: counted 34', 'A1: Rowan-1 died 3', 'C2: counted 31'))).toEqual([[3, 1]]);
    expect(places(of('C2: counted 31', 'C2: died 3', 'C2: counted 34'))).toEqual([[3, 1]]);
    expect(places(of('C2: counted 31', 'C2: moved 3 to A2', 'C2: counted 34'))).toEqual([[3, 1]]);
  });
});

/** A jotted line costs one reading of the journal, whatever its length, and a fold for each room that is compared. */
import { expect, test } from 'vitest';
import { openDesk } from '../../../src/cli/jot/desk.ts';
import { dayFromIso, toDay } from '../../../src/core/day.ts';
import { contentOfText } from '../../../src/files/content.ts';
import { filesOn } from '../../../src/files/files.ts';
import { readerOf } from '../../../src/cli/reader.ts';
import type { Reader } from '../../../src/cli/reader.ts';
import { aloneMachine, MemoryDisk } from '../../support/memory.ts';

const FILE = '/room/fishroom.txt';
const ROOM = `2026-01-04 room: units metric
2026-01-04 tank A1: 54 L; alone
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-04 pair Rowan: krib; male; female; in A1
`;

async function cost(lines: readonly string[]): Promise<{ reads: number; folds: number; kinds: readonly string[] }> {
  const disk = new MemoryDisk();
  disk.put(FILE, ROOM);
  const count = { reads: 0, folds: 0 };
  const files = filesOn(disk, aloneMachine());
  const readers = (): Reader => {
    const reader = readerOf({ files, chest: null }, FILE);
    return {
      rows: null,
      start: (content) => reader.start(content),
      read(found) {
        count.reads += 1;
        return reader.read(found);
      },
      fold(reading, on, today) {
        count.folds += 1;
        return reader.fold(reading, on, today);
      },
    };
  };
  const today = dayFromIso('2026-02-15') ?? toDay(0);
  const desk = await openDesk(
    { files, chest: null, today: () => Promise.resolve(today) },
    FILE,
    contentOfText(ROOM),
    readers,
  );
  const kinds = lines.map((line) => desk.write([line], { asNotes: false, tryOnly: false }).kind);
  return { ...count, kinds };
}

test.each([
  ['an ordinary line', ['2026-02-15 A1: chasing'], { reads: 1, folds: 2, kinds: ['done'] }],
  ['a spawn that gets its name', ['2026-02-15 A1: spawned'], { reads: 1, folds: 2, kinds: ['done'] }],
  ['a line that is not understood', ['2026-02-15 A1: wobbled'], { reads: 1, kinds: ['refused'] }],
  ['the next line at the prompt', ['2026-02-15 A1: chasing', '2026-02-15 A1: made up'], { reads: 1, folds: 3 }],
])('%s', async (_, lines, expected) => {
  expect(await cost(lines)).toMatchObject(expected);
});

test('what lines change is worked out once, however often it is told', async () => {
  const disk = new MemoryDisk();
  disk.put(FILE, ROOM);
  const today = dayFromIso('2026-02-15') ?? toDay(0);
  const given = { files: filesOn(disk, aloneMachine()), chest: null, today: () => Promise.resolve(today) };
  const desk = await openDesk(given, FILE, contentOfText(ROOM));
  const outcome = desk.write(['2026-02-15 A1: chasing, lights off'], { asNotes: false, tryOnly: false });
  const told = outcome.kind === 'done' ? [outcome.answer.changes, outcome.answer.changes] : [];
  expect(told[0]?.begun.length).toBeGreaterThan(0);
  expect(told[1]).toBe(told[0]);
});

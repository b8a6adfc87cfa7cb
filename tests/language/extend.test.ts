/** A line added to a reading comes to what it would in the journal, wherever its day is; or the whole is to be read. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { extended } from '../../src/language/extend.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/reading.ts';
import { NO_FILES } from '../support/lines.ts';

const EXAMPLE = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');

function read(text: string): Reading {
  return readJournal('fishroom.txt', text, NO_FILES);
}

test('lines of a year, taken out and added at the end', { timeout: 60_000 }, () => {
  const lines = EXAMPLE.trimEnd().split('\n');
  let added = 0;
  for (let index = 0; index < lines.length; index += 41) {
    const line = lines[index] ?? '';
    const text = `${lines.toSpliced(index, 1).join('\n')}\n`;
    const quick = extended(read(text), [line], 'fishroom.txt', lines.length);
    if (quick === null) continue;
    added += 1;
    const slow = read(`${text}${line}\n`);
    expect(quick.events, line).toEqual(slow.events);
    expect(quick.problems, line).toEqual(slow.problems);
  }
  expect(added).toBeGreaterThan(15);
});

test.each([
  '2026-03-10 tank E1: 54 L; alone',
  '2026-03-10 room: units US',
  '2026-03-10 A1: live volume 130 L',
  '2026-03-10 A1: mistake chasing',
  '2026-03-10 A1: spawned brood Blue',
  'also read "2025.txt"',
  'A1: chasing',
])('«%s» may change how others are read', (line) => {
  expect(extended(read('2026-01-01 tank A1: 54 L; alone\n'), [line], 'fishroom.txt', 2)).toBeNull();
});

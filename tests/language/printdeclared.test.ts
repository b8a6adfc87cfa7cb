/** What a line declares is named once in its heading, whatever else the line says of it, and is read again as it was. */
import { expect, it } from 'vitest';
import { printEntry } from '../../src/language/print.ts';
import { readJournal } from '../../src/language/read.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';

it.each([
  '2026-05-02 culture M9: microworm; started',
  '2026-05-02 tank D9: 60 L; alone; all well',
  '2026-05-02 pair Yew: krib; in C2; bonded',
])('%s', (line) => {
  const { events, problems } = readJournal('fishroom.txt', `${ROOM}${line}\n`, NO_FILES);
  expect(problems).toEqual([]);
  const last = events.at(-1)?.place.line;
  const own = events.filter(({ place }) => place.line === last);
  expect(own.length).toBeGreaterThan(1);
  expect(printEntry(own)).toBe(line);
});

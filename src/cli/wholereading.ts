/** All of a journal: its own lines and those of the files that it reads in, with what is wrong with the files themselves. */
import path from 'node:path';
import type { Problem } from '../core/problem.ts';
import type { Files, ReadFile } from '../files/port.ts';
import { withProblems } from '../language/reading.ts';
import type { Fetch, Reading } from '../language/reading.ts';

/** The language's reader, loaded late. */
export type ReadJournal = (name: string, text: string, fetch: Fetch) => Reading;

/** What a journal's text and the files that it reads in say. Lines that are not UTF-8 are told like any other problem. */
export function readingOf(
  files: Pick<Files, 'also'>,
  mainFile: string,
  found: Extract<ReadFile, { ok: true }>,
  read: ReadJournal,
): Reading {
  const also = files.also(mainFile);
  const broken = new Map<string, readonly Problem[]>();
  const reading = read(path.basename(mainFile), found.content.text, (from, asked) => {
    const got = also(from, asked);
    if (got.ok) broken.set(got.name, got.problems);
    return got;
  });
  return withProblems(reading, [...found.problems, ...[...broken.values()].flat(), ...reading.problems]);
}

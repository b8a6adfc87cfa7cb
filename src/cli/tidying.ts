/** Tidies a journal and the files that it reads in, one after another, each against all of the others as they are. */
import path from 'node:path';
import type { Day } from '../core/day.ts';
import { lastDay } from '../questions/check.ts';
import { begunBroods } from '../questions/brood-names.ts';
import type { TidiedFile } from '../reports/tidy.ts';
import { printableAnswer } from '../reports/printable.ts';
import type { Context } from './context.ts';
import { EXIT, Stop } from './exit.ts';
import type { Reading } from '../language/reading.ts';
import type { Get } from './flags.ts';
import { openJournal, readingOf } from './journal.ts';

export interface Tidying {
  readonly on: Day;
  readonly today: Day;
  readonly files: readonly TidiedFile[];
  readonly reading: Reading;
  /** Puts the new texts in place. Throws a `Stop` at the first file that cannot be written. */
  write(): void;
}

/** Works out what would change. Throws a `Stop` where the result would not say the same. */
export async function tidyJournal(context: Context, get: Get): Promise<Tidying> {
  const [{ tidy }, { readJournal }] = await Promise.all([import('../language/tidy.ts'), import('../language/read.ts')]);
  const journal = await openJournal(context, get);
  const { reading } = journal;
  const room = journal.room(lastDay(reading.events) ?? journal.on);
  const brood = begunBroods(room);
  const main = path.basename(journal.path);
  const texts = new Map<string, string>();
  const results: (TidiedFile & { text: string; expected: string })[] = [];
  for (const file of new Set([main, ...reading.entries.map(({ place }) => place.file)])) {
    const found = context.files.read(path.resolve(path.dirname(journal.path), file), file);
    if (!found.ok) throw new Stop(EXIT.noFile, `${file} cannot be read: ${found.says}`);
    texts.set(file, found.text);
  }
  for (const [file, text] of texts) {
    const reread = (changed: string): typeof reading => {
      const whole = {
        ok: true,
        text: file === main ? changed : (texts.get(main) ?? ''),
        problems: [],
        notices: [],
      } as const;
      return readingOf(substituting(context, file, changed), journal.path, whole, readJournal);
    };
    const leftOut = new Set(journal.leftOut(room).flatMap((at) => (at.file === file ? [at.line] : [])));
    const tidied = tidy({ file, text, reading, reread, brood, leftOut });
    if (!tidied.ok) throw new Stop(EXIT.journalWrong, tidied.says);
    results.push({ file, changes: tidied.changes, text: tidied.text, expected: text });
  }
  return {
    on: journal.on,
    today: journal.today,
    files: results,
    reading,
    write: () => {
      for (const { file, text, expected, changes } of results) {
        if (changes.length > 0) put(context, path.resolve(path.dirname(journal.path), file), file, expected, text);
      }
    },
  };
}

/** The machine's files, with another text for one that is read in. */
function substituting(context: Context, file: string, text: string): Context['files'] {
  const { files } = context;
  return {
    ...files,
    also: (main) => {
      const fetch = files.also(main);
      return (from, asked) => {
        const got = fetch(from, asked);
        return got.ok && got.name === file ? { ...got, text } : got;
      };
    },
  };
}

function put(context: Context, full: string, name: string, expected: string, text: string): void {
  const done = context.files.replace(full, expected, text);
  if (!done.saved) throw new Stop(EXIT.noFile, done.says ?? `${name} was not changed`);
  for (const notice of done.notices) context.err.write(printableAnswer(`${name}: ${notice}\n`, false));
}

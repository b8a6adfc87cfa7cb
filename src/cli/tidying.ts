/** Tidies a journal and the files that it reads in, one after another, each against all of the others as they are. */
import path from 'node:path';
import type { Day } from '../core/day.ts';
import type { LineRef } from '../core/span.ts';
import { lastDay } from '../questions/check.ts';
import { begunBroods } from '../questions/brood-names.ts';
import type { TidiedFile } from '../reports/tidy.ts';
import { contentOfText } from '../files/content.ts';
import type { Also } from '../files/port.ts';
import type { Context } from './context.ts';
import { EXIT, Stop } from './exit.ts';
import type { Reading } from '../language/reading.ts';
import type { Get } from './flags.ts';
import { openJournal } from './journal.ts';
import { tell } from './tell.ts';
import { readingOf } from './wholereading.ts';

export interface Tidying {
  readonly on: Day;
  readonly today: Day;
  readonly files: readonly TidiedFile[];
  readonly reading: Reading;
  /** Lines that are not read, and so stay as they are. */
  readonly leftOut: readonly LineRef[];
  /** Puts the new texts in place. Throws a `Stop` at the first file that cannot be written. */
  write(): void;
}

/** Works out what would change. Throws a `Stop` where the result would not say the same. */
export async function tidyJournal(context: Context, get: Get): Promise<Tidying> {
  const [{ tidy }, { readJournal }] = await Promise.all([import('../language/tidy.ts'), import('../language/read.ts')]);
  const fetched = new Map<string, Fetched>();
  const once = { ...context, files: fetchingOnce(context.files, fetched) };
  const journal = await openJournal(once, get);
  for (const { asked, got } of fetched.values()) {
    if (got.ok) continue;
    throw new Stop(EXIT.noFile, `not all of the journal can be read: «${asked}», ${got.says}`, 'tankside check');
  }
  const { reading } = journal;
  const room = journal.room(lastDay(reading.events) ?? journal.on);
  const leftOut = journal.leftOut(room);
  const brood = begunBroods(room);
  const main = path.basename(journal.path);
  const texts = new Map<string, string>();
  const results: (TidiedFile & { text: string; expected: string })[] = [];
  const found = context.files.read(journal.path);
  if (!found.ok) throw new Stop(EXIT.noFile, `${main} cannot be read: ${found.says}`);
  texts.set(main, found.content.text);
  for (const { got } of fetched.values()) if (got.ok && got.name !== main) texts.set(got.name, got.text);
  for (const [file, text] of texts) {
    const reread = (changed: string): typeof reading => {
      const whole = {
        ok: true,
        content: contentOfText(file === main ? changed : (texts.get(main) ?? '')),
        problems: [],
        notices: [],
      } as const;
      return readingOf(substituting(once, file, changed), journal.path, whole, readJournal);
    };
    const unread = new Set(leftOut.flatMap((at) => (at.file === file ? [at.line] : [])));
    const tidied = tidy({ file, text, reading, reread, brood, leftOut: unread });
    if (!tidied.ok) throw new Stop(EXIT.journalWrong, tidied.says);
    results.push({ file, changes: tidied.changes, text: tidied.text, expected: text });
  }
  return {
    on: journal.on,
    today: journal.today,
    files: results,
    reading,
    leftOut,
    write: () => {
      const tidied: string[] = [];
      for (const { file, text, expected, changes } of results) {
        if (changes.length === 0) continue;
        put(context, path.resolve(path.dirname(journal.path), file), { file, expected, text, tidied });
        tidied.push(file);
      }
    },
  };
}

/** A file that was to be read in, as the journal calls it. */
interface Fetched {
  readonly asked: string;
  readonly got: Also;
}

/** The machine's files, each that is read in being fetched once: what is compared later is one state of the disk. */
function fetchingOnce(files: Context['files'], fetched: Map<string, Fetched>): Context['files'] {
  return {
    ...files,
    also: (main) => {
      const fetch = files.also(main);
      return (from, asked) => {
        const key = JSON.stringify([from, asked]);
        const got = fetched.get(key)?.got ?? fetch(from, asked);
        fetched.set(key, { asked, got });
        return got;
      };
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

interface Put {
  /** As it is called in answers. */
  readonly file: string;
  readonly expected: string;
  readonly text: string;
  /** Files that are in their usual form already. */
  readonly tidied: readonly string[];
}

function put(context: Context, full: string, { file, expected, text, tidied }: Put): void {
  const done = context.files.replace(full, expected, text);
  for (const notice of done.notices) tell(context, `${file}: ${notice}`);
  if (done.saved) return;
  const before = tidied.map((name) => `${name} is tidied\n`).join('');
  throw new Stop(EXIT.noFile, `${before}${done.says ?? `${file} was not changed`}`);
}

/** Answers as pages for the printer and as calendars: written to the file that the keeper names, or to standard output. */
import { calendarText, isOurCalendar, type CalendarEntry } from '../reports/ics.ts';
import { isOurPage } from '../reports/html.ts';
import type { Day } from '../core/day.ts';
import type { Context } from './context.ts';
import { misuse, Stop } from './exit.ts';
import { COMMON, type Get } from './flags.ts';
import { createOut, writeOut } from './outfile.ts';

/** What to print instead of the answer: that the file is written, nothing after the page itself (`-`); null where none is asked for. */
export function writePage(context: Context, file: string | null, page: () => string): string | null {
  return written(context, file, { text: page, kind: 'page of ours', isLike: isOurPage });
}

export function writeCalendar(
  context: Context,
  file: string | null,
  entries: () => readonly CalendarEntry[],
  on: Day,
): string | null {
  return written(context, file, {
    text: () => calendarText(entries(), on),
    kind: 'calendar of ours',
    isLike: isOurCalendar,
  });
}

/**
 * Throws a `Stop` where more than one answer would go to standard output: a reader could part them no more.
 * `files`: what the options for papers hold.
 */
export function oneOutput(get: Get, files: readonly (string | null)[]): void {
  const there = files.filter((file) => file === '-').length;
  if (there + (get(COMMON.json) ? 1 : 0) > 1 && there > 0)
    throw misuse('only one answer can go to standard output', 'a file name in the place of - for the others');
}

/**
 * Writes one paper after another, that to standard output last: nothing has been said there yet where a file
 * cannot be written. The files written before are then told as written all the same.
 */
export function writeAll(
  papers: readonly (readonly [file: string | null, write: () => string | null])[],
): string | null {
  let told: string | null = null;
  const inOrder = [...papers].sort(([a], [b]) => Number(a === '-') - Number(b === '-'));
  for (const [, write] of inOrder) {
    try {
      const said = write();
      if (said !== null) told = `${told ?? ''}${said}`;
    } catch (error) {
      if (!(error instanceof Stop) || told === null) throw error;
      throw new Stop(error.status, `${told}${error.message}`, error.write);
    }
  }
  return told;
}

/** A spreadsheet goes into a new file only: the keeper may have filled the old one in. */
export function writeSpreadsheet(context: Context, file: string | null, text: () => string): string | null {
  if (file === null) return null;
  if (file === '-') {
    context.out.write(text());
    return '';
  }
  createOut(context, file, text(), '--csv -');
  return `${file} is written\n`;
}

interface Paper {
  readonly text: () => string;
  readonly kind: string;
  readonly isLike: (text: string) => boolean;
}

function written(context: Context, file: string | null, { text, kind, isLike }: Paper): string | null {
  if (file === null) return null;
  if (file === '-') {
    context.out.write(text());
    return '';
  }
  writeOut(context, { file, text: text(), kind, isLike });
  return `${file} is written\n`;
}

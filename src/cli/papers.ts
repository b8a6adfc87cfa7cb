/** Answers as pages for the printer and as calendars: written to the file that the keeper names, or to standard output. */
import { calendarText, isOurCalendar, type CalendarEntry } from '../reports/ics.ts';
import { isOurPage } from '../reports/html.ts';
import type { Day } from '../core/day.ts';
import type { Context } from './context.ts';
import { writeOut } from './outfile.ts';

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

/** What `tidy` would change or has changed: each line as it was and as it becomes. */
import type { Look } from './look.ts';
import { plural, printable } from './words.ts';

export interface TidiedFile {
  readonly file: string;
  readonly changes: readonly { readonly line: number; readonly was: string; readonly becomes: string }[];
}

/** `written` tells whether the files have been changed already. */
export function tidyReport(files: readonly TidiedFile[], written: boolean, look: Look): string {
  const total = files.reduce((sum, { changes }) => sum + changes.length, 0);
  if (total === 0) return 'nothing to tidy: every line that is read is in its usual form\n';
  const opening = written ? `${plural(total, 'line')} tidied` : `${plural(total, 'line')} would be tidied`;
  const rows = files.flatMap(({ file, changes }) => changes.map((change) => fileRow(file, change, look)));
  const close = written
    ? ''
    : `\nnothing is changed yet: tankside tidy --write changes ${total === 1 ? 'it' : 'them'}\n`;
  return `${look.paint.strong(opening)}\n\n${rows.join('\n')}${close}`;
}

function fileRow(file: string, { line, was, becomes }: TidiedFile['changes'][number], look: Look): string {
  return [
    `${printable(file)}, line ${line}`,
    `   was:  ${look.paint.quiet(was)}`,
    `   now:  ${printable(becomes)}`,
    '',
  ].join('\n');
}

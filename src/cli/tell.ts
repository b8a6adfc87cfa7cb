/** What goes to the error stream: notices and what is wrong, in lines that fit where they are read. */
import { printableAnswer } from '../reports/printable.ts';
import { USUAL_WIDTH, wrap } from '../reports/wrap.ts';
import type { Context } from './context.ts';

/** Columns of the error stream; the usual ones where it is no terminal. */
function errorWidth({ err }: Context): number {
  const { isTTY, columns } = err;
  return isTTY && columns !== null && columns > 0 ? columns : USUAL_WIDTH;
}

/** Writes text and what to type about it: a file's name and a line to copy stay whole, however long they are. */
export function tell(context: Context, text: string, write: string | null = null): void {
  const lines = text.split('\n').flatMap((line) => wrap(line, errorWidth(context), 'whole'));
  const typed = write === null ? [] : [`write: ${write}`];
  context.err.write(printableAnswer(`${[...lines, ...typed].join('\n')}\n`, false));
}

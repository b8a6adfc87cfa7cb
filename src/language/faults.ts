/**
 * What is wrong with a line while it is being read: a problem that does not know its file yet, and the
 * edit that would mend it. All edits of a line are applied together, so that what is offered is a line
 * that would be read even where several things are wrong.
 */
import type { Piece } from '../../grammar/syntax.ts';
import type { ProblemKind } from '../core/problem-kinds.ts';
import type { Place } from '../core/span.ts';

export interface Edit extends Piece {
  readonly text: string;
}

export interface Fault extends Piece {
  /** Stable kebab-case name of the cause. */
  readonly kind: ProblemKind;
  readonly says: string;
  /** Replaces words of the line so that it would be read; null where only the keeper can say. */
  readonly edit: Edit | null;
  /** Tried where the line is still not read with `edit`. */
  readonly otherwise?: Edit;
  /** A whole line to write instead: where another line is missing, or the date must change. */
  readonly line?: string;
  /** Other lines that belong to it. */
  readonly also?: readonly Place[];
  /** Counts all the same: look at it. */
  readonly doubt?: boolean;
}

/** What is wrong at some words of a line; with a replacement, the line that would be read. */
export function fault(kind: ProblemKind, at: Piece, says: string, replacement: string | null = null): Fault {
  const { from, to } = at;
  return { kind, from, to, says, edit: replacement === null ? null : { from, to, text: replacement } };
}

/** Words turned into a remark. */
export function asRemark(words: string): string {
  const plain = words.replace(/["“”„‟«»″]/g, '').trim();
  return plain === '' ? '' : `"${plain}"`;
}

/** A text with edits applied, last first. Edits that overlap an earlier one are left out. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  let result = text;
  let limit = Infinity;
  for (const edit of [...edits].sort((a, b) => b.from - a.from || b.to - a.to)) {
    if (edit.to > limit) continue;
    const [before, after] = [result.slice(0, edit.from), result.slice(edit.to)];
    // Words taken out leave one blank behind them, not two, and none before a comma.
    const gap = edit.text === '' && /[\t ]$/.test(before) && /^[\t ]/.test(after) ? 1 : 0;
    const kept = edit.text === '' && /^[,;]/.test(after) ? before.trimEnd() : before;
    result = kept + edit.text + after.slice(gap);
    limit = edit.from;
  }
  return result;
}

/** Places in a text. Offsets are UTF-16 code units from the start of the file's text, end exclusive. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A place in a journal file: 1-based line, and columns as 0-based offsets within that line, end exclusive. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** A journal line that an answer rests on. */
export interface LineRef {
  readonly file: string;
  readonly line: number;
}

/** True for the places of the events that one clause gives: a clause about several tanks gives several. */
export function sameClause(a: Place, b: Place): boolean {
  return a.file === b.file && a.line === b.line && a.from === b.from;
}

/** A text that places of one clause share, and no others. */
export function clauseKey({ file, line, from }: Place): string {
  return `${line}:${from} ${file}`;
}

/** The line of a place. */
export function lineOf(place: Place): LineRef {
  return { file: place.file, line: place.line };
}

/** The lines of some places, each once, in the order given. */
export function linesOf(places: readonly LineRef[]): readonly LineRef[] {
  const lines = new Map<string, LineRef>();
  for (const { file, line } of places) {
    const key = `${file}:${String(line)}`;
    if (!lines.has(key)) lines.set(key, { file, line });
  }
  return [...lines.values()];
}

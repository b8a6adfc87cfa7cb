/** How a journal's lines end, so that what is added ends likewise and begins on a line of its own. */
import { readFrom } from './bytes.ts';
import type { Disk } from './disk.ts';

export interface Ending {
  readonly lineEnd: '\n' | '\r\n';
  /** What the last line lacks. */
  readonly missing: '' | '\n' | '\r\n';
}

/** Enough of the end to hold its last lines. */
const TAIL = 65_536;
const LINE_FEED = 10;
const RETURN = 13;

/** Looks at the end of an open file (at its beginning too, where the last line is very long). */
export function ending(disk: Disk, file: number, size: number): Ending {
  const from = Math.max(0, size - TAIL);
  const tail = readFrom(disk, file, from, size - from);
  const lineEnd = lineEndOf(tail) ?? (from > 0 ? lineEndOf(readFrom(disk, file, 0, TAIL)) : null) ?? '\n';
  const last = tail.at(-1);
  const isBare = size === 0 || (size === 3 && tail.equals(Buffer.from([0xef, 0xbb, 0xbf])));
  if (isBare || last === LINE_FEED) return { lineEnd, missing: '' };
  return { lineEnd, missing: last === RETURN ? '\n' : lineEnd };
}

function lineEndOf(bytes: Buffer): '\n' | '\r\n' | null {
  const at = bytes.lastIndexOf(LINE_FEED);
  if (at < 0) return null;
  return bytes[at - 1] === RETURN ? '\r\n' : '\n';
}

/** Lines as bytes to put behind such an end. A line with a line end inside would be two: a fault of ours. */
export function withEnds(lines: readonly string[], { lineEnd, missing }: Ending): Buffer {
  const broken = lines.find((line) => /[\r\n]/.test(line));
  if (broken !== undefined) throw new Error(`a line to add has a line end inside: ${broken}`);
  return Buffer.from(missing + lines.map((line) => line + lineEnd).join(''));
}

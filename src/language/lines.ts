/** The lines of a reading as they stand in their files, for whoever shows them. */
import type { Reading } from './reading.ts';

/** Gives a line by file and number, without its line end; null where it is no entry. */
export function linesOf(reading: Reading): (file: string, line: number) => string | null {
  let texts: Map<string, string> | null = null;
  return (file, line) => {
    texts ??= new Map(reading.entries.map(({ place, text }) => [`${place.line} ${place.file}`, text]));
    return texts.get(`${line} ${file}`) ?? null;
  };
}

/** Writes an answer to a file that the keeper names: a new one, or over one that holds the like; never over anything else. */
import path from 'node:path';
import type { Context } from './context.ts';
import { EXIT, Stop } from './exit.ts';

export interface OutFile {
  /** As it was typed. */
  readonly file: string;
  readonly text: string;
  /** What it is, for messages: `SVG`. */
  readonly kind: string;
  /** True for the text of an earlier answer of this kind, which may be written over. */
  readonly isLike: (text: string) => boolean;
}

/** The absolute path that was written. Throws a `Stop` (status 3) where it cannot be, with the file as it was. */
export function writeOut(context: Context, { file, text, kind, isLike }: OutFile): string {
  const target = path.resolve(context.cwd, file);
  const { files } = context;
  const created = files.create(target, text);
  if (created.ok) return target;
  if (created.unsure === true) throw stop(unseen(file, created.says));
  if (!created.exists) throw stop(`${file} cannot be written: ${created.says}`);
  const found = files.read(target);
  if (!found.ok) throw stop(`${file} cannot be written: ${found.says}`);
  const { text: old } = found.content;
  if (old.trim() !== '' && !isLike(old)) {
    throw stop(`${file} is there already and is no ${kind}: it is left as it is`);
  }
  const replaced = files.replace(target, old, text);
  if (!replaced.saved) throw stop(replaced.says ?? `${file} was changed meanwhile`);
  return target;
}

/**
 * Writes a new file, never over one that is there: the keeper may have written into it. Throws a `Stop` (status
 * 3) where it cannot be; `instead` is what to type then.
 */
export function createOut({ cwd, files }: Context, file: string, text: string, instead: string): void {
  const made = files.create(path.resolve(cwd, file), text);
  if (made.ok) return;
  if (made.unsure === true) throw new Stop(EXIT.noFile, unseen(file, made.says), `another name, or ${instead}`);
  const says = `${file} is not written: ${made.exists ? 'it is there already' : made.says}`;
  throw new Stop(EXIT.noFile, says, `another name, or ${instead}`);
}

/** What to say where the disk failed so thoroughly that nobody can tell. */
export function unseen(file: string, says: string): string {
  return `whether ${file} is written cannot be seen (${says}): look at it`;
}

function stop(says: string): Stop {
  return new Stop(EXIT.noFile, says, 'the same with another file name');
}

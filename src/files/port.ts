/** What the rest of Tankside may ask of the machine's files. `files.ts` does it on any `Disk`, a test's too. */
import type { Problem } from '../core/problem.ts';
import type { Also } from './also.ts';
import type { Content } from './content.ts';
import type { Creating as CreateFile } from './create.ts';
import type { Appending, Compose, NotSaved, Saved } from './append.ts';

export type { Also } from './also.ts';
export type { Appending, Compose, NotSaved, Saved } from './append.ts';

/** A failure is words for the keeper, and whether there simply was nothing there. */
export type ReadFile =
  | {
      readonly ok: true;
      /** A line that an interrupted jot left unfinished is completed. */
      readonly content: Content;
      /** Lines that are not UTF-8. */
      readonly problems: readonly Problem[];
      /** What else was found beside the file, in words for the margin of an answer. */
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly missing: boolean; readonly says: string };

export type { Content } from './content.ts';
export type { Creating as CreateFile } from './create.ts';

export interface Files {
  /** The text of a plain UTF-8 file; folders, devices and the like are refused. `name` is for messages. */
  read(path: string, name?: string): ReadFile;
  /** Reads what a main file reads in: from its folder or below, links resolved; named from that folder. */
  also(main: string): (from: string, asked: string) => Also;
  /** True for a plain file that is there, whether or not it may be read. */
  isFile(path: string): boolean;
  /** Writes a new file, whole or not at all; never over one that exists. */
  create(path: string, text: string): CreateFile;
  /** Adds lines to a file that exists; what they are is decided while nobody else can write. */
  append(path: string, compose: Compose): Appending;
  /** Puts a new text in a file's place, if it still holds `expected`. */
  replace(path: string, expected: string, text: string): Saved | NotSaved;
}

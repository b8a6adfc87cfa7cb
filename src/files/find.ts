/** Where the journal is: as told, as the environment says, or `fishroom.txt` here or in a folder above. */
import { dirname, join, resolve } from 'node:path';

/** What a journal is called where nobody says otherwise. */
export const USUAL_NAME = 'fishroom.txt';

export interface Whereabouts {
  /** The path given with the command, if any. */
  readonly told: string | null;
  /** The environment's TANKSIDE_JOURNAL; empty is none. */
  readonly usual: string | undefined;
  /** The folder that the command runs in. */
  readonly here: string;
}

/** The journal's path; null where none is found. A path that was told is believed, there or not. */
export function findJournal(isFile: (path: string) => boolean, where: Whereabouts): string | null {
  const told = where.told ?? where.usual;
  if (told !== undefined && told !== '') return resolve(where.here, told);
  for (let folder = resolve(where.here); ; folder = dirname(folder)) {
    const path = join(folder, USUAL_NAME);
    if (isFile(path)) return path;
    if (folder === dirname(folder)) return null;
  }
}

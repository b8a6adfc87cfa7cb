/** A new file, whole or not at all, and never in the place of one that is there. */
import { inPlace, syncFolderOf, withFile, writeNew } from './bytes.ts';
import { NEW_FILE } from './disk.ts';
import type { Disk } from './disk.ts';
import type { Machine } from './machine.ts';
import { hasNoLinks } from './lock.ts';
import { temporaryName } from './temporary.ts';
import { codeOf, quietly, reason } from './trouble.ts';

export type Creating =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly exists: boolean;
      readonly says: string;
      /** A folder is called so. */
      readonly folder?: true;
      /** The disk failed so thoroughly that nobody can tell. */
      readonly unsure?: true;
    };

/** Writes it under another name and puts it into place, so that a kill leaves no half of it. */
export function createText(disk: Disk, machine: Machine, path: string, text: string): Creating {
  const temporary = temporaryName(path, machine.me());
  let refused: Creating | null = null;
  try {
    writeNew(disk, temporary, Buffer.from(text), 0o666, true);
    refused = place(disk, temporary, path);
  } catch (error) {
    const says = codeOf(error) === 'ENOENT' ? 'its folder is not there' : reason(error);
    refused = { ok: false, exists: false, says };
  }
  quietly(() => disk.remove(temporary));
  if (refused !== null) return refused;
  quietly(() => syncFolderOf(disk, path));
  return { ok: true };
}

/** Null where it worked, whatever the system said. */
function place(disk: Disk, temporary: string, path: string): Creating | null {
  const made = disk.facts(temporary);
  try {
    try {
      disk.link(temporary, path);
    } catch (error) {
      if (!hasNoLinks(error)) throw error;
      placeWithoutLinks(disk, temporary, path);
    }
    return null;
  } catch (error) {
    const there = inPlace(disk, made, path);
    if (there === true) return null;
    if (there === false && codeOf(error) === 'EEXIST') return taken(disk, path);
    const says = reason(error);
    return there === null ? { ok: false, exists: false, says, unsure: true } : { ok: false, exists: false, says };
  }
}

/** A folder of that name is nothing that an earlier run could have written. */
function taken(disk: Disk, path: string): Creating {
  let folder = false;
  quietly(() => {
    folder = disk.facts(path).kind === 'folder';
  });
  if (folder) return { ok: false, exists: false, says: 'it is a folder', folder: true };
  return { ok: false, exists: true, says: 'it is there already' };
}

/** Takes the name with an empty file first: renaming alone would go over what is there. */
function placeWithoutLinks(disk: Disk, temporary: string, path: string): void {
  withFile(disk, path, NEW_FILE, 0o666, () => undefined);
  const taken = disk.facts(path);
  try {
    disk.rename(temporary, path);
  } catch (error) {
    if (inPlace(disk, taken, path) === true) quietly(() => disk.remove(path));
    throw error;
  }
}

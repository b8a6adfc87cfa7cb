/** A new file, whole or not at all, and never in the place of one that is there. */
import { inPlace, syncFolderOf, writeNew } from './bytes.ts';
import type { Disk } from './disk.ts';
import type { Machine } from './machine.ts';
import { hasNoLinks } from './lock.ts';
import { temporaryName } from './temporary.ts';
import { codeOf, quietly, reason } from './trouble.ts';

export type Creating = { readonly ok: true } | { readonly ok: false; readonly exists: boolean; readonly says: string };

/** Writes it under another name and links it into place, so that a kill leaves no half of it. */
export function createText(disk: Disk, machine: Machine, path: string, text: string): Creating {
  const bytes = Buffer.from(text);
  const temporary = temporaryName(path, machine.me());
  try {
    writeNew(disk, temporary, bytes, 0o666, true);
    try {
      disk.link(temporary, path);
    } catch (error) {
      if (hasNoLinks(error)) writeNew(disk, path, bytes, 0o666, true);
      else if (inPlace(disk, disk.facts(temporary), path) !== true) throw error;
    } finally {
      quietly(() => disk.remove(temporary));
    }
  } catch (error) {
    const exists = codeOf(error) === 'EEXIST';
    return { ok: false, exists, says: exists ? 'it is there already' : reason(error) };
  }
  quietly(() => syncFolderOf(disk, path));
  return { ok: true };
}

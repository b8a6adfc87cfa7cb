/**
 * Puts a new text in a journal's place, all at once: whoever reads sees the old text or the new one,
 * never half of either. Refused where the file is no longer what the new text was made from.
 */
import { inPlace, readWhole, shortName, syncFolderOf, withFile, writeAll } from './bytes.ts';
import { FOR_APPENDING, NEW_FILE, sameFacts } from './disk.ts';
import type { Disk, Facts } from './disk.ts';
import { dropLock, takeLock } from './lock.ts';
import type { Machine } from './machine.ts';
import { mend } from './mend.ts';
import { sweep, temporaryName } from './temporary.ts';
import { codeOf, quietly, reason } from './trouble.ts';
import type { NotSaved, Saved } from './append.ts';

const MARK = Buffer.from([0xef, 0xbb, 0xbf]);

/**
 * Replaces `expected` by `text`, both without a byte-order mark, which stays where there was one. Mode
 * and owner are kept, and a symbolic link goes on pointing to the same file.
 */
export function replaceText(
  disk: Disk,
  machine: Machine,
  path: string,
  name: string,
  expected: string,
  text: string,
): Saved | NotSaved {
  let file: string;
  try {
    file = disk.real(path);
  } catch (error) {
    return no(codeOf(error) === 'ENOENT' ? `there is no ${name}` : `${name} cannot be written: ${reason(error)}`);
  }
  const locking = takeLock(disk, machine, file);
  if (!locking.ok) return no(locking.says);
  const notices: string[] = [];
  let result: Saved | NotSaved;
  try {
    result = underLock(disk, file, name, temporaryName(file, locking.lock.holder), expected, text, notices);
    sweep(disk, machine, file, locking.lock.holder);
  } finally {
    const dropped = dropLock(disk, locking.lock);
    if (dropped !== null) notices.push(dropped);
  }
  return result;
}

function no(says: string, notices: readonly string[] = []): NotSaved {
  return { saved: false, says, notices };
}

function underLock(
  disk: Disk,
  file: string,
  name: string,
  temporary: string,
  expected: string,
  text: string,
  notices: string[],
): Saved | NotSaved {
  try {
    const mended = mend(disk, file);
    if (mended !== null) notices.push(mended);
    // Putting another file in its place asks for no right to this one: who took that away meant it.
    withFile(disk, file, FOR_APPENDING, 0, () => undefined);
    const { bytes, facts } = readWhole(disk, file);
    const mark = bytes.subarray(0, MARK.length).equals(MARK) ? MARK : Buffer.alloc(0);
    if (!bytes.equals(Buffer.concat([mark, Buffer.from(expected)]))) {
      return no(`${name} is unchanged: it is no longer what was read`, notices);
    }
    const made = writeLike(disk, temporary, Buffer.concat([mark, Buffer.from(text)]), facts);
    swap(disk, temporary, made, file, facts);
  } catch (error) {
    if (error instanceof Unsure) {
      const says = `whether ${name} has its new text cannot be seen (${error.message}): look at it`;
      return { saved: false, says, notices, unsure: true };
    }
    return no(`${name} is unchanged: ${reason(error)}`, notices);
  }
  // From here on the new text is in place, whatever else goes wrong.
  const unsynced = quietly(() => syncFolderOf(disk, file));
  if (unsynced !== null)
    notices.push(`saved, but whether ${shortName(file)} would outlast a loss of power is not sure (${unsynced})`);
  return { saved: true, notices };
}

/** A file with these bytes, and mode and owner of another. */
function writeLike(disk: Disk, path: string, bytes: Uint8Array, like: Facts): Facts {
  try {
    return withFile(disk, path, NEW_FILE, 0o600, (file) => {
      writeAll(disk, file, bytes);
      const made = disk.factsOf(file);
      // Only root may give a file away; where we may not, the text still counts for more than its owner.
      if (made.owner !== like.owner || made.group !== like.group) {
        quietly(() => disk.setOwner(file, like.owner, like.group));
      }
      if (made.mode !== like.mode) disk.setMode(file, like.mode);
      disk.sync(file);
      return made;
    });
  } catch (error) {
    quietly(() => disk.remove(path));
    throw error;
  }
}

class Unsure extends Error {}

function swap(disk: Disk, temporary: string, made: Facts, file: string, old: Facts): void {
  try {
    if (!sameFacts(old, disk.facts(file))) throw new Error('another program changed it at the same moment');
    disk.rename(temporary, file);
  } catch (error) {
    const place = inPlace(disk, made, file);
    if (place === true) return;
    if (place === null) throw new Unsure(reason(error));
    quietly(() => disk.remove(temporary));
    throw error;
  }
}

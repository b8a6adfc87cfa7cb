/**
 * Windows refuses to open, name or remove what another program holds open, if only for the moment in which a virus
 * scanner, an indexer or a sync client looks at it, or until the last reader of a removed file has closed it. The
 * same call works a little later (libuv issue 2098 and pull request 1981: up to two seconds seen). Elsewhere such a
 * refusal is final, and nobody need wait.
 */
import type { Disk } from './disk.ts';
import type { Machine } from './machine.ts';
import { codeOf } from './trouble.ts';

/** What Windows says of a file that is held; it says the same of one that we have no right to. */
const HELD = new Set(['EPERM', 'EACCES', 'EBUSY']);
/** Pauses between the tries, milliseconds: two seconds in all. */
const PAUSES = [5, 10, 20, 40, 80, 160, 320, 640, 725];

/** The same disk, on which a call that was refused is tried again for two seconds. */
export function patient(disk: Disk, machine: Pick<Machine, 'pause'>): Disk {
  function insist<T>(run: () => T): T {
    for (const milliseconds of PAUSES) {
      try {
        return run();
      } catch (error) {
        if (!HELD.has(codeOf(error) ?? '')) throw error;
        machine.pause(milliseconds);
      }
    }
    return run();
  }
  return {
    ...disk,
    open: (path, flags, mode) => insist(() => disk.open(path, flags, mode)),
    link: (from, to) => insist(() => disk.link(from, to)),
    rename: (from, to) => insist(() => disk.rename(from, to)),
    remove: (path) => insist(() => disk.remove(path)),
  };
}

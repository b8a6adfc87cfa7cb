/**
 * Names of the short-lived files that we make beside a journal. The name tells whose it is, so that
 * what a killed process left behind can be told from what a living one is using.
 */
import { dirname } from 'node:path';
import { beside, shortName } from './bytes.ts';
import type { Disk } from './disk.ts';
import type { Holder, Machine } from './machine.ts';
import { quietly } from './trouble.ts';

const NAME = /^\.new-(\d+)-(\d+|x)-([0-9a-f]+|x)-([0-9]+|x)-([0-9a-z]+)$/;

/** Which start of the machine and which set of process numbers, short enough for a file name. */
function world(holder: Holder): string {
  const boot = holder.boot?.replaceAll('-', '').slice(0, 12) ?? 'x';
  const space = holder.space === null ? 'x' : holder.space.replaceAll(/\D/g, '') || 'x';
  return `${boot}-${space}`;
}

/** A name beside the file that tells whose it is, so that what a dead writer left can be swept. */
export function temporaryName(file: string, holder: Holder): string {
  return `${file}.new-${holder.pid}-${holder.start ?? 'x'}-${world(holder)}-${holder.nonce}`;
}

/**
 * Removes what dead processes of this machine left beside a file; what nobody here can judge stays. Only
 * for the holder of the lock: while it is held, no claim on an older lock means anything any more.
 */
export function sweep(disk: Disk, machine: Machine, file: string, me: Holder): void {
  quietly(() => {
    const prefix = shortName(file);
    for (const name of disk.list(dirname(file))) {
      if (!name.startsWith(`${prefix}.`)) continue;
      if (name.startsWith(`${prefix}.lock-`)) {
        quietly(() => disk.remove(beside(file, name)));
        continue;
      }
      const match = NAME.exec(name.slice(prefix.length));
      if (match === null || `${match[3]}-${match[4]}` !== world(me)) continue;
      const owner = { ...me, pid: Number(match[1]), start: match[2] === 'x' ? null : (match[2] ?? null) };
      if (machine.fate(owner) === 'dead') quietly(() => disk.remove(beside(file, name)));
    }
  });
}

/**
 * What an answer rests on of the machine's files, and whether that still stands. Facts of a file prove
 * its content only where its last change lies well before the moment it was read: a file written twice
 * within one tick of the disk's clock can keep size and times. Everything else is settled by a hash.
 */
import { FOR_READING } from '../disk.ts';
import type { Disk, Facts } from '../disk.ts';
import { codeOf } from '../trouble.ts';

/** The five facts that tell one state of a file from another, as text. */
export type Stamp = readonly [device: string, inode: string, size: string, modified: string, changed: string];

/** How something was looked at that the system refused. */
export type Looking = 'facts' | 'real' | 'open' | 'named';

export type Rest =
  /** A plain file was read whole; `seen` is when, milliseconds since 1970. */
  | {
      readonly kind: 'file';
      readonly path: string;
      readonly stamp: Stamp;
      readonly seen: number;
      readonly hash: string;
    }
  /** Something was looked at, not into. */
  | { readonly kind: 'is'; readonly path: string; readonly is: Facts['kind'] }
  /** Where links lead. */
  | { readonly kind: 'real'; readonly path: string; readonly to: string }
  /** The system refused a call, as for a file that is not there. */
  | {
      readonly kind: 'refused';
      readonly path: string;
      readonly call: Looking;
      readonly code: string;
    };

/** Disks count time in steps of up to two seconds (FAT); one more for a clock that is read late. */
const SETTLED = 3_000;

/** The five facts of a file that change when its content does: device, inode, size, and both times. */
export function stampOf({ device, inode, size, modified, changed }: Facts): Stamp {
  return [String(device), String(inode), String(size), String(modified), String(changed)];
}

function sameStamp(a: Stamp, b: Stamp): boolean {
  return a.every((fact, index) => fact === b[index]);
}

/** Whether a file's facts alone prove that it is as it was when read; `seen` is that moment, milliseconds since 1970. */
export function settled([, , , modified, changed]: Stamp, seen: number): boolean {
  const last = Math.max(Number(modified), Number(changed)) / 1e6;
  return last + SETTLED < seen;
}

/** Hashes a plain file as it is now; null where it is none. */
export type Hashing = (path: string) => Promise<string | null>;

/**
 * What an answer rests on as of now: the same list where nothing has to be written anew, a fresher one
 * where files were proved by their content, null where anything changed.
 */
export async function stillStanding(
  disk: Disk,
  rests: readonly Rest[],
  now: () => number,
  hash: Hashing,
): Promise<readonly Rest[] | null> {
  const doubtful: number[] = [];
  for (const [index, rest] of rests.entries()) {
    const stands = standsNow(disk, rest);
    if (stands === 'no') return null;
    if (stands === 'perhaps') doubtful.push(index);
  }
  if (doubtful.length === 0) return rests;
  const fresh = [...rests];
  for (const index of doubtful) {
    const rest = rests[index];
    if (rest?.kind !== 'file') return null;
    const seen = now();
    const stamp = stampNow(disk, rest.path);
    if (stamp === null || (await hash(rest.path)) !== rest.hash) return null;
    fresh[index] = { ...rest, stamp, seen };
  }
  return fresh;
}

function standsNow(disk: Disk, rest: Rest): 'yes' | 'no' | 'perhaps' {
  switch (rest.kind) {
    case 'file': {
      const stamp = stampNow(disk, rest.path);
      if (stamp === null || stamp[2] !== rest.stamp[2]) return 'no';
      return sameStamp(stamp, rest.stamp) && settled(rest.stamp, rest.seen) ? 'yes' : 'perhaps';
    }
    case 'is':
      return outcome(() => disk.facts(rest.path).kind) === rest.is ? 'yes' : 'no';
    case 'real':
      return outcome(() => disk.real(rest.path)) === rest.to ? 'yes' : 'no';
    case 'refused':
      return outcome(() => calling(disk, rest.call, rest.path)) === `refused ${rest.code}` ? 'yes' : 'no';
  }
}

function stampNow(disk: Disk, path: string): Stamp | null {
  try {
    return stampOf(disk.facts(path));
  } catch {
    return null;
  }
}

function calling(disk: Disk, call: Looking, path: string): string {
  if (call === 'facts') return disk.facts(path).kind;
  if (call === 'real') return disk.real(path);
  if (call === 'named') {
    disk.named(path);
    return 'named';
  }
  disk.close(disk.open(path, FOR_READING, 0));
  return 'opened';
}

function outcome(run: () => string): string {
  try {
    return run();
  } catch (error) {
    return `refused ${codeOf(error) ?? '?'}`;
  }
}

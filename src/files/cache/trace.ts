/**
 * A disk that writes down what is read from it, so that an answer can be remembered together with all
 * that it rests on. A run that changes anything, or reads in a way that is not understood here, has no trace.
 */
import { createHash } from 'node:crypto';
import type { Hash } from 'node:crypto';
import { FOR_READING } from '../disk.ts';
import type { Disk, Facts } from '../disk.ts';
import { codeOf } from '../trouble.ts';
import { stampOf } from './rests.ts';
import type { Looking, Rest } from './rests.ts';

export interface Traced {
  readonly disk: Disk;
  /** Null where the run cannot be remembered. */
  rests(): readonly Rest[] | null;
}

interface Open {
  readonly path: string;
  readonly seen: number;
  facts: Facts | null;
  readonly hash: Hash;
  /** How much was read, in one go from the start. */
  read: number;
}

/** The disk, watched: `now` gives milliseconds since 1970, for how long ago a file changed before it was read. */
export function tracing(disk: Disk, now: () => number): Traced {
  const trail = new Trail();
  return {
    rests: () => trail.rests(),
    disk: { ...whatReads(disk, trail, now), ...whatLooks(disk, trail), ...whatChanges(disk, trail) },
  };
}

/** What a run has rested on so far. */
class Trail {
  /** Files that are being read. */
  readonly open = new Map<number, Open>();
  private readonly found = new Map<string, Rest>();
  private isLost = false;

  rests(): readonly Rest[] | null {
    return this.isLost || this.open.size > 0 ? null : [...this.found.values()];
  }

  /** From here on the run cannot be remembered. */
  lose(): void {
    this.isLost = true;
  }

  rest(found: Rest): void {
    const key = `${found.kind} ${found.kind === 'refused' ? found.call : ''} ${found.path}`;
    const before = this.found.get(key);
    this.found.set(key, found);
    if (before !== undefined && !sameRest(before, found)) this.lose();
  }

  refusing<T>(call: Looking, path: string, run: () => T): T {
    try {
      return run();
    } catch (error) {
      this.rest({ kind: 'refused', path, call, code: codeOf(error) ?? '?' });
      throw error;
    }
  }

  closed({ path, seen, facts, hash, read }: Open): void {
    if (facts === null) this.lose();
    else if (facts.kind !== 'file') this.rest({ kind: 'is', path, is: facts.kind });
    else if (read !== facts.size) this.lose();
    else this.rest({ kind: 'file', path, stamp: stampOf(facts), seen, hash: hash.digest('hex') });
  }
}

/** Reading a file from open to close. */
function whatReads(disk: Disk, trail: Trail, now: () => number): Pick<Disk, 'open' | 'close' | 'read' | 'factsOf'> {
  const { open } = trail;
  return {
    open(path, flags, mode) {
      if (flags !== FOR_READING) trail.lose();
      const seen = now();
      const file = trail.refusing('open', path, () => disk.open(path, flags, mode));
      open.set(file, { path, seen, facts: null, hash: createHash('sha256'), read: 0 });
      return file;
    },
    close(file) {
      const one = open.get(file);
      open.delete(file);
      if (one !== undefined) trail.closed(one);
      disk.close(file);
    },
    read(file, into, position) {
      const got = disk.read(file, into, position);
      const one = open.get(file);
      if (one?.read !== position) trail.lose();
      else {
        one.hash.update(into.subarray(0, got));
        one.read += got;
      }
      return got;
    },
    factsOf(file) {
      const facts = disk.factsOf(file);
      const one = open.get(file);
      if (one !== undefined) one.facts ??= facts;
      return facts;
    },
  };
}

/** Looking at a path without opening it. */
function whatLooks(disk: Disk, trail: Trail): Pick<Disk, 'facts' | 'real' | 'named'> {
  return {
    facts(path) {
      const facts = trail.refusing('facts', path, () => disk.facts(path));
      trail.rest({ kind: 'is', path, is: facts.kind });
      return facts;
    },
    real(path) {
      const to = trail.refusing('real', path, () => disk.real(path));
      trail.rest({ kind: 'real', path, to });
      return to;
    },
    named(path) {
      trail.refusing('named', path, () => {
        disk.named(path);
      });
      // What is there and cannot be read is told anew each time.
      trail.lose();
    },
  };
}

/** Everything that changes the disk, or cannot be written down: the run is lost before it is done. */
function whatChanges(
  disk: Disk,
  trail: Trail,
): Pick<Disk, 'write' | 'truncate' | 'sync' | 'setMode' | 'setOwner' | 'link' | 'rename' | 'remove' | 'list'> {
  const changing = <T>(run: () => T): T => {
    trail.lose();
    return run();
  };
  return {
    write: (file, bytes) => changing(() => disk.write(file, bytes)),
    truncate: (file, size) => changing(() => disk.truncate(file, size)),
    sync: (file) => changing(() => disk.sync(file)),
    setMode: (file, mode) => changing(() => disk.setMode(file, mode)),
    setOwner: (file, owner, group) => changing(() => disk.setOwner(file, owner, group)),
    link: (from, to) => changing(() => disk.link(from, to)),
    rename: (from, to) => changing(() => disk.rename(from, to)),
    remove: (path) => changing(() => disk.remove(path)),
    // What a folder holds is not written down.
    list: (folder) => changing(() => disk.list(folder)),
  };
}

/** Whether two looks at one thing within a run showed the same. */
function sameRest(a: Rest, b: Rest): boolean {
  if (a.kind === 'file' && b.kind === 'file') return a.hash === b.hash;
  return JSON.stringify(a) === JSON.stringify(b);
}

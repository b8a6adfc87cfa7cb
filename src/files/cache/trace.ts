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
import type { Rest } from './rests.ts';

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
  const rests = new Map<string, Rest>();
  const open = new Map<number, Open>();
  let lost = false;

  function rest(found: Rest): void {
    const key = `${found.kind} ${found.kind === 'refused' ? found.call : ''} ${found.path}`;
    const before = rests.get(key);
    rests.set(key, found);
    if (before !== undefined && !sameRest(before, found)) lost = true;
  }

  function refusing<T>(call: 'facts' | 'real' | 'open', path: string, run: () => T): T {
    try {
      return run();
    } catch (error) {
      rest({ kind: 'refused', path, call, code: codeOf(error) ?? '?' });
      throw error;
    }
  }

  /** For everything that changes the disk. */
  function changing<T>(run: () => T): T {
    lost = true;
    return run();
  }

  function closed({ path, seen, facts, hash, read }: Open): void {
    if (facts === null) lost = true;
    else if (facts.kind !== 'file') rest({ kind: 'is', path, is: facts.kind });
    else if (read !== facts.size) lost = true;
    else rest({ kind: 'file', path, stamp: stampOf(facts), seen, hash: hash.digest('hex') });
  }

  return {
    rests: () => (lost || open.size > 0 ? null : [...rests.values()]),
    disk: {
      open(path, flags, mode) {
        if (flags !== FOR_READING) lost = true;
        const seen = now();
        const file = refusing('open', path, () => disk.open(path, flags, mode));
        open.set(file, { path, seen, facts: null, hash: createHash('sha256'), read: 0 });
        return file;
      },
      close(file) {
        const one = open.get(file);
        open.delete(file);
        if (one !== undefined) closed(one);
        disk.close(file);
      },
      read(file, into, position) {
        const got = disk.read(file, into, position);
        const one = open.get(file);
        if (one?.read !== position) lost = true;
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
      facts(path) {
        const facts = refusing('facts', path, () => disk.facts(path));
        rest({ kind: 'is', path, is: facts.kind });
        return facts;
      },
      real(path) {
        const to = refusing('real', path, () => disk.real(path));
        rest({ kind: 'real', path, to });
        return to;
      },
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
    },
  };
}

/** Whether two looks at one thing within a run showed the same. */
function sameRest(a: Rest, b: Rest): boolean {
  if (a.kind === 'file' && b.kind === 'file') return a.hash === b.hash;
  return JSON.stringify(a) === JSON.stringify(b);
}

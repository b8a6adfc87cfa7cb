/** A disk on which one call fails, or that call and all later ones; before it takes effect, or after. */
import type { Disk } from '../../src/files/disk.ts';
import { systemError } from './memory.ts';

export interface Failure {
  /** Counted from 0. */
  readonly at: number;
  readonly later: boolean;
  /** `half`: a write puts half of its bytes down first. `after`: the call does its work and says that it failed. */
  readonly how: 'before' | 'after' | 'half';
  readonly code: string;
}

export interface Failing {
  readonly disk: Disk;
  /** Calls made so far. */
  calls(): number;
}

export function failing(disk: Disk, failure: Failure): Failing {
  let calls = 0;

  function call<T>(run: () => T, acts = failure.how === 'after'): T {
    const now = calls;
    calls += 1;
    const fails = now === failure.at || (failure.later && now > failure.at);
    if (!fails) return run();
    if (acts) run();
    throw systemError(failure.code);
  }

  return {
    calls: () => calls,
    disk: {
      open: (path, flags, mode) => call(() => disk.open(path, flags, mode)),
      close: (file) => call(() => disk.close(file)),
      read: (file, into, position) => call(() => disk.read(file, into, position)),
      write: (file, bytes) => {
        const fails = calls === failure.at || (failure.later && calls > failure.at);
        const part = fails && failure.how === 'half' ? halfOf(bytes) : bytes;
        return call(() => disk.write(file, part), failure.how !== 'before');
      },
      truncate: (file, size) => call(() => disk.truncate(file, size)),
      sync: (file) => call(() => disk.sync(file)),
      factsOf: (file) => call(() => disk.factsOf(file)),
      facts: (path) => call(() => disk.facts(path)),
      setMode: (file, mode) => call(() => disk.setMode(file, mode)),
      setOwner: (file, owner, group) => call(() => disk.setOwner(file, owner, group)),
      link: (from, to) => call(() => disk.link(from, to)),
      rename: (from, to) => call(() => disk.rename(from, to)),
      remove: (path) => call(() => disk.remove(path)),
      list: (folder) => call(() => disk.list(folder)),
      named: (path) =>
        call(() => {
          disk.named(path);
        }),
      real: (path) => call(() => disk.real(path)),
    },
  };
}

function halfOf(bytes: Uint8Array): Uint8Array {
  return bytes.subarray(0, Math.ceil(bytes.length / 2));
}

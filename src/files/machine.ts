/**
 * Which process we are, and whether another one still lives. A process number alone is not enough: it
 * is given out again, it means nothing on another machine, and containers each count their own.
 */
import fs from 'node:fs';
import os from 'node:os';

/** Who holds a lock. Null where this system does not tell. */
export interface Holder {
  readonly pid: number;
  /** When the process began, in clock ticks since the machine was started. */
  readonly start: string | null;
  /** Which start of the machine. */
  readonly boot: string | null;
  /** Which set of process numbers (a container has its own). */
  readonly space: string | null;
  readonly host: string;
  /** Milliseconds since 1970, for people and for systems that know no `boot`. */
  readonly since: number;
  /** Never the same twice. */
  readonly nonce: string;
}

export interface Machine {
  /** This process, with a new nonce each time. */
  me(): Holder;
  /** `unknown`: on another machine or in another container, so that nobody here can tell. */
  fate(holder: Holder): 'lives' | 'dead' | 'unknown';
  /** Waits, and does nothing else meanwhile. */
  pause(milliseconds: number): void;
}

function readOrNull(path: string): string | null {
  try {
    return fs.readFileSync(path, 'latin1').trim();
  } catch {
    return null;
  }
}

function linkOrNull(path: string): string | null {
  try {
    return fs.readlinkSync(path);
  } catch {
    return null;
  }
}

/** State letter and start time of a process as Linux shows them (proc(5), fields 3 and 22); null: none there. */
function processFacts(pid: number): { state: string; start: string } | null {
  const text = readOrNull(`/proc/${pid}/stat`);
  if (text === null) return null;
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  const [state, start] = [fields[0], fields[19]];
  return state === undefined || start === undefined ? null : { state, start };
}

/** True, false, or true for want of better knowledge. */
function answers(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return !(error instanceof Error && 'code' in error && error.code === 'ESRCH');
  }
}

let made = 0;

function makeNonce(): string {
  made += 1;
  const chance = Math.floor(Math.random() * 36 ** 9).toString(36);
  return `${process.pid.toString(36)}x${process.hrtime.bigint().toString(36)}x${made.toString(36)}x${chance}`;
}

let known: Pick<Holder, 'start' | 'boot' | 'space' | 'host'> | null = null;

function aboutUs(): Pick<Holder, 'start' | 'boot' | 'space' | 'host'> {
  known ??= {
    start: processFacts(process.pid)?.start ?? null,
    boot: readOrNull('/proc/sys/kernel/random/boot_id'),
    space: linkOrNull('/proc/self/ns/pid'),
    host: os.hostname(),
  };
  return known;
}

function fateHere(holder: Holder): 'lives' | 'dead' {
  if (holder.start === null || aboutUs().start === null) return answers(holder.pid) ? 'lives' : 'dead';
  const there = processFacts(holder.pid);
  // Some systems hide the processes of others (proc(5), `hidepid`): that one is not seen is no proof.
  if (there === null) return answers(holder.pid) ? 'lives' : 'dead';
  // A zombie was killed and waits only to be buried: it will not write again.
  if (there.state === 'Z' || there.state === 'X') return 'dead';
  return there.start === holder.start ? 'lives' : 'dead';
}

function fate(holder: Holder): 'lives' | 'dead' | 'unknown' {
  const us = aboutUs();
  if (holder.boot !== null && us.boot !== null) {
    if (holder.boot !== us.boot) return holder.host === us.host ? 'dead' : 'unknown';
    return holder.space === us.space ? fateHere(holder) : 'unknown';
  }
  if (holder.host !== us.host) return 'unknown';
  const started = Date.now() - os.uptime() * 1000;
  return holder.since < started - 60_000 ? 'dead' : fateHere(holder);
}

export const thisMachine: Machine = {
  me: () => ({ pid: process.pid, ...aboutUs(), since: Date.now(), nonce: makeNonce() }),
  fate,
  pause: (milliseconds) => {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
  },
};

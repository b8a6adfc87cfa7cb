/**
 * A process to be killed while a command of ours writes: `victim FILE KIND LABEL NUMBER`. Prints `>` as the command
 * begins, a letter before each call that changes the disk, and once the keeper is told `+` (done) or `-` (not done)
 * with the times of all these, in milliseconds. With a further `MARK` it waits at that mark until it is let go on,
 * so that a killer on a busy machine can aim, and lives on until it is killed.
 */
import { takeBack, building } from './lent.ts';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import v8 from 'node:v8';
import { FOR_READING, theDisk } from '../../../src/files/disk.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { deed, KINDS, type Kind } from '../../support/deeds.ts';
import { onDisk } from '../../support/ondisk.ts';
import { tankside } from '../../support/run.ts';
import { small } from './small.ts';

const times: number[] = [];
let waitsAt = 0;

function mark(letter: string): void {
  fs.writeSync(1, letter);
  times.push(performance.now());
  if (times.length === waitsAt) fs.readSync(0, Buffer.alloc(1));
}

/** A disk that tells of each call that changes what is on it before it makes it. */
function marking(disk: Disk): Partial<Disk> {
  const after = <T>(letter: string, call: () => T): T => {
    mark(letter);
    return call();
  };
  return {
    open: (file, flags, mode) =>
      flags === FOR_READING ? disk.open(file, flags, mode) : after('o', () => disk.open(file, flags, mode)),
    write: (file, bytes) => after('w', () => disk.write(file, bytes)),
    truncate: (file, size) => after('t', () => disk.truncate(file, size)),
    sync: (file) => after('s', () => disk.sync(file)),
    setMode: (file, mode) => after('m', () => disk.setMode(file, mode)),
    setOwner: (file, owner, group) => after('u', () => disk.setOwner(file, owner, group)),
    link: (from, to) => after('l', () => disk.link(from, to)),
    rename: (from, to) => after('n', () => disk.rename(from, to)),
    remove: (file) => after('d', () => disk.remove(file)),
  };
}

async function done(kind: Kind, file: string, label: string, number: number): Promise<boolean> {
  if (kind !== 'tidy') return (await deed(kind, file, label, number)).done;
  return (await onDisk(['tidy', '--write', '--journal', file], path.dirname(file))).status === 0;
}

async function write([file = '', kind = '', label = '', number = '', at]: readonly string[]): Promise<void> {
  const known = KINDS.find((one) => one === kind);
  if (known === undefined) throw new Error(`nothing is known of ${kind}`);
  waitsAt = Number(at ?? '0');
  Object.assign(theDisk, marking({ ...theDisk }));
  mark('>');
  const told = (await done(known, file, label, Number(number))) ? '+' : '-';
  const since = times.map((time) => (time - (times[0] ?? 0)).toFixed(2));
  fs.writeSync(1, `${told}${since.join(' ')}\n`);
  if (at !== undefined) setTimeout(() => undefined, 20_000);
}

/** What a started snapshot knows already: the grammar, and commands that have run once, on a disk in memory. */
async function warm(): Promise<void> {
  const world = { files: { '/room/fishroom.txt': small() }, today: '2026-06-01' };
  const input = 'lot,stock,tank,fish,fetched,back to\n1,Ash,A1,1,1.00,\n';
  await tankside(['jot', 'A1: wc 30%'], world);
  await tankside(['settle', 'S1', '-'], { ...world, input });
  await tankside(['tidy', '--write'], world);
}

if (building()) {
  void warm().then(() => {
    v8.startupSnapshot.setDeserializeMainFunction(() => void write(process.argv.slice(1)));
    takeBack();
  });
} else void write(process.argv.slice(2));

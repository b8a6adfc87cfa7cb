/** `npm run faults`, the part on odd disks: full, read-only, links, folders, locks of the dead; for jot, settle and tidy. */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { thisMachine } from '../../../src/files/machine.ts';
import { damageOf, deed, KINDS, room } from '../../support/deeds.ts';
import { onDisk } from '../../support/ondisk.ts';
import { besides } from '../../support/processes.ts';
import type { Tell } from './kills.ts';

function mounted(where: string, options: string, run: () => Promise<void>): Promise<void> {
  fs.mkdirSync(where, { recursive: true });
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', where]).status !== 0) {
    process.stdout.write(`a disk with ${options}: not tried, mounting one was refused here\n`);
    return Promise.resolve();
  }
  return run().finally(() => {
    spawnSync('umount', [where]);
  });
}

/** Every size of the room that is left, on a real file system; then pages, calendars and sheets onto it. */
export async function fullDisk(place: string, tell: Tell): Promise<void> {
  const where = path.join(place, 'full');
  await mounted(where, 'size=128k', async () => {
    for (const kind of KINDS) {
      const wrong: string[] = [];
      let refused = 0;
      for (let ballast = 0; ballast <= 128; ballast += 4) {
        for (const name of fs.readdirSync(where)) fs.rmSync(path.join(where, name));
        const file = path.join(where, 'fishroom.txt');
        fs.writeFileSync(file, room());
        fill(where, ballast);
        const { id, done } = await deed(kind, file, 'full', 8);
        if (!done) refused += 1;
        const text = fs.readFileSync(file, 'utf8');
        wrong.push(...damageOf(text, done ? [id] : [], done ? [] : [id]).map((fault) => `${ballast} kB: ${fault}`));
        wrong.push(...besides(file).map((name) => `${ballast} kB: left behind: ${name}`));
      }
      tell(`${kind} on a full disk of 128 kB, ${refused} times refused`, refused === 0 ? ['it never was full'] : wrong);
    }
    tell('pages, calendars and sheets onto a full disk', await papersOnto(where));
  });
}

function fill(where: string, kilobytes: number): void {
  try {
    fs.writeFileSync(path.join(where, 'ballast'), 'x'.repeat(kilobytes * 1024));
  } catch {
    // The ballast takes what there is.
  }
}

const PAPERS = [
  ['due', '--ics', 'new.out'],
  ['sale', '--plan', '--html', 'new.out'],
  ['sale', '--csv', 'new.out'],
  ['settle', 'S1', '--sheet', 'new.out'],
] as const;

async function papersOnto(where: string): Promise<readonly string[]> {
  const wrong: string[] = [];
  for (const argv of PAPERS) {
    let whole = '';
    for (let ballast = 0; ballast <= 128; ballast += 4) {
      for (const name of fs.readdirSync(where)) fs.rmSync(path.join(where, name));
      fs.writeFileSync(path.join(where, 'fishroom.txt'), room());
      fill(where, ballast);
      const { status } = await onDisk(argv, where);
      const file = path.join(where, 'new.out');
      const text = fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : null;
      if (ballast === 0) whole = text ?? '';
      if (text !== (status === 0 ? whole : null)) wrong.push(`${argv.join(' ')}, ${ballast} kB: told otherwise`);
      const left = fs.readdirSync(where).filter((name) => !['fishroom.txt', 'new.out', 'ballast'].includes(name));
      wrong.push(...left.map((name) => `left behind: ${name}`));
    }
    if (whole === '') wrong.push(`${argv.join(' ')} wrote nothing`);
  }
  return wrong;
}

export async function readOnly(place: string, tell: Tell): Promise<void> {
  const where = path.join(place, 'readonly');
  await mounted(where, 'size=1m', async () => {
    const file = path.join(where, 'fishroom.txt');
    fs.writeFileSync(file, room());
    spawnSync('mount', ['-o', 'remount,ro', where]);
    const wrong: string[] = [];
    for (const kind of KINDS) {
      if ((await deed(kind, file, 'ro', 1)).done) wrong.push(`${kind} is told as done`);
    }
    for (const argv of PAPERS) {
      if ((await onDisk(argv, where)).status !== 3) wrong.push(`${argv.join(' ')} is told as done`);
    }
    if (fs.readFileSync(file, 'utf8') !== room()) wrong.push('the journal was changed');
    tell('a disk that can only be read', wrong);
  });
}

/** As somebody who may not write: root may do anything, so another user is needed to try. */
export function withoutRights(place: string, script: string, tell: Tell): void {
  if (process.getuid?.() !== 0) {
    process.stdout.write('files and folders of somebody else: not tried, only root can play both\n');
    return;
  }
  const wrong: string[] = [];
  fs.chmodSync(place, 0o755);
  for (const [what, fileMode, folderMode] of [
    ['file', 0o444, 0o777],
    ['folder', 0o666, 0o555],
  ] as const) {
    for (const kind of KINDS) {
      const where = fs.mkdtempSync(path.join(place, 'rights-'));
      const file = path.join(where, 'fishroom.txt');
      fs.writeFileSync(file, room());
      fs.chmodSync(file, fileMode);
      fs.chmodSync(where, folderMode);
      const args = [script, file, kind, 'x', '1', '1'];
      const { stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', uid: 65_534, gid: 65_534 });
      if (!stdout.startsWith('not ')) wrong.push(`${kind}, read-only ${what}: ${stdout}${stderr}`);
      if (fs.readFileSync(file, 'utf8') !== room()) wrong.push(`${kind}, read-only ${what}: changed`);
      wrong.push(...besides(file).map((name) => `left behind: ${name}`));
    }
  }
  tell('a file, and a folder, that the writer may only read', wrong);
}

/** Links go on pointing to the journal, which keeps its mode and its owner; a dead writer's lock is passed. */
export async function oddPlaces(place: string, tell: Tell): Promise<void> {
  const wrong: string[] = [];
  for (const kind of KINDS) {
    const where = fs.mkdtempSync(path.join(place, 'odd-'));
    const [real, link] = [path.join(where, 'real.txt'), path.join(where, 'fishroom.txt')];
    fs.writeFileSync(real, room());
    fs.chmodSync(real, 0o640);
    const owner = process.getuid?.() === 0 ? 65_534 : (process.getuid?.() ?? 0);
    fs.chownSync(real, owner, fs.statSync(real).gid);
    fs.symlinkSync('real.txt', link);
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    fs.writeFileSync(`${real}.lock`, JSON.stringify({ ...thisMachine.me(), pid: dead }));
    const { id, done } = await deed(kind, link, 'odd', 1);
    if (!done) wrong.push(`${kind} is refused`);
    wrong.push(...damageOf(fs.readFileSync(real, 'utf8'), [id], []).map((fault) => `${kind}: ${fault}`));
    const { mode, uid } = fs.statSync(real);
    if (!fs.lstatSync(link).isSymbolicLink()) wrong.push(`${kind} broke the link`);
    if ((mode & 0o777) !== 0o640 || uid !== owner) wrong.push(`${kind} changed mode or owner`);
    wrong.push(...besides(real).map((name) => `${kind} left behind: ${name}`));
    const folder = path.join(where, 'folder');
    fs.mkdirSync(folder);
    if ((await deed(kind, folder, 'odd', 1)).done) wrong.push(`${kind} into a folder is told as done`);
  }
  tell('a link, a lock of the dead, mode and owner, a folder in the place of the journal', wrong);
}

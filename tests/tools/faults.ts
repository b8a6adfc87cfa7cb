/**
 * `npm run faults`: the long part of the fault tests. Kills writers at random, runs four at once, fills a
 * small real disk, breaks every call in turn; prints what it tried and what was lost. `faults KILLS`.
 */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { filesOn, machineFiles } from '../../src/files/files.ts';
import { failing } from '../support/failing.ts';
import { aloneMachine, MemoryDisk } from '../support/memory.ts';
import { KINDS } from '../support/deeds.ts';
import { faultsAfter, tryOnce } from '../support/trials.ts';
import { WRITING } from '../support/writing.ts';
import { killedAtEachCall as commandsKilledAtEachCall, mixedTogether } from './faults/commands.ts';
import { fullDisk as fullDiskOfCommands, oddPlaces, readOnly, withoutRights } from './faults/disks.ts';
import { buildVictim, killedInside } from './faults/kills.ts';
import { besides, buildAppender, damage, runAppender } from '../support/processes.ts';

const KILLS = Number(process.argv[2] ?? '500');
const OLD = '2026-01-04 tank A1: 54 L; alone\n2026-02-01 A1: all well';
const LINE = '2026-02-14 A1: water change 30 %';

let faults = 0;

function tell(what: string, wrong: readonly string[]): void {
  process.stdout.write(`${what}: ${wrong.length === 0 ? 'nothing lost' : `WRONG: ${wrong.slice(0, 5).join('; ')}`}\n`);
  faults += wrong.length;
}

function harm(text: string, told: readonly string[], times = 1): string[] {
  const { lost, twice, halves } = damage(text, told, times);
  return [
    ...lost.map((line) => `lost: ${line}`),
    ...twice.map((line) => `twice: ${line}`),
    ...halves.map((line) => `half: ${line}`),
  ];
}

/** Kills writers at random moments. `times` makes the lines longer, `fresh` takes a new journal each time. */
async function killing(place: string, script: string, kills: number, times: number, fresh: boolean): Promise<void> {
  const wrong: string[] = [];
  let [told, torn, count]: [string[], number, number] = [[], 0, 0];
  let file = path.join(place, `killed-${times}.txt`);
  fs.writeFileSync(file, '');
  for (let round = 0; round < kills && wrong.length === 0; round += 1) {
    if (fresh) {
      fs.rmSync(file);
      [told, file] = [[], path.join(place, `killed-${times}-${round}.txt`)];
      fs.writeFileSync(file, '');
    }
    const args = [file, `k${round}`, '100000', String(times)];
    const { lines } = await runAppender(script, args, Math.random() * (fresh ? 8 : 30));
    told.push(...lines);
    count += lines.length;
    const text = fs.readFileSync(file, 'utf8');
    if (text !== '' && !text.endsWith('\n')) torn += 1;
    const read = machineFiles.read(file);
    wrong.push(...harm(read.ok ? read.content.text : '', told, times));
    if (fresh || round === kills - 1) wrong.push(...afterwards(file, told, times));
  }
  fs.rmSync(file);
  const what = `kill -9 of ${kills} writers of lines of up to ${120 * times} characters`;
  tell(`${what}, ${count} told as saved, ${torn} found torn and mended`, wrong);
}

function afterwards(file: string, told: readonly string[], times: number): string[] {
  const end = machineFiles.append(file, () => ['2026-02-14 A1: note end-9 ']);
  const wrong = end.saved ? [] : [end.says ?? ''];
  const left = besides(file).map((name) => `left behind: ${name}`);
  return [...wrong, ...harm(fs.readFileSync(file, 'utf8'), told, times), ...left];
}

async function together(place: string, script: string): Promise<void> {
  const wrong: string[] = [];
  for (let round = 0; round < 10; round += 1) {
    const file = path.join(place, `together${round}.txt`);
    fs.writeFileSync(file, '');
    const labels = ['a', 'b', 'c', 'd'];
    const runs = await Promise.all(labels.map((label) => runAppender(script, [file, label, '50'], null)));
    const text = fs.readFileSync(file, 'utf8');
    wrong.push(
      ...harm(
        text,
        runs.flatMap(({ lines }) => lines),
      ),
    );
    if (text.split('\n').length !== 201) wrong.push(`${text.split('\n').length - 1} lines of 200`);
    wrong.push(...besides(file).map((name) => `left behind: ${name}`));
  }
  tell('200 lines from four writers at once, ten times', wrong);
}

const CALLS = 'openat read pread64 write fsync rename link unlink statx getdents64 readlink close'.split(' ');

/** Kills a writer at its first, second, third … call of each kind; `strace` must be there to do it. */
function killedAtEachCall(place: string, script: string): void {
  if (spawnSync('strace', ['-V']).status !== 0) {
    process.stdout.write('kill -9 at every system call: not tried, there is no strace here\n');
    return;
  }
  const wrong: string[] = [];
  const file = path.join(place, 'traced.txt');
  const next = '2026-02-14 A1: note next-9 ';
  let kills = 0;
  for (const call of CALLS) {
    for (let at = 1; at < 1000; at += 1) {
      fs.writeFileSync(file, '2026-02-14 A1: note old-9 ');
      const inject = ['-f', '-o', '/dev/null', '-e', `trace=${call}`, '-e', `inject=${call}:signal=SIGKILL:when=${at}`];
      const args = [...inject, process.execPath, script, file, 'one', '1'];
      const { stdout, status } = spawnSync('strace', args, { encoding: 'utf8' });
      const told = stdout.split('\n').slice(0, -1);
      const end = machineFiles.append(file, () => [next]);
      if (!end.saved) wrong.push(`${call} ${at}: ${end.says ?? ''}`);
      wrong.push(...harm(fs.readFileSync(file, 'utf8'), ['2026-02-14 A1: note old-9 ', ...told, next]));
      wrong.push(...besides(file).map((name) => `${call} ${at} left behind: ${name}`));
      if (status === 0) break;
      kills += 1;
    }
  }
  tell(`kill -9 at every system call of an append, ${kills} of them`, wrong);
}

/** Every size of the room that is left, on a real file system of 64 kB. */
function fullDisk(place: string): void {
  const mount = path.join(place, 'small');
  fs.mkdirSync(mount);
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', mount]);
  if (mounted.status !== 0) {
    process.stdout.write('a full disk of 64 kB: not tried, mounting one was refused here\n');
    return;
  }
  try {
    const wrong: string[] = [];
    let refused = 0;
    for (let length = 500; length < 40_000; length += 1700) {
      for (let ballast = 0; ballast < 64_000; ballast += 4096) refused += fillOnce(mount, ballast, length, wrong);
    }
    tell(`a full disk of 64 kB, ${refused} times refused`, refused === 0 ? ['it never was full'] : wrong);
  } finally {
    spawnSync('umount', [mount]);
  }
}

function fillOnce(mount: string, ballast: number, length: number, wrong: string[]): number {
  for (const name of fs.readdirSync(mount)) fs.rmSync(path.join(mount, name));
  const file = path.join(mount, 'fishroom.txt');
  fs.writeFileSync(file, OLD);
  try {
    fs.writeFileSync(path.join(mount, 'ballast'), 'x'.repeat(ballast));
  } catch {
    // The ballast takes what there is.
  }
  const line = `${LINE} "${'x'.repeat(length)}"`;
  const result = machineFiles.append(file, () => [line]);
  const text = fs.readFileSync(file, 'utf8');
  const read = machineFiles.read(file);
  if (read.ok && read.content.text !== (result.saved ? `${OLD}\n${line}\n` : OLD))
    wrong.push(`${ballast}/${length}: told otherwise`);
  if (!text.startsWith(OLD)) wrong.push(`${ballast}/${length}: old lines changed`);
  if (!result.saved) wrong.push(...besides(file).map((name) => `${ballast}/${length}: left behind: ${name}`));
  return result.saved ? 0 : 1;
}

function everyCall(): void {
  const wrong: string[] = [];
  let tried = 0;
  for (const how of ['before', 'after', 'half'] as const) {
    for (const code of ['EIO', 'ENOSPC', 'EACCES', 'EINTR', 'EMFILE', 'EPERM']) {
      for (const later of [false, true]) {
        for (let at = 0; at < 60; at += 1) {
          const disk = new MemoryDisk();
          disk.put('/room/fishroom.txt', OLD);
          const broken = failing(disk, { at, later, how, code });
          const result = filesOn(broken.disk, aloneMachine()).append('/room/fishroom.txt', () => [LINE]);
          const read = filesOn(disk, aloneMachine()).read('/room/fishroom.txt');
          const text = read.ok ? read.content.text : '';
          const may = result.saved ? [`${OLD}\n${LINE}\n`] : result.unsure ? [OLD, `${OLD}\n${LINE}\n`] : [OLD];
          if (!may.includes(text)) wrong.push(`${code} ${how} call ${at}`);
          tried += 1;
        }
      }
    }
  }
  tell(`${tried} failing calls of an append`, wrong);
}

/** The same under every command that writes, each file all or nothing and told as it is. */
async function everyCallOfCommands(): Promise<void> {
  const wrong: string[] = [];
  let tried = 0;
  for (const command of WRITING) {
    const before = Object.fromEntries(
      Object.entries(command.world.files ?? {}).map(([name, text]) => [name, String(text)]),
    );
    const whole = await tryOnce(command);
    for (const how of ['before', 'after', 'half'] as const) {
      for (const code of ['EIO', 'ENOSPC', 'EACCES', 'EPERM']) {
        for (const later of [false, true]) {
          for (let at = 0; at <= whole.calls; at += 1, tried += 1) {
            const faults = faultsAfter(before, whole, await tryOnce(command, { at, later, how, code }));
            wrong.push(
              ...faults.map((fault) => `${command.name}, ${code} ${how} call ${at}, later ${later}: ${fault}`),
            );
          }
        }
      }
    }
  }
  tell(`${tried} failing calls of ${WRITING.length} commands that write`, wrong);
}

const place = fs.mkdtempSync(path.join(os.tmpdir(), 'tankside-faults-'));
try {
  const script = buildAppender(place);
  const writer = buildAppender(place, 'writer');
  everyCall();
  await everyCallOfCommands();
  await oddPlaces(place, tell);
  withoutRights(place, writer, tell);
  await readOnly(place, tell);
  await fullDiskOfCommands(place, tell);
  await mixedTogether(place, writer, 5, tell);
  const victim = buildVictim(place, true);
  for (const kind of KINDS) await killedInside(place, victim, kind, KILLS, tell);
  await commandsKilledAtEachCall(place, victim, tell);
  killedAtEachCall(place, script);
  await together(place, script);
  fullDisk(place);
  await killing(place, script, KILLS, 1, false);
  await killing(place, script, Math.ceil(KILLS / 5), 10_000, true);
} finally {
  fs.rmSync(place, { recursive: true, force: true });
}
process.exitCode = faults === 0 ? 0 : 1;

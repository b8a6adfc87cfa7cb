/** `npm run faults`: four commands that write to one journal at once, and each of them killed at each of its calls. */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { machineFiles } from '../../../src/files/files.ts';
import { damageOf, KINDS, room } from '../../support/deeds.ts';
import { besides, runAppender } from '../../support/processes.ts';
import { toTold, type Tell, type Victim } from './kills.ts';
import { Journal } from './law.ts';

/** Deeds told so far: as done, as not done. */
class Told {
  readonly done: string[] = [];
  readonly refused: string[] = [];

  add(lines: readonly string[]): void {
    for (const line of lines) {
      if (line.startsWith('not ')) this.refused.push(line.slice(4));
      else this.done.push(line);
    }
  }

  damage(file: string): readonly string[] {
    const read = machineFiles.read(file);
    return read.ok ? damageOf(read.content.text, this.done, this.refused) : [read.says];
  }
}

/** Four writers at once: two jot, one settles, one tidies. */
export async function mixedTogether(place: string, script: string, rounds: number, tell: Tell): Promise<void> {
  const wrong: string[] = [];
  let count = 0;
  for (let round = 0; round < rounds; round += 1) {
    const file = path.join(place, `mixed-${round}.txt`);
    fs.writeFileSync(file, room());
    const kinds = ['jot', 'jot', 'settle', 'tidy'] as const;
    const runs = await Promise.all(
      kinds.map((kind, n) => runAppender(script, [file, kind, 'abcd'[n] ?? '', '1', '20'], null)),
    );
    const told = new Told();
    for (const { lines, errors } of runs) {
      told.add(lines);
      if (errors !== '') wrong.push(errors);
    }
    count += told.done.length;
    if (told.done.length + told.refused.length !== 80) wrong.push('a writer ended early');
    wrong.push(...told.damage(file), ...besides(file).map((name) => `left behind: ${name}`));
  }
  tell(`four writers at once, two jot, one settle, one tidy: ${count} told as done`, wrong);
}

const CALLS = 'write fsync rename link unlink ftruncate fchmod fchown'.split(' ');

/** Kills at the first, second, third … call of each kind that changes anything; `strace` must be there to do it. */
export async function killedAtEachCall(place: string, victim: Victim, tell: Tell): Promise<void> {
  if (spawnSync('strace', ['-V']).status !== 0) {
    process.stdout.write('kill -9 at every system call of settle and tidy: not tried, there is no strace here\n');
    return;
  }
  for (const kind of KINDS) {
    const wrong: string[] = [];
    let kills = 0;
    for (const call of CALLS) {
      for (let at = 1; at < 100; at += 1) {
        const journal = new Journal(path.join(place, `traced-${kind}.txt`), kind);
        const inject = ['-e', `trace=${call}`, '-e', `inject=${call}:signal=SIGKILL:when=${at}`];
        const args = ['-f', '-o', '/dev/null', ...inject, process.execPath, ...victim, ...journal.next('one')];
        const { stdout, status } = spawnSync('strace', args, { encoding: 'utf8' });
        const told = toTold(/[+-]/.exec(stdout)?.[0] ?? '');
        const faults = [...journal.after('one', told), ...(await journal.end())];
        wrong.push(...faults.map((fault) => `${call} ${at}: ${fault}`));
        if (status === 0) break;
        kills += 1;
      }
    }
    tell(`kill -9 at every call of ${kind} that changes the disk, ${kills} of them`, wrong);
  }
}

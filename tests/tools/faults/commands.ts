/** `npm run faults`, the part that kills jot, settle and tidy: at random, at each call, and four of them at once. */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { machineFiles } from '../../../src/files/files.ts';
import { damageOf, deed, KINDS, room, AUCTIONS, type Kind } from '../../support/deeds.ts';
import { besides, runAppender } from '../../support/processes.ts';

export type Tell = (what: string, wrong: readonly string[]) => void;

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
    return read.ok ? damageOf(read.text, this.done, this.refused) : [read.says];
  }
}

/** Kills a writer at a random moment, again and again; a new journal now and then, since settling reads all of it. */
export async function killedAtRandom(
  place: string,
  script: string,
  kind: Kind,
  kills: number,
  tell: Tell,
): Promise<void> {
  const wrong: string[] = [];
  let [count, torn] = [0, 0];
  for (let round = 0; round < kills && wrong.length === 0;) {
    const file = path.join(place, `killed-${kind}-${round}.txt`);
    fs.writeFileSync(file, room());
    const told = new Told();
    for (let next = 1; next < AUCTIONS / 2 && round < kills && wrong.length === 0; round += 1) {
      const args = [file, kind, `k${round}`, String(next), '100'];
      const { lines } = await runAppender(script, args, Math.random() * 60);
      told.add(lines);
      count += lines.length;
      // The deed in whose midst it was killed may be done or not: it is not asked for again.
      next += lines.length + 1;
      if (!fs.readFileSync(file, 'utf8').endsWith('\n')) torn += 1;
      wrong.push(...told.damage(file));
    }
    wrong.push(...(await afterwards(file, told)));
    fs.rmSync(file);
  }
  tell(`kill -9 of ${kills} times ${kind}, ${count} told as done, ${torn} found torn and mended`, wrong);
}

/** The next healthy write must mend what is torn and clear up. */
async function afterwards(file: string, told: Told): Promise<readonly string[]> {
  const { done } = await deed('jot', file, 'end', 1);
  const left = besides(file).map((name) => `left behind: ${name}`);
  return [...(done ? [] : ['the next jot is refused']), ...told.damage(file), ...left];
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
export async function killedAtEachCall(place: string, script: string, tell: Tell): Promise<void> {
  if (spawnSync('strace', ['-V']).status !== 0) {
    process.stdout.write('kill -9 at every system call of settle and tidy: not tried, there is no strace here\n');
    return;
  }
  for (const kind of KINDS) {
    const wrong: string[] = [];
    let kills = 0;
    for (const call of CALLS) {
      for (let at = 1; at < 100; at += 1) {
        const file = path.join(place, `traced-${kind}.txt`);
        fs.writeFileSync(file, room());
        const inject = [
          '-f',
          '-o',
          '/dev/null',
          '-e',
          `trace=${call}`,
          '-e',
          `inject=${call}:signal=SIGKILL:when=${at}`,
        ];
        const args = [...inject, process.execPath, script, file, kind, 'one', '1', '1'];
        const { stdout, status } = spawnSync('strace', args, { encoding: 'utf8' });
        const told = new Told();
        told.add(stdout.split('\n').slice(0, -1));
        wrong.push(
          ...[...told.damage(file), ...(await afterwards(file, told))].map((fault) => `${call} ${at}: ${fault}`),
        );
        if (status === 0) break;
        kills += 1;
      }
    }
    tell(`kill -9 at every call of ${kind} that changes the disk, ${kills} of them`, wrong);
  }
}

/**
 * `npm run faults`, the part that kills jot, settle and tidy in the midst of writing, from outside, with SIGKILL:
 * at random moments that are spread evenly over their calls on the disk, however long each of these takes.
 */
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { thisMachine } from '../../../src/files/machine.ts';
import type { Kind } from '../../support/deeds.ts';
import { besides } from '../../support/processes.ts';
import { Journal, type Told } from './law.ts';
import { IN_ONE_JOURNAL } from './small.ts';

export type Tell = (what: string, wrong: readonly string[]) => void;

/** What node is given to run the process that is to be killed, before its own words. */
export type Victim = readonly string[];

/**
 * Builds it. `quick` takes half a minute less for a hundred of them: their grammar is made once and started from
 * a snapshot. Where this engine makes none, the program itself is run.
 */
export function buildVictim(place: string, quick: boolean): Victim {
  const [script, blob] = [path.join(place, 'victim.cjs'), path.join(place, 'victim.blob')];
  const entry = fileURLToPath(new URL('./victim.ts', import.meta.url));
  buildSync({ entryPoints: [entry], outfile: script, bundle: true, platform: 'node', format: 'cjs' });
  if (!quick) return [script];
  const { status } = spawnSync(process.execPath, ['--snapshot-blob', blob, '--build-snapshot', script]);
  return status === 0 && fs.existsSync(blob) ? ['--snapshot-blob', blob] : [script];
}

/** When to kill: so many milliseconds after so many marks. */
interface Moment {
  readonly marks: number;
  readonly delay: number;
}

interface Killed {
  /** One letter for each call that it began to make on the disk, after a `>`. */
  readonly marks: string;
  readonly told: Told;
  /** Milliseconds from its beginning to each mark; empty where it was killed before it could tell. */
  readonly times: readonly number[];
  /** What it died of by itself, where nobody had to kill it. */
  readonly failed: string | null;
}

/** Runs it up to that mark, lets it go on, and kills it so much later; where it is told sooner, then. */
function killAt(victim: Victim, words: readonly string[], { marks, delay }: Moment): Promise<Killed> {
  return new Promise((resolve, reject) => {
    const args = [...victim, ...words, String(marks)];
    const child = spawn(process.execPath, args, { stdio: 'pipe' });
    let [out, errors] = ['', ''];
    child.stdin.on('error', () => undefined);
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      if (child.killed || !(out.endsWith('\n') || (out.length >= marks && !/[+-]/.test(out)))) return;
      child.stdin.write('.');
      thisMachine.pause(delay);
      child.kill('SIGKILL');
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
    child.on('error', reject);
    child.on('close', (_, signal) => {
      const [, begun = '', told = '', times = ''] = /^([>a-z]*)([+-]?)(.*)/.exec(out) ?? [];
      resolve({
        marks: begun,
        told: toTold(told),
        times: told === '' ? [] : times.split(' ').map(Number),
        failed: signal === 'SIGKILL' ? null : `it ended by itself: ${errors.trim().slice(0, 500)}`,
      });
    });
  });
}

/** What a sign that the victim printed says. */
export function toTold(sign: string): Told {
  return sign === '+' || sign === '-' ? sign : null;
}

/** How the time of one command is spread over its calls, learnt from those that come to their end. */
class Course {
  #gaps: readonly number[] = [];

  learn({ times }: Killed): void {
    const gaps = times.map((time, at) => (times[at + 1] ?? time + 1) - time);
    if (gaps.length === this.#gaps.length) this.#gaps = gaps.map((gap, at) => (gap + (this.#gaps[at] ?? gap)) / 2);
    else if (gaps.length > 0) this.#gaps = gaps;
  }

  /** Any call, and the end, as likely as any other; then any moment before the next. The end until a course is known. */
  draw(): Moment {
    if (this.#gaps.length === 0) return { marks: 1000, delay: 0 };
    const at = Math.floor(Math.random() * (this.#gaps.length + 1));
    return { marks: at + 1, delay: Math.random() * (this.#gaps[at] ?? 1) };
  }
}

/** What the kills hit. */
class Tally {
  before = 0;
  inside = 0;
  after = 0;
  untold = 0;
  readonly found = { locks: 0, records: 0, others: 0, torn: 0 };
  readonly #calls = new Map<number, number>();

  add(journal: Journal, { marks, told }: Killed, old: string): void {
    if (told !== null) this.after += 1;
    else if (marks.length <= 1) this.before += 1;
    else this.inside += 1;
    if (told === null && marks.length > 1) this.#calls.set(marks.length, (this.#calls.get(marks.length) ?? 0) + 1);
    if (told === null && journal.text !== old) this.untold += 1;
    const left = besides(journal.file);
    if (left.some((name) => name.endsWith('.lock'))) this.found.locks += 1;
    if (left.some((name) => name.endsWith('.pending'))) this.found.records += 1;
    if (left.some((name) => name.includes('.new-'))) this.found.others += 1;
    if (!fs.readFileSync(journal.file, 'utf8').endsWith('\n')) this.found.torn += 1;
  }

  toString(): string {
    const { locks, records, others, torn } = this.found;
    const calls = [...this.#calls.values()];
    const few = calls.length === 0 ? 0 : Math.min(...calls);
    return (
      `${this.before} before it touched the disk, ${this.inside} inside ` +
      `(at ${calls.length} of its calls, ${few} to ${Math.max(0, ...calls)} at each), ${this.after} once told as done; ` +
      `found ${locks} locks, ${records} records, ${others} unfinished files, ${torn} torn ends; ` +
      `${this.untold} done before they could be told`
    );
  }
}

/** Kills one kind of command again and again; prints where the kills hit and what was lost. */
export async function killedInside(
  place: string,
  victim: Victim,
  kind: Kind,
  kills: number,
  tell: Tell,
): Promise<void> {
  const wrong: string[] = [];
  // After a writer that was killed there is more to do: its lock to pass, what it began to see to.
  const [alone, afterOne, tally] = [new Course(), new Course(), new Tally()];
  let journals = 0;
  for (let round = 0; round < kills && wrong.length === 0; journals += 1) {
    const journal = new Journal(path.join(place, `killed-${kind}-${journals}.txt`), kind);
    for (let one = 0; one < IN_ONE_JOURNAL && round < kills && wrong.length === 0; one += 1, round += 1) {
      const label = `k${round}`;
      const words = journal.next(label);
      const old = journal.text;
      const course = besides(journal.file).length === 0 ? alone : afterOne;
      const killed = await killAt(victim, words, course.draw());
      wrong.push(...(killed.failed === null ? [] : [killed.failed]), ...journal.after(label, killed.told));
      course.learn(killed);
      tally.add(journal, killed, old);
    }
    wrong.push(...(await journal.end()));
    fs.rmSync(journal.file);
  }
  const tried = `kill -9 of ${kills} times ${kind} on ${journals} journals, text, mode and owner compared after each`;
  tell(`${tried}: ${tally.toString()}`, wrong);
}

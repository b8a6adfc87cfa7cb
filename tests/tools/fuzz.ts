/**
 * `npm run fuzz`: asks hostile journals every question, for as many rounds as told (`fuzz ROUNDS SEED SECONDS`), then
 * the giants. Prints what it tried, every fault with the seed that shows it again, and the slowest. The rounds run in
 * a process of their own: one that takes more than SECONDS is told as hung, and the next goes on behind it.
 * Interrupted (Ctrl-C) it tells of those that it has tried.
 */
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { askHostile } from '../support/laws.ts';
import { GIANTS } from '../support/giants.ts';
import { tankside } from '../support/run.ts';

const ROUNDS = Number(process.argv[2] ?? '20000');
const FIRST = Number(process.argv[3] ?? '1');
/** A round takes a tenth of one, on a busy machine a few. */
const SECONDS = Number(process.argv[4] ?? '300');
/** The word that makes this the process which runs the rounds. */
const ASKS = 'asks';
/** Rounds after which a long run says how far it is. */
const NEWS = 1000;

let wrong = 0;
let stopped = false;

function tell(text: string): void {
  fs.writeSync(1, `${text}\n`);
}

/** Runs the rounds one after another: `at SEED` as each begins, its faults, `done SECONDS WORDS` as it ends. */
async function ask(): Promise<void> {
  for (let seed = FIRST; seed < FIRST + ROUNDS; seed += 1) {
    tell(`at ${seed}`);
    const start = performance.now();
    try {
      const { argv, wrong: faults } = await askHostile(seed);
      for (const fault of faults) tell(`WRONG seed ${seed}, ${argv.join(' ')}: ${fault}`);
      tell(`done ${((performance.now() - start) / 1000).toFixed(2)} ${argv.join(' ').replaceAll(/\s+/g, ' ')}`);
    } catch (error) {
      const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
      tell(`CRASH seed ${seed}: ${what.replaceAll('\n', ' ')}`);
    }
  }
}

/** What is known of the rounds that were run so far. */
class Score {
  readonly #asked = new Map<string, number>();
  #slowest = { seconds: 0, seed: 0, words: '' };
  #tried = 0;
  /** The round that is being run. */
  at = FIRST;

  hear(line: string): void {
    const [, word = '', rest = ''] = /^(\S+) (.*)/.exec(line) ?? [];
    if (word === 'at') this.at = Number(rest);
    else if (word === 'done') this.#done(rest);
    else {
      wrong += 1;
      tell(line);
    }
    if (word === 'CRASH' || word === 'HANGS' || word === 'done') this.#count();
  }

  #done(rest: string): void {
    const [, seconds = '0', words = ''] = /^(\S+) (.*)/.exec(rest) ?? [];
    const [command = ''] = words.split(' ');
    this.#asked.set(command, (this.#asked.get(command) ?? 0) + 1);
    if (Number(seconds) > this.#slowest.seconds) this.#slowest = { seconds: Number(seconds), seed: this.at, words };
  }

  #count(): void {
    this.#tried += 1;
    if (this.#tried % NEWS === 0 && this.#tried < ROUNDS) tell(`${this.#tried} tried, ${wrong} faults`);
  }

  sum(): string {
    const { seconds, seed, words } = this.#slowest;
    const asked = [...this.#asked].map(([name, times]) => `${name} ${times}`).join(', ');
    return `${this.#tried} hostile journals from seed ${FIRST}: ${asked}\nslowest: ${seconds.toFixed(2)} s, seed ${seed}, ${words}`;
  }
}

/** Runs the rounds from a seed on. True where it came to their end, false where one hangs or takes the process with it. */
function watched(first: number, score: Score): Promise<boolean> {
  const words = [process.argv[1] ?? '', String(FIRST + ROUNDS - first), String(first), ASKS];
  const child = spawn(process.execPath, [...process.execArgv, ...words], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((resolve, reject) => {
    let patience: NodeJS.Timeout | undefined;
    let heard = false;
    const wait = (): void => {
      clearTimeout(patience);
      patience = setTimeout(() => child.kill('SIGKILL'), SECONDS * 1000);
    };
    wait();
    createInterface({ input: child.stdout }).on('line', (line) => {
      heard = true;
      wait();
      score.hear(line);
    });
    child.on('error', reject);
    child.on('close', (status) => {
      clearTimeout(patience);
      if (heard) resolve(status === 0);
      else reject(new Error('the rounds could not be begun'));
    });
  });
}

async function rounds(): Promise<void> {
  const score = new Score();
  for (let first = FIRST; first < FIRST + ROUNDS && !stopped; first = score.at + 1) {
    if ((await watched(first, score)) || stopped) break;
    score.hear(`HANGS seed ${score.at}: no answer in ${SECONDS} s, or it took the process with it`);
  }
  tell(score.sum());
}

/** How many times longer the whole giant may take than a quarter of it: 4 where time grows with length alone. */
const GROWTH = 8;
/** Below this many seconds a ratio says nothing. */
const NOTICEABLE = 0.3;

async function giants(): Promise<void> {
  for (const { name, journal } of GIANTS) {
    let [quarter, whole] = [await checking(journal(0.25)), await checking(journal())];
    const grows = (): boolean => whole.seconds > NOTICEABLE && whole.seconds > GROWTH * quarter.seconds;
    // A busy machine can slow one of the two; time that grows with the square is there every time.
    for (let tries = 0; tries < 3 && grows(); tries += 1) {
      quarter = await checking(journal(0.25));
      whole = await checking(journal());
    }
    const quadratic = grows();
    const right = whole.ended && quarter.ended && !quadratic;
    if (!right) wrong += 1;
    const times = (whole.seconds / quarter.seconds).toFixed(1);
    tell(`${right ? 'read' : 'WRONG'}: ${name}, ${whole.seconds.toFixed(1)} s, ${times} times a quarter of it`);
  }
}

async function checking(journal: string): Promise<{ ended: boolean; seconds: number }> {
  const start = performance.now();
  const { status } = await tankside(['check'], { files: { '/room/fishroom.txt': journal } });
  return { ended: status === 0 || status === 1, seconds: (performance.now() - start) / 1000 };
}

async function watch(): Promise<void> {
  // Not once: whoever started us may hand on the signal that we had already.
  process.on('SIGINT', () => (stopped = true));
  await rounds();
  if (!stopped) await giants();
  tell(wrong === 0 ? 'nothing crashed, nothing hung, nothing leaked' : `${wrong} faults`);
  process.exitCode = wrong === 0 ? 0 : 1;
}

await (process.argv[4] === ASKS ? ask() : watch());

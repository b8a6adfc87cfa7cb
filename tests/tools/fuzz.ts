/**
 * `npm run fuzz`: asks hostile journals every question, for as many rounds as told (`fuzz ROUNDS SEED`), then
 * the giants. Prints what it tried, every fault with the seed that shows it again, and the slowest. Interrupted
 * (Ctrl-C, SIGTERM) it ends with the journal that it is at, and tells of those that it has tried.
 */
import process from 'node:process';
import { askHostile } from '../support/laws.ts';
import { GIANTS } from '../support/giants.ts';
import { tankside } from '../support/run.ts';

const ROUNDS = Number(process.argv[2] ?? '20000');
const FIRST = Number(process.argv[3] ?? '1');

/** Rounds after which a long run says how far it is. */
const NEWS = 1000;

let wrong = 0;
let stopped = false;

function tell(text: string): void {
  process.stdout.write(`${text}\n`);
}

async function rounds(): Promise<void> {
  const asked = new Map<string, number>();
  let slowest = { seconds: 0, seed: 0, argv: '' };
  let tried = 0;
  for (let seed = FIRST; tried < ROUNDS && !stopped; seed += 1) {
    const start = performance.now();
    try {
      const { argv, wrong: faults } = await askHostile(seed);
      const [command = ''] = argv;
      asked.set(command, (asked.get(command) ?? 0) + 1);
      for (const fault of faults) {
        wrong += 1;
        tell(`WRONG seed ${seed}, ${argv.join(' ')}: ${fault}`);
      }
      const seconds = (performance.now() - start) / 1000;
      if (seconds > slowest.seconds) slowest = { seconds, seed, argv: argv.join(' ') };
    } catch (error) {
      wrong += 1;
      tell(`CRASH seed ${seed}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
    tried += 1;
    if (tried % NEWS === 0 && tried < ROUNDS) tell(`${tried} tried, ${wrong} faults`);
    // Lets a signal in.
    await new Promise(setImmediate);
  }
  tell(
    `${tried} hostile journals from seed ${FIRST}: ${[...asked].map(([name, times]) => `${name} ${times}`).join(', ')}`,
  );
  tell(`slowest: ${slowest.seconds.toFixed(2)} s, seed ${slowest.seed}, ${slowest.argv}`);
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

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => (stopped = true));
await rounds();
if (!stopped) await giants();
tell(wrong === 0 ? 'nothing crashed, nothing hung, nothing leaked' : `${wrong} faults`);
process.exitCode = wrong === 0 ? 0 : 1;

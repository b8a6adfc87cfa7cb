/**
 * `npm run bench`: how long questions take and how much they hold, as ratios measured side by side in one run:
 * every command in turn, medians of the ratios of each round, each with its goal. What nothing is remembered for
 * stands beside what is remembered. A scanner written by hand, with the same fold, is the limit. Never part of the
 * tests. `ROUNDS=3` is quicker; `LONG=0` leaves out the journal of a million lines, which takes most of the time.
 */
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import { changing, endingToday, generated, rows } from './bench/journals.ts';
import type { Sample } from './bench/journals.ts';
import { Rounds, Runner } from './bench/run.ts';
import type { Command } from './bench/run.ts';

const ROUNDS = Number(process.env['ROUNDS'] ?? 5);
/** Of what takes a minute. */
const LONG = Number(process.env['LONG'] ?? 2);
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const cache = join(folder, 'cache');
const tool = resolve('dist/tankside.cjs');
const scanner = join(folder, 'scanner.cjs');
const peak = join(folder, 'peak.cjs');

await build({
  entryPoints: ['tests/tools/scanner.ts'],
  outfile: scanner,
  format: 'cjs',
  platform: 'node',
  bundle: true,
  minify: true,
});
// Tells the most memory that the process held, after its own answer.
writeFileSync(
  peak,
  "process.on('exit', () => process.stderr.write(`\\nPEAK ${process.resourceUsage().maxRSS}\\n`));\n",
);

const START: Command = { argv: ['-e', '0'], cache: null };
const cold = (argv: readonly string[]): Command => ({ argv, cache: null });
const due = ({ path, last }: Sample): string[] => [tool, 'due', '--journal', path, '--on', last];
const jot = ({ path, last }: Sample, line = 'room: all well'): string[] => [
  tool,
  'jot',
  '--journal',
  path,
  '--on',
  last,
  line,
];
/** As it was with one line more, which the list of that moment was told with: so the second line of a day finds it. */
function written(runner: Runner, journal: Sample & { readonly asItWas: () => void }): () => void {
  return () => {
    journal.asItWas();
    runner.milliseconds({ argv: jot(journal, 'N2: fed flakes'), cache });
  };
}

/** Longer than the cache waits before it believes the facts of a file, milliseconds. */
const SETTLED = 3_500;

/** The first answer after the lines that come later: what is kept is put back as it was before them. */
function added(runner: Runner, name: string, journal: ReturnType<typeof changing>): Command {
  const [own, before] = [join(folder, `cache-${name}`), join(folder, `cache-before-${name}`)];
  runner.milliseconds({ argv: due(journal), cache: own });
  // What is kept is proved by its facts once its last change lies a little back, and that is when lines come.
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, SETTLED);
  runner.milliseconds({ argv: [tool, 'tanks', '--journal', journal.path, '--on', journal.last], cache: own });
  cpSync(own, before, { recursive: true });
  return {
    argv: due(journal.then),
    cache: own,
    before: () => {
      putBack(before, own);
      journal.longer();
    },
  };
}

/** Makes a folder of files like another; one that is as it should be is left alone, as a keeper's own would be. */
function putBack(from: string, to: string): void {
  const held = (file: string): Buffer | null => (existsSync(file) ? readFileSync(file) : null);
  for (const name of readdirSync(to)) if (!existsSync(join(from, name))) rmSync(join(to, name));
  for (const name of readdirSync(from)) {
    const content = readFileSync(join(from, name));
    if (held(join(to, name))?.equals(content) !== true) writeFileSync(join(to, name), content, { mode: 0o600 });
  }
}

/** A line that changes the daily list, so that two lists are held against each other. */
const LEVEL = 'North: level 40 mm';

function tell(name: string, value: number, unit: string, goal: readonly [goal: number, stretch: number] | null): void {
  const reached =
    goal === null ? '' : value <= goal[1] ? 'stretch reached' : value <= goal[0] ? 'goal reached' : 'not reached';
  const asked = goal === null ? '' : `goal ${goal[0]}, stretch ${goal[1]}: ${reached}`;
  console.log(`${name.padEnd(44)} ${value.toFixed(2).padStart(7)} ${unit.padEnd(9)} ${asked}`);
}

function timesStart(rounds: Rounds, name: string, goal: readonly [number, number] | null): void {
  tell(name, rounds.ratio(name, 'start'), '× start', goal);
}

/** Everything that takes seconds at most. */
function short(runner: Runner): void {
  const example: Sample = { path: resolve('examples/workshop/fishroom.txt'), last: '2026-11-22' };
  const ten = generated(folder, 10_000);
  const hundred = generated(folder, 100_000);
  const jotted = changing(folder, 'jotted', endingToday(folder, ten));
  const edited = changing(folder, 'edited', ten);
  const jottedMore = changing(folder, 'jotted-more', endingToday(folder, hundred));
  const editedMore = changing(folder, 'edited-more', hundred);
  for (const { path, last } of [jotted, jottedMore]) runner.milliseconds({ argv: due({ path, last }), cache });
  const commands = new Map<string, Command>([
    ['start', START],
    ['--help', cold([tool, '--help'])],
    ['--version', cold([tool, '--version'])],
    ['completion', { argv: [tool, 'completion', 'words', '--', 'pairs', '--journal', ten.path], cache }],
    ['due, the example', cold(due(example))],
    ['due, the example, unchanged', { argv: due(example), cache }],
    ['due, 10,000 lines', cold(due(ten))],
    ['due, 10,000 lines, unchanged', { argv: due(ten), cache }],
    ['due, 10,000 lines, 1,000 added', added(runner, 'edited', edited)],
    ['due, 100,000 lines', cold(due(hundred))],
    ['due, 100,000 lines, unchanged', { argv: due(hundred), cache }],
    ['jot to 10,000 lines', { argv: jot(jotted), cache, before: jotted.asItWas }],
    ['jot of a level to 10,000 lines', { argv: jot(jotted, LEVEL), cache, before: jotted.asItWas }],
    ['jot of the next line to 10,000 lines', { argv: jot(jotted), cache, before: written(runner, jotted) }],
    ['due, 100,000 lines, 1,000 added', added(runner, 'edited-more', editedMore)],
    ['jot to 100,000 lines', { argv: jot(jottedMore), cache, before: jottedMore.asItWas }],
    ['jot of the next line to 100,000 lines', { argv: jot(jottedMore), cache, before: written(runner, jottedMore) }],
    ['due, 400 rows', cold(due(rows(folder, 400)))],
    ['due, 1 row of the same room', cold(due(rows(folder, 1)))],
  ]);
  const rounds = new Rounds(runner, commands, ROUNDS);
  console.log(
    `medians of ${ROUNDS} rounds; Node's own start took ${rounds.milliseconds('start').toFixed(0)} ms here\n`,
  );
  timesStart(rounds, '--help', [1.35, 1.15]);
  timesStart(rounds, '--version', [1.35, 1.15]);
  timesStart(rounds, 'completion', [1.35, 1.15]);
  console.log('\nnothing remembered');
  timesStart(rounds, 'due, the example', null);
  timesStart(rounds, 'due, 10,000 lines', [3.5, 2]);
  timesStart(rounds, 'due, 100,000 lines', [7, 3.3]);
  tell('400 rows against 1 row', rounds.ratio('due, 400 rows', 'due, 1 row of the same room'), 'times', [1.3, 1.05]);
  console.log('\nunchanged since the last answer');
  timesStart(rounds, 'due, the example, unchanged', null);
  timesStart(rounds, 'due, 10,000 lines, unchanged', [1.35, 1.1]);
  timesStart(rounds, 'due, 100,000 lines, unchanged', null);
  console.log('\nafter a change');
  timesStart(rounds, 'due, 10,000 lines, 1,000 added', null);
  timesStart(rounds, 'due, 100,000 lines, 1,000 added', null);
  timesStart(rounds, 'jot to 10,000 lines', [1.5, 1.15]);
  timesStart(rounds, 'jot of a level to 10,000 lines', null);
  timesStart(rounds, 'jot of the next line to 10,000 lines', null);
  timesStart(rounds, 'jot to 100,000 lines', null);
  timesStart(rounds, 'jot of the next line to 100,000 lines', null);
}

/** The journal of a million lines, beside shorter ones in the same rounds. */
function long(runner: Runner): void {
  const [ten, hundred] = [generated(folder, 10_000), generated(folder, 100_000)];
  const million = generated(folder, 1_000_000);
  const jotted = changing(folder, 'jotted-long', endingToday(folder, million));
  const edited = changing(folder, 'edited-long', million);
  runner.milliseconds({ argv: due(jotted), cache });
  const commands = new Map<string, Command>([
    ['start', START],
    ['due, 10,000 lines, unchanged', { argv: due(ten), cache }],
    ['due, 1,000,000 lines, unchanged', { argv: due(million), cache }],
    ['due, 1,000,000 lines, 1,000 added', added(runner, 'edited-long', edited)],
    ['jot to 1,000,000 lines', { argv: jot(jotted), cache, before: jotted.asItWas }],
    ['jot of the next line to 1,000,000 lines', { argv: jot(jotted), cache, before: written(runner, jotted) }],
    ['due, 100,000 lines', cold(due(hundred))],
    ['due, 1,000,000 lines', cold(due(million))],
    ['scanner, 1,000,000 lines', cold([scanner, million.path])],
  ]);
  const rounds = new Rounds(runner, commands, LONG);
  console.log(`\na million lines; medians of ${LONG} rounds`);
  const flat = rounds.ratio('due, 1,000,000 lines, unchanged', 'due, 10,000 lines, unchanged');
  timesStart(rounds, 'due, 1,000,000 lines, unchanged', null);
  tell('the same against 10,000 lines', flat, 'times', [1.15, 1.05]);
  timesStart(rounds, 'due, 1,000,000 lines, 1,000 added', [2.5, 1.6]);
  timesStart(rounds, 'jot to 1,000,000 lines', [1.5, 1.15]);
  timesStart(rounds, 'jot of the next line to 1,000,000 lines', null);
  const whole = rounds.ratio('due, 1,000,000 lines', 'scanner, 1,000,000 lines');
  timesStart(rounds, 'due, 1,000,000 lines', null);
  timesStart(rounds, 'scanner, 1,000,000 lines', null);
  tell('due against scanner, nothing remembered', whole, '× scanner', [3.5, 1]);
  const growth = rounds.beyond('due, 1,000,000 lines', 'due, 100,000 lines', 'start');
  tell('beyond start, 100,000 to 1,000,000 lines', growth, 'times', [11, 10]);
  const held = runner.memory(cold(due(million)), peak) - runner.memory(START, peak);
  tell('peak memory beyond start', held / statSync(million.path).size, '× file', [4, 1]);
}

try {
  const runner = new Runner(folder);
  short(runner);
  if (LONG > 0) long(runner);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

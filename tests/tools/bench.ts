/**
 * `npm run bench`: how long the daily question takes, as multiples of Node's own start, measured side by
 * side in one run (each command in turn, medians of the ratios of each round), with the goal of each. The
 * hand-written scanner is the limit. Never part of the tests. `ROUNDS=3` is quicker, `LINES=1000000` longer.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import { generateJournal } from './generate.ts';

const ROUNDS = Number(process.env['ROUNDS'] ?? 7);
const LINES = Number(process.env['LINES'] ?? 100_000);
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const tool = resolve('dist/tankside.cjs');
const scanner = join(folder, 'scanner.cjs');
const peak = join(folder, 'peak.cjs');

function journal(lines: number): { path: string; last: string } {
  const path = join(folder, `${lines}.txt`);
  const text = generateJournal(lines);
  writeFileSync(path, text);
  return { path, last: text.slice(text.lastIndexOf('\n', text.length - 2) + 1).slice(0, 10) };
}

/** A journal in which so many loops ask to be cleaned. */
function rows(count: number): { path: string; last: string } {
  const path = join(folder, `rows-${count}.txt`);
  const tanks = Array.from({ length: 400 }, (_, i) => `2026-01-01 tank T${i}: 60 L; alone`);
  const chores = tanks.slice(0, count).map((_, i) => `2026-01-01 T${i}: water change 30 % every 7 days`);
  writeFileSync(path, `2026-01-01 room: units metric\n${[...tanks, ...chores].join('\n')}\n`);
  return { path, last: '2026-02-01' };
}

const ten = journal(10_000);
const long = journal(LINES);
const example = { path: resolve('examples/workshop/fishroom.txt'), last: '2026-11-22' };
const jotted = join(folder, 'jotted.txt');
copyFileSync(ten.path, jotted);
await build({
  entryPoints: ['tests/tools/scanner.ts'],
  outfile: scanner,
  format: 'cjs',
  platform: 'node',
  logLevel: 'warning',
});
// Tells the most memory that the process held, after its own answer.
writeFileSync(
  peak,
  "process.on('exit', () => process.stderr.write(`\\nPEAK ${process.resourceUsage().maxRSS}\\n`));\n",
);

const due = ({ path, last }: { path: string; last: string }): string[] => [
  tool,
  'due',
  '--journal',
  path,
  '--on',
  last,
];
const many = due(rows(400));
const one = due(rows(1));

interface Measure {
  readonly name: string;
  readonly goal: string;
  readonly argv: readonly string[];
}

const measures: readonly Measure[] = [
  { name: 'node -e 0', goal: '', argv: ['-e', '0'] },
  { name: '--help', goal: '1.35', argv: [tool, '--help'] },
  { name: 'due, the example (about 900 lines)', goal: '', argv: due(example) },
  { name: 'due, 10,000 lines, no cache', goal: '3.5', argv: due(ten) },
  { name: `due, ${LINES.toLocaleString('en')} lines, no cache`, goal: LINES === 100_000 ? '7' : '', argv: due(long) },
  {
    name: 'jot, one line to 10,000',
    goal: '1.5',
    argv: [tool, 'jot', '--journal', jotted, '--on', ten.last, 'room: all well'],
  },
  { name: 'scanner, 10,000 lines', goal: 'limit', argv: [scanner, ten.path] },
  { name: `scanner, ${LINES.toLocaleString('en')} lines`, goal: 'limit', argv: [scanner, long.path] },
  { name: 'due, 400 rows', goal: '', argv: many },
  { name: 'due, 1 row of the same room', goal: '', argv: one },
];

/** Variables of the outside world change Node's own start, so both sides run without them. */
const env = { PATH: process.env['PATH'] ?? '', HOME: folder };

function run(argv: readonly string[]): string {
  const done = spawnSync(process.execPath, argv, { env, stdio: ['ignore', 'ignore', 'pipe'] });
  const told = done.stderr.toString();
  if (done.status !== 0) throw new Error(`${argv.join(' ')} ended with ${done.status}: ${told.slice(0, 400)}`);
  return told;
}

function milliseconds(argv: readonly string[]): number {
  const start = process.hrtime.bigint();
  run(argv);
  return Number(process.hrtime.bigint() - start) / 1e6;
}

/** The most memory held, bytes. */
function memory(argv: readonly string[]): number {
  return Number(/PEAK (\d+)/.exec(run(['-r', peak, ...argv]))?.[1] ?? Number.NaN) * 1024;
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

function tell(name: string, ratio: number, goal: string): void {
  console.log(`${name.padEnd(40)} ${ratio.toFixed(2).padStart(7)}  ${goal === '' ? '' : `goal ${goal}`}`);
}

try {
  readFileSync(example.path);
  for (const { argv } of measures) milliseconds(argv);
  const rounds = Array.from(
    { length: ROUNDS },
    () => new Map(measures.map((one) => [one.name, milliseconds(one.argv)])),
  );
  const between = (name: string, base: string): number =>
    median(rounds.map((round) => (round.get(name) ?? Number.NaN) / (round.get(base) ?? Number.NaN)));
  const start = median(rounds.map((round) => round.get('node -e 0') ?? Number.NaN));
  console.log(`median of ${ROUNDS} rounds, × Node's own start (${start.toFixed(0)} ms here)`);
  for (const { name, goal } of measures) tell(name, between(name, 'node -e 0'), goal);
  const [, , , , whole] = measures;
  if (whole !== undefined) {
    const limit = `scanner, ${LINES.toLocaleString('en')} lines`;
    tell(`${whole.name}, × scanner`, between(whole.name, limit), LINES === 1_000_000 ? '3.5' : '');
    const more = memory(whole.argv) - memory(['-e', '0']);
    tell('its peak memory beyond start, × file', more / statSync(long.path).size, '4 (at 1,000,000)');
  }
  tell('400 rows against 1 row', between('due, 400 rows', 'due, 1 row of the same room'), '1.3');
} finally {
  rmSync(folder, { recursive: true, force: true });
}

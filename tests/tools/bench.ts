/**
 * `npm run bench`: how long questions take, as multiples of Node's own start, measured side by side in
 * one run (each command in turn, medians of the ratios of each round), with goal and stretch of each, with
 * nothing remembered and again after the same question. The hand-written scanner is the limit. Never part of the
 * tests. `ROUNDS=3` is quicker; `LINES=1000000` takes the long journal that long, and long.
 */
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import { changing, generated, rows } from './bench/journals.ts';
import type { Sample } from './bench/journals.ts';
import { Rounds, Runner } from './bench/run.ts';
import type { Command } from './bench/run.ts';

const ROUNDS = Number(process.env['ROUNDS'] ?? 7);
const LINES = Number(process.env['LINES'] ?? 100_000);
const MILLION = LINES === 1_000_000;
const long = LINES.toLocaleString('en');
/** A tenth of the longest that the issue asks about; else the usual room of ten years. */
const less = MILLION ? '100,000' : '10,000';
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const cache = join(folder, 'cache');
const tool = resolve('dist/tankside.cjs');
const scanner = join(folder, 'scanner.cjs');
const peak = join(folder, 'peak.cjs');

await build({ entryPoints: ['tests/tools/scanner.ts'], outfile: scanner, format: 'cjs', platform: 'node' });
// Tells the most memory that the process held, after its own answer.
writeFileSync(
  peak,
  "process.on('exit', () => process.stderr.write(`\\nPEAK ${process.resourceUsage().maxRSS}\\n`));\n",
);

const cold = (argv: readonly string[], before?: () => void): Command => ({
  argv,
  cache: null,
  ...(before === undefined ? {} : { before }),
});
const due = ({ path, last }: Sample): string[] => [tool, 'due', '--journal', path, '--on', last];
const jot = ({ path, last }: Sample): string[] => [tool, 'jot', '--journal', path, '--on', last, 'room: all well'];

const example: Sample = { path: resolve('examples/workshop/fishroom.txt'), last: '2026-11-22' };
const ten = generated(folder, 10_000);
const much = generated(folder, LINES);
const jotted = changing(folder, 'jotted', ten);
const jottedLong = changing(folder, 'jotted-long', much);
const edited = changing(folder, 'edited', much);

const START = 'node -e 0';
const commands = new Map<string, Command>([
  [START, cold(['-e', '0'])],
  ['--help', cold([tool, '--help'])],
  ['--version', cold([tool, '--version'])],
  ['due, the example', cold(due(example))],
  ['due, the example, unchanged', { argv: due(example), cache }],
  ['due, 10,000 lines', cold(due(ten))],
  ['due, 10,000 lines, unchanged', { argv: due(ten), cache }],
  ...(MILLION ? [[`due, ${less} lines`, cold(due(generated(folder, 100_000)))] as const] : []),
  [`due, ${long} lines`, cold(due(much))],
  [`due, ${long} lines, unchanged`, { argv: due(much), cache }],
  [`due, ${long} lines, 1,000 added`, { argv: due(edited), cache, before: edited.longer }],
  ['jot to 10,000 lines', { argv: jot(jotted), cache, before: jotted.asItWas }],
  [`jot to ${long} lines`, { argv: jot(jottedLong), cache, before: jottedLong.asItWas }],
  [`scanner, ${long} lines`, cold([scanner, much.path])],
  ['due, 400 rows', cold(due(rows(folder, 400)))],
  ['due, 1 row of the same room', cold(due(rows(folder, 1)))],
]);

function tell(name: string, value: number, unit: string, goal: number | null, stretch: number | null): void {
  const reached = goal === null ? '' : value <= (stretch ?? 0) ? 'stretch' : value <= goal ? 'goal' : 'not reached';
  const asked = goal === null ? '' : `goal ${goal}, stretch ${stretch ?? '-'}: ${reached}`;
  console.log(`${name.padEnd(46)} ${value.toFixed(2).padStart(8)} ${unit.padEnd(9)} ${asked}`);
}

try {
  const runner = new Runner(folder);
  const rounds = new Rounds(runner, commands, ROUNDS);
  const times = (name: string, goal: number | null, stretch: number | null): void =>
    tell(name, rounds.ratio(name, START), '× start', goal, stretch);
  console.log(`medians of ${ROUNDS} rounds; Node's own start took ${rounds.milliseconds(START).toFixed(0)} ms here\n`);
  times('--help', 1.35, 1.15);
  times('--version', 1.35, 1.15);
  console.log('\nnothing remembered');
  times('due, the example', null, null);
  times('due, 10,000 lines', 3.5, 2);
  times(`due, ${long} lines`, LINES === 100_000 ? 7 : null, LINES === 100_000 ? 3.3 : null);
  const limit = `scanner, ${long} lines`;
  times(limit, null, null);
  tell(
    `due, ${long} lines`,
    rounds.ratio(`due, ${long} lines`, limit),
    '× scanner',
    MILLION ? 3.5 : null,
    MILLION ? 1 : null,
  );
  const growth = rounds.beyond(`due, ${long} lines`, `due, ${less} lines`, START);
  tell(`beyond start, ${less} to ${long} lines`, growth, 'times', MILLION ? 11 : null, MILLION ? 10 : null);
  const start = runner.memory(cold(['-e', '0']), peak);
  const held = (runner.memory(cold(due(much)), peak) - start) / statSync(much.path).size;
  tell(`peak memory beyond start, ${long} lines`, held, '× file', MILLION ? 4 : null, MILLION ? 1 : null);
  tell('400 rows against 1 row', rounds.ratio('due, 400 rows', 'due, 1 row of the same room'), 'times', 1.3, 1.05);
  console.log('\nunchanged since the last answer');
  times('due, the example, unchanged', null, null);
  times('due, 10,000 lines, unchanged', 1.35, 1.1);
  times(`due, ${long} lines, unchanged`, null, null);
  const flat = rounds.ratio(`due, ${long} lines, unchanged`, 'due, 10,000 lines, unchanged');
  tell(`the same, ${long} against 10,000 lines`, flat, 'times', 1.15, 1.05);
  console.log('\nafter a change');
  times(`due, ${long} lines, 1,000 added`, MILLION ? 2.5 : null, MILLION ? 1.6 : null);
  times('jot to 10,000 lines', 1.5, 1.15);
  times(`jot to ${long} lines`, 1.5, 1.15);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

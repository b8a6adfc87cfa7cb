/**
 * `npm run bench`: how long the daily question takes, as multiples of Node's own start, measured side by
 * side in one run (each command in turn, medians of the ratios of each round). Never part of the tests.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { generateJournal } from './generate.ts';

const ROUNDS = Number(process.env['ROUNDS'] ?? 7);
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const tool = resolve('dist/tankside.cjs');

function journal(lines: number): string {
  const path = join(folder, `${lines}.txt`);
  writeFileSync(path, generateJournal(lines));
  return path;
}

const ten = journal(10_000);
const hundred = journal(100_000);
const example = resolve('examples/workshop/fishroom.txt');
const due = (path: string, on: string): string[] => [tool, 'due', '--journal', path, '--on', on];

const commands: readonly { name: string; goal: string; argv: readonly string[] }[] = [
  { name: 'node -e 0', goal: '', argv: ['-e', '0'] },
  { name: 'tankside --help', goal: '≤ 1.35', argv: [tool, '--help'] },
  { name: 'due, the example (about 900 lines)', goal: '', argv: due(example, '2026-11-22') },
  { name: 'due, 10,000 lines', goal: '≤ 3.5', argv: due(ten, '2006-01-01') },
  { name: 'due, 100,000 lines', goal: '≤ 7', argv: due(hundred, '2026-01-01') },
];

/** Variables of the outside world change Node's own start, so both sides run without them. */
const env = { PATH: process.env['PATH'] ?? '', HOME: folder };

function milliseconds(argv: readonly string[]): number {
  const start = process.hrtime.bigint();
  const done = spawnSync(process.execPath, argv, { env, stdio: ['ignore', 'ignore', 'pipe'] });
  const took = Number(process.hrtime.bigint() - start) / 1e6;
  if (done.status !== 0)
    throw new Error(`${argv.join(' ')} ended with ${done.status}: ${done.stderr.toString().slice(0, 400)}`);
  return took;
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
};

try {
  for (const { argv } of commands) milliseconds(argv);
  const rounds = Array.from({ length: ROUNDS }, () => commands.map(({ argv }) => milliseconds(argv)));
  console.log(
    `median of ${ROUNDS} rounds, × Node's own start (${median(rounds.map((r) => r[0] ?? NaN)).toFixed(0)} ms here)`,
  );
  commands.forEach(({ name, goal }, i) => {
    const ratio = median(rounds.map((round) => (round[i] ?? NaN) / (round[0] ?? NaN)));
    console.log(`${name.padEnd(38)} ${ratio.toFixed(2).padStart(6)}  ${goal}`);
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}

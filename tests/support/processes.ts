/** Real processes that add lines to a real journal: several at once, killed at random. */
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

/** Bundles the appending process once, so that each start costs little more than node's own. */
export function buildAppender(folder: string, name: 'appender' | 'writer' = 'appender'): string {
  const outfile = path.join(folder, `${name}.cjs`);
  const entry = fileURLToPath(new URL(`../tools/${name}.ts`, import.meta.url));
  buildSync({ entryPoints: [entry], outfile, bundle: true, platform: 'node', format: 'cjs' });
  return outfile;
}

export interface Told {
  /** Lines that the process had been told were saved. */
  readonly lines: readonly string[];
  readonly status: number | null;
  readonly errors: string;
}

/** Runs an appending process to its end, or to its death so many milliseconds after the first line that it told. */
export function runAppender(script: string, args: readonly string[], killAfter: number | null): Promise<Told> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let timer: NodeJS.Timeout | null = null;
    let [out, errors] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      if (killAfter !== null) timer ??= setTimeout(() => child.kill('SIGKILL'), killAfter);
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
    child.on('error', reject);
    child.on('close', (status) => {
      if (timer !== null) clearTimeout(timer);
      resolve({ lines: out.split('\n').slice(0, -1), status, errors });
    });
  });
}

export interface Damage {
  readonly lost: readonly string[];
  readonly twice: readonly string[];
  readonly halves: readonly string[];
}

const WHOLE = /^2026-02-14 A1: note [a-z0-9]+-(\d+) ((?:the left cave, )*)$/;

/** What a journal lacks of the lines that were told as saved, holds twice, or holds in part. */
export function damage(journal: string, told: readonly string[], times = 1): Damage {
  const lines = journal.split('\n').filter((line) => line !== '');
  const seen = new Map<string, number>();
  for (const line of lines) seen.set(line, (seen.get(line) ?? 0) + 1);
  const isWhole = (line: string) => {
    const match = WHOLE.exec(line);
    return match !== null && (match[2]?.length ?? 0) === (Number(match[1]) % 9) * times * 'the left cave, '.length;
  };
  return {
    lost: told.filter((line) => !seen.has(line)),
    twice: [...seen].filter(([, count]) => count > 1).map(([line]) => line),
    halves: lines.filter((line) => !isWhole(line)),
  };
}

export function besides(file: string): readonly string[] {
  return fs.readdirSync(path.dirname(file)).filter((name) => name.startsWith(`${path.basename(file)}.`));
}

/** The one file that users run, built into a folder of its own and started as they start it. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Bundle {
  /** A folder that is nobody's fish room. */
  readonly folder: string;
  run(args: readonly string[], env?: Readonly<Record<string, string>>, input?: string): Ended;
  /** The same at a terminal so many columns wide; both streams together. */
  atTerminal(args: readonly string[], columns: number, env?: Readonly<Record<string, string>>): Ended;
  /** The same with a reader that takes the first bytes and goes. */
  closedPipe(args: readonly string[]): Promise<{ readonly status: number | null; readonly err: string }>;
  remove(): void;
}

export function buildBundle(): Bundle {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'tankside-bundle-'));
  const script = path.join(folder, 'tankside.cjs');
  execFileSync(process.execPath, ['tests/tools/build.mjs', script], { cwd: ROOT });
  const bare = { PATH: process.env['PATH'] ?? '', HOME: folder };
  return {
    folder,
    run(args, env = {}, input = '') {
      const options = { cwd: folder, env: { ...bare, ...env }, input, encoding: 'utf8' } as const;
      const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...args], options);
      return { status, out: stdout, err: stderr };
    },
    atTerminal(args, columns, env = {}) {
      const words = [process.execPath, script, ...args].map((word) => `'${word}'`).join(' ');
      const line = `stty cols ${String(columns)} rows 24; ${words}`;
      const options = { cwd: folder, env: { ...bare, TERM: 'xterm', ...env }, encoding: 'utf8' } as const;
      const { status, stdout } = spawnSync('script', ['-qec', line, '/dev/null'], options);
      return { status, out: stdout.replaceAll('\r\n', '\n'), err: '' };
    },
    closedPipe(args) {
      return new Promise((resolve, reject) => {
        const child = spawn(process.execPath, [script, ...args], { cwd: folder, env: bare });
        let err = '';
        child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
        // Closed before anything is written: every write then fails with EPIPE.
        child.stdout.destroy();
        child.on('error', reject);
        child.on('close', (status) => {
          resolve({ status, err });
        });
      });
    },
    remove() {
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
}

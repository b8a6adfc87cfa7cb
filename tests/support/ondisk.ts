/** Runs a command line in this process on the real disk, with a day that stands still and what was printed given back. */
import { run } from '../../src/cli/program.ts';
import type { Context } from '../../src/cli/context.ts';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { machineFiles } from '../../src/files/files.ts';

export interface OnDisk {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export async function onDisk(argv: readonly string[], cwd: string, input = ''): Promise<OnDisk> {
  const printed = { out: '', err: '' };
  const output = (to: 'out' | 'err') => ({
    write(text: string) {
      printed[to] += text;
    },
    isTTY: false,
    columns: null,
  });
  const context: Context = {
    out: output('out'),
    err: output('err'),
    input: { isTTY: false, text: () => Promise.resolve(input) },
    env: {},
    cwd,
    files: machineFiles,
    chest: null,
    prompt: () =>
      Promise.resolve({
        ask: () => Promise.resolve({ kind: 'left', words: '' }),
        hasMore: () => false,
        close: () => undefined,
      }),
    today: () => Promise.resolve(dayFromIso('2026-06-01') ?? toDay(0)),
  };
  const status = await run(argv, context);
  return { status, ...printed };
}

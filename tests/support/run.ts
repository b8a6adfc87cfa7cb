/** Runs a command line inside the test: fixed day, files in a Map, what was printed given back. */
import type { Context, Output, Prompt } from '../../src/cli/context.ts';
import { run } from '../../src/cli/program.ts';
import type { Day } from '../../src/core/day.ts';
import { dayFromIso } from '../../src/core/day.ts';
import type { Chest } from '../../src/files/cache/chest.ts';
import type { Disk } from '../../src/files/disk.ts';
import { filesOn } from '../../src/files/files.ts';
import type { Files } from '../../src/files/port.ts';
import { aloneMachine, MemoryDisk } from './memory.ts';

export interface World {
  /** The clock's day, ISO. */
  readonly today?: string;
  /** Text by absolute path. What a command creates appears here. */
  readonly files?: Record<string, string | Buffer>;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Columns of a terminal; absent: standard output is a pipe. */
  readonly columns?: number;
  readonly input?: string;
  /**
   * Lines typed at a prompt, which then is left; `+` takes the line that was given to be changed as it is.
   */
  readonly typed?: readonly string[];
  /** Where rooms of earlier days are kept. */
  readonly chest?: Chest;
  /** What stands between the program and the disk: one on which calls fail, say. */
  readonly broken?: (disk: MemoryDisk) => Disk;
}

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  readonly files: Readonly<Record<string, string>>;
}

export async function tankside(argv: readonly string[], world: World = {}): Promise<Ran> {
  const printed = { out: '', err: '' };
  const disk = new MemoryDisk();
  for (const [name, text] of Object.entries(world.files ?? {})) disk.put(name, text);
  const status = await run(argv, fakeContext(world, filesOn(world.broken?.(disk) ?? disk, aloneMachine()), printed));
  return { status, out: printed.out, err: printed.err, files: disk.texts() };
}

function fakeContext(world: World, files: Files, printed: { out: string; err: string }): Context {
  const columns = world.columns ?? null;
  const output = (to: 'out' | 'err'): Output => ({
    write(text) {
      printed[to] += text;
    },
    isTTY: columns !== null,
    columns,
  });
  return {
    out: output('out'),
    err: output('err'),
    input: { isTTY: world.typed !== undefined, text: () => Promise.resolve(world.input ?? '') },
    env: world.env ?? {},
    cwd: world.cwd ?? '/room',
    files,
    chest: world.chest ?? null,
    prompt: () => Promise.resolve(scripted(world.typed ?? [], printed)),
    today: () => Promise.resolve(isoToDay(world.today ?? '2026-02-15')),
  };
}

/** A keeper who types these lines; an empty script leaves. What stood in the line already is printed in brackets. */
function scripted(typed: readonly string[], printed: { out: string }): Prompt {
  const lines = [...typed];
  return {
    ask(label, given) {
      printed.out += `${label}${given === '' ? '' : `[${given}] `}`;
      const next = lines.shift();
      const words = next === '+' ? given : (next ?? given);
      printed.out += `${words}\n`;
      return Promise.resolve({ kind: next === undefined ? 'left' : 'words', words });
    },
    hasMore: () => false,
    close: () => undefined,
  };
}

function isoToDay(iso: string): Day {
  const day = dayFromIso(iso);
  if (day === null) throw new Error(`no such day: ${iso}`);
  return day;
}

/**
 * Watches a run from its edge: all that it reads, asks and says passes through here. A run that wrote
 * nothing and asked for nothing that cannot be asked again is remembered.
 */
import type { Day } from '../../core/day.ts';
import { filesOn } from '../../files/files.ts';
import { theDisk } from '../../files/disk.ts';
import { thisMachine } from '../../files/machine.ts';
import { tracing } from '../../files/cache/trace.ts';
import type { Shelf } from '../../files/cache/shelf.ts';
import type { Context, Output } from '../context.ts';
import { dayBounds } from '../clock.ts';
import type { Asked, Remembered } from './remembered.ts';

export interface Watched {
  readonly context: Context;
  /** Keeps what was said, once the run has ended with this status. */
  keep(status: number): Promise<void>;
}

/** `key` is that of this run. */
export function watch(real: Context, shelf: Shelf, key: string, now: () => Date): Watched {
  const traced = tracing(theDisk, () => now().getTime());
  const said: [1 | 2, string][] = [];
  const env: Record<string, string | null> = {};
  const days: { readonly zone: string | null; readonly day: Day }[] = [];
  let alone = true;

  const heard = (stream: 1 | 2, output: Output): Output => ({
    ...output,
    write(text) {
      said.push([stream, text]);
      output.write(text);
    },
  });
  /** What a keeper types is never the same again. */
  const typed = <A extends readonly unknown[], T>(run: (...args: A) => T): ((...args: A) => T) => {
    return (...args) => {
      alone = false;
      return run(...args);
    };
  };

  const context: Context = {
    ...real,
    out: heard(1, real.out),
    err: heard(2, real.err),
    input: {
      get isTTY() {
        alone = false;
        return real.input.isTTY;
      },
      text: typed(() => real.input.text()),
    },
    env: new Proxy(real.env, {
      get(target, name) {
        if (typeof name !== 'string') return undefined;
        env[name] = target[name] ?? null;
        return target[name];
      },
    }),
    files: filesOn(traced.disk, thisMachine),
    prompt: typed((complete) => real.prompt(complete)),
    async today(zone) {
      const day = await real.today(zone);
      days.push({ zone, day });
      return day;
    },
  };
  return {
    context,
    async keep(status) {
      const rests = traced.rests();
      if (!alone || rests === null) return;
      const asked = await Promise.all(days.map(({ zone, day }) => lasting(zone, day)));
      const kept: Remembered = { said, status, rests, env, asked };
      shelf.put(key, JSON.stringify(kept));
    },
  };
}

/** How long the clock goes on answering so. A zone that is none has no days of its own: this machine's count. */
async function lasting(zone: string | null, day: Day): Promise<Asked> {
  const bounds = zone === null ? null : await dayBounds(zone, day);
  return bounds ?? { here: day };
}

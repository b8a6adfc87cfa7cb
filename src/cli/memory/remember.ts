/**
 * Watches a run from its edge: all that it reads, asks and says passes through here. A run that wrote
 * nothing and asked for nothing that cannot be asked again is remembered.
 */
import type { Day } from '../../core/day.ts';
import { filesOn, ownDisk } from '../../files/files.ts';
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
  const traced = tracing(ownDisk, () => now().getTime());
  const heard = new Heard();
  return {
    context: { ...watched(real, heard), files: filesOn(traced.disk, thisMachine) },
    async keep(status) {
      const rests = traced.rests();
      if (!heard.alone || rests === null) return;
      const { said, env } = heard;
      const asked = await Promise.all(heard.days.map(({ zone, day }) => lasting(zone, day)));
      const kept: Remembered = { said, status, rests, env, asked };
      shelf.put(key, JSON.stringify(kept));
    },
  };
}

/** What passed between a run and the world, the disk aside. */
class Heard {
  readonly said: [1 | 2, string][] = [];
  readonly env: Record<string, string | null> = {};
  readonly days: { readonly zone: string | null; readonly day: Day }[] = [];
  /** False once a keeper was asked: what is typed is never the same again. */
  alone = true;

  output(stream: 1 | 2, output: Output): Output {
    return {
      ...output,
      write: (text) => {
        this.said.push([stream, text]);
        output.write(text);
      },
    };
  }

  typed<A extends readonly unknown[], T>(run: (...args: A) => T): (...args: A) => T {
    return (...args) => {
      this.alone = false;
      return run(...args);
    };
  }
}

/** The world as the run sees it, with all that it asks written down. */
function watched(real: Context, heard: Heard): Context {
  return {
    ...real,
    out: heard.output(1, real.out),
    err: heard.output(2, real.err),
    input: {
      get isTTY() {
        heard.alone = false;
        return real.input.isTTY;
      },
      text: heard.typed(() => real.input.text()),
    },
    env: new Proxy(real.env, {
      get(target, name) {
        if (typeof name !== 'string') return undefined;
        heard.env[name] = target[name] ?? null;
        return target[name];
      },
    }),
    prompt: heard.typed((complete) => real.prompt(complete)),
    async today(zone) {
      const day = await real.today(zone);
      heard.days.push({ zone, day });
      return day;
    },
  };
}

/** How long the clock goes on answering so. A zone that is none has no days of its own: this machine's count. */
async function lasting(zone: string | null, day: Day): Promise<Asked> {
  const bounds = zone === null ? null : await dayBounds(zone, day);
  return bounds ?? { here: day };
}

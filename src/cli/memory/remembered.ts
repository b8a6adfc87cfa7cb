/**
 * A whole run as it is remembered: what was said on which stream, the exit status, and all that this
 * rests on. The same command line in the same surroundings is one key.
 */
import type { Rest } from '../../files/cache/rests.ts';

/** What the run asked of the clock. */
export type Asked =
  /** The day where this machine stands, counted from 1970-01-01. */
  | { readonly here: number }
  /** The day in a zone that the room names: from when until before when it is that day, milliseconds since 1970. */
  | { readonly from: number; readonly until: number };

export interface Remembered {
  /** In the order in which it was written. */
  readonly said: readonly (readonly [stream: 1 | 2, text: string])[];
  readonly status: number;
  readonly rests: readonly Rest[];
  /** Variables that were asked for, and what they held; null where unset. */
  readonly env: Readonly<Record<string, string | null>>;
  readonly asked: readonly Asked[];
}

/** What makes one run the same as another before any file is looked at. */
export interface Surroundings {
  /** Of the program: another build may answer otherwise. */
  readonly build: string;
  /** Of the engine and its knowledge of zones. */
  readonly engine: string;
  readonly argv: readonly string[];
  readonly cwd: string;
  /** Columns of standard output where it is a terminal, else null. */
  readonly columns: number | null;
}

/** One text for each command line in its surroundings: equal only where the same answer may be told again. */
export function keyOf({ build, engine, argv, cwd, columns }: Surroundings): string {
  return `${JSON.stringify([build, engine, cwd, columns, ...argv])}\n`;
}

/** Null where the text is none of ours. Its sums have been proved: only its outline is looked at. */
export function rememberedFrom(text: string): Remembered | null {
  try {
    const value: unknown = JSON.parse(text);
    return isRemembered(value) ? value : null;
  } catch {
    return null;
  }
}

function isRemembered(value: unknown): value is Remembered {
  if (typeof value !== 'object' || value === null) return false;
  const has = (key: string): boolean => key in value;
  return ['said', 'status', 'rests', 'env', 'asked'].every(has);
}

/** Whether the clock and the variables would answer as they did. */
export function sameSurroundings(
  { env, asked }: Remembered,
  world: { readonly env: Readonly<Record<string, string | undefined>>; readonly now: Date },
): boolean {
  const now = world.now.getTime();
  const here = localDay(world.now);
  const sameDay = asked.every((one) => ('here' in one ? one.here === here : now >= one.from && now < one.until));
  return sameDay && Object.entries(env).every(([name, value]) => (world.env[name] ?? null) === value);
}

/** The calendar day of this machine, counted from 1970-01-01. */
export function localDay(now: Date): number {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000;
}

/** The real world as a context: this process's streams, this machine's clock and files. */
import process from 'node:process';
import { dayOf, toDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import { machineFiles } from '../files/files.ts';
import type { Context, Output } from './context.ts';
import { terminalPrompt } from './terminal.ts';

export function realContext(): Context {
  return {
    out: output(process.stdout),
    err: output(process.stderr),
    input: {
      isTTY: process.stdin.isTTY,
      async text() {
        let text = '';
        process.stdin.setEncoding('utf8');
        for await (const chunk of process.stdin) text += String(chunk);
        return text;
      },
    },
    env: process.env,
    cwd: process.cwd(),
    files: machineFiles,
    prompt: (complete) => terminalPrompt(complete),
    today,
  };
}

function output(stream: NodeJS.WriteStream): Output {
  return {
    write(text) {
      stream.write(text);
    },
    isTTY: stream.isTTY,
    get columns() {
      return stream.isTTY ? stream.columns : null;
    },
  };
}

/** Luxon is loaded only for a room that names its zone: the local day needs none. */
async function today(zone: string | null): Promise<Day> {
  if (zone !== null) {
    const { DateTime, Settings } = await import('luxon');
    Settings.defaultLocale = 'en-US';
    const there = DateTime.now().setZone(zone);
    if (there.isValid) return dayOf(there.year, there.month, there.day) ?? toDay(0);
  }
  const now = new Date();
  return dayOf(now.getFullYear(), now.getMonth() + 1, now.getDate()) ?? toDay(0);
}

/** From when until before when it is the same day in a zone as at one moment, milliseconds since 1970; null for no such zone. */
export async function dayBounds(
  zone: string,
  now: Date,
): Promise<{ readonly from: number; readonly until: number } | null> {
  const { DateTime } = await import('luxon');
  const there = DateTime.fromJSDate(now, { zone });
  if (!there.isValid) return null;
  return { from: there.startOf('day').toMillis(), until: there.plus({ days: 1 }).startOf('day').toMillis() };
}

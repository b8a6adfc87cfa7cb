/** The real world as a context: this process's streams, this machine's clock and files. */
import process from 'node:process';
import type { Day } from '../core/day.ts';
import type { Chest } from '../files/cache/chest.ts';
import { machineFiles } from '../files/files.ts';
import { dayHere, dayIn } from './clock.ts';
import type { Context, Output } from './context.ts';
import { terminalPrompt } from './terminal.ts';

export function realContext(chest: Chest | null): Context {
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
    chest,
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

async function today(zone: string | null): Promise<Day> {
  const now = new Date();
  const there = zone === null ? null : await dayIn(zone, now);
  return there ?? dayHere(now);
}

/** The real world as a context: this process's streams, this machine's clock and files. */
import process from 'node:process';
import type { Chest } from '../files/cache/chest.ts';
import type { Shelf } from '../files/cache/shelf.ts';
import { machineFiles } from '../files/files.ts';
import type { Context, Output } from './context.ts';
import { dayNow } from './memory/days.ts';

/** `chest` and `shelf` are the cache's; null where nothing is kept. */
export function realContext(chest: Chest | null, shelf: Shelf | null): Context {
  return {
    out: output(process.stdout),
    err: output(process.stderr),
    input: {
      // Node makes a stream of it when it is first looked at, and most runs read none.
      get isTTY() {
        return process.stdin.isTTY;
      },
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
    async prompt(complete) {
      const { terminalPrompt } = await import('./terminal.ts');
      return terminalPrompt(complete);
    },
    today: (zone) => dayNow(zone, new Date(), shelf),
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

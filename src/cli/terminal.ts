/** A prompt at a real terminal. Lines that come faster than they are asked for (a paste) wait their turn. */
import readline from 'node:readline';
import process from 'node:process';
import type { Asked, Prompt } from './context.ts';

/** A prompt on those streams; Tab asks `complete` how the words so far may go on. */
export function terminalPrompt(
  complete: (line: string) => readonly [readonly string[], string],
  input: NodeJS.ReadableStream = process.stdin,
  output: NodeJS.WritableStream = process.stdout,
): Prompt {
  const terminal = readline.createInterface({
    input,
    output,
    terminal: true,
    completer: (line: string) => {
      const [fitting, part] = complete(line);
      return [[...fitting], part];
    },
  });
  return promptOn(terminal);
}

/** Asks at that terminal, one question at a time. */
function promptOn(terminal: readline.Interface): Prompt {
  const waiting: string[] = [];
  let left: Asked | null = null;
  let answer: ((asked: Asked) => void) | null = null;

  function give(asked: Asked): void {
    const to = answer;
    answer = null;
    to?.(asked);
  }

  function leave(): void {
    left ??= { kind: 'left', words: terminal.line };
    give(left);
  }

  terminal.on('line', (words) => {
    if (answer === null) waiting.push(words);
    else give({ kind: 'words', words });
  });
  terminal.on('SIGINT', leave);
  terminal.on('close', leave);
  return {
    hasMore: () => waiting.length > 0,
    ask(label, given) {
      const next = waiting.shift();
      if (next !== undefined) return Promise.resolve({ kind: 'words', words: next });
      if (left !== null) return Promise.resolve(left);
      return new Promise((resolve) => {
        answer = resolve;
        terminal.setPrompt(label);
        terminal.prompt();
        if (given !== '') terminal.write(given);
      });
    },
    close: () => terminal.close(),
  };
}

/**
 * The only way from a command to the world. Tests hand in a fake one, so that every command runs
 * inside a test with a fixed day, its own files and no process.
 */
import type { Day } from '../core/day.ts';
import type { Chest } from '../files/cache/chest.ts';
import type { Files } from '../files/port.ts';

export interface Output {
  write(text: string): void;
  readonly isTTY: boolean;
  /** Null where it is no terminal. */
  readonly columns: number | null;
}

export interface Input {
  readonly isTTY: boolean;
  /** Everything up to the end of the input. */
  text(): Promise<string>;
}

/** What was typed; `left`: the keeper went, and what stood in the line then. */
export type Asked = { readonly kind: 'words' | 'left'; readonly words: string };

/** Asks for one line after another. */
export interface Prompt {
  /** Shows the label and waits; `given` stands in the line already, to be changed. */
  ask(label: string, given: string): Promise<Asked>;
  /** True where lines were typed or pasted ahead. */
  hasMore(): boolean;
  close(): void;
}

export interface Context {
  readonly out: Output;
  readonly err: Output;
  readonly input: Input;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Absolute path of the folder that the command was given in. */
  readonly cwd: string;
  readonly files: Files;
  /** Where rooms of earlier days are kept; null where nothing is. */
  readonly chest: Chest | null;
  /** A prompt at the terminal; the Tab key asks what the beginning of a line may go on with, and which part that replaces. */
  prompt(complete: (line: string) => readonly [readonly string[], string]): Promise<Prompt>;
  /** The calendar day that it is now, in a zone of the IANA list, or where this machine is (null). */
  today(zone: string | null): Promise<Day>;
}

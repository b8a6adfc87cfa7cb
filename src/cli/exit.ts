/** How a command ends. Only `main.ts` ends the process; everything else returns one of these or throws a `Stop`. */

/**
 * 0: answered. 1: the journal has errors and the command is a check, or was told `--whole`.
 * 2: wrong use. 3: a file cannot be read or written.
 */
export const EXIT = { answered: 0, journalWrong: 1, misuse: 2, noFile: 3 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** Ends a command early with words for the keeper: what is wrong, and what to type instead. */
export class Stop extends Error {
  readonly status: Exit;
  readonly write: string | null;

  constructor(status: Exit, says: string, write: string | null = null) {
    super(says);
    this.name = 'Stop';
    this.status = status;
    this.write = write;
  }
}

/** Wrong use: an option or a word that this command does not take. */
export function misuse(says: string, write: string | null = null): Stop {
  return new Stop(EXIT.misuse, says, write);
}

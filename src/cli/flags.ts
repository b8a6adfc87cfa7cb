/**
 * Options of commands, each written once: its spelling, its help, and how its text becomes a value. A
 * command gets typed values; a text that is none ends with what was expected and what to type instead.
 */
import { misuse } from './exit.ts';

/** What the command line held for an option: its text, `true` for one without a value, undefined if absent. */
export type Raw = string | true | undefined;

export interface Flag<T> {
  /** `--days DAYS`, or `--json` for one that takes nothing. */
  readonly spelling: string;
  /** One line for `--help`, lower case. */
  readonly says: string;
  read(raw: Raw): T;
}

/** Gives the value of one of a command's flags, the common ones included. */
export type Get = <T>(flag: Flag<T>) => T;

/** On or off. */
export function flag(spelling: string, says: string): Flag<boolean> {
  return { spelling, says, read: (raw) => raw !== undefined };
}

/** An option with a word or text; null where it was not given. */
export function textFlag(spelling: string, says: string): Flag<string | null> {
  return { spelling, says, read: (raw) => (typeof raw === 'string' ? raw : null) };
}

/** A whole number from 0 to 9999; `absent` where the option was not given. */
export function wholeFlag<N extends number | null>(spelling: string, says: string, absent: N): Flag<number | N> {
  return {
    spelling,
    says,
    read(raw) {
      if (typeof raw !== 'string') return absent;
      if (/^\d{1,4}$/.test(raw)) return Number(raw);
      const [name = spelling] = spelling.split(' ');
      throw misuse(`${name} takes a whole number from 0 to 9999, not «${raw}»`, `${name} 14`);
    },
  };
}

/** `--for-this` → `forThis`, the key under which the command line keeps an option. */
export function keyOf(spelling: string): string {
  const [name = ''] = spelling.split(' ');
  return name.replace(/^--/, '').replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
}

/** Of commands whose answers may quote lines: else no buyer is named in what other programs read. */
export const NAMES = flag('--with-names', "buyers' names in JSON, CSV and HTML too");

/** Options that every command over a journal takes, before its name or after it. */
export const COMMON = {
  journal: textFlag(
    '--journal FILE',
    'the journal; else TANKSIDE_JOURNAL, else fishroom.txt here or in a folder above',
  ),
  on: textFlag('--on DATE', 'the day asked about: 2026-02-14, yesterday, +14, "next saturday", "14 Feb"'),
  json: flag('--json', 'the answer as JSON, version 1'),
  whole: flag('--whole', 'any line left out is a failure (exit 1)'),
} as const;

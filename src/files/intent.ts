/**
 * A record of what is about to be appended, made before the journal is touched: a process killed in
 * the midst of a write can leave half a line, and this is what completes it. Whether a line counts as
 * kept hangs on one thing only: is it in the journal, or in this record.
 */
import { readFrom, readWhole, shortName, withFile, writeNew } from './bytes.ts';
import { FOR_READING } from './disk.ts';
import type { Disk } from './disk.ts';
import type { Holder } from './machine.ts';
import { temporaryName } from './temporary.ts';
import { codeOf } from './trouble.ts';

export interface Intent {
  /** Size of the journal before. */
  readonly offset: number;
  /** What goes behind it. */
  readonly bytes: Buffer;
}

/**
 * `done`: the journal holds all of it. `finish`: nothing or the first part of it, and nothing else, is
 * behind the old end. `foreign`: someone has changed the journal meanwhile, and it is not in.
 */
export type Standing = 'done' | 'finish' | 'foreign';

/** The record that stands beside a journal while lines are added. */
export function intentName(file: string): string {
  return `${file}.pending`;
}

/** Writes the record under another name; it counts once it is renamed to `intentName`. Gives that other name. */
export function stageIntent(disk: Disk, file: string, holder: Holder, intent: Intent, mode: number): string {
  const head = Buffer.from(`${JSON.stringify({ pending: 1, offset: intent.offset, length: intent.bytes.length })}\n`);
  const temporary = temporaryName(file, holder);
  writeNew(disk, temporary, Buffer.concat([head, intent.bytes]), mode, true);
  return temporary;
}

/** The record beside a journal; null where there is none, `broken` where it makes no sense. */
export function readIntent(disk: Disk, file: string): Intent | 'broken' | null {
  try {
    return toIntent(readWhole(disk, intentName(file)).bytes);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

function toIntent(bytes: Buffer): Intent | 'broken' {
  const end = bytes.indexOf(10);
  const match = /^\{"pending":1,"offset":(\d{1,15}),"length":(\d{1,15})\}$/.exec(
    bytes.toString('latin1', 0, Math.max(0, end)),
  );
  if (match === null) return 'broken';
  const body = bytes.subarray(end + 1);
  return body.length === Number(match[2]) ? { offset: Number(match[1]), bytes: body } : 'broken';
}

/** Where an intent stands against a journal of which only the part behind the old end is at hand. */
export function standing(size: number, behind: Buffer, intent: Intent): Standing {
  if (size < intent.offset) return 'foreign';
  if (behind.length < intent.bytes.length) {
    return behind.equals(intent.bytes.subarray(0, behind.length)) ? 'finish' : 'foreign';
  }
  return behind.subarray(0, intent.bytes.length).equals(intent.bytes) ? 'done' : 'foreign';
}

/** Whether the journal, changed by somebody since, holds the intended lines after all, each one whole. */
export function holdsLines(journal: Buffer, intent: Intent): boolean {
  const lines = new Set(journal.toString().split(/\r?\n/));
  return linesOf(intent).every((line) => lines.has(line));
}

/** The lines of a record, without their ends. */
export function linesOf(intent: Intent): readonly string[] {
  return intent.bytes
    .toString()
    .split(/\r?\n/)
    .filter((line) => line !== '');
}

/** Finds where an intent stands in a journal that may be long. */
export function standingOf(disk: Disk, file: string, intent: Intent): Standing {
  const near = withFile(disk, file, FOR_READING, 0, (open) => {
    const { size } = disk.factsOf(open);
    return standing(
      size,
      readFrom(disk, open, intent.offset, Math.min(intent.bytes.length, size - intent.offset)),
      intent,
    );
  });
  if (near !== 'foreign') return near;
  return holdsLines(readWhole(disk, file).bytes, intent) ? 'done' : 'foreign';
}

/** What a reader says of lines that could not be put where they belong. */
export function leftOver(file: string, kept: string): string {
  return `an interrupted jot left lines in ${shortName(kept)} that are not in ${shortName(file)}: look at them, jot what is missing, remove that file`;
}

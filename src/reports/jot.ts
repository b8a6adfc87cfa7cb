/** What became of jotted lines: as saved, as understood, what they change; or what is wrong with one. */
import type { Problem } from '../core/problem.ts';
import { ageWords, listWords } from '../core/words.ts';
import type { Changes, HoldReaches } from '../questions/changes.ts';
import type { DueRow } from '../questions/due.ts';
import { dayJson, spreadJson } from './json.ts';
import type { Look } from './look.ts';
import { excerpt } from './problems.ts';
import { dayText, plural, printable, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

/** A line as it is in the journal, or would be. */
export interface Jotted {
  readonly text: string;
  /** In the usual words, without its date; null where it says nothing about the room. */
  readonly readAs: string | null;
  readonly problems: readonly Problem[];
}

export interface JotAnswer {
  /** False where it was only tried. */
  readonly saved: boolean;
  readonly lines: readonly Jotted[];
  readonly changes: Changes;
  /** What the lines can do to the fish: one line each. */
  readonly cautions: readonly string[];
  /** Older lines that these make doubtful. */
  readonly elsewhere: readonly Problem[];
}

/** Rows of each kind that are told; more are counted. */
const MOST_ROWS = 5;
/** So many reached tanks are told with the way by which they were. */
const NAMED_WITH_ROUTE = 3;
const INDENT = 2;

export function jotText(answer: JotAnswer, look: Look): string {
  return `${savedText(answer, look)}${changesText(answer, look)}`;
}

/** The first part of the answer: it is known before what the lines change is worked out. */
export function savedText({ lines, saved }: Pick<JotAnswer, 'lines' | 'saved'>, look: Look): string {
  return ended(lines.flatMap((line) => lineRows(line, saved, look)));
}

/** The second part; empty where the lines change nothing. */
export function changesText({ cautions, changes, elsewhere }: Omit<JotAnswer, 'lines' | 'saved'>, look: Look): string {
  const rows = [
    ...cautions.map((caution) => `take care: ${caution}`),
    ...changeRows(changes, look),
    ...elsewhere.map((problem) => otherLine(problem)),
  ];
  return ended(rows.map((row) => `  ${paragraph(row, look.width - INDENT, INDENT * 2)}`));
}

function ended(rows: readonly string[]): string {
  return rows.map((row) => `${row}\n`).join('');
}

function lineRows({ text, readAs, problems }: Jotted, saved: boolean, look: Look): readonly string[] {
  const first = `${look.paint.strong(saved ? 'saved' : 'would be')} ${printable(text)}`;
  const same = readAs === null || text.endsWith(` ${readAs}`);
  const doubts = problems.map(
    ({ says, write }) => `  ${paragraph(`look again: ${says}; ${write}`, look.width - INDENT, 4)}`,
  );
  return [first, ...(same ? [] : [`  read as ${printable(readAs)}`]), ...doubts];
}

function otherLine({ says, at }: Problem): string {
  return `look again at line ${at.line}: ${says}`;
}

function changeRows(changes: Changes, look: Look): readonly string[] {
  const { broods, undone, disputes, reached, over, begun, moved } = changes;
  return [
    ...reached.map((hold) => reachedRow(hold)),
    ...broods.map((name) => `brood ${name} begins`),
    ...disputes.map(({ group, from, ended, how }) => `dispute of ${group} over after ${lasted(ended - from)}: ${how}`),
    ...undone.map(({ where, measure, since }) => `undone: ${where} ${measure}, since ${dayText(since, look)}`),
    ...some(over, (row) => `no longer due: ${whatWhere(row)}`),
    ...some(begun, (row) => `due now: ${whatWhere(row)}, ${windowText(row.due, look)}`),
    ...some(moved, (row) => `due next: ${whatWhere(row)}, ${windowText(row.due, look)}`),
  ];
}

/** `hold of A1 «velvet» reaches C1: by the net shared with A1`; many tanks by their names alone. */
function reachedRow({ place, text, tanks }: HoldReaches): string {
  const names = tanks.map(({ tank, how }) =>
    tanks.length > NAMED_WITH_ROUTE || how === '' ? tank : `${tank} (${how})`,
  );
  return `hold of ${place} «${text}» now reaches ${listWords(names)}: nothing leaves there`;
}

function lasted(days: number): string {
  return ageWords({ low: days, likely: days, high: days });
}

function whatWhere({ place, what }: DueRow): string {
  return `${place}, ${what}`;
}

function some(rows: readonly DueRow[], tell: (row: DueRow) => string): readonly string[] {
  const told = rows.slice(0, MOST_ROWS).map(tell);
  return rows.length > told.length
    ? [...told, `and ${plural(rows.length - told.length, 'more row')} of tankside due`]
    : told;
}

/** A line that was refused: its wrong words marked, why, and what would be read. */
export interface Refused {
  readonly text: string;
  readonly problems: readonly Problem[];
  /** A line that would be read, or what to do; null where nobody knows better. */
  readonly write: string | null;
  /** True where that line is wanted before this one, not in its place. */
  readonly first: boolean;
}

export function refusedText({ text, problems, write, first: before }: Refused, look: Look): string {
  const bad = problems.filter(({ weight }) => weight === 'stops');
  const [first] = bad;
  const rows = [
    `${look.paint.late('not saved')} ${first === undefined ? printable(text) : excerpt(text, first.at, look).trim()}`,
    ...[...new Set(bad.map(({ says }) => says))].map(
      (says) => `  ${paragraph(printable(says), look.width - INDENT, 4)}`,
    ),
    ...(write === null ? [] : [`  write${before ? ' first' : ''}: ${printable(write)}`]),
  ];
  return `${rows.join('\n')}\n`;
}

export function jotJson(answer: JotAnswer): object {
  const { saved, lines, changes } = answer;
  return {
    version: 1,
    saved,
    lines: lines.map(({ text, readAs, problems }) => ({ text, readAs, problems })),
    changes: {
      broods: changes.broods,
      disputesOver: changes.disputes.map(({ group, from, ended, how }) => ({
        group,
        from: dayJson(from),
        ended: dayJson(ended),
        how,
      })),
      undone: changes.undone.map(({ where, measure, since }) => ({ where, measure, since: dayJson(since) })),
      reached: changes.reached,
      over: changes.over.map(({ id }) => id),
      begun: changes.begun.map(rowJson),
      moved: changes.moved.map(rowJson),
    },
    cautions: answer.cautions,
    elsewhere: answer.elsewhere,
  };
}

/** The same for lines that were refused: nothing was saved. */
export function refusedJson(refused: readonly Refused[]): object {
  return { version: 1, saved: false, refused };
}

function rowJson({ id, place, what, due }: DueRow): object {
  return { id, place, what, due: spreadJson(due) };
}

/**
 * What is wrong with a journal, drawn for the keeper: where in words, the line with its wrong words set
 * in «…», what is wrong, and a line that would be read. Pure; the lines are handed in as they stand in the file.
 */
import type { Problem } from '../core/problem.ts';
import type { LineRef, Place } from '../core/span.ts';
import type { Look } from './look.ts';
import { lineToWrite } from './mended.ts';
import { printable } from './words.ts';
import { widthOf } from './width.ts';
import { paragraph } from './wrap.ts';

/** Gives a line of a journal file as written, without its line end; null where there is none. */
export type Lines = (file: string, line: number) => string | null;

const MARGIN = 3;
/** Columns that an excerpt takes however narrow the screen. */
const LEAST_ROOM = 24;

/** All problems in the order of their lines, one blank line between. Ends with a line end; empty for none. */
export function problemsReport(problems: readonly Problem[], lines: Lines, look: Look): string {
  return sortedProblems(problems)
    .map((problem) => problemReport(problem, lines, look))
    .join('\n');
}

/** One problem: where, the line, what is wrong, what to write. */
export function problemReport(problem: Problem, lines: Lines, look: Look): string {
  const { paint } = look;
  const out = problem.weight === 'stops' ? paint.late('left out') : paint.today('look again');
  const text = lines(problem.at.file, problem.at.line);
  const rows = [
    `${placeWords(problem.at)}, ${out}`,
    ...(text === null ? [] : [excerpt(text, problem.at, look)]),
    set(problem.says, look),
    remedy(lineToWrite(problem, text), look),
    ...problem.also.flatMap((place) => alsoRows(place, lines, look)),
  ];
  return `${rows.join('\n')}\n`;
}

function placeWords(at: LineRef): string {
  return `${printable(at.file)}, line ${at.line}`;
}

function set(text: string, look: Look): string {
  return ' '.repeat(MARGIN) + paragraph(printable(text), look.width, MARGIN);
}

/** A line to copy is never broken; advice is. */
function remedy(write: string, look: Look): string {
  const isLine = /^\d{4}-/u.test(write);
  return isLine ? `${' '.repeat(MARGIN)}write: ${printable(write)}` : set(`write: ${write}`, look);
}

function alsoRows(place: Place, lines: Lines, look: Look): readonly string[] {
  const text = lines(place.file, place.line);
  const where = `${' '.repeat(MARGIN)}see ${placeWords(place)}`;
  return text === null ? [where] : [`${where}:`, excerpt(text, place, look)];
}

/**
 * The line with the words at a place marked: coloured where the look can, set in «…» where it cannot. A
 * line too wide is cut to what stands around them.
 */
export function excerpt(text: string, at: Place, look: Look): string {
  const from = Math.min(Math.max(0, at.from), text.length);
  const to = Math.min(Math.max(from, at.to), text.length);
  const [head, wrong, tail] = [text.slice(0, from), text.slice(from, to), text.slice(to)].map(printable);
  const room = Math.max(LEAST_ROOM, look.width - MARGIN - 2);
  const words = cutEnd(wrong ?? '', room);
  const left = room - widthOf(words);
  const before = cutStart(head ?? '', Math.max(Math.ceil(left / 2), left - widthOf(tail ?? '')));
  const after = cutEnd(tail ?? '', left - widthOf(before));
  return ' '.repeat(MARGIN) + before + mark(words, look) + after;
}

function mark(words: string, look: Look): string {
  const painted = look.paint.wrong(words);
  return painted === words ? `«${words}»` : painted;
}

function cutEnd(text: string, room: number): string {
  if (widthOf(text) <= room) return text;
  let kept = '';
  for (const sign of text) {
    if (widthOf(kept + sign) > room - 1) break;
    kept += sign;
  }
  return room < 1 ? '' : `${kept}…`;
}

function cutStart(text: string, room: number): string {
  if (widthOf(text) <= room) return text;
  let kept = '';
  for (const sign of [...text].reverse()) {
    if (widthOf(sign + kept) > room - 1) break;
    kept = sign + kept;
  }
  return room < 1 ? '' : `…${kept}`;
}

/** The lines of which something does not count, each once, by file as first met and then by number. */
export function leftOutLines(problems: readonly Problem[]): readonly LineRef[] {
  const seen = new Map<string, LineRef>();
  for (const { at } of sortedProblems(problems.filter(({ weight }) => weight === 'stops'))) {
    seen.set(`${at.line} ${at.file}`, { file: at.file, line: at.line });
  }
  return [...seen.values()];
}

/** By file as first met, then by line, then from left to right. */
export function sortedProblems(problems: readonly Problem[]): readonly Problem[] {
  const files = [...new Set(problems.map(({ at }) => at.file))];
  const order = new Map(files.map((file, index) => [file, index]));
  const rank = (file: string): number => order.get(file) ?? 0;
  return problems.toSorted(
    (a, b) => rank(a.at.file) - rank(b.at.file) || a.at.line - b.at.line || a.at.from - b.at.from,
  );
}

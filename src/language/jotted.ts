/** What a keeper types, on its way to a line of the journal: text only, nothing is read here. */
import type { Day } from '../core/day.ts';
import { isoDay } from '../core/day.ts';

/** Controls would act on a terminal instead of being shown, and a line end would make two lines of one. */
const CONTROLS = /\s*[\p{Cc}\p{Zl}\p{Zp}]+\s*/gu;
const DATED = /^\d{4}-\d{2}-\d{2}(?=\s|$)/;
/** Lines that stand for themselves: comments, and other files read in. */
const BARE = /^(#|also\s+read\b)/i;
const HEAD = /^(\d{4}-\d{2}-\d{2}(?:\s+\d{1,2}[:.]\d{2})?\s+)(.*)$/;

/** The words with a day before them, unless they have their own or need none; empty where nothing was typed. */
export function dated(words: string, day: Day): string {
  const line = words.replace(CONTROLS, ' ').trim();
  return line === '' || DATED.test(line) || BARE.test(line) ? line : `${isoDay(day)} ${line}`;
}

/** True for a line that says nothing about the room. */
export function isBare(line: string): boolean {
  return BARE.test(line);
}

/** True for a line that declares something and so may have to stand before another. */
export function declares(line: string): boolean {
  return /^\d{4}-\d{2}-\d{2}\s+(?:row|loop|tank|tray|species|pair|trio|harem|colony|group|culture|auction)\s/i.test(
    line,
  );
}

/** The line without a day that it shares with those typed around it. */
export function undated(line: string, day: Day): string {
  const date = `${isoDay(day)} `;
  return line.startsWith(date) ? line.slice(date.length) : line;
}

/** The line with a colon after its first word, its first two, its first three; none where it has one already. */
export function withColon(line: string): readonly string[] {
  const match = HEAD.exec(line);
  if (match === null) return [];
  const [, head = '', rest = ''] = match;
  const words = rest.split(/\s+/);
  if (words.slice(0, MOST_HEADING_WORDS).some((word) => word.includes(':'))) return [];
  return words
    .slice(0, MOST_HEADING_WORDS)
    .map((_, index) => `${head}${words.slice(0, index + 1).join(' ')}: ${words.slice(index + 1).join(' ')}`.trim())
    .filter((_, index) => index + 1 < words.length);
}

const MOST_HEADING_WORDS = 4;

/** The line with its words from `from` on in quotes, as a remark; null where it has quotes already, or too few words. */
export function withRemark(line: string, from: number): string | null {
  const head = line.slice(0, from).replace(/[\s,;–—-]+$/, '');
  const tail = line
    .slice(from)
    .replace(/^[\s,;–—-]+/, '')
    .trim();
  if (/["“”„]/.test(line) || tail === '' || head.endsWith(':') || !head.includes(':')) return null;
  return `${head} "${tail}"`;
}

/** The words kept as a note: under their heading first, then without one. */
export function asNote(line: string): readonly string[] {
  const match = HEAD.exec(line);
  if (match === null) return [];
  const [, head = '', rest = ''] = match;
  const colon = /^([^:"]{1,60}):\s*(.*)$/.exec(rest);
  const under = colon === null ? [] : [`${head}${colon[1] ?? ''}: note ${colon[2] ?? ''}`];
  return [...under, `${head}note ${rest}`];
}

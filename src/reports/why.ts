/** The rule, the numbers and the journal lines behind a row, as text and as JSON. */
import type { Because } from '../core/because.ts';
import type { LineRef } from '../core/span.ts';
import { linesJson } from './json.ts';
import type { Look } from './look.ts';
import { heading } from './words.ts';
import { labelled, paragraph } from './wrap.ts';

/** A journal line with its text as it was written. */
export interface QuotedLine extends LineRef {
  readonly text: string;
}

export interface Explained {
  readonly id: string;
  readonly title: string;
  readonly because: Because;
  readonly quoted: readonly QuotedLine[];
}

/** Rows that are told in full; of more than these only ids and titles are given. */
const TOLD_IN_FULL = 3;
/** The column from which the texts stand, beside their labels. */
const LEFT = 11;

export function whyText(rows: readonly Explained[], look: Look): string {
  if (rows.length > TOLD_IN_FULL) return choice(rows, look);
  const [only, ...more] = rows;
  if (only !== undefined && more.length === 0) return `${explained(only, look, `${heading(look)}: `)}\n`;
  const first = `${heading(look)}: ${rows.length} rows have these words`;
  return `${[first, ...rows.map((row) => explained(row, look))].join('\n\n')}\n`;
}

function choice(rows: readonly Explained[], look: Look): string {
  const head = `${heading(look)}: ${rows.length} rows have these words; ask for one of them`;
  const alike = new Map<string, Explained[]>();
  for (const row of rows) alike.set(lastWord(row.id), [...(alike.get(lastWord(row.id)) ?? []), row]);
  const lines = [...alike.values()].flatMap((same) => (same.length > MOST_ALIKE ? oneOfMany(same) : same.map(oneRow)));
  return `${[head, '', ...lines.map((line) => paragraph(line, look.width, 4))].join('\n')}\n`;
}

function oneRow({ id, title }: Explained): string {
  return `tankside why ${id}  (${title})`;
}

/** So many rows of one kind are told one by one. */
const MOST_ALIKE = 4;

/** The kind of a row, as its id ends: `plan`, `dispute`. */
function lastWord(id: string): string {
  return id.slice(id.lastIndexOf('-') + 1);
}

/** Rows of one kind in one line, by what tells them apart: `winter … stays  (2 rows; for … one of aspen-1-n6, elm-s3)`. */
function oneOfMany(rows: readonly Explained[]): readonly string[] {
  const ids = rows.map(({ id }) => id.split('-'));
  const [first = []] = ids;
  const shortest = Math.min(...ids.map((words) => words.length)) - 1;
  const shared = first.findIndex((word, at) => at >= shortest || ids.some((words) => words[at] !== word));
  const plain = rows.filter((_, index) => (ids[index]?.length ?? 0) <= shared + 1);
  const own = ids.map((words) => words.slice(shared, -1).join('-')).filter((words) => words !== '');
  const asked = [...first.slice(0, shared), '…', ...first.slice(-1)].join(' ');
  return [...plain.map(oneRow), `tankside why ${asked}  (${own.length} rows; for … one of ${own.join(', ')})`];
}

function explained({ id, title, because, quoted }: Explained, look: Look, before = ''): string {
  const set = (label: string, text: string): string => labelled(`  ${label}`, text, LEFT, look.width);
  const each = (label: string, texts: readonly string[]): readonly string[] =>
    texts.map((text, index) => set(index === 0 ? label : '', text));
  const [first = '', ...others] = paragraph(`${before}${title}`, look.width, before === '' ? 0 : 2).split('\n');
  const lines = quoted.flatMap((line, index) => [
    set(index === 0 ? 'lines' : '', `${line.file} line ${line.line}`),
    labelled('', line.text, LEFT + 2, look.width),
  ]);
  return [
    [look.paint.strong(first), ...others].join('\n'),
    set('rule', because.rule),
    ...each('numbers', because.steps),
    set('source', because.source),
    ...lines,
    set('id', id),
  ].join('\n');
}

export function whyJson(rows: readonly Explained[]): object {
  return {
    rows: rows.map(({ id, title, because, quoted }) => ({
      id,
      title,
      rule: because.rule,
      source: because.source,
      steps: because.steps,
      lines: linesJson(quoted),
      texts: quoted.map(({ text }) => text),
    })),
  };
}

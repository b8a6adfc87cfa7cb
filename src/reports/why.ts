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
export const TOLD_IN_FULL = 3;
/** The column from which the texts stand, beside their labels. */
const LEFT = 11;

export function whyText(rows: readonly Explained[], look: Look): string {
  if (rows.length > TOLD_IN_FULL) return choice(rows, look);
  return `${[heading(look), ...rows.map((row) => explained(row, look))].join('\n\n')}\n`;
}

function choice(rows: readonly Explained[], look: Look): string {
  const head = `${heading(look)}: ${rows.length} rows have these words; ask for one of them`;
  const lines = rows.map(({ id, title }) => paragraph(`tankside why ${id}  (${title})`, look.width, 4));
  return `${[head, '', ...lines].join('\n')}\n`;
}

function explained({ id, title, because, quoted }: Explained, look: Look): string {
  const set = (label: string, text: string): string => labelled(`  ${label}`, text, LEFT, look.width);
  const each = (label: string, texts: readonly string[]): readonly string[] =>
    texts.map((text, index) => set(index === 0 ? label : '', text));
  const [first = '', ...others] = paragraph(title, look.width).split('\n');
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

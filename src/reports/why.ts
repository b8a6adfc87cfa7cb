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

export function whyText(rows: readonly Explained[], look: Look): string {
  if (rows.length > TOLD_IN_FULL) return choice(rows, look);
  return `${[heading(look), ...rows.map((row) => explained(row, look))].join('\n\n')}\n`;
}

function choice(rows: readonly Explained[], look: Look): string {
  const head = `${heading(look)}: ${rows.length} rows have these words; ask for one of them`;
  const lines = rows.map(({ id, title }) => paragraph(`tankside why ${id}  (${title})`, look.width, 4));
  return `${[head, '', ...lines].join('\n')}\n`;
}

function explained({ title, because, quoted, id }: Explained, look: Look): string {
  const set = (label: string, text: string): string => labelled(`  ${label}`, text, 11, look.width);
  const [first = '', ...others] = paragraph(title, look.width).split('\n');
  const steps = because.steps.map((step, index) => set(index === 0 ? 'numbers' : '', step));
  const lines = quoted.flatMap((line) => [
    `  ${look.paint.quiet(`${line.file} line ${line.line}`)}`,
    paragraph(`    ${line.text}`, look.width, 6),
  ]);
  return [
    [look.paint.strong(first), ...others].join('\n'),
    set('rule', because.rule),
    ...steps,
    set('source', because.source),
    ...lines,
    look.paint.quiet(`  tankside why ${id}`),
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

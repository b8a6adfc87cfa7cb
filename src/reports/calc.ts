/** Results of the calculator as text, CSV and JSON. Text rounds to four figures; the others keep full precision. */
import type { CalcAnswer, CalcResult } from '../questions/calc/calc.ts';
import { csvText } from './csv.ts';
import { listWords } from './words.ts';
import { paragraph } from './wrap.ts';
import type { Look } from './look.ts';

/** Less than this is nothing that anybody measures; what a drip leaves after days is no number to read. */
const NOTHING = 1e-9;

/** Four figures, plain where people read plain numbers. */
function figures(value: number): string {
  const size = Math.abs(value);
  if (size < NOTHING) return '0';
  if (size >= 1e6 || size < 1e-4) return value.toPrecision(4);
  return String(Number(value.toPrecision(4)));
}

function resultWords({ value, unit, low, high }: CalcResult): string {
  const end = unit === '' ? '' : ` ${unit}`;
  const spread = low !== undefined && high !== undefined && low !== high ? `${figures(low)}–${figures(high)}` : null;
  if (value === null) return `${spread ?? 'unknown'}${end}`;
  return spread === null ? `${figures(value)}${end}` : `${figures(value)} (${spread})${end}`;
}

/** The answers one below the other; of several rows each under its number. */
export function calcText(answers: readonly CalcAnswer[], look: Pick<Look, 'width' | 'paint'>): string {
  const [only, ...more] = answers;
  if (only !== undefined && more.length === 0) return answerText(only, look);
  return answers.map((answer, i) => `row ${String(i + 1)}\n${answerText(answer, look)}`).join('\n');
}

function answerText(answer: CalcAnswer, look: Pick<Look, 'width' | 'paint'>): string {
  const wide = Math.max(...answer.results.map(({ name }) => name.length));
  const rows = answer.results.map((result, i) => {
    const line = `${result.name.padEnd(wide)}  ${resultWords(result)}`;
    return i === 0 ? look.paint.strong(line) : line;
  });
  const under = [...answer.steps, `source: ${answer.source}`].map((text) => `  ${paragraph(text, look.width - 2, 2)}`);
  const cautions = answer.cautions.map((text) => `  ${paragraph(`! ${text}`, look.width - 2, 4)}`);
  return `${[...rows, ...under, ...cautions].join('\n')}\n`;
}

export function calcJson(answers: readonly CalcAnswer[]): object {
  const numbered = answers.length > 1;
  return {
    version: 1,
    results: answers.flatMap((answer, i) =>
      answer.results.map((result) => (numbered ? { row: i + 1, ...result } : { ...result })),
    ),
    source: [...new Set(answers.map(({ source }) => source))].join('; '),
    steps: withRows(answers.map(({ steps }) => steps)),
    cautions: withRows(answers.map(({ cautions }) => cautions)),
  };
}

/** Each text once, with the rows that it is said of before it; what is said of all of them stands without. */
function withRows(texts: readonly (readonly string[])[]): readonly string[] {
  const rows = new Map<string, Set<number>>();
  texts.forEach((own, i) => {
    for (const text of own) rows.set(text, (rows.get(text) ?? new Set()).add(i + 1));
  });
  return [...rows].map(([text, of]) =>
    of.size === texts.length ? text : `${of.size === 1 ? 'row' : 'rows'} ${listWords([...of].map(String))}: ${text}`,
  );
}

/** One row a result, the row of the input first; what to take care of beside the first result of its row. */
export function calcCsv(answers: readonly CalcAnswer[]): string {
  const rows = answers.flatMap(({ results, cautions }, i) =>
    results.map(({ name, value, unit, low, high }, k) => {
      return [i + 1, name, value, unit, low ?? null, high ?? null, k === 0 ? cautions.join('; ') : ''];
    }),
  );
  return csvText(['row', 'name', 'value', 'unit', 'low', 'high', 'caution'], rows);
}

/** Results of the calculator as text, CSV and JSON. Text rounds to four figures; the others keep full precision. */
import type { CalcAnswer, CalcResult } from '../questions/calc/calc.ts';
import { csvText } from './csv.ts';
import { paragraph } from './wrap.ts';
import type { Look } from './look.ts';

/** Four figures, plain where people read plain numbers. */
function figures(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e6 || size < 1e-4) return value.toPrecision(4);
  return String(Number(value.toPrecision(4)));
}

function resultWords({ value, unit, low, high }: CalcResult): string {
  const end = unit === '' ? '' : ` ${unit}`;
  const spread = low !== undefined && high !== undefined && low !== high ? `${figures(low)}–${figures(high)}` : null;
  if (value === null) return `${spread ?? 'unknown'}${end}`;
  return spread === null ? `${figures(value)}${end}` : `${figures(value)} (${spread})${end}`;
}

export function calcText(answer: CalcAnswer, look: Pick<Look, 'width' | 'paint'>): string {
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
    steps: answers.flatMap(({ steps }) => steps),
    cautions: [...new Set(answers.flatMap(({ cautions }) => cautions))],
  };
}

/** One row a result, the row of the input first. */
export function calcCsv(answers: readonly CalcAnswer[]): string {
  const rows = answers.flatMap((answer, i) =>
    answer.results.map(({ name, value, unit, low, high }) => [i + 1, name, value, unit, low ?? null, high ?? null]),
  );
  return csvText(['row', 'name', 'value', 'unit', 'low', 'high'], rows);
}

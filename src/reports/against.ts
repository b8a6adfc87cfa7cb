/** Two copies of a journal compared: the lines that only one has, and those that tell a day differently. */
import type { Against, AgainstLine, AgainstRow } from '../questions/against.ts';
import { dayJson, lineJson } from './json.ts';
import type { Look } from './look.ts';
import { plural, printable } from './words.ts';
import { paragraph } from './wrap.ts';

/** Where the copies stand, as the keeper called them. */
export interface Copies {
  readonly here: string;
  readonly there: string;
}

export function againstReport(answer: Against, copies: Copies, look: Look): string {
  const { rows, same } = answer;
  const both = `${plural(same, 'line')} in both`;
  const found = rows.length === 0 ? `nothing differs, ${both}` : `${counts(rows, copies)}; ${both}`;
  const [first = '', ...more] = paragraph(`${copies.here} and ${copies.there}: ${found}`, look.width, 2).split('\n');
  const end = rows.some(({ here }) => here === null)
    ? ['', paragraph(`a line may stand anywhere in ${copies.here}: copy over what is missing there`, look.width, 2)]
    : [];
  return `${[look.paint.strong(first), ...more, ...rows.flatMap((row) => ['', ...rowLines(row, copies)]), ...end].join('\n')}\n`;
}

function counts(rows: readonly AgainstRow[], { here, there }: Copies): string {
  const only = (side: 'here' | 'there'): number =>
    rows.filter((row) => row[side] !== null && row[side === 'here' ? 'there' : 'here'] === null).length;
  const differ = rows.filter((row) => row.here !== null && row.there !== null).length;
  const parts = [
    ...(only('here') > 0 ? [`${only('here')} only in ${here}`] : []),
    ...(only('there') > 0 ? [`${only('there')} only in ${there}`] : []),
    ...(differ > 0 ? [`${differ} told differently`] : []),
  ];
  return parts.join(', ');
}

function rowLines({ here, there, again }: AgainstRow, copies: Copies): readonly string[] {
  if (here !== null && there !== null) {
    return [`told differently`, quoted(here, copies.here), quoted(there, copies.there)];
  }
  const [one, name] = here === null ? [there, copies.there] : [here, copies.here];
  return one === null ? [] : [`${again ? 'more often' : 'only'} in ${printable(name)}`, quoted(one, name)];
}

/** A line to copy is never broken. */
function quoted({ text, line }: AgainstLine, copy: string): string {
  const file = copy.endsWith(line.file) ? '' : `${printable(line.file)} `;
  return `   ${printable(copy)} ${file}line ${line.line}\n   ${printable(text.trim())}`;
}

export function againstJson({ rows, same }: Against): object {
  return { same, rows: rows.map(rowJson) };
}

function rowJson({ day, here, there, again }: AgainstRow): object {
  return { day: dayJson(day), here: textJson(here), there: textJson(there), again };
}

function textJson(one: AgainstLine | null): object | null {
  return one === null ? null : { text: one.text, ...lineJson(one.line) };
}

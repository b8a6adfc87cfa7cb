/** `tankside why`: what stands behind a row of any answer. */
import { chartNamed } from '../../questions/chart/ask.ts';
import { historyWhy } from '../../questions/history.ts';
import { why } from '../../questions/why.ts';
import type { WhyRow } from '../../questions/whyrow.ts';
import type { Explained, QuotedLine } from '../../reports/why.ts';
import { whyJson, whyText } from '../../reports/why.ts';
import type { LineRef } from '../../core/span.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { misuse } from '../exit.ts';
import { NAMES } from '../flags.ts';
import type { Journal } from '../journal.ts';

export const command: Command = {
  takes: 'WORDS...',
  about:
    'The rule, the numbers put into it and the journal lines behind a row of any answer. Give the words of ' +
    'the row, or its id as --json shows it.',
  flags: [NAMES],
  examples: ['tankside why A1 dispute', 'tankside why Long spill', 'tankside why a1-dispute --on 2026-02-15'],
  run: (context, get, words) => {
    if (words.join('').trim() === '') throw misuse('why needs the words of a row', 'tankside why A1 dispute');
    return answer(context, get, {
      ask: (room, journal) => {
        const { rows, near } = why(room, words);
        const line = rows.length > 0 ? null : historyWhy(room, journal.reading.entries, words.join('-').toLowerCase());
        const chart = rows.length > 0 || line !== null ? null : chartNamed(room, words);
        if (rows.length === 0 && line === null && chart === null) throw nothing(words, near);
        return [...rows, ...(line === null ? [] : [line]), ...(chart === null ? [] : [chart])].map((row) =>
          explained(row, journal),
        );
      },
      text: whyText,
      json: whyJson,
    });
  },
};

function nothing(words: readonly string[], near: readonly string[]): Error {
  const [first, ...others] = near.slice(0, 5).map((id) => `tankside why ${id}`);
  const write = first === undefined ? 'tankside due (its rows can be asked about)' : [first, ...others].join(', or ');
  return misuse(`no row of any answer has the words «${words.join(' ')}»`, write);
}

/** A row with the text of its lines; those of the rule come first. */
function explained({ id, title, because, lines }: WhyRow, journal: Journal): Explained {
  const refs = new Map([...because.lines, ...lines].map((line) => [`${line.file}:${line.line}`, line]));
  return { id, title, because, quoted: [...refs.values()].map((line) => quote(line, journal)) };
}

function quote({ file, line }: LineRef, { reading }: Journal): QuotedLine {
  const entry = reading.entries.find(({ place }) => place.file === file && place.line === line);
  return { file, line, text: entry?.text ?? '' };
}

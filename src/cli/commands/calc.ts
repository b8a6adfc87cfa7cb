/** `tankside calc`: the formulas without a journal. */
import { parse } from 'csv-parse/sync';
import { nearest } from '../../core/suggest.ts';
import { CalcFault, Inputs, type CalcAnswer, type Calculator } from '../../questions/calc/calc.ts';
import { OPTION_WORDS } from '../../questions/calc/options.ts';
import { CALCULATORS } from '../../questions/calc/table.ts';
import { calcCsv, calcJson, calcText } from '../../reports/calc.ts';
import { jsonText } from '../../reports/json.ts';
import { lookNow, say } from '../answer.ts';
import type { Command } from '../command.ts';
import type { Context } from '../context.ts';
import { EXIT, misuse, Stop } from '../exit.ts';
import { COMMON, flag, textFlag, type Flag, type Get } from '../flags.ts';

const CSV = flag('--csv', 'the results as CSV');
const OXYGEN = flag('--oxygen', 'the bag is closed on oxygen (bag)');
const NAMES = [...new Set(CALCULATORS.flatMap(({ options }) => options))].filter((name) => name !== 'oxygen');
const OPTIONS: ReadonlyMap<string, Flag<string | null>> = new Map(
  NAMES.map((name) => {
    const users = CALCULATORS.filter(({ options }) => options.includes(name)).map((one) => one.name);
    return [name, textFlag(`--${name} VALUE`, `${OPTION_WORDS.get(name) ?? 'a number'} (${users.join(', ')})`)];
  }),
);

export const command: Command = {
  takes: `${CALCULATORS.map(({ name }) => name).join('|')} [WORDS...]`,
  about:
    'The same formulas as in the answers, without a journal. Numbers carry their unit (79F, 0.5mg/L, 240L). With no ' +
    'options, reads rows from standard input as CSV: a heading of option names, a line for each calculation.',
  flags: [...OPTIONS.values(), OXYGEN, CSV],
  examples: CALCULATORS.map(({ example }) => example),
  async run(context, get, words) {
    const calculator = named(words[0]);
    const given = optionsOf(calculator, get);
    const rest = words.slice(1);
    const fromInput = given.size === 0 && rest.length === 0 && !context.input.isTTY;
    const asked = fromInput
      ? rowsOf(calculator, await context.input.text())
      : [{ words: rest, options: given, row: 0 }];
    const answers = asked.map((one) => calculate(calculator, one));
    if (get(COMMON.json)) context.out.write(jsonText(calcJson(answers)));
    else if (get(CSV)) context.out.write(calcCsv(answers));
    else say(context, await asText(context, answers));
    return EXIT.answered;
  },
};

function named(name: string | undefined): Calculator {
  const names = CALCULATORS.map((calculator) => calculator.name);
  const found = CALCULATORS.find((calculator) => calculator.name === name);
  if (found) return found;
  const [near = 'ammonia'] = nearest(name ?? '', names);
  const example = CALCULATORS.find((calculator) => calculator.name === near)?.example ?? 'tankside calc --help';
  throw misuse(
    name === undefined ? `calc takes one of ${names.join(', ')}` : `there is no calculation «${name}»`,
    example,
  );
}

function optionsOf(calculator: Calculator, get: Get): Map<string, string> {
  const given = new Map<string, string>();
  for (const [name, option] of OPTIONS) {
    const value = get(option);
    if (value === null) continue;
    if (!calculator.options.includes(name))
      throw misuse(`calc ${calculator.name} takes no --${name}`, calculator.example);
    given.set(name, value);
  }
  if (calculator.options.includes('oxygen') && get(OXYGEN)) given.set('oxygen', 'yes');
  return given;
}

interface Asked {
  readonly words: readonly string[];
  readonly options: ReadonlyMap<string, string>;
  /** Line of the CSV, 0 for the command line. */
  readonly row: number;
}

/** A CSV with a heading; columns that are no option are words, in their order (`compound`, `shape`, `measures` …). */
function rowsOf(calculator: Calculator, text: string): readonly Asked[] {
  const table = readTable(text, calculator);
  const heading = (table[0] ?? []).map((cell) => cell.replace(/^--/, '').toLowerCase());
  if (table.length < 2)
    throw misuse('the CSV on standard input holds a heading and at least one line', headingFor(calculator));
  const strange = calculator.takes === '' ? heading.find((cell) => !calculator.options.includes(cell)) : undefined;
  if (strange !== undefined)
    throw misuse(`calc ${calculator.name} takes no column «${strange}»`, headingFor(calculator));
  return table.slice(1).map((cells, i) => ({
    row: i + 2,
    words: cells.filter((cell, k) => cell !== '' && !calculator.options.includes(heading[k] ?? '')),
    options: new Map(
      cells.flatMap((cell, k): [string, string][] => {
        const name = heading[k] ?? '';
        return cell !== '' && calculator.options.includes(name) ? [[name, cell]] : [];
      }),
    ),
  }));
}

function readTable(text: string, calculator: Calculator): string[][] {
  try {
    return parse(text, { bom: true, trim: true, skip_empty_lines: true, relax_column_count: true });
  } catch (error) {
    throw misuse(
      `the CSV cannot be read: ${error instanceof Error ? error.message : String(error)}`,
      headingFor(calculator),
    );
  }
}

function headingFor(calculator: Calculator): string {
  return `${calculator.takes === '' ? '' : 'words,'}${calculator.options.join(',')}`;
}

function calculate(calculator: Calculator, { words, options, row }: Asked): CalcAnswer {
  try {
    const inputs = new Inputs(words, options, calculator.example);
    const answer = calculator.run(inputs);
    inputs.checkAllRead();
    if (answer.results.some(({ value }) => value !== null && !Number.isFinite(value)))
      throw inputs.fault('these numbers are beyond what can be worked out');
    return answer;
  } catch (error) {
    if (!(error instanceof CalcFault)) throw error;
    throw new Stop(EXIT.misuse, row === 0 ? error.message : `line ${row}: ${error.message}`, error.write);
  }
}

async function asText(context: Context, answers: readonly CalcAnswer[]): Promise<string> {
  return calcText(answers, await lookNow(context));
}

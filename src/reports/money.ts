/** Income and tank-weeks as text and as JSON. No buyer's name reaches this file. */
import type { MoneyAnswer, MoneyRow } from '../questions/money.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Column, type Row } from './table.ts';
import type { Interval } from '../core/interval.ts';
import { sumWords } from '../core/words.ts';
import { countWords, dayText, heading, plural } from './words.ts';
import { paragraph } from './wrap.ts';

export function moneyText(answer: MoneyAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const { species, pairs, broods } = answer;
  const earned = broods.filter(hasEarned);
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    rows(look, 'species', species),
    rows(look, 'pair', pairs),
    rows(look, 'brood', earned),
    notYet(broods, look),
    spentWords(answer, look),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters({ since, name, total, currency, species, pairs, broods }: MoneyAnswer, look: Look): string {
  const days = since === null ? '' : ` since ${dayText(since, look)}`;
  const shown = [...species, ...pairs, ...broods];
  const [best] = name === null ? species : shown;
  if (best === undefined) return `nothing sold and no tank used${days}`;
  const unit = currency === null ? '' : ` ${currency}`;
  const each = (row: MoneyRow): string => `${row.name} ${eachWords(row)}${unit} a tank-week`;
  if (name !== null)
    return `${each(best)}${days}, ${sumWords(best.income)}${unit} in ${weeks(best.tankWeeks)} tank-weeks`;
  const spent = total.spent === 0 ? '' : `, ${total.spent.toFixed(2)} spent`;
  if (!shown.some(hasEarned))
    return `nothing sold${since === null ? ' yet' : days}${total.spent === 0 ? '' : `, ${total.spent.toFixed(2)}${unit} spent`}`;
  const worst = species.length > 1 ? species.at(-1) : undefined;
  return `${sumWords(total.income)}${unit} for fish${spent}${days}; best ${each(best)}${worst === undefined ? '' : `, least ${each(worst)}`}`;
}

function rows(look: Look, head: string, all: readonly MoneyRow[]): string {
  const columns: readonly Column[] = [
    { head },
    { head: 'a tank-week', align: 'right' },
    { head: 'income', align: 'right' },
    { head: 'spent', align: 'right' },
    { head: 'tank-weeks', align: 'right' },
    { head: 'sold', wraps: true },
    { head: 'raised', wraps: true },
  ];
  const line = (row: MoneyRow): Row => ({
    cells: [
      row.name,
      eachWords(row),
      `${sumWords(row.income)}${row.unpriced > 0 ? '+' : ''}`,
      row.spent === 0 ? '' : row.spent.toFixed(2),
      weeks(row.tankWeeks),
      row.sold.high === 0 ? '' : countWords(row.sold),
      row.raised === null ? '' : countWords(row.raised),
    ],
  });
  return table(look, columns, all.map(line)).trimEnd();
}

function hasEarned({ income, unpriced }: MoneyRow): boolean {
  return income.high > 0 || unpriced > 0;
}

function eachWords({ perTankWeek }: MoneyRow): string {
  return perTankWeek === null ? '–' : sumWords(perTankWeek);
}

function weeks(value: number): string {
  return value.toFixed(1);
}

function notYet(broods: readonly MoneyRow[], look: Look): string {
  const quiet = broods.filter((row) => !hasEarned(row));
  if (quiet.length === 0) return '';
  const names = quiet.map(({ name, tankWeeks }) => `${name} ${weeks(tankWeeks)}`);
  return paragraph(`nothing sold of, with their tank-weeks: ${names.join(', ')}`, look.width, 2);
}

function spentWords({ total, general, species, pairs, broods }: MoneyAnswer, look: Look): string {
  const unpriced =
    total.unpriced === 0 ? [] : [`+ ${plural(total.unpriced, 'sale')} without a price: at least that much`];
  const places = general.map(
    ({ place, text, amount }) => `${amount.toFixed(2)} ${text === null ? place : `${text} (${place})`}`,
  );
  const spent = places.length === 0 ? [] : [`spent for no single stock: ${places.join(', ')}`];
  const mixed = broods.filter((row) => row.pair === null && hasEarned(row)).map(({ name }) => name);
  const nobodys = mixed.length === 0 ? [] : [`of several pairs, and so in no row of a pair: ${mixed.join(', ')}`];
  const shown = species.length + pairs.length + broods.length > 0;
  const glass = 'shared tanks count by equal parts; income is after the auction’s part, spending not taken off';
  return [...unpriced, ...nobodys, ...spent, ...(shown ? [glass] : [])]
    .map((line) => paragraph(line, look.width, 2))
    .join('\n');
}

export function moneyJson(answer: MoneyAnswer): object {
  const { since, currency, total, general, species, pairs, broods } = answer;
  return {
    since: dayJson(since),
    currency,
    total: {
      income: countJson(plain(total.income)),
      unpriced: total.unpriced,
      spent: round(total.spent),
      tankWeeks: total.tankWeeks,
    },
    general: general.map(({ place, text, amount, lines }) => ({
      place,
      text,
      amount: round(amount),
      lines: linesJson(lines),
    })),
    species: species.map(rowJson),
    pairs: pairs.map(rowJson),
    broods: broods.map(rowJson),
  };
}

function rowJson(row: MoneyRow): object {
  return {
    id: row.id,
    name: row.name,
    species: row.species,
    ...(row.of === 'brood' ? { pair: row.pair } : {}),
    income: countJson(plain(row.income)),
    unpriced: row.unpriced,
    spent: round(row.spent),
    sold: countJson(row.sold),
    tankWeeks: row.tankWeeks,
    perTankWeek: countJson(row.perTankWeek),
    raised: countJson(row.raised),
    lines: linesJson(row.lines),
  };
}

/** Without the noise of adding up in binary. A part of a sum has more places than any coin, and keeps them: rows add up to the total. */
function plain({ low, likely, high }: Interval): Interval {
  return { low: round(low), likely: likely === null ? null : round(likely), high: round(high) };
}

function round(amount: number): number {
  return Number(amount.toFixed(4));
}

/** What can be sold, as JSON and as CSV. Buyers' names go into neither unless asked for. */
import type { Lot, SaleAnswer } from '../questions/sale.ts';
import type { CsvCell } from './csv.ts';
import { csvText } from './csv.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import { listWords } from './words.ts';

export function saleJson(answer: SaleAnswer, withNames: boolean): object {
  const { auction } = answer;
  return {
    at: dayJson(answer.at),
    projected: answer.ahead,
    currency: answer.currency,
    for:
      auction === null
        ? null
        : { name: auction.name, on: dayJson(auction.on), past: auction.past, bagOf: auction.bagOf },
    assumed: answer.assumed.map((one) => ({ ...one, clear: dayJson(one.clear) })),
    lots: answer.lots.map((lot) => lotJson(lot, withNames)),
    count: answer.count,
  };
}

function lotJson(lot: Lot, withNames: boolean): object {
  return {
    id: lot.id,
    stock: lot.stock,
    species: lot.species,
    tank: lot.tank,
    count: countJson(lot.count),
    size: countJson(lot.size),
    sizeRead: lot.sizeRead,
    bigEnough: lot.grown,
    shareBigEnough: countJson(lot.share),
    price:
      lot.price === null
        ? null
        : lot.price.per === 'each'
          ? lot.price.amount
          : { amount: lot.price.amount, per: lot.price.per },
    free: lot.free,
    keptBack: lot.keptBack,
    reserved: lot.reserved,
    bags: lot.bags,
    ready: lot.ready,
    from: dayJson(lot.from),
    blockers: lot.blockers.map(({ kind, why, until, lines }) => ({
      kind,
      why,
      until: dayJson(until),
      lines: linesJson(lines),
    })),
    wants: lot.wants.map(({ count, size, by, to, line }) => ({
      count: countJson(count),
      size: countJson(size),
      by: dayJson(by),
      ...(withNames ? { to } : {}),
      lines: linesJson([line]),
    })),
    ...(lot.cautions.length === 0 ? {} : { caution: lot.cautions.join('; ') }),
    lines: linesJson(lot.lines),
  };
}

/** One row a lot, for a spreadsheet: ISO dates, plain numbers, no names. `hide` takes them out of texts that quote lines. */
export function saleCsv(
  answer: SaleAnswer,
  { withNames, hide }: { readonly withNames: boolean; readonly hide: (text: string) => string },
): string {
  const head = [
    'stock',
    'species',
    'tank',
    'ready',
    'free',
    'count low',
    'count high',
    'mm low',
    'mm high',
    'price',
    'currency',
    'from',
    'in the way',
    'wanted',
    'take care',
  ];
  return csvText(
    [...head, ...(withNames ? ['wanted by'] : [])],
    answer.lots.map((lot) => [...csvRow(lot, answer, hide), ...(withNames ? [names(lot)] : [])]),
  );
}

function csvRow(lot: Lot, { currency }: SaleAnswer, hide: (text: string) => string): CsvCell[] {
  const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
  return [
    lot.stock,
    lot.species,
    lot.tank,
    lot.ready ? 'yes' : 'no',
    lot.free,
    Math.floor(lot.count.low),
    finite(Math.ceil(lot.count.high)),
    lot.size === null ? null : Math.floor(lot.size.low),
    lot.size === null ? null : Math.ceil(lot.size.high),
    lot.price?.amount ?? null,
    currency,
    dayJson(lot.from),
    hide(lot.blockers.map(({ why }) => why).join('; ')),
    lot.wants.reduce((sum, { count }) => sum + count.low, 0),
    hide(lot.cautions.join('; ')),
  ];
}

function names({ wants }: Lot): string {
  return listWords(wants.flatMap(({ to }) => (to === null ? [] : [to])));
}

/**
 * What can be sold, as text: ready stock first with the number to promise; below it everything else, with
 * each thing that stands in its way.
 */
import type { Lot, SaleAnswer } from '../questions/sale.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { countWords, dayText, heading, listWords, plural, rangeWords, saidDay } from './words.ts';
import { paragraph } from './wrap.ts';

export function saleText(answer: SaleAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const ready = answer.lots.filter((lot) => isLot(lot, answer));
  const others = answer.lots.filter((lot) => !lot.ready);
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    table(
      look,
      readyColumns(answer),
      ready.map((lot) => readyRow(lot, look)),
    ).trimEnd(),
    table(
      look,
      OTHER_COLUMNS,
      others.map((lot) => otherRow(lot, look)),
    ).trimEnd(),
    countBlock(answer, look),
    leftovers(answer, look),
    cautions(answer, look)
      .map((line) => paragraph(line, look.width, 2))
      .join('\n'),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters(answer: SaleAnswer, look: Look): string {
  const ready = answer.lots.filter((lot) => isLot(lot, answer));
  const fish = ready.reduce((sum, { free }) => sum + free, 0);
  const { auction } = answer;
  if (auction?.past === true)
    return `${auction.name} was on ${dayText(auction.on, look)}; this is what can be promised today: ${fish} fish`;
  const day = answer.at === look.on ? '' : ` on ${dayText(answer.at, look)}`;
  const where = auction === null ? day : ` at ${auction.name}${day}`;
  if (ready.length === 0) return `nothing can be promised${where}`;
  return `${plural(fish, 'fish', 'fish')} in ${plural(ready.length, 'lot')} can be promised${where}`;
}

function readyColumns({ currency }: SaleAnswer): readonly { head: string; align?: 'right'; wraps?: boolean }[] {
  return [
    { head: 'ready', wraps: true },
    { head: 'where' },
    { head: 'fish', align: 'right' },
    { head: 'mm', align: 'right' },
    { head: currency === null ? 'each' : `${currency} each`, align: 'right' },
    { head: 'and', wraps: true },
  ];
}

function readyRow(lot: Lot, look: Look): Row {
  return {
    cells: [
      stockWords(lot),
      lot.tank,
      { text: String(lot.free), paint: look.paint.strong },
      sizeWords(lot),
      priceWords(lot),
      [...promised(lot), ...bagWords(lot), ...wanted(lot, look)].join('; '),
    ],
    under: lot.cautions.map((caution) => `take care: ${caution}`),
  };
}

const OTHER_COLUMNS = [
  { head: 'not ready', wraps: true },
  { head: 'where' },
  { head: 'fish', align: 'right' as const },
  { head: 'from' },
  { head: 'in the way', wraps: true },
];

function otherRow(lot: Lot, look: Look): Row {
  return {
    cells: [
      stockWords(lot),
      lot.tank,
      lot.free > 0 ? String(lot.free) : countWords(lot.count),
      lot.from === null ? 'not known' : dayText(lot.from, look),
      [
        ...lot.blockers.map(({ why, until }) =>
          until === null || lot.blockers.length === 1 ? why : `${why}, until ${saidDay(until, look)}`,
        ),
        ...shareOf(lot),
        // The number before it is what could go, not what is there.
        ...(lot.free > 0 ? promised(lot) : []),
      ],
    ],
  };
}

/** The share that may be big enough by then, where none surely is: `likely 25 % big enough (2–75 %)`. From none to all says nothing. */
function shareOf({ share, blockers }: Lot): string[] {
  if (share === null || percent(share.high) < 1 || !blockers.some(({ kind }) => kind === 'size')) return [];
  const likely = percent(share.likely ?? share.low);
  if (likely < 1) return percent(share.high) > 99 ? [] : [`at most ${percent(share.high)} % big enough`];
  return [`likely ${likely} % big enough (${percent(share.low)}–${percent(share.high)} %)`];
}

function percent(share: number): number {
  return Math.round(share * 100);
}

/** `Rowan-1, krib`; the species once, where the name of the stock has it. */
function stockWords({ stock, species }: Lot): string {
  return species === null || stock.startsWith(species) ? stock : `${stock}, ${species}`;
}

function promised({ keptBack, reserved, grown, count }: Lot): string[] {
  return [
    ...(grown > 0 && grown < Math.floor(count.low) ? [`${grown} of ${Math.floor(count.low)} big enough`] : []),
    ...(keptBack > 0 ? [`${keptBack} kept back`] : []),
    ...(reserved > 0 ? [`${reserved} reserved`] : []),
  ];
}

function bagWords({ bags }: Lot): string[] {
  return bags === null ? [] : [bags === 0 ? 'no full bag' : plural(bags, 'bag')];
}

function wanted({ wants }: Lot, look: Look): string[] {
  return wants.map(({ count, by, to }) => {
    const day = by === null ? '' : ` by ${saidDay(by, look)}`;
    return `${countWords(count)} wanted${day}${to === null ? '' : `, ${to}`}`;
  });
}

function sizeWords({ size, sizeRead }: Lot): string {
  if (size === null) return '';
  return sizeRead ? rangeWords(size) : `${rangeWords(size)}?`;
}

function priceWords({ price }: Lot): string {
  if (price === null) return '';
  return price.per === 'each' ? price.amount.toFixed(2) : `${price.amount.toFixed(2)} for all`;
}

const COUNT_COLUMNS = [
  { head: 'to promise more, count', wraps: true },
  { head: 'where' },
  { head: 'now', align: 'right' as const },
  { head: 'at most', align: 'right' as const },
];

function countBlock(answer: SaleAnswer, look: Look): string {
  const count = answer.count.filter(({ unknown }) => !unknown);
  const rows = count.map(({ stock, tank, sure, perhaps }): Row => ({
    cells: [stock, tank, String(sure), perhaps === null ? 'not known' : String(perhaps)],
  }));
  const [first] = count;
  const jot = first === undefined ? '' : look.paint.quiet(`jot  ${first.write}`);
  return `${table(look, COUNT_COLUMNS, rows)}${jot}`;
}

/** What nobody knows the number of: one line for all of it. */
function leftovers({ count }: SaleAnswer, look: Look): string {
  const of = (surely: number): readonly string[] =>
    count.filter(({ unknown, sure }) => unknown && sure === surely).map(({ stock, tank }) => `${stock} in ${tank}`);
  const [surely, perhaps] = [of(1), of(0)];
  return [
    ...(surely.length === 0 ? [] : [`at least 1 each, nobody knows how many, count first: ${listWords(surely)}`]),
    ...(perhaps.length === 0 ? [] : [`perhaps some, perhaps none, count first: ${listWords(perhaps)}`]),
  ]
    .map((line) => paragraph(line, look.width, 2))
    .join('\n');
}

function isLot(lot: Lot, { count }: SaleAnswer): boolean {
  const wide = count.some(({ stock, tank, unknown }) => unknown && stock === lot.stock && tank === lot.tank);
  return lot.ready && !wide;
}

function cautions({ lots, auction, assumed }: SaleAnswer, look: Look): string[] {
  const unread = lots.some(({ ready, size, sizeRead }) => ready && size !== null && !sizeRead);
  const holds = assumed.map(({ place, text, clear }) => `${place} (${text}), ${dayText(clear, look)}`);
  return [
    ...(holds.length === 0 ? [] : [`taken as off hold by then, if no new sign comes: ${listWords(holds)}`]),
    ...(unread ? ['a length with ? is what is usual for their age: nobody measured them'] : []),
    ...(auction === null || auction.past
      ? []
      : [
          'take care: count the hours from bagging to unpacking; permits are local law; never release fish, plants or water',
        ]),
  ];
}

/** Fish of which nobody knows how many there are: what a move left behind, young that nobody counted. */
import type { CountMore, Lot, SaleAnswer } from '../sale.ts';

/** A count is worth making where it might free so many more. */
const WORTH_COUNTING = 3;

/** One fish surely there, perhaps many more: something to count first, not a lot to promise. */
export function isLeftover(
  { stock, tank }: Pick<Lot, 'stock' | 'tank'>,
  { count }: Pick<SaleAnswer, 'count'>,
): boolean {
  return count.some((one) => one.unknown && one.stock === stock && one.tank === tank);
}

/** Where the count is wide, what to write to be able to promise more. */
export function countMore(lot: Lot): CountMore[] {
  const { count, stock, tank } = lot;
  const others = lot.blockers.filter(({ kind }) => kind !== 'count');
  if (others.length > 0 || count.high - count.low < WORTH_COUNTING) return [];
  const high = Number.isFinite(count.high) ? count.high : null;
  const name = stock.split(' or ')[0] ?? stock;
  return [
    {
      stock,
      tank,
      sure: lot.free,
      unknown: count.low <= 1,
      perhaps: high === null ? null : high - lot.keptBack - lot.reserved,
      write: `${tank}: ${name} counted …`,
    },
  ];
}

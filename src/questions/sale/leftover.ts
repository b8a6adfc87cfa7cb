/** Fish that a move left behind and nobody counted. */
import type { Lot, SaleAnswer } from '../sale.ts';

/** One fish surely there, perhaps many more: something to count first, not a lot to promise. */
export function isLeftover(
  { stock, tank }: Pick<Lot, 'stock' | 'tank'>,
  { count }: Pick<SaleAnswer, 'count'>,
): boolean {
  return count.some((one) => one.sure <= 1 && one.stock === stock && one.tank === tank);
}

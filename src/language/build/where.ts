/** Where something was seen, as a keeper tells it in passing. */
import type { LinkNode, Piece } from '../../../grammar/syntax.ts';
import type { Clause } from '../clause.ts';
import { figureValue } from '../quantities.ts';
import { remarkOf } from '../stray.ts';

/** `in the cave`: words, not a name, which would tell more. */
export function where(clause: Clause): LinkNode | null {
  doubtNumber(clause);
  return clause.take(
    (each): each is LinkNode =>
      each.type === 'link' && each.link === 'where' && each.values[0]?.type === 'text' && isPlace(clause, each),
  );
}

/** So few eggs are hardly counted: `in cave 2` is the second cave. */
const FEW = 10;

/** `spawned in cave 2`: where, or how many? */
function doubtNumber(clause: Clause): void {
  const at = clause.rest.findIndex((each) => each.type === 'link' && (each.link === 'where' || each.link === 'aside'));
  const [place, next] = clause.rest.slice(at, at + 2);
  const number = next?.type === 'quantity' && next.noun === null && next.fuzz === null ? next.numbers[0] : undefined;
  if (at < 0 || place === undefined || number === undefined || figureValue(number) >= FEW) return;
  if (/\S/.test(clause.line.text.slice(place.to, number.from))) return;
  const words = { from: place.from, to: number.to };
  clause.fault(
    'two-readings',
    words,
    `«${clause.written(words)}» may be a place or a count: a comma goes before a count, quotes around a place`,
  );
}

/** `behind the filter lights off` has a clause in it that lacks its `;`. */
function isPlace({ line }: Clause, words: Piece): boolean {
  return remarkOf(line, words, 'tank') !== null && remarkOf(line, words, 'loop') !== null;
}

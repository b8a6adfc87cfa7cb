/** Where something was seen, as a keeper tells it in passing. */
import type { LinkNode, Piece } from '../../../grammar/syntax.ts';
import type { Clause } from '../clause.ts';
import { remarkOf } from '../stray.ts';

/** `in the cave`: words, not a name, which would tell more. */
export function where(clause: Clause): LinkNode | null {
  return clause.take(
    (each): each is LinkNode =>
      each.type === 'link' && each.link === 'where' && each.values[0]?.type === 'text' && isPlace(clause, each),
  );
}

/** `behind the filter lights off` has a clause in it that lacks its `;`. */
function isPlace({ line }: Clause, words: Piece): boolean {
  return remarkOf(line, words, 'tank') !== null && remarkOf(line, words, 'loop') !== null;
}

/**
 * What the same tokens came to before. Journals repeat themselves: `A1:` stands before thousands of
 * lines, `all well` behind them. Nodes are never changed, so lines may share them.
 */
import type { IToken } from 'chevrotain';

/** So many are kept, then all are dropped: what is repeated comes back at once. */
const MOST = 4_000;

export class Recent<V> {
  private readonly known = new Map<string, V>();

  get(key: string): V | undefined {
    return this.known.get(key);
  }

  keep(key: string, value: V): void {
    if (this.known.size >= MOST) this.known.clear();
    this.known.set(key, value);
  }
}

/** A key that only the same tokens at the same places have; no sign of a line's text is a line feed. */
export function tokensKey(tokens: readonly IToken[], from: number, to: number): string {
  let key = '';
  for (let at = from; at < to; at += 1) {
    const token = tokens[at];
    if (token !== undefined) key += `${token.tokenTypeIdx} ${token.startOffset} ${token.image}\n`;
  }
  return key;
}

/** Words of a clause that its kind does not take: perhaps a clause of their own with a slip in it, else a remark. */
import { allPhrases, canonicalOf, canonicalPhrases } from '../../grammar/phrases.ts';
import { Name } from '../../grammar/tags.ts';
import type { ClauseKind, HeadingKind } from '../../grammar/phrases.ts';
import type { DetailNode, Piece } from '../../grammar/syntax.ts';
import { cut, endOf } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { nearest, slips } from '../core/suggest.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';
import { foldPunctuation } from './punctuation.ts';

const SHORT = 3;

/** The opening phrase nearest to the first words. Of equally near ones the canonical one. */
export function nearestPhrase(
  tokens: readonly Token[],
  heading: HeadingKind,
): { phrase: string; words: number } | null {
  let best: { phrase: string; words: number; cost: number } | null = null;
  for (const words of [3, 2, 1]) {
    if (tokens.length < words) continue;
    const said = tokens
      .slice(0, words)
      .map(({ image }) => image.toLowerCase())
      .join(' ');
    // Almost any short word is near some abbreviation, so those are offered for longer ones only.
    const synonyms = said.length > SHORT ? allPhrases(heading) : [];
    const found = nearest(said, canonicalPhrases(heading), 1)[0] ?? nearest(said, synonyms, 1)[0];
    if (found === undefined) continue;
    const cost = slips(said, found);
    if (best === null || cost < best.cost) best = { phrase: found, words, cost };
  }
  return best;
}

/** A place with the unknown words before it: `hiding behind the filter` goes wrong at `the`, but `behind` is to blame. */
export function withUnknownBefore(line: LineContext, at: Piece, tokens: readonly Token[]): Piece {
  let { from } = at;
  for (const token of tokens.filter((each) => endOf(each) <= at.from).reverse()) {
    if (token.tokenType !== Name || line.names.isName(token.image)) break;
    from = token.startOffset;
  }
  return { from, to: at.to };
}

/** Words that a clause does not take. After a comma each part may have been meant as a clause of its own. */
export function strayWords(
  line: LineContext,
  at: Piece,
  end: number,
  phrase: string | null,
  heading: HeadingKind,
): Fault[] {
  const said = phrase === null ? 'here' : `with \`${phrase}\``;
  const faults: Fault[] = [];
  let from = at.from;
  for (const part of line.text.slice(at.from, end).split(/(?<=,)/)) {
    const words = part.replace(/,$/, '');
    const start = from + (words.length - words.trimStart().length);
    const place = { from: start, to: start + words.trim().length };
    from += part.length;
    const separate = /[,;]\s*$/.test(line.text.slice(0, start));
    const near = separate ? nearestPhrase(cut(foldPunctuation(words)), heading) : null;
    const says = `«${words.trim()}» is not understood ${said}`;
    if (near !== null) faults.push(fault('unknown-clause', place, says, near.phrase));
    else if (faults.length === 0) {
      const rest = { from: start, to: end, text: asRemark(line.text.slice(start, end)) };
      return [{ ...fault('not-understood', place, says, asRemark(words)), otherwise: rest }];
    }
  }
  return faults;
}

/** Words turned into a remark. */
export function asRemark(words: string): string {
  const plain = words.replace(/["“”„‟«»″]/g, '').trim();
  return plain === '' ? '' : `"${plain}"`;
}

/** A detail that its clause did not ask for. */
export function strayDetail(line: LineContext, kind: ClauseKind, detail: DetailNode, heading: HeadingKind): Fault {
  const here = line.text.slice(detail.from, detail.to);
  const phrase = canonicalOf(kind);
  const said = phrase === null ? 'here' : `with \`${phrase}\``;
  const at = { from: detail.from, to: detail.to };
  if (detail.type === 'name' && line.names.find(detail.text, line.day) === null) {
    const near = nearestPhrase(cut(here), heading);
    const says = `«${here}» is not understood ${said}`;
    return fault('unknown-clause', at, says, near?.phrase ?? asRemark(here));
  }
  return fault('does-not-belong', at, `«${here}» does not belong ${said}`, asRemark(here));
}

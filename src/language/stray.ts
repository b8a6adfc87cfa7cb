/** Words of a clause that its kind does not take: perhaps a clause of their own with a slip in it, else a remark. */
import { dateLength, matchPhrase, wordOf } from '../../grammar/matching.ts';
import { NUMBER_WORDS } from '../../grammar/words.ts';
import {
  canonicalOf,
  canonicalPhrases,
  clausesUnder,
  likelyPhrases,
  openersUnder,
  phrasesContinuing,
} from '../../grammar/phrases.ts';
import { Name } from '../../grammar/tags.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import type { ClauseNode, DetailNode, Piece } from '../../grammar/syntax.ts';
import { cut } from '../../grammar/cut.ts';
import { endOf, Num } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { nearest, slips } from '../core/suggest.ts';
import { asRemark, fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { jarByNumber } from './jarnumber.ts';
import type { LineContext } from './line.ts';
import { foldPunctuation } from './punctuation.ts';
import { turns } from './turns.ts';
import { unsaidCount } from './unsaidcount.ts';

const SHORT = 3;
const LONG = 9;

/** The opening phrase nearest to the first words. Of equally near ones the canonical one. */
export function nearestPhrase(
  tokens: readonly Token[],
  heading: HeadingKind,
): { phrase: string; words: number } | null {
  let best: { phrase: string; words: number; cost: number } | null = null;
  for (const words of [3, 2, 1]) {
    // A number that stands between is no slip: what replaced the words would lose it.
    if (tokens.length < words || tokens.slice(0, words).some(({ tokenType }) => tokenType === Num)) continue;
    const said = tokens
      .slice(0, words)
      .map(({ image }) => image.toLowerCase())
      .join(' ');
    // Almost any short word is near some abbreviation, so those are offered for longer ones only.
    const synonyms = said.length > SHORT ? likelyPhrases(heading) : [];
    const readings = said.length > SHORT + 1 ? readingWords(heading) : [];
    const near = (phrases: readonly string[]): string | undefined =>
      nearest(said, phrases).find((phrase) => isSlip(said, phrase));
    const found = near(canonicalPhrases(heading)) ?? near([...synonyms, ...readings]);
    if (found === undefined) continue;
    const cost = slips(said, found);
    // Of a short word two slips leave little: `cycled` is not `culled`.
    if (cost > 1 && said.length < LONG) continue;
    if (best === null || cost < best.cost) best = { phrase: found, words, cost };
  }
  return best;
}

/** In each word one slip, in a long one two; and of three letters none is another. */
function isSlip(said: string, meant: string): boolean {
  const [words, others] = [said.split(' '), meant.split(' ')];
  if (words.length !== others.length) return true;
  return words.every((word, index) => {
    const other = others[index] ?? '';
    if (word !== other && NO_SLIPS.has(word)) return false;
    const cost = slips(word, other);
    const isOther = word.length <= SHORT && word.length === other.length && sorted(word) !== sorted(other);
    return cost === 0 || (!isOther && cost <= (word.length < LONG ? 1 : 2));
  });
}

/** Words that stand for themselves, near as they are to another: `no air` is not `on air`, nor `most` a slip for `must`. */
const NO_SLIPS: ReadonlySet<string> = new Set(
  'no not on now most rest few beaten eating laying lid less lost last moved to in out will well would should'.split(
    ' ',
  ),
);

function sorted(word: string): string {
  return [...word].sort().join('');
}

/** `ammonia`, `nitrite`: what a test found opens a clause without its phrase. */
function readingWords(heading: HeadingKind): readonly string[] {
  if (!clausesUnder(heading).has('test')) return [];
  return [...phrasesContinuing('test').values()].flat().map(({ words }) => words.join(' '));
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
    const tokens = cut(foldPunctuation(words));
    const count = separate ? unsaidCount(words, line, tokens, heading) : null;
    const near = separate && count === null ? nearestPhrase(tokens, heading) : null;
    const says = `«${words.trim()}» is not understood ${said}`;
    if (count !== null) {
      faults.push(fault('unknown-clause', place, says, count));
    } else if (near !== null) {
      // Only the words with the slip in them: what follows them is a fact as well.
      const last = tokens[near.words - 1];
      const slip = { from: start, to: last === undefined ? place.to : from - part.length + endOf(last) };
      faults.push({ ...fault('unknown-clause', place, says), edit: { ...slip, text: near.phrase } });
    } else if (faults.length === 0) {
      return [strayTail(line, place, end, says, heading)];
    }
  }
  return faults;
}

function isLength(unit: string): boolean {
  return /^(?:mm|cm|in|inch|inches)$/iu.test(unit);
}

/** Words at which a clause stops making sense: the next clause without its `;`, else a remark. */
function strayTail(line: LineContext, place: Piece, end: number, says: string, heading: HeadingKind): Fault {
  const wrong = fault('not-understood', place, says);
  const rest = { from: place.from, to: end };
  if (opensClause(line, rest, heading)) {
    const before = line.text.slice(0, place.from).trimEnd().replace(/,$/, '');
    return { ...wrong, edit: { from: before.length, to: place.from, text: '; ' } };
  }
  const [short, long] = [place, rest].map((piece) => remarkOf(line, piece, heading));
  return long === null || long === undefined
    ? { ...wrong, edit: short ?? null }
    : { ...wrong, edit: short ?? long, otherwise: long };
}

/** A remark in place of words; null where they tell more than a remark may hide: a clause, a number, a name, a day. */
export function remarkOf(line: LineContext, { from, to }: Piece, heading: HeadingKind): Fault['edit'] {
  const tokens = cut(foldPunctuation(line.text.slice(from, to)));
  const tells = tokens.some(
    (token, index) =>
      token.tokenType === Num ||
      // `the other one` counts nothing.
      (NUMBER_WORDS.get(wordOf(token)) ?? 1) !== 1 ||
      line.names.isName(token.image) ||
      dateLength(tokens, index) > 0 ||
      opensAt(tokens, index, heading),
  );
  const said = line.text.slice(from, to);
  // `1 dead?` is asked and not told.
  if (said.trim() === '?' && /^\s*(?:$|[;,.#])/u.test(line.text.slice(to))) return null;
  return tells || EARLIER.test(said) || turns(said) ? null : { from, to, text: asRemark(line.text.slice(from, to)) };
}

/** `from yesterday` is a day, not a remark. */
const EARLIER = /(?:^|\s)(?:yesterday|yest|yday|last\s+night)(?!\p{L})/iu;

function opensClause(line: LineContext, { from, to }: Piece, heading: HeadingKind): boolean {
  return opensAt(cut(foldPunctuation(line.text.slice(from, to))), 0, heading);
}

/** Whether a clause begins there that no remark may hide. The name of a food alone says too little to be one. */
function opensAt(tokens: readonly Token[], at: number, heading: HeadingKind): boolean {
  const phrase = matchPhrase(tokens, at, openersUnder(heading))?.phrase;
  return phrase !== undefined && !phrase.shy && phrase.kind !== 'two readings' && phrase.sense !== 'food';
}

/** A detail that its clause did not ask for. */
export function strayDetail(
  line: LineContext,
  { kind, head }: ClauseNode,
  detail: DetailNode,
  heading: HeadingKind,
): Fault {
  const here = line.text.slice(detail.from, detail.to);
  // As it was written: of many phrases the usual one may be another (`heater on`, `back on the loop`).
  const phrase = line.text.slice(head.from, head.to) || canonicalOf(kind);
  const said = phrase === null ? 'here' : `with \`${phrase}\``;
  const at = { from: detail.from, to: detail.to };
  if (detail.type === 'name' && line.names.find(detail.text, line.day) === null) {
    const near = nearestPhrase(cut(here), heading);
    const says = `«${here}» is not understood ${said}`;
    if (near !== null) return fault('unknown-clause', at, says, near.phrase);
    return { ...fault('not-understood', at, says), edit: remarkOf(line, at, heading) };
  }
  const wrong = fault('does-not-belong', at, `«${here}» does not belong ${said}`);
  // `counted 38 25 mm`
  if (kind === 'counted' && detail.type === 'quantity' && detail.unit !== null && isLength(detail.unit.text)) {
    const before = line.text.slice(0, detail.from).trimEnd().replace(/,$/, '');
    return { ...wrong, edit: { from: before.length, to: detail.from, text: '; ' } };
  }
  // `restarted from jar 2`
  const jar = kind === 'culture started' || kind === 'culture split' ? jarByNumber(line, at, detail.to) : null;
  return { ...wrong, edit: jar ?? remarkOf(line, at, heading) };
}

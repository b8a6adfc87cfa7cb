/** Where a clause opens: the longest phrase under the heading, perhaps with a fish or a number before it. */
import type { IToken, TokenType } from 'chevrotain';
import { fishBefore, fishOnFish, matchPhrase, numberEnd, sexesEnd, wordOf } from './matching.ts';
import type { Match } from './matching.ts';
import * as p from './phrases.ts';
import type { ClauseKind, HeadingKind } from './phrases.ts';
import * as t from './tokens.ts';
import { bounds } from './opening.ts';
import type { Opening, TagContext } from './opening.ts';
import { moveEnd, unsaidAt } from './unsaid.ts';

export type { Opening, TagContext } from './opening.ts';
import { ARTICLES, SEX_WORDS, UNIT_WORDS } from './words.ts';

/** Tokens that no clause can hold; whoever cut the line reports them. */
export const UNREADABLE: ReadonlySet<TokenType> = new Set([
  t.Hash,
  t.InchMark,
  t.OpenQuote,
  t.Joined,
  t.Minus,
  t.Unknown,
]);

/** What opens at a token, or null. `afterComma` is stricter: only what surely opens a clause counts. */
export function openingAt(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  if (tokens[at]?.tokenType === t.Note) return { kind: 'note', sense: 'note', ...bounds(at, at, at + 1) };
  // `found 2 dead`
  if (wordOf(tokens[at]) === 'found') {
    const lost = numberThenPhrase(tokens, at + 1, context, afterComma);
    if (lost?.kind === 'lost') return lost;
  }
  const saw = wordOf(tokens[at]) === 'saw' ? sawYoung(tokens, at, context) : null;
  if (saw !== null) return saw;
  const phrase = phraseAt(tokens, at, context, at, afterComma);
  const found = [
    phrase,
    versusAt(tokens, at, context),
    phrase === null || SEX_WORDS.has(wordOf(tokens[at])) ? fishThenPhrase(tokens, at, context, afterComma) : null,
    numberThenPhrase(tokens, at, context, afterComma),
    readingAt(tokens, at, context, afterComma),
    afterComma ? null : ownChoreAt(tokens, at, context),
    // `largest 6 to B2` is a move; any other phrase says itself what it opens.
    ...(phrase === null || UNSAID.has(phrase.kind) ? unsaidAt(tokens, at, context, afterComma) : []),
  ];
  let best: Opening | null = null;
  for (const opening of found) if (opening !== null && (best === null || opening.reach > best.reach)) best = opening;
  return best ?? (afterComma ? lotsAt(tokens, at, context) : withoutPhrase(tokens, at, context));
}

/** Kinds of clause whose words may begin one without its verb: `largest 6 to B2`, `eggs to C2`. */
const UNSAID: ReadonlySet<ClauseKind> = new Set<ClauseKind>(['size', 'two readings', 'spawned', 'stage']);

/** `saw 6 fry` */
function sawYoung(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  const end = numberEnd(tokens, at + 1);
  const isYoung = end > at + 1 && SEX_WORDS.get(wordOf(tokens[end])) === 'young';
  if (!isYoung || !p.clausesUnder(context.heading).has('stage')) return null;
  return { kind: 'stage', sense: 'fry seen', ...bounds(at, at, at + 1, end + 1) };
}

function phraseAt(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  start = at,
  afterComma = false,
): Opening | null {
  const match = openingPhrase(tokens, at, context);
  if (match === null || match.phrase.kind === null || (afterComma && match.phrase.shy)) return null;
  const { kind, sense } = match.phrase;
  const end = at + match.length;
  // `pulled` means two things, `pulled 20 fry to B2` and `split, 20 to B2` one.
  const moves = sense === 'pulled' || sense === 'split';
  if (kind === 'two readings' && moves && moveEnd(tokens, afterMark(tokens, end, sense), context) > end) {
    return { kind: 'moved', sense: 'moved', ...bounds(start, at, end) };
  }
  const change = kind === 'did' ? changeDone(tokens, at, end, context) : null;
  return change ?? { kind, sense, ...bounds(start, at, end) };
}

/** `did wc 30 %`, `did a 30 % wc` are the change itself; `did wc` is the task. */
function changeDone(tokens: readonly IToken[], at: number, end: number, context: TagContext): Opening | null {
  const from = ARTICLES.has(wordOf(tokens[end])) ? end + 1 : end;
  const number = numberThenPhrase(tokens, from, context, false);
  if (number?.kind === 'water change') return number;
  const done = openingPhrase(tokens, end, context);
  if (done?.phrase.kind !== 'water change' || numberEnd(tokens, end + done.length) === end + done.length) return null;
  return { kind: 'water change', sense: done.phrase.sense, ...bounds(at, at, end + done.length) };
}

/** The index after the comma or colon that may stand behind `split`. */
function afterMark(tokens: readonly IToken[], at: number, sense: string): number {
  const mark = tokens[at]?.tokenType;
  return sense === 'split' && (mark === t.Comma || mark === t.Colon) ? at + 1 : at;
}

function openingPhrase(tokens: readonly IToken[], at: number, context: TagContext): Match | null {
  const match = matchPhrase(tokens, at, p.openersUnder(context.heading));
  return match !== null && match.phrase.yields && context.isName(tokens[at]?.image ?? '') ? null : match;
}

/** `male on female` alone: its three words are details of a clause that needs no phrase. */
function versusAt(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  if (!p.clausesUnder(context.heading).has('on each other') || !fishOnFish(tokens, at, context.isFish)) return null;
  return { kind: 'on each other', sense: 'chasing', ...bounds(at, at, at, at + 3) };
}

function fishThenPhrase(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  // `male from Rowan-1`: in a declaration a sex is what is told of, not who does it.
  if (context.heading === 'new group' && SEX_WORDS.has(wordOf(tokens[at]))) return null;
  // `pair Oak: krib in C2`: nor does a species.
  if (context.heading === 'new group' && !context.isFish(tokens[at]?.image ?? '')) return null;
  let best: Opening | null = null;
  for (const length of fishBefore(tokens, at, context.isName)) {
    const fish = SEX_WORDS.has(wordOf(tokens[at])) || context.isFish(tokens[at]?.image ?? '');
    const opening = phraseAt(tokens, at + length, context, at, afterComma && !fish);
    // `heatr off` is a slip, not a fish called heatr; nor is `frozen` of `frozen bbs` one.
    if (!fish && (opening?.kind === 'two readings' || opening?.sense === 'food')) continue;
    if (opening !== null && (best === null || opening.reach > best.reach)) best = opening;
  }
  return best ?? fishThenNumber(tokens, at, context, afterComma);
}

/** `Ash 2 dead` */
function fishThenNumber(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  const first = tokens[at];
  if (first?.tokenType !== t.Word || !context.isFish(first.image)) return null;
  const opening = numberThenPhrase(tokens, at + 1, context, afterComma);
  return opening?.kind === 'lost' ? { ...opening, start: at } : null;
}

function numberThenPhrase(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  const number = numberEnd(tokens, at);
  if (number === at) return null;
  // `30 % wc`
  const end = number + (tokens[number]?.tokenType === t.Unit && wordOf(tokens[number + 1]) !== '' ? 1 : 0);
  // `2 m 1 f dead`
  const apart = sexesEnd(tokens, number);
  for (const length of [0, ...fishBefore(tokens, end, context.isName), ...(apart > number ? [apart - end] : [])]) {
    const opening = phraseAt(tokens, end + length, context, at);
    if (opening === null) continue;
    const rule = p.CLAUSES[opening.kind];
    if (end > number && opening.kind !== 'water change' && end + length !== apart) continue;
    // `1in` is a length; `6 in` may be that or fish that came.
    if (opening.kind === 'two readings' && (isGlued(tokens, end) || isPart(tokens, end))) continue;
    const counted = rule.counted === true && (!afterComma || opening.kind !== 'two readings');
    if (counted || (!afterComma && rule.fish !== undefined)) {
      return opening;
    }
  }
  return null;
}

/** `1.5 in`: no fish came in parts. */
function isPart(tokens: readonly IToken[], at: number): boolean {
  return tokens[at]?.tokenType === t.Unit && /[.,]\d|[^\d]$/u.test(tokens[at - 1]?.image ?? '');
}

function isGlued(tokens: readonly IToken[], at: number): boolean {
  const [before, unit] = [tokens[at - 1], tokens[at]];
  return before !== undefined && unit?.tokenType === t.Unit && t.endOf(before) === unit.startOffset;
}

/** `pH 7.4, KH 6`, `25.5 C`: what a test found needs no word `test`. */
function readingAt(tokens: readonly IToken[], at: number, context: TagContext, afterComma: boolean): Opening | null {
  if (!p.clausesUnder(context.heading).has('test')) return null;
  const number = numberEnd(tokens, at);
  if (!afterComma && number > at && isDegrees(tokens[number])) {
    return { kind: 'test', sense: 'reading', ...bounds(at, at, at, number + 1) };
  }
  const match = matchPhrase(tokens, at, p.phrasesContinuing('test'));
  if (match === null || match.phrase.sense === 'takes' || match.phrase.sense === 'was') return null;
  const reach = at + match.length;
  // `pH: 7.4`
  const from = reach + (tokens[reach]?.tokenType === t.Colon ? 1 : 0);
  return numberEnd(tokens, from) === from ? null : { kind: 'test', sense: 'reading', ...bounds(at, at, at, reach) };
}

function isDegrees(token: IToken | undefined): boolean {
  const unit = token?.tokenType === t.Unit ? UNIT_WORDS.get(token.image.toLowerCase()) : undefined;
  return unit === 'C' || unit === 'F';
}

/** `"press the test button" every month`. */
function ownChoreAt(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  if (tokens[at]?.tokenType !== t.Quote || !p.clausesUnder(context.heading).has('chore')) return null;
  const next = wordOf(tokens[at + 1]);
  const often = next === 'every' || next === 'daily' || next === 'weekly' || next === 'monthly';
  return often ? { kind: 'chore', sense: 'own', ...bounds(at, at, at, at + 1) } : null;
}

/** In a declaring line some clauses need no phrase: `54 L`, `krib`, `Limia nigrofasciata`, `20 lots`, `2 boxes`. */
function withoutPhrase(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  const token = tokens[at];
  if (token === undefined || UNREADABLE.has(token.tokenType)) return null;
  const end = numberEnd(tokens, at);
  const kind = bareKind(
    context.heading,
    end > at ? wordOf(tokens[end]) : null,
    token.tokenType === t.Word || token.tokenType === t.Quote,
  );
  return kind === null ? null : { kind, sense: kind, ...bounds(at, at, at) };
}

/** `on 2026-09-05, 20 lots`: the noun says after a comma as well that it is a clause of its own. */
function lotsAt(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  const end = numberEnd(tokens, at);
  const isCounted = context.heading === 'new auction' && end > at && LOT_NOUNS.has(wordOf(tokens[end]));
  const bare = isCounted ? withoutPhrase(tokens, at, context) : null;
  return bare && { ...bare, reach: end + 1 };
}

const LOT_NOUNS: ReadonlySet<string> = new Set(['lots', 'lot', 'boxes', 'box']);

/** `counted`: the word after a number that stands first, `lots` of `20 lots`; null where none does. */
function bareKind(heading: HeadingKind, counted: string | null, word: boolean): ClauseKind | null {
  const number = counted !== null;
  switch (heading) {
    case 'row':
      return number || word ? 'tanks of a row' : null;
    case 'new tank':
      return number ? 'tank size' : null;
    case 'new group':
      return number || word ? 'group of' : null;
    case 'new species':
      return word ? 'latin' : null;
    case 'new culture':
      return word ? 'culture of' : null;
    case 'new auction':
      if (counted === 'boxes' || counted === 'box') return 'boxes';
      return number ? 'lots' : null;
    case 'new loop':
    case 'room':
    case 'loop':
    case 'tank':
    case 'group':
    case 'brood':
    case 'culture':
    case 'auction':
    case 'species':
      return null;
    default:
      return null;
  }
}

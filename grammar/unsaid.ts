/** Clauses whose verb keepers leave out where what is said can be nothing else: `12 to B2`, `fry 12 mm`. */
import type { IToken } from 'chevrotain';
import { isJoint, matchPhrase, numberEnd, wordOf } from './matching.ts';
import { bounds } from './opening.ts';
import type { Opening, TagContext } from './opening.ts';
import * as p from './phrases.ts';
import * as t from './tokens.ts';
import { SEX_WORDS, UNIT_WORDS } from './words.ts';

/** What opens at a token without its verb. After a comma a number is a detail of what stands before. */
export function unsaidAt(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): readonly Opening[] {
  const clauses = p.clausesUnder(context.heading);
  if (context.heading.startsWith('new ') || (afterComma && !isFish(tokens[at], context) && !isRest(tokens, at)))
    return [];
  const found: Opening[] = [];
  const move = clauses.has('moved') ? moveEnd(tokens, at, context) : at;
  if (move > at) found.push({ kind: 'moved', sense: 'moved', ...bounds(at, at, at, move) });
  const size = clauses.has('size') ? sizeEnd(tokens, at, context) : at;
  if (size > at) found.push({ kind: 'size', sense: 'bulk', ...bounds(at, at, at, size) });
  const level = clauses.has('level') ? levelEnd(tokens, at) : at;
  if (level > at) found.push({ kind: 'level', sense: 'level', ...bounds(at, at, at, level) });
  return found;
}

/** `paired off, rest to C2`. */
function isRest(tokens: readonly IToken[], at: number): boolean {
  return wordOf(tokens[wordOf(tokens[at]) === 'the' ? at + 1 : at]) === 'rest';
}

const MOST_WORDS = 4;

/** The index after `12 to B2`, `female out to A4`, `Fern back to A2`, `20 fry from A1 to B2`; `at` where no such words stand. */
export function moveEnd(tokens: readonly IToken[], at: number, context: TagContext): number {
  const which = isFiller(tokens[at]) ? at + 1 : at;
  const i = whoEnd(tokens, which, context);
  if (i === which) return at;
  return whereEnd(tokens, at, i, context);
}

/** The index after `12`, `the female`, `Ash 6`, `2 m 4 f`, `Fern`. */
function whoEnd(tokens: readonly IToken[], which: number, context: TagContext): number {
  let i = numberEnd(tokens, which);
  // `6 krib`: whatever has a name behind a number is counted.
  if (i > which && tokens[i]?.tokenType === t.Word && context.isName(tokens[i]?.image ?? '')) i += 1;
  for (let words = 0; words < MOST_WORDS; words += 1) {
    // A number behind a fish is of it, or of the next: `Ash 6`, `2 m 4 f`.
    const next = i > which && isFish(tokens[i - 1], context) ? i + (isJoint(tokens[i]) ? 1 : 0) : null;
    const number = next === null ? i : numberEnd(tokens, next);
    if (next !== null && number > next) i = number;
    else if (isFish(tokens[i], context) || isFiller(tokens[i])) i += 1;
    else break;
  }
  return i;
}

function whereEnd(tokens: readonly IToken[], at: number, from: number, context: TagContext): number {
  let i = from;
  if (wordOf(tokens[i]) === 'from' && isPlace(tokens[i + 1], context)) i += 2;
  if (wordOf(tokens[i]) === 'out' || wordOf(tokens[i]) === 'back') i += 1;
  const leads = wordOf(tokens[i]) === 'to' || wordOf(tokens[i]) === 'into' || wordOf(tokens[i]) === '→';
  if (!leads) return at;
  if (wordOf(tokens[i + 1]) === 'tank' && tokens[i + 2]?.tokenType === t.Num) return i + 3;
  return isPlace(tokens[i + 1], context) ? i + 2 : at;
}

function isFish(token: IToken | undefined, { isFish: named }: TagContext): boolean {
  const word = wordOf(token);
  return SEX_WORDS.has(word) || CLUTCH.has(word) || (token?.tokenType === t.Word && named(token.image));
}

/** What fish are called before they are fish. */
const CLUTCH: ReadonlySet<string> = new Set(['eggs', 'wrigglers', 'larvae']);

function isFiller(token: IToken | undefined): boolean {
  const word = wordOf(token);
  return (
    word === 'the' ||
    word === 'of' ||
    word === 'them' ||
    word === 'largest' ||
    word === 'biggest' ||
    word === 'smallest'
  );
}

function isPlace(token: IToken | undefined, { isName, isFish: named }: TagContext): boolean {
  return token?.tokenType === t.Word && isName(token.image) && !named(token.image);
}

/** The index after `about 25 mm`, `fry 12 mm`, `Rowan-1 about 25 mm`. */
function sizeEnd(tokens: readonly IToken[], at: number, context: TagContext): number {
  const first = tokens[at];
  const young =
    SEX_WORDS.get(wordOf(first)) === 'young' || (first?.tokenType === t.Word && context.isFish(first.image));
  const from = at + (young ? 1 : 0);
  const end = numberEnd(tokens, from);
  return end > from && isLength(tokens[end]) ? end + 1 : at;
}

/** The index after `22 mm below the lip`: of nothing else is it said how far it stands there. */
function levelEnd(tokens: readonly IToken[], at: number): number {
  const number = numberEnd(tokens, at);
  const end = isLength(tokens[number]) ? number + 1 : number;
  const lip = number > at ? matchPhrase(tokens, end, LIP) : null;
  return lip === null ? at : end + lip.length;
}

const LIP = p.phrasesFor('belowLip');

function isLength(token: IToken | undefined): boolean {
  const unit = token?.tokenType === t.Unit ? UNIT_WORDS.get(token.image.toLowerCase()) : undefined;
  return unit === 'mm' || unit === 'cm' || unit === 'in';
}

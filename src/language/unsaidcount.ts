/**
 * A count that lacks its verb: `Rowan-1 about 15`, `only 12 fry left`. It is offered and never taken: a number
 * after fish may be a length as well, and before them a loss, a sale or a move.
 */
import { clausesUnder } from '../../grammar/phrases.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import { numberEnd, sexesEnd, wordOf } from '../../grammar/matching.ts';
import { Colon, endOf, Num, Word } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { NUMBER_WORDS, SEX_WORDS } from '../../grammar/words.ts';
import type { DetailNode } from '../../grammar/syntax.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

/** Words beside a number that say that it was seen, and nothing more. */
const BESIDE: ReadonlySet<string> = new Set('still only now just are is have there here alive seen total'.split(' '));
/** With these it can be no number of fish that went. */
const LEFT: ReadonlySet<string> = new Set(['left', 'remain', 'remaining', 'alive', 'still']);

/** The words as a count, where they are fish and a number; null for all else. `text` is what the tokens were cut from. */
export function unsaidCount(
  text: string,
  { names }: LineContext,
  tokens: readonly Token[],
  heading: HeadingKind,
): string | null {
  if (!clausesUnder(heading).has('counted')) return null;
  const first = fishAt(names, tokens, 0);
  const down = wordOf(tokens[first]) === 'down' && wordOf(tokens[first + 1]) === 'to';
  const start = down ? first + 2 : skip(tokens, tokens[first]?.tokenType === Colon ? first + 1 : first);
  const end = numberEnd(tokens, start);
  if (end === start || !tokens.slice(start, end).some((token) => isFigure(token))) return null;
  const sexes = sexesEnd(tokens, end);
  const noun = sexes > end ? sexes : wordOf(tokens[end]) === 'fish' ? end + 1 : end;
  const last = first > 0 ? noun : fishAt(names, tokens, wordOf(tokens[noun]) === 'of' ? noun + 1 : noun);
  if (skip(tokens, last) < tokens.length) return null;
  const isLeft = down || tokens.some((token) => LEFT.has(wordOf(token)));
  // A line of fish by their name needs no name in the clause.
  const isNamed = first > 0 || sexes > end + 1 || (heading !== 'tank' && noun === last);
  if (!isNamed && !isLeft) return null;
  const fish = first > 0 ? [textOf(text, tokens.slice(0, first))] : last > noun ? [wordsOf(tokens[last - 1])] : [];
  return [...fish, 'counted', textOf(text, tokens.slice(start, noun))].join(' ');
}

/** `20 to C2, 30 left`, `leaving 30`: how many were not moved; null where no such words stand at a detail. */
export function leftOver(line: LineContext, rest: readonly DetailNode[], at: number): Fault | null {
  const first = rest[at];
  const last = rest[at + 1];
  if (first === undefined || last === undefined) return null;
  const [number, word] = first.type === 'name' ? [last, first] : [first, last];
  if (number.type !== 'quantity' || word.type !== 'name') return null;
  const words = word === first ? STAYING : STAYED;
  const touch = !/\S/.test(line.text.slice(first.to, last.from));
  if (number.unit !== null || !touch || !words.has(word.text.toLowerCase())) return null;
  const before = line.text.slice(0, first.from).trimEnd().replace(/,$/, '');
  const place = { from: first.from, to: last.to };
  const count = line.text.slice(number.from, number.to);
  const says = `«${line.text.slice(place.from, place.to)}» is a count of those that stayed: a clause of its own`;
  const text = `; counted ${count}`;
  return { ...fault('unknown-clause', place, says), edit: { from: before.length, to: place.to, text } };
}

const STAYED: ReadonlySet<string> = new Set(['left', 'remain', 'remaining', 'stay', 'stayed', 'stays']);
const STAYING: ReadonlySet<string> = new Set(['left', 'leaving', 'leaves']);

/** The index after fish by name, or young that stand first, at a token; the same where none do. */
function fishAt(names: LineContext['names'], tokens: readonly Token[], at: number): number {
  const token = tokens[at];
  const isYoung = at === 0 && SEX_WORDS.get(wordOf(token)) === 'young';
  return isYoung || (token?.tokenType === Word && names.isFish(token.image)) ? at + 1 : at;
}

function skip(tokens: readonly Token[], from: number): number {
  let at = from;
  while (BESIDE.has(wordOf(tokens[at])) || LEFT.has(wordOf(tokens[at]))) at += 1;
  return at;
}

function isFigure(token: Token): boolean {
  return token.tokenType === Num || NUMBER_WORDS.has(wordOf(token));
}

function wordsOf(token: Token | undefined): string {
  return token?.image ?? '';
}

/** As it stands in the line: what phones do to text included. */
function textOf(text: string, tokens: readonly Token[]): string {
  const [first, last] = [tokens[0], tokens.at(-1)];
  return first === undefined || last === undefined ? '' : text.slice(first.startOffset, endOf(last));
}

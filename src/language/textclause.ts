/** A clause that hangs on the bare words of another: `fed bbs and wc`, `fed+wc`. As words of a feed it would be lost. */
import { cut } from '../../grammar/cut.ts';
import { OF_THINGS } from '../../grammar/details.ts';
import { isEaten, isJoining, matchPhrase } from '../../grammar/matching.ts';
import { openersUnder } from '../../grammar/phrases.ts';
import type { ClauseKind } from '../../grammar/phrases.ts';
import type { Piece } from '../../grammar/syntax.ts';
import type { Token } from '../../grammar/tokens.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';
import { foldPunctuation } from './punctuation.ts';

/** Clauses that such a name never holds. */
const TOLD: ReadonlySet<ClauseKind> = new Set<ClauseKind>(['water change', 'sponge rinsed', 'lost', 'topped up']);

export function clauseInText(line: LineContext, kind: ClauseKind, text: Piece): Fault | null {
  if (!OF_THINGS.has(kind) && !OWN_WORDS.has(kind)) return null;
  const words = line.text.slice(text.from, text.to);
  if (!mayHoldClause(words)) return null;
  const tokens = cut(foldPunctuation(words));
  const at = tokens.findIndex((_, index) =>
    OWN_WORDS.has(kind) ? opensDeed(tokens, index, kind) : opens(tokens, index) || opensOther(tokens, index, kind),
  );
  const token = tokens[at];
  if (token === undefined) return null;
  const start = text.from + token.startOffset;
  const before = line.text.slice(0, start).replace(/\s*(?:(?<!\p{L})and|[&+])?\s*$/iu, '');
  const rest = { from: start, to: text.to };
  const says = `«${line.text.slice(rest.from, rest.to)}» is a clause of its own: a \`;\` stands before it`;
  return { ...fault('unknown-clause', rest, says), edit: { from: before.length, to: start, text: '; ' } };
}

/** Clauses whose text is words of one's own, in which an `and` is a word: but what is rigged or done is none of them. */
const OWN_WORDS: ReadonlySet<ClauseKind> = new Set<ClauseKind>(['fault', 'hold', 'sick', 'fixed']);
const DEEDS: ReadonlySet<ClauseKind> = new Set<ClauseKind>([
  'rig',
  'unrig',
  'water change',
  'sponge rinsed',
  'topped up',
  'treat',
  'moved',
]);

/** What the phrases of those clauses begin with. Without it each feed of flakes would need the list of all phrases. */
const OPENERS = new RegExp(
  '(?<![a-z])(?:another|ate|change|clean|cull|dead|death|died|doa|eaten|euthani|filled|found|gone|humanely|jump|mia|' +
    'and |&|plus |then |missing|more|one|put|refilled|rinse|sf|sponge|squeeze|top|w |w/|water|wc)',
  'i',
);

/** Whether words may hold one of those clauses; false only where they surely do not. */
export function mayHoldClause(words: string): boolean {
  return OPENERS.test(words);
}

/** `bbs and lights off yesterday`: behind an `and` any other clause says itself what it is. */
function opensOther(tokens: readonly Token[], at: number, kind: ClauseKind): boolean {
  if (!isJoining(tokens[at - 1]) || isEaten(tokens[at])) return false;
  const phrase = matchPhrase(tokens, at, openersUnder('tank'))?.phrase;
  return phrase !== undefined && !phrase.shy && phrase.kind !== kind && phrase.kind !== 'two readings';
}

/** `valve leaking and pump off`; a water change says itself that it is no word of a fault. */
function opensDeed(tokens: readonly Token[], at: number, kind: ClauseKind): boolean {
  const phrase = matchPhrase(tokens, at, openersUnder('tank'))?.phrase;
  if (phrase === undefined || phrase.kind === null || phrase.shy || at === 0) return false;
  // `sick fish dead`
  if (kind === 'sick' && at === tokens.length - 1 && phrase.kind === 'lost') return true;
  return isJoining(tokens[at - 1]) ? DEEDS.has(phrase.kind) : phrase.kind === 'water change';
}

/** Whether a phrase begins such a clause. */
export function isTold(kind: ClauseKind | null): boolean {
  return kind !== null && TOLD.has(kind);
}

function opens(tokens: readonly Token[], at: number): boolean {
  return isTold(matchPhrase(tokens, at, openersUnder('tank'))?.phrase.kind ?? null);
}

/**
 * Tells the words of a line apart before the parser sees them. Which words open a clause depends on the
 * kind of heading, and which words mean something after that on the kind of clause; so the longest phrase
 * is looked up in the vocabulary, and becomes one token that says what it is.
 *
 * A comma parts two clauses exactly when what follows opens one; the longest phrase wins, and on a tie
 * the one that carries the clause on.
 */
import type { IToken, TokenType } from 'chevrotain';
import { fishBefore, fishOnFish, matchPhrase, numberEnd, retag, spanning, wordOf } from './matching.ts';
import type { Match } from './matching.ts';
import { tagDetail } from './details.ts';
import * as p from './phrases.ts';
import type { ClauseKind, HeadingKind } from './phrases.ts';
import * as t from './tokens.ts';
import { SEX_WORDS } from './words.ts';

export interface TagContext {
  readonly heading: HeadingKind;
  /** True for a word that names something declared: it is then no abbreviation. */
  readonly isName: (word: string) => boolean;
  /** True for a word that names fish. */
  readonly isFish: (word: string) => boolean;
}

/** Words at which a clause should begin and none does. */
export interface TagFault {
  readonly kind: 'no-clause';
  /** First and last token. */
  readonly first: IToken;
  readonly last: IToken;
}

export interface Tagged {
  /** What the parser reads: clauses with separators between. */
  readonly tokens: readonly IToken[];
  readonly faults: readonly TagFault[];
}

/** How a clause opens: what stands before its phrase, and the phrase itself, as token indexes. */
export interface Opening {
  readonly kind: ClauseKind;
  readonly sense: string;
  readonly start: number;
  /** First token of the phrase; equal to `end` where the clause needs none. */
  readonly head: number;
  readonly end: number;
  /** The index after all words that speak for this opening; where two openings fit, the longer one counts. */
  readonly reach: number;
}

/** Tokens that no clause can hold; whoever cut the line reports them. */
export const UNREADABLE: ReadonlySet<TokenType> = new Set([t.Hash, t.InchMark, t.OpenQuote, t.Joined, t.Unknown]);

/** Tags the tokens of a line from `start`, where its clauses begin. */
export function tagClauses(tokens: readonly IToken[], start: number, context: TagContext): Tagged {
  const tagger = new Tagger(tokens, context);
  tagger.run(start);
  return { tokens: tagger.out, faults: tagger.faults };
}

/** What opens at a token, or null. `afterComma` is stricter: only what surely opens a clause counts. */
export function openingAt(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  if (tokens[at]?.tokenType === t.Note) return { kind: 'note', sense: 'note', ...bounds(at, at, at + 1) };
  const phrase = phraseAt(tokens, at, context, at, afterComma);
  const found = [
    phrase,
    versusAt(tokens, at, context),
    phrase === null || SEX_WORDS.has(wordOf(tokens[at])) ? fishThenPhrase(tokens, at, context) : null,
    numberThenPhrase(tokens, at, context, afterComma),
    readingAt(tokens, at, context),
    afterComma ? null : ownChoreAt(tokens, at, context),
  ];
  let best: Opening | null = null;
  for (const opening of found) if (opening !== null && (best === null || opening.reach > best.reach)) best = opening;
  return best ?? (afterComma ? null : withoutPhrase(tokens, at, context));
}

function bounds(start: number, head: number, end: number, reach = end): Omit<Opening, 'kind' | 'sense'> {
  return { start, head, end, reach };
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
  return { kind: match.phrase.kind, sense: match.phrase.sense, ...bounds(start, at, at + match.length) };
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

function fishThenPhrase(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  let best: Opening | null = null;
  for (const length of fishBefore(tokens, at, context.isName)) {
    const opening = phraseAt(tokens, at + length, context, at);
    // `heatr off` is a slip, not a fish called heatr.
    if (opening?.kind === 'two readings' && !context.isFish(tokens[at]?.image ?? '')) continue;
    if (opening !== null && (best === null || opening.reach > best.reach)) best = opening;
  }
  return best;
}

function numberThenPhrase(
  tokens: readonly IToken[],
  at: number,
  context: TagContext,
  afterComma: boolean,
): Opening | null {
  const end = numberEnd(tokens, at);
  if (end === at) return null;
  for (const length of [0, ...fishBefore(tokens, end, context.isName)]) {
    const opening = phraseAt(tokens, end + length, context, at);
    if (opening === null) continue;
    const rule = p.CLAUSES[opening.kind];
    if (rule.counted === true ? !afterComma || opening.kind === 'lost' : !afterComma && rule.fish !== undefined) {
      return opening;
    }
  }
  return null;
}

/** `pH 7.4, KH 6`: what a test found needs no word `test`. */
function readingAt(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  if (!p.clausesUnder(context.heading).has('test')) return null;
  const match = matchPhrase(tokens, at, p.phrasesContinuing('test'));
  if (match === null || match.phrase.sense === 'takes') return null;
  const reach = at + match.length;
  return numberEnd(tokens, reach) === reach ? null : { kind: 'test', sense: 'reading', ...bounds(at, at, at, reach) };
}

/** `"press the test button" every month`. */
function ownChoreAt(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  if (tokens[at]?.tokenType !== t.Quote || !p.clausesUnder(context.heading).has('chore')) return null;
  const next = wordOf(tokens[at + 1]);
  const often = next === 'every' || next === 'daily' || next === 'weekly' || next === 'monthly';
  return often ? { kind: 'chore', sense: 'own', ...bounds(at, at, at, at + 1) } : null;
}

/** In a declaring line some clauses need no phrase: `54 L`, `krib`, `Limia nigrofasciata`, `20 lots`. */
function withoutPhrase(tokens: readonly IToken[], at: number, context: TagContext): Opening | null {
  const token = tokens[at];
  if (token === undefined || UNREADABLE.has(token.tokenType)) return null;
  const number = numberEnd(tokens, at) > at;
  const kind = bareKind(context.heading, number, token.tokenType === t.Word || token.tokenType === t.Quote);
  return kind === null ? null : { kind, sense: kind, ...bounds(at, at, at) };
}

function bareKind(heading: HeadingKind, number: boolean, word: boolean): ClauseKind | null {
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

class Tagger {
  readonly out: IToken[] = [];
  readonly faults: TagFault[] = [];
  private readonly tokens: readonly IToken[];
  private readonly context: TagContext;

  constructor(tokens: readonly IToken[], context: TagContext) {
    this.tokens = tokens;
    this.context = context;
  }

  run(start: number): void {
    let at = start;
    while (at < this.tokens.length) {
      at = this.blank(at);
      if (at < this.tokens.length) at = this.clause(at);
    }
  }

  /** Skips separators between which nothing stands. */
  private blank(at: number): number {
    let i = at;
    while (isSeparating(this.tokens[i])) i += 1;
    return i;
  }

  private clause(at: number): number {
    const mistaken = wordOf(this.tokens[at]) === 'mistake' && this.tokens.length > at + 1;
    const start = mistaken ? at + 1 : at;
    const opening = openingAt(this.tokens, start, this.context, false);
    if (opening === null) return this.unknown(at);
    const mark = this.out.length;
    if (mark > 0) this.out.push(spanning(p.Separator, this.tokens, at, at, 'separator'));
    if (mistaken) this.emit(p.Mistake, at, at + 1, 'mistake');
    // What stands before the phrase is a number or a fish, whatever the clause is.
    for (let i = opening.start; i < opening.head;) i = this.detail(i, 'counted', opening.head);
    this.emit(p.headToken(opening.kind), opening.head, opening.end, opening.sense);
    const end = this.details(opening);
    // What the lexer could not read has its own message: the clause is not tried.
    if (this.out.slice(mark).some((token) => UNREADABLE.has(token.tokenType))) this.out.length = mark;
    return end;
  }

  /** Tags from the end of a clause's phrase to the next separator; gives the index after it. */
  private details(opening: Opening): number {
    let at = opening.end;
    while (at < this.tokens.length) {
      const token = this.tokens[at];
      if (token === undefined || token.tokenType === t.Semicolon) return at + 1;
      if (token.tokenType === t.Note && opening.end <= at) return at;
      if (isSeparating(token)) {
        if (this.parts(at, opening.kind)) return at + 1;
        if (this.carriesOn(at)) this.out.push(retag(token, t.Comma, ','));
        at += 1;
      } else at = this.detail(at, opening.kind, this.tokens.length);
    }
    return at;
  }

  private detail(at: number, kind: ClauseKind, limit: number): number {
    return tagDetail({
      tokens: this.tokens,
      at,
      limit,
      kind,
      out: this.out,
      isName: this.context.isName,
      isFish: this.context.isFish,
      parts: (comma) => this.parts(comma, kind),
    });
  }

  /** Whether the comma at `at` parts two clauses. */
  private parts(at: number, kind: ClauseKind): boolean {
    const opening = openingAt(this.tokens, at + 1, this.context, true);
    if (opening === null) return false;
    const carried = matchPhrase(this.tokens, at + 1, p.phrasesContinuing(kind))?.length ?? 0;
    const versus = p.CLAUSES[kind].continues?.includes('versus') === true;
    const onOther = versus && fishOnFish(this.tokens, at + 1, this.context.isFish) ? 3 : 0;
    return opening.reach - opening.start > Math.max(carried, onOther);
  }

  /** Whether anything of the clause follows the comma. */
  private carriesOn(at: number): boolean {
    const next = this.tokens[at + 1];
    return next !== undefined && !isSeparating(next) && next.tokenType !== t.Note;
  }

  private unknown(at: number): number {
    let end = at + 1;
    while (end < this.tokens.length && !this.endsUnknown(end)) end += 1;
    const first = this.tokens[at];
    const last = this.tokens[end - 1];
    if (first !== undefined && last !== undefined && !this.tokens.slice(at, end).some(unreadable)) {
      this.faults.push({ kind: 'no-clause', first, last });
    }
    return end;
  }

  private endsUnknown(at: number): boolean {
    const token = this.tokens[at];
    if (token?.tokenType === t.Semicolon || token?.tokenType === t.Note) return true;
    return isSeparating(token) && openingAt(this.tokens, at + 1, this.context, true) !== null;
  }

  private emit(type: TokenType, from: number, to: number, sense: string): void {
    this.out.push(spanning(type, this.tokens, from, to, sense));
  }
}

function unreadable(token: IToken): boolean {
  return UNREADABLE.has(token.tokenType);
}

/** A comma, a semicolon, or a full stop, which between clauses is as good as a comma. */
function isSeparating(token: IToken | undefined): boolean {
  const type = token?.tokenType;
  return type === t.Comma || type === t.Semicolon || type === t.Dot;
}

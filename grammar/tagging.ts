/**
 * Tells the words of a line apart before the parser sees them. Which words open a clause depends on the
 * kind of heading, and which words mean something after that on the kind of clause; so the longest phrase
 * is looked up in the vocabulary, and becomes one token that says what it is.
 *
 * A comma parts two clauses exactly when what follows opens one; the longest phrase wins, and on a tie
 * the one that carries the clause on.
 */
import type { IToken, TokenType } from 'chevrotain';
import { OF_THINGS, tagDetail } from './details.ts';
import {
  dateLength,
  fishOnFish,
  isEaten,
  isJoining,
  isJoint,
  matchPhrase,
  numberEnd,
  retag,
  spanning,
  wordOf,
} from './matching.ts';
import { openingAt, UNREADABLE } from './openings.ts';
import type { Opening, TagContext } from './openings.ts';
import * as p from './phrases.ts';
import type { ClauseKind } from './phrases.ts';
import * as tag from './tags.ts';
import * as t from './tokens.ts';

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

/** Tags the tokens of a line from `start`, where its clauses begin. */
export function tagClauses(tokens: readonly IToken[], start: number, context: TagContext): Tagged {
  const tagger = new Tagger(tokens, context);
  tagger.run(start);
  return { tokens: tagger.out, faults: tagger.faults };
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
    // `wc 30 %; and lights off`
    const behind = isSeparating(this.tokens[i - 1]) && isJoining(this.tokens[i]);
    return behind && this.openingAfter(i - 1) !== null ? i + 1 : i;
  }

  /** What surely opens a clause after a comma, where an `and` may stand behind it. */
  private openingAfter(comma: number): Opening | null {
    const next = isJoining(this.tokens[comma + 1]) ? comma + 2 : comma + 1;
    return openingAt(this.tokens, next, this.context, true);
  }

  private clause(at: number): number {
    const mistaken = wordOf(this.tokens[at]) === 'mistake' && this.tokens.length > at + 1;
    const start = mistaken ? at + 1 : at;
    const opening = openingAt(this.tokens, start, this.context, false);
    if (opening === null) return this.unknown(at);
    const mark = this.out.length;
    if (mark > 0) this.out.push(spanning(tag.Separator, this.tokens, at, at, 'separator'));
    if (mistaken) this.emit(tag.Mistake, at, at + 1, 'mistake');
    // What stands before the phrase is a number or a fish, whatever the clause is.
    for (let i = opening.start; i < opening.head;) {
      // The `of` of `krib of 2 May` too.
      const joins = i > opening.start && (isJoint(this.tokens[i]) || wordOf(this.tokens[i]) === 'of');
      i = joins ? i + 1 : this.detail(i, 'counted', opening.head);
    }
    this.emit(p.headToken(opening.kind), opening.head, opening.end, opening.sense);
    // `died: 2`: a colon after the phrase says nothing more.
    const colon = this.tokens[opening.end]?.tokenType === t.Colon && opening.end > opening.head ? 1 : 0;
    const end = this.details(opening, opening.end + colon);
    // What the lexer could not read has its own message: the clause is not tried.
    if (this.out.slice(mark).some((token) => UNREADABLE.has(token.tokenType))) this.out.length = mark;
    return end;
  }

  /** Tags from the end of a clause's phrase to the next separator; gives the index after it. */
  private details(opening: Opening, from: number): number {
    let at = from;
    while (at < this.tokens.length) {
      const token = this.tokens[at];
      if (token === undefined) return at + 1;
      if (token.tokenType === t.Semicolon) {
        if (!this.goesOn(at, opening.kind)) return at + 1;
        this.out.push(retag(token, t.Comma, ','));
        at += 1;
        continue;
      }
      if (token.tokenType === t.Note && opening.end <= at) return at;
      if (isJoining(token) && this.joins(at, opening.kind)) return at + 1;
      if (isSeparating(token) || this.isCountedAfter(at, opening.kind)) {
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
      joins: (and) => this.joins(and, kind),
    });
  }

  /** Whether the comma at `at` parts two clauses. */
  private parts(at: number, kind: ClauseKind): boolean {
    const opening = this.openingAfter(at);
    if (opening === null) return false;
    // `hold, velvet` says what it is for.
    if (kind === 'hold' && opening.kind === 'sick' && HOLDING.has(wordOf(this.tokens[at - 1]))) return false;
    // `moved 20 to B2, rest to C1` is one clause of two moves.
    const unsaid = opening.kind === 'moved' && opening.head === opening.end;
    if (kind === 'moved' && unsaid && numberEnd(this.tokens, at + 1) > at + 1) return false;
    const carried = this.carried(at + 1, kind);
    const versus = p.CLAUSES[kind].continues?.includes('versus') === true;
    const onOther = versus && fishOnFish(this.tokens, at + 1, this.context.isFish) ? 3 : 0;
    return opening.reach - opening.start > Math.max(carried, onOther);
  }

  /** Length of the words at `at` that stay with a clause. `1 jumped, dead` is one fish; `2 jumped, dead 1` are three. */
  private carried(at: number, kind: ClauseKind): number {
    const match = matchPhrase(this.tokens, at, p.phrasesContinuing(kind));
    if (match === null) return 0;
    const counted = kind === 'lost' && numberEnd(this.tokens, at + match.length) > at + match.length;
    return counted ? 0 : match.length;
  }

  /**
   * Whether the `and` at `at` parts two clauses: what would open one after a comma does, where it says so itself by a
   * phrase. `wc 30 % and rinsed sponge yesterday` tells a day, or how often, of both: that is asked back.
   */
  private joins(at: number, kind: ClauseKind): boolean {
    const opening = joinable(kind) ? openingAt(this.tokens, at + 1, this.context, true) : null;
    if (opening === null) return false;
    // `flake and bbs` are one feed.
    if (opening.kind === kind && p.CLAUSES[kind].text !== undefined) return false;
    if (OF_THINGS.has(kind) && isEaten(this.tokens[opening.head])) return false;
    const says = opening.end > opening.head || (opening.kind === 'test' && kind !== 'test');
    const inside = matchPhrase(this.tokens, at, p.phrasesInside(kind))?.length ?? 1;
    return says && inside === 1 && this.parts(at, kind) && !this.isDated(opening.end);
  }

  /** `spawned and about 80 eggs` */
  private isCountedAfter(at: number, kind: ClauseKind): boolean {
    const counts = kind === 'spawned' || kind === 'stage';
    return counts && isJoining(this.tokens[at]) && numberEnd(this.tokens, at + 1) > at + 1;
  }

  /** Whether a day, a time or a period is told up to the next separator. */
  private isDated(from: number): boolean {
    for (let at = from; at < this.tokens.length; at += 1) {
      const token = this.tokens[at];
      if (isSeparating(token) || token?.tokenType === t.Note) return false;
      if (DATING.has(wordOf(token)) || dateLength(this.tokens, at) > 0) return true;
    }
    return false;
  }

  /** `moved 10 to C1; rest stay`: what opens no clause and carries this one on is of it, whatever stands before it. */
  private goesOn(at: number, kind: ClauseKind): boolean {
    const carried = matchPhrase(this.tokens, at + 1, p.phrasesContinuing(kind));
    const opening = carried === null ? null : openingAt(this.tokens, at + 1, this.context, false);
    return carried !== null && (opening === null || opening.kind === 'rest stays');
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

/** Last words of a hold that has not said yet what it is for. */
const HOLDING: ReadonlySet<string> = new Set(['hold', 'sale', 'no-sale']);

/** Words with which a day, a time or a period is told. */
const DATING: ReadonlySet<string> = new Set(
  'yesterday yest yday today tomorrow last every daily weekly monthly until till til for ago by before'.split(' '),
);

/** Clauses that a detail behind the next one may be about, or whose details an `and` joins. */
const UNJOINED: ReadonlySet<ClauseKind> = new Set<ClauseKind>(['put off', 'chore', 'stop chore', 'to do', 'did']);

function joinable(kind: ClauseKind): boolean {
  return !UNJOINED.has(kind);
}

/** A comma, a semicolon, or a full stop, which between clauses is as good as a comma. */
function isSeparating(token: IToken | undefined): boolean {
  const type = token?.tokenType;
  return type === t.Comma || type === t.Semicolon || type === t.Dot;
}

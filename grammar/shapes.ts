/**
 * The shape of a row of tokens: what is left when numbers, names and texts are taken out of it. Lines of one
 * shape parse alike, so each shape is parsed once, and the nodes of the next such line are those of the first,
 * moved to where its own words stand. The grammar stays the only definition: nothing here knows a rule of it.
 */
import type { IToken, TokenType } from 'chevrotain';
import * as t from './tokens.ts';
import { vocabulary } from './vocabulary.ts';

/** What is known of words, as far as parsing rests on it. */
export interface Naming {
  readonly isName: (word: string) => boolean;
  readonly isFish: (word: string) => boolean;
}

const NOBODY: Naming = { isName: () => false, isFish: () => false };

/** Of these only that they stand there counts, never what they say. */
const PLAIN: ReadonlySet<TokenType> = new Set([t.Quote, t.DateToken, t.Note]);

/**
 * A key that exactly the rows of one shape have: of every token its type, whether it touches the one before
 * it, and its text where the grammar may look at it. A word that is not in the vocabulary is looked at only for
 * whether it is a name. No sign of a line's text is a line feed.
 */
export function shapeOf(tokens: readonly IToken[], { isName, isFish }: Naming = NOBODY): string {
  let key = '';
  let end = -1;
  for (const token of tokens) {
    const type = token.tokenTypeIdx - FIRST;
    key += token.startOffset === end ? `.${type}` : type;
    const { image } = token;
    if (token.tokenType === t.Num) key += YEAR.test(image) ? 'y' : '';
    else if (token.tokenType === t.Word) {
      const name = isName(image) ? (isFish(image) ? 'f' : 'n') : isFish(image) ? 'g' : '';
      key += isFree(token) ? `w${name}` : `${name}=${image}`;
    } else if (!PLAIN.has(token.tokenType)) key += `=${image}`;
    key += '\n';
    end = token.startOffset + image.length;
  }
  return key;
}

/** Types are counted from the first raw one: what is kept by a build means the same in the program. */
const FIRST = Math.min(...t.RAW_TOKENS.map(({ tokenTypeIdx }) => tokenTypeIdx ?? 0));
const TYPES: ReadonlyMap<number, TokenType> = new Map(
  t.RAW_TOKENS.map((type) => [(type.tokenTypeIdx ?? 0) - FIRST, type]),
);

/** A number of four digits may be a year. */
const YEAR = /^\d{4}$/;

/** Whether what a token says is no part of its row's shape. */
function isFree({ tokenType, image }: IToken): boolean {
  if (tokenType === t.Word) return !vocabulary().has(image.toLowerCase());
  return tokenType === t.Num || PLAIN.has(tokenType);
}

/** A row of tokens and what the parser made of it. */
interface Parsed<V> {
  readonly tokens: readonly IToken[];
  readonly value: V;
  readonly places: Places;
  /** Whether it is taken out: all but what every build brings. */
  readonly own: boolean;
}

/**
 * The same as plain data. What a shape parses to is text, JSON of `Told`: of many shapes that are brought back an
 * answer needs a few.
 */
export type Saved = readonly [key: string, told: string];

/** Of each token its type, its offset and its text; and the nodes. */
interface Told<V> {
  readonly tokens: readonly (readonly [number, number, string])[];
  readonly value: V;
}

/** So many shapes are kept, then all are dropped: what is repeated comes back at once. */
const MOST = 4_000;

/** What was parsed before, by shape. `move` gives nodes as they are in another row. */
export class Shapes<V> {
  private readonly known = new Map<string, Parsed<V> | null>();
  private readonly brought = new Map<string, { readonly saved: Saved; readonly own: boolean }>();
  private readonly move: (value: V, moved: Moved) => V;
  /** How many were parsed here. */
  fresh = 0;

  constructor(move: (value: V, moved: Moved) => V) {
    this.move = move;
  }

  /** What a row of that shape parses to; undefined where none was parsed. */
  get(key: string, tokens: readonly IToken[]): V | undefined {
    const before = this.known.get(key) ?? this.bring(key);
    if (before === null) return undefined;
    return this.move(before.value, new Moved(before.tokens, before.places, tokens));
  }

  /** Keeps what a row was parsed to, where moving it to its own places changes nothing. */
  keep(key: string, tokens: readonly IToken[], value: V): void {
    if (this.known.has(key)) return;
    if (this.known.size >= MOST) this.known.clear();
    const places = new Places(tokens);
    const moved = this.move(value, new Moved(tokens, places, tokens));
    const same = JSON.stringify(moved) === JSON.stringify(value);
    this.known.set(key, same ? { tokens, value, places, own: true } : null);
    if (same) this.fresh += 1;
  }

  /** All shapes that were parsed here, or brought back as own, as plain data. */
  takeOut(): readonly Saved[] {
    const unused = [...this.brought].flatMap(([key, { saved, own }]) => (own && !this.known.has(key) ? [saved] : []));
    const used = [...this.known].flatMap(([key, parsed]) => (parsed?.own === true ? [savedOf(key, parsed)] : []));
    return [...unused, ...used].slice(-MOST / 2);
  }

  /** Shapes that the same grammar took out; `own`: here, not in the build. */
  bringBack(saved: readonly Saved[], own: boolean): void {
    for (const one of saved) this.brought.set(one[0], { saved: one, own });
  }

  private bring(key: string): Parsed<V> | null {
    const before = this.brought.get(key);
    if (before === undefined) return null;
    const told: unknown = JSON.parse(before.saved[1]);
    if (!isTold<V>(told)) return null;
    const { value } = told;
    const tokens = told.tokens.map(([type, startOffset, image]) => {
      const tokenType = TYPES.get(type) ?? t.Unknown;
      return { tokenType, tokenTypeIdx: tokenType.tokenTypeIdx ?? 0, startOffset, image };
    });
    const parsed = { tokens, value, places: new Places(tokens), own: before.own };
    this.known.set(key, parsed);
    return parsed;
  }
}

/** Told by the same grammar: only its outline is looked at. */
function isTold<V>(value: unknown): value is Told<V> {
  return typeof value === 'object' && value !== null && 'tokens' in value && 'value' in value;
}

function savedOf<V>(key: string, { tokens, value }: Parsed<V>): Saved {
  const told: Told<V> = {
    tokens: tokens.map((token) => [token.tokenTypeIdx - FIRST, token.startOffset, token.image] as const),
    value,
  };
  return [key, JSON.stringify(told)];
}

/** Which token starts, and which ends, at an offset; −1 where none does. */
class Places {
  private readonly starts: Int32Array;
  private readonly ends: Int32Array;

  constructor(tokens: readonly IToken[]) {
    const last = tokens.at(-1);
    const length = last === undefined ? 1 : t.endOf(last) + 1;
    this.starts = new Int32Array(length).fill(-1);
    this.ends = new Int32Array(length).fill(-1);
    tokens.forEach((token, index) => {
      this.starts[token.startOffset] = index;
      this.ends[t.endOf(token)] = index;
    });
  }

  starting(at: number): number {
    return this.starts[at] ?? -1;
  }

  ending(at: number): number {
    return this.ends[at] ?? -1;
  }
}

/** From the words of one row to those of another of the same shape. */
export class Moved {
  private readonly old: readonly IToken[];
  private readonly places: Places;
  private readonly now: readonly IToken[];

  constructor(old: readonly IToken[], places: Places, now: readonly IToken[]) {
    this.old = old;
    this.places = places;
    this.now = now;
  }

  /** An offset in the other row; NaN where no token of the first starts or ends there. */
  offset(at: number): number {
    const starting = this.now[this.places.starting(at)];
    if (starting !== undefined) return starting.startOffset;
    const ending = this.now[this.places.ending(at)];
    return ending === undefined ? NaN : t.endOf(ending);
  }

  /** The words between two offsets of the first row, as nodes hold them: of several only that they are there. */
  text(from: number, to: number, text: string): string {
    if (from === to) return text;
    const last = this.places.ending(to);
    const first = this.places.starting(from);
    if (first === last || first < 0) return this.now[last]?.image ?? text;
    if (text.trim() === '') return ' '.repeat(this.offset(to) - this.offset(from));
    return this.now
      .slice(first, last + 1)
      .map(({ image }) => image)
      .join(' ');
  }

  /** The word of a name: the last token of its node. */
  lastWord(to: number): string {
    return this.now[this.places.ending(to)]?.image ?? '';
  }

  /** What a word means: itself, where it is no word of the vocabulary. */
  sense(to: number, sense: string): string {
    const index = this.places.ending(to);
    const before = this.old[index];
    if (before === undefined || before.image !== sense || !isFree(before)) return sense;
    return this.now[index]?.image ?? sense;
  }
}

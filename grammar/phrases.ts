/**
 * The vocabulary made ready for reading: every phrase that opens a clause under each kind of heading,
 * every word that means something inside each kind of clause, and the names that these refuse.
 */
import type { TokenType } from 'chevrotain';
import { Fuzz, CountWord, NumberWord, Ago, Noun, Sex, DayWords, Every, Often, Action, Rig, Separator } from './tags.ts';
import { tagged } from './tokens.ts';
import { BOTH_FISH, COUNT_WORDS, FUZZ_WORDS, NUMBER_WORDS, SEX_WORDS } from './words.ts';
import { ACTIONS, EVERY_CLAUSE, LINKS, MEASURES, PERIODS } from './vocabulary/details.ts';
import type { DetailName, LinkName } from './vocabulary/details.ts';
import { FISH } from './vocabulary/fish.ts';
import { RIGS } from './vocabulary/rigs.ts';
import { ROOM } from './vocabulary/room.ts';
import type { ClauseRule, HeadingKind } from './vocabulary/rule.ts';
import { SETUP } from './vocabulary/setup.ts';
import { TRADE } from './vocabulary/trade.ts';

const TABLE = { ...SETUP, ...ROOM, ...RIGS, ...FISH, ...TRADE };

/** A kind of clause: one rule of the grammar. */
export type ClauseKind = keyof typeof TABLE;
export type { DetailName, HeadingKind, LinkName };

export const CLAUSES: Readonly<Record<ClauseKind, ClauseRule>> = TABLE;
export const CLAUSE_KINDS: readonly ClauseKind[] = Object.keys(CLAUSES).filter((kind): kind is ClauseKind =>
  Object.hasOwn(CLAUSES, kind),
);

/** Words that mean something at one place of a clause. */
export interface Phrase {
  readonly words: readonly string[];
  readonly token: TokenType;
  /** Which of the meanings of its row: `torn fin`, `seen`. */
  readonly sense: string;
  /** The kind of clause that it opens; null inside a clause. */
  readonly kind: ClauseKind | null;
  readonly canonical: boolean;
  /** Gives way to a declared name. */
  readonly yields: boolean;
  /** Opens a clause at the start and after `;` only. */
  readonly shy: boolean;
  /** The detail that it introduces, inside a clause. */
  readonly link: LinkName | null;
}

/** Phrases by their first word, longest first. */
export type Phrases = ReadonlyMap<string, readonly Phrase[]>;

function pascal(name: string): string {
  return name.replace(/(?:^|[ -])([a-z])/gi, (_, letter: string) => letter.toUpperCase()).replace(/\W/g, '');
}

/** The token that opens each kind of clause. */
export const HEADS: ReadonlyMap<ClauseKind, TokenType> = new Map(
  CLAUSE_KINDS.map((kind) => [kind, tagged(`Open${pascal(kind)}`, `\`${canonicalOf(kind) ?? kind}\``)]),
);

const linkNames = Object.keys(LINKS).filter((name): name is LinkName => Object.hasOwn(LINKS, name));

/** The token of each word that introduces a detail. */
export const LINK_TOKENS: ReadonlyMap<LinkName, TokenType> = new Map(
  linkNames.map((name) => [name, tagged(`Detail${pascal(name)}`, `\`${LINKS[name].says.split('|')[0] ?? name}\``)]),
);

function phrasesOf(
  says: string,
  token: TokenType,
  sense: string,
  kind: ClauseKind | null = null,
  link: LinkName | null = null,
  since = false,
): Phrase[] {
  const yields = kind === null ? [] : (CLAUSES[kind].yields ?? '').split('|');
  const shy = kind === null ? [] : (CLAUSES[kind].shy ?? '').split('|');
  return says
    .split('|')
    .filter((text) => text !== '')
    .map((text, index) => ({
      words: text.split(' '),
      token,
      sense,
      kind,
      canonical: index === 0 && !since,
      yields: since || yields.includes(text),
      shy: shy.includes(text),
      link,
    }));
}

function indexed(phrases: readonly Phrase[]): Phrases {
  const index = new Map<string, Phrase[]>();
  const seen = new Set<string>();
  for (const phrase of phrases) {
    // The first of two equal phrases counts: a declaring line's own clauses stand before the ordinary ones.
    const text = phrase.words.join(' ');
    if (seen.has(text)) continue;
    seen.add(text);
    const first = phrase.words[0] ?? '';
    const there = index.get(first);
    if (there === undefined) index.set(first, [phrase]);
    else there.push(phrase);
  }
  for (const there of index.values()) there.sort((a, b) => b.words.length - a.words.length);
  return index;
}

/** Works each answer out when it is first asked for: a run reads under few headings. */
function onDemand<K, V>(workOut: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = workOut(key);
    known.set(key, value);
    return value;
  };
}

function openersOf(kind: ClauseKind): Phrase[] {
  const token = HEADS.get(kind);
  if (token === undefined) return [];
  const { says, also = {} } = CLAUSES[kind];
  return [
    ...Object.entries(says).flatMap(([sense, words]) => phrasesOf(words, token, sense, kind)),
    ...Object.entries(also).flatMap(([sense, words]) => phrasesOf(words, token, sense, kind, null, true)),
  ];
}

/** The kind of heading whose clauses a declaring line has as well. */
const PLAIN: Readonly<Record<HeadingKind, HeadingKind>> = {
  room: 'room',
  loop: 'loop',
  tank: 'tank',
  group: 'group',
  brood: 'brood',
  culture: 'culture',
  auction: 'auction',
  species: 'species',
  row: 'row',
  'new loop': 'loop',
  'new tank': 'tank',
  'new group': 'group',
  'new culture': 'culture',
  'new auction': 'auction',
  'new species': 'species',
};

/** Every kind of heading. */
export const HEADINGS: readonly HeadingKind[] = Object.keys(PLAIN).filter((name): name is HeadingKind =>
  Object.hasOwn(PLAIN, name),
);

function kindsUnder(heading: HeadingKind): readonly ClauseKind[] {
  // A row stands for its tanks: every clause of a tank exists under it.
  const also: HeadingKind = heading === 'row' ? 'tank' : PLAIN[heading];
  const own = CLAUSE_KINDS.filter((kind) => CLAUSES[kind].under.includes(heading));
  return [...own, ...CLAUSE_KINDS.filter((kind) => !own.includes(kind) && CLAUSES[kind].under.includes(also))];
}

const under: ReadonlyMap<HeadingKind, ReadonlySet<ClauseKind>> = new Map(
  HEADINGS.map((heading) => [heading, new Set(kindsUnder(heading))]),
);
const NO_KINDS: ReadonlySet<ClauseKind> = new Set();

/** The kinds of clause that exist under a heading: a declaring heading's own first. */
export function clausesUnder(heading: HeadingKind): ReadonlySet<ClauseKind> {
  return under.get(heading) ?? NO_KINDS;
}

/** The phrases that open a clause under a heading. */
export const openersUnder = onDemand((heading: HeadingKind): Phrases =>
  indexed([...clausesUnder(heading)].flatMap(openersOf)),
);

/** The canonical opening phrases under a heading, for completion and for finding the nearest one. */
export function canonicalPhrases(heading: HeadingKind): readonly string[] {
  const found = [...openersUnder(heading).values()].flat().filter((phrase) => phrase.canonical);
  return found.filter(({ kind }) => kind !== 'two readings').map(({ words }) => words.join(' '));
}

/** Every opening phrase under a heading, synonyms too. */
export function allPhrases(heading: HeadingKind): readonly string[] {
  const found = [...openersUnder(heading).values()].flat().filter(({ kind }) => kind !== 'two readings');
  return found.map(({ words }) => words.join(' '));
}

/** Those of them that may be what a slip was meant for: nothing is sick or broken for a slip of the thumb. */
export function likelyPhrases(heading: HeadingKind): readonly string[] {
  const found = [...openersUnder(heading).values()].flat();
  return found
    .filter(({ kind, sense }) => kind !== 'two readings' && sense !== 'named')
    .map(({ words }) => words.join(' '));
}

/** The phrase that a kind of clause is named by in messages, or null where it needs none. */
export function canonicalOf(kind: ClauseKind): string | null {
  const first = Object.values(CLAUSES[kind].says).find((says) => says !== '');
  return first?.split('|')[0] ?? null;
}

const details: ReadonlyMap<ClauseKind, ReadonlySet<DetailName>> = new Map(
  CLAUSE_KINDS.map((kind) => [kind, new Set([...CLAUSES[kind].takes, ...EVERY_CLAUSE])]),
);
const NO_DETAILS: ReadonlySet<DetailName> = new Set();

/** The details that a kind of clause takes. */
export function detailsOf(kind: ClauseKind): ReadonlySet<DetailName> {
  return details.get(kind) ?? NO_DETAILS;
}

/** The words by which a detail is known. */
const bare = onDemand((name: DetailName): readonly Phrase[] => {
  switch (name) {
    case 'quantity':
      return [
        ...COUNT_WORDS.flatMap(([says, sense]) => phrasesOf(says, CountWord, sense)),
        ...FUZZ_WORDS.flatMap(([says, sense]) => phrasesOf(says, Fuzz, sense)),
        ...[...NUMBER_WORDS.keys()].flatMap((says) => phrasesOf(says, NumberWord, says)),
        ...phrasesOf('ago', Ago, 'ago'),
      ];
    case 'sex':
      return [
        ...phrasesOf(BOTH_FISH, Sex, 'pair'),
        ...[...SEX_WORDS].flatMap(([says, sex]) => phrasesOf(says, Sex, sex)),
      ];
    case 'date':
      return phrasesOf(
        'yesterday|yest|yday|today|tomorrow|last night|this morning|this am|this afternoon|this pm|this evening|tonight',
        DayWords,
        'day',
      );
    case 'every':
      return [
        ...phrasesOf('every', Every, 'every'),
        ...phrasesOf('daily', Often, 'day'),
        ...phrasesOf('weekly', Often, 'week'),
        ...phrasesOf('monthly', Often, 'month'),
        ...Object.entries(PERIODS).flatMap(([sense, says]) =>
          phrasesOf(says, Often, sense).map((phrase) => ({ ...phrase, words: ['every', ...phrase.words] })),
        ),
      ];
    case 'action':
      return Object.entries(ACTIONS).flatMap(([sense, says]) => phrasesOf(says, Action, sense));
    case 'measure':
      return Object.entries(MEASURES).flatMap(([sense, says]) => phrasesOf(says, Rig, sense));
    case 'name':
    case 'quote':
    case 'text':
    case 'versus':
      return [];
    default:
      return linkPhrases(name);
  }
});

function linkPhrases(name: LinkName): Phrase[] {
  const token = LINK_TOKENS.get(name);
  return token === undefined ? [] : phrasesOf(LINKS[name].says, token, name, null, name);
}

/** The words that mean something inside a kind of clause. */
export const phrasesInside = onDemand((kind: ClauseKind): Phrases => {
  const nouns = CLAUSES[kind].nouns?.replaceAll(' ', '|') ?? '';
  return indexed([...phrasesOf(nouns, Noun, 'noun'), ...[...detailsOf(kind)].flatMap(bare)]);
});

/** Those of them that stay with the clause after a comma. */
export const phrasesContinuing = onDemand((kind: ClauseKind): Phrases =>
  indexed((CLAUSES[kind].continues ?? []).flatMap(bare)),
);

/** The words by which a detail is known, wherever it stands. */
export const phrasesFor = onDemand((name: DetailName): Phrases => indexed(bare(name)));

/** The token that opens a kind of clause, where no phrase does. */
export function headToken(kind: ClauseKind): TokenType {
  return HEADS.get(kind) ?? Separator;
}

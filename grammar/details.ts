/** Tags one detail inside a clause: a word of its row in the vocabulary, a number, a name, a date, bare words. */
import type { IToken } from 'chevrotain';
import {
  dateLength,
  fishOnFish,
  isJoining,
  isTwoOf,
  matchPhrase,
  numberEnd,
  retag,
  spanning,
  wordOf,
} from './matching.ts';
import type { Match } from './matching.ts';
import * as p from './phrases.ts';
import type { ClauseKind } from './phrases.ts';
import { JOINING_WORDS } from './reserved.ts';
import * as tag from './tags.ts';
import * as t from './tokens.ts';
import { ARTICLES, NUMBER_WORDS, SCOOPS, SEX_WORDS } from './words.ts';
import { LINKS } from './vocabulary/details.ts';
import type { LinkName } from './vocabulary/details.ts';

export interface DetailTask {
  readonly tokens: readonly IToken[];
  readonly at: number;
  /** Where the details end at the latest. */
  readonly limit: number;
  readonly kind: ClauseKind;
  readonly out: IToken[];
  readonly isName: (word: string) => boolean;
  readonly isFish: (word: string) => boolean;
  /** Whether the comma at an index parts two clauses. */
  readonly parts: (comma: number) => boolean;
  /** Whether the `and` at an index does. */
  readonly joins: (and: number) => boolean;
}

/** Tags what stands at `at`; gives the index after it. */
export function tagDetail(task: DetailTask): number {
  const { tokens, at, kind, out } = task;
  const token = tokens[at];
  if (token === undefined) return at + 1;
  if (token.tokenType === t.Quote || token.tokenType === t.DateToken) {
    out.push(token);
    return at + 1;
  }
  const taken = versus(task) ?? dayWords(task, at) ?? phrase(task) ?? bareWords(task) ?? quantity(task, at);
  if (taken !== null) return taken;
  // `pH 7.2 / KH 4`
  if (kind === 'test' && token.tokenType === t.Slash && continues(task, at + 1)) return at + 1;
  if (token.tokenType !== t.Word) out.push(token);
  else if (isTankNumber(task)) {
    out.push(retag(token, tag.TankWord, 'tank'), ...tokens.slice(at + 1, at + 2));
    return at + 2;
  } else if (ARTICLES.has(wordOf(token)) && SEX_WORDS.has(wordOf(tokens[at + 1])) && p.detailsOf(kind).has('sex')) {
    out.push(retag(token, tag.The, 'the'));
  } else if (JOINING_WORDS.has(wordOf(token))) {
    // A word that joins names nothing: left as it is, no rule takes it.
    out.push(token);
  } else out.push(retag(token, tag.Name, token.image));
  return at + 1;
}

function isTankNumber({ tokens, at }: DetailTask): boolean {
  return wordOf(tokens[at]) === 'tank' && tokens[at + 1]?.tokenType === t.Num;
}

function versus({ tokens, at, kind, out, isFish }: DetailTask): number | null {
  if (!p.detailsOf(kind).has('versus') || !fishOnFish(tokens, at, isFish)) return null;
  const types = [tag.Doer, tag.OnWhom, tag.Sufferer];
  types.forEach((type, index) => {
    const token = tokens[at + index];
    if (token !== undefined) out.push(retag(token, type, SEX_WORDS.get(wordOf(token)) ?? 'name'));
  });
  return at + 3;
}

function dayWords({ tokens, out, isName }: DetailTask, at: number): number | null {
  const length = dateLength(tokens, at);
  const first = tokens[at];
  if (length === 0 || first === undefined || (first.tokenType === t.Word && isName(first.image))) return null;
  const text = tokens
    .slice(at, at + length)
    .map(({ image }) => image)
    .join(' ');
  const date = first.tokenType === t.DateToken;
  out.push(date ? first : { ...spanning(tag.DayWords, tokens, at, at + length, 'day'), image: text });
  return at + length;
}

function phrase(task: DetailTask): number | null {
  const { tokens, at, out, limit } = task;
  const match = meaningful(task, at);
  if (match === null || at + match.length > limit) return null;
  const spread = spanning(match.phrase.token, tokens, at, at + match.length, match.phrase.sense);
  const words = tokens.slice(at, at + match.length).map(({ image }) => image);
  out.push(match.phrase.token === tag.DayWords ? { ...spread, image: words.join(' ') } : spread);
  const link = match.phrase.link;
  const next = at + match.length + (task.kind === 'test' && isColonBefore(tokens, at + match.length) ? 1 : 0);
  if (match.phrase.token === tag.Every) return quantity(task, next) ?? next;
  if (link === null) return next;
  // After a word that calls for a source or for words, bare words will do, unless they are a name.
  if (takesWords(task, link, next)) return text(task, next, 'words');
  const { form } = LINKS[link];
  if (form === 'day') return dayWords(task, next) ?? relativeDay(task, next) ?? next;
  return form === 'amount' ? (quantity(task, next) ?? next) : next;
}

/** `pH: 7.4`: the colon says nothing more. */
function isColonBefore(tokens: readonly IToken[], at: number): boolean {
  return tokens[at]?.tokenType === t.Colon && numberEnd(tokens, at + 1) > at + 1;
}

/** `by yesterday`, `until 3 days ago`. */
function relativeDay(task: DetailTask, at: number): number | null {
  const match = matchPhrase(task.tokens, at, p.phrasesInside(task.kind));
  if (match?.phrase.token !== tag.DayWords) return quantity(task, at);
  const image = task.tokens.slice(at, at + match.length).map((token) => token.image);
  task.out.push({ ...spanning(tag.DayWords, task.tokens, at, at + match.length, 'day'), image: image.join(' ') });
  return at + match.length;
}

function takesWords({ tokens, kind, isName }: DetailTask, link: LinkName, at: number): boolean {
  const next = tokens[at];
  const { form } = LINKS[link];
  if (next === undefined || (form !== 'source' && form !== 'words')) return false;
  if (next.tokenType !== t.Word || wordOf(next) === 'tank') return false;
  if (form === 'words') return link !== 'where' || !isName(next.image);
  const more = tokens[at + 1]?.tokenType === t.Word && matchPhrase(tokens, at + 1, p.phrasesInside(kind)) === null;
  // `from a friend`, even where a row is called A.
  return more && (!isName(next.image) || ARTICLES.has(next.image));
}

/** The phrase of the clause at a token, where it means something there. */
function meaningful({ tokens, kind, isName }: DetailTask, at: number): Match | null {
  const match = matchPhrase(tokens, at, p.phrasesInside(kind));
  if (match === null) return null;
  const { token } = match.phrase;
  // A unit is one: `m` after a number is a metre where no fish are told apart.
  if (token === tag.Sex && isTwoOf(tokens, at)) return null;
  if (token === tag.Sex || token === tag.DayWords) return isName(tokens[at]?.image ?? '') ? null : match;
  const link = match.phrase.link;
  if ((link === 'aside' || link === 'sort') && tokens.slice(at, at + match.length).some(({ image }) => isName(image)))
    return null;
  if (tokens[at]?.tokenType === t.Unit || token === tag.Noun || token === tag.Ago) return null;
  if (token === tag.CountWord || token === tag.Fuzz || token === tag.NumberWord) return null;
  if (link !== null && LINKS[link].form === 'day' && !dated(tokens, at + match.length, link)) return null;
  return match;
}

function dated(tokens: readonly IToken[], at: number, link: LinkName): boolean {
  const word = wordOf(tokens[at]);
  if (dateLength(tokens, at) > 0) return true;
  // `by 3 days ago`; `on 2` is no day.
  if (numberEnd(tokens, at) > at) return link !== 'on';
  return word === 'yesterday' || word === 'yest' || word === 'yday' || word === 'today' || word === 'tomorrow';
}

/** Bare words where the clause calls for a text. */
function bareWords(task: DetailTask): number | null {
  const mode = p.CLAUSES[task.kind].text;
  // `fed Rowan-1 bbs`
  if (task.kind === 'fed' && task.isFish(task.tokens[task.at]?.image ?? '')) return null;
  if (mode === undefined || (mode === 'words' && isNumeric(task, task.at))) return null;
  return text(task, task.at, mode);
}

function isNumeric({ tokens }: DetailTask, at: number): boolean {
  const token = tokens[at];
  if (token === undefined) return false;
  if (token.tokenType === t.Plus) return tokens[at + 1]?.tokenType !== t.Word;
  if (token.tokenType !== t.Word) return token.tokenType !== t.Slash && token.tokenType !== t.Ampersand;
  return numberEnd(tokens, at) > at && wordOf(token) !== 'no';
}

/** Tags a number with all that belongs to it: `about 20-25 mm`, `100 x 40 x 40 cm`, `3 doses`, `2-4 days ago`. */
function quantity(task: DetailTask, at: number): number | null {
  const { tokens, out } = task;
  const inside = p.phrasesInside(task.kind);
  if (tokens[at]?.tokenType === t.Currency) {
    out.push(tokens[at]);
    return quantity(task, at + 1) ?? at + 1;
  }
  const end = numberIn(task, at);
  if (end === at) return null;
  for (let i = at; i < end; i += 1) {
    const match = matchPhrase(tokens, i, inside);
    if (match !== null && (match.phrase.token === tag.CountWord || match.phrase.token === tag.Fuzz)) {
      out.push(spanning(match.phrase.token, tokens, i, i + match.length, match.phrase.sense));
      i += match.length - 1;
    } else out.push(...tokens.slice(i, i + 1).map(figure));
  }
  return afterNumber(task, end);
}

/** The index after a number. `sale at 22 or 12 weeks` are two: a length and an age. */
function numberIn({ kind, tokens }: DetailTask, at: number): number {
  const end = numberEnd(tokens, at);
  if (kind !== 'sale at') return end;
  const or = tokens.slice(at, end).findIndex((token) => wordOf(token) === 'or');
  return or < 0 ? end : at + or;
}

function figure(token: IToken): IToken {
  const word = wordOf(token);
  if (token.tokenType === t.Below) return retag(token, tag.Fuzz, 'under');
  if (token.tokenType === t.Beyond) return retag(token, tag.Fuzz, 'over');
  if (word === 'both') return retag(token, tag.NumberWord, 'two');
  if (word === 'a' || word === 'an') return retag(token, tag.NumberWord, 'one');
  if (NUMBER_WORDS.has(word)) return retag(token, tag.NumberWord, word);
  return word === 'to' || word === 'or' ? retag(token, tag.RangeTo, 'to') : token;
}

/** Unit, second edge, what is counted, `ago`. */
function afterNumber(task: DetailTask, from: number): number {
  const { tokens, out } = task;
  let at = from;
  for (;;) {
    const token = tokens[at];
    if (token === undefined) return at;
    const type = token.tokenType;
    const match = matchPhrase(tokens, at, p.phrasesInside(task.kind));
    const own = SCOOPS.get(wordOf(token));
    const ranges = (type === t.Dash || wordOf(token) === 'to') && tokens[at - 1]?.tokenType === t.Unit;
    // Where things are counted `m` and `f` tell fish apart; else they are the units that they look like.
    const counts = type !== t.Unit || p.CLAUSES[task.kind].nouns !== undefined;
    if (match?.phrase.token === tag.Sex && counts) return at;
    if (type === t.Unit || type === t.Plus || type === t.Ish || type === t.Currency) out.push(token);
    else if (type === t.Times || (ranges && tokens[at + 1]?.tokenType === t.Num)) {
      out.push(...tokens.slice(at, at + 2).map(figure));
      at += 1;
    } else if (match?.phrase.token === tag.Noun || match?.phrase.token === tag.Ago) {
      out.push(retag(token, match.phrase.token, match.phrase.sense));
    } else if (own !== undefined) out.push(retag(token, tag.Scoop, own));
    else return at;
    at += 1;
  }
}

/** Takes bare words up to a separator, a quote, or a word that means something; gives the index after them. */
function text(task: DetailTask, at: number, mode: 'any' | 'words'): number {
  const { tokens, out, limit } = task;
  let end = at;
  while (end < limit && !endsText(task, end, at, mode)) end += 1;
  // `under the slate, about 60`
  while (end > at + 1 && tokens[end - 1]?.tokenType === t.Comma) end -= 1;
  if (end === at) return at;
  out.push(spanning(tag.Text, tokens, at, end, 'text'));
  return end;
}

function endsText(task: DetailTask, at: number, start: number, mode: 'any' | 'words'): boolean {
  const { tokens } = task;
  const token = tokens[at];
  if (token === undefined) return true;
  const type = token.tokenType;
  if (type === t.Semicolon || type === t.Quote || type === t.Note) return true;
  if (type === t.Comma || type === t.Dot) return at === tokens.length - 1 || task.parts(at) || continues(task, at + 1);
  if (mode === 'words' && isNumeric(task, at)) return true;
  // `fed bbs and wc 30 %`; in words of one's own an `and` joins what it stands between.
  if (OF_THINGS.has(task.kind) && isJoining(token) && task.joins(at)) return true;
  if (at === start) return false;
  // `sold 6 to Bob friday`
  const dated = mode === 'words' && !task.isName(token.image) ? dateLength(tokens, at) : 0;
  if (dated > 0 && endsClause(tokens[at + dated])) return true;
  // `sick white spot not catching`: said at the end it needs no comma.
  const said = matchPhrase(tokens, at, p.phrasesContinuing(task.kind));
  if (said !== null && endsClause(tokens[at + said.length])) return true;
  const match = meaningful(task, at);
  if (match === null || match.phrase.token === tag.Sex) return false;
  const link = match.phrase.link;
  return mode === 'words' ? link !== 'and' && link !== 'of' : link === 'by' || link === 'until';
}

/** Clauses whose bare words are the name of a thing. */
export const OF_THINGS: ReadonlySet<ClauseKind> = new Set<ClauseKind>([
  'fed',
  'culture fed',
  'dosed',
  'treat',
  'hatch',
]);

function endsClause(token: IToken | undefined): boolean {
  const type = token?.tokenType;
  return type === undefined || type === t.Semicolon || type === t.Comma || type === t.Dot || type === t.Quote;
}

function continues(task: DetailTask, at: number): boolean {
  return matchPhrase(task.tokens, at, p.phrasesContinuing(task.kind)) !== null;
}

/** What the parser and the tagger could not read, in a keeper's words, with the nearest thing that would be read. */
import { clausesUnder, HEADS, LINK_TOKENS, openersUnder } from '../../grammar/phrases.ts';
import type { HeadingKind, LinkName } from '../../grammar/phrases.ts';
import { FORM_WORDS, LINKS } from '../../grammar/vocabulary/details.ts';
import { matchPhrase, numberEnd, wordOf } from '../../grammar/matching.ts';
import { SEX_WORDS } from '../../grammar/words.ts';
import type { ParseFault } from '../../grammar/parse.ts';
import type { Piece } from '../../grammar/syntax.ts';
import type { TagFault } from '../../grammar/tagging.ts';
import { Colon, Comma, endOf, Num, Word } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { isoDay } from '../core/day.ts';
import { asRemark, fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { jarByNumber } from './jarnumber.ts';
import type { LineContext } from './line.ts';
import { cameFrom, gone } from './otherway.ts';
import { oftenSaid } from './oftensaid.ts';
import { saidOtherwise, slipAfterFish } from './otherwords.ts';
import { unsaidCount } from './unsaidcount.ts';
import { unsaidDose } from './unsaiddose.ts';
import { nearestPhrase, remarkOf, strayWords, withUnknownBefore } from './stray.ts';

/** Words where a clause should begin. */
export function noClause(line: LineContext, tag: TagFault, heading: HeadingKind, tokens: readonly Token[]): Fault {
  const at = { from: tag.first.startOffset, to: endOf(tag.last) };
  const start = tokens.indexOf(tag.first);
  const own = tokens.slice(start, tokens.indexOf(tag.last) + 1);
  const otherwise = sexFirst(line, own) ?? toldOtherwise(line, own, heading, colonOf(line, tokens));
  if (otherwise !== null) return otherwise;
  const elsewhere = clauseElsewhere(own, heading);
  if (elsewhere !== null) {
    const words = own
      .slice(0, elsewhere.length)
      .map(({ image }) => image)
      .join(' ');
    const here = HEADING_WORDS[heading];
    const says = elsewhere.declared
      ? `\`${words}\` is said where ${elsewhere.of} is declared${elsewhere.of === here ? ', not of one that stands' : ''}`
      : `\`${words}\` is said of ${elsewhere.of}, not of ${here}`;
    const wrong = fault('clause-elsewhere', { from: at.from, to: endOf(own[elsewhere.length - 1] ?? tag.first) }, says);
    const clause = line.text.slice(at.from, at.to);
    const declared = elsewhere.of === here ? declaredAs(line, tokens) : null;
    const subject = elsewhere.declared ? declared : onlySubject(line, elsewhere.of);
    return subject === null ? wrong : { ...wrong, line: `${isoDay(line.day)} ${subject}: ${clause}` };
  }
  const count = unsaidCount(line.text, line, own, heading);
  if (count !== null) return uncounted(line, at, count);
  const slip = slipAfterFish(line, own, heading);
  if (slip !== null) return slip;
  const near = nearestPhrase(own, heading);
  const comma = own.findIndex(({ tokenType }) => tokenType === Comma);
  const first = own.slice(0, near?.words ?? (comma > 0 ? comma : own.length));
  const place = { from: at.from, to: endOf(first.at(-1) ?? tag.first) };
  const says = `«${line.text.slice(place.from, place.to)}» is no clause that is read here`;
  return fault('unknown-clause', place, says, near?.phrase ?? null);
}

/** `male Rowan died`: the name stands before the sex. */
function sexFirst(line: LineContext, own: readonly Token[]): Fault | null {
  const the = own[0] !== undefined && wordOf(own[0]) === 'the' ? 1 : 0;
  const [sex, name] = own.slice(the);
  if (sex === undefined || name === undefined || own.length < the + 3 || !ONE_SEX.has(SEX_WORDS.get(wordOf(sex)) ?? ''))
    return null;
  if (line.names.find(name.image, line.day)?.kind !== 'group') return null;
  const at = { from: own[0]?.startOffset ?? sex.startOffset, to: endOf(name) };
  const turned = `${name.image} ${sex.image}`;
  return fault('unknown-clause', at, `the name of a pair stands before the sex: \`${turned} …\``, turned);
}

const ONE_SEX: ReadonlySet<string> = new Set(['male', 'female']);

/** Words that tell something which is read otherwise. */
function toldOtherwise(line: LineContext, own: readonly Token[], heading: HeadingKind, colon: number): Fault | null {
  const came = heading === 'tank' ? cameFrom(line, own, colon) : null;
  return (
    came ??
    (clausesUnder(heading).has('lost') ? gone(line, own) : null) ??
    unsaidDose(line, own, heading) ??
    saidOtherwise(line, own, heading) ??
    oftenSaid(line, placeOf(own), heading)
  );
}

function placeOf(tokens: readonly Token[]): Piece {
  const [first, last] = [tokens[0], tokens.at(-1)];
  return { from: first?.startOffset ?? 0, to: last === undefined ? 0 : endOf(last) };
}

/** The offset of the colon after the heading. */
function colonOf(line: LineContext, tokens: readonly Token[]): number {
  return tokens.find(({ tokenType }) => tokenType === Colon)?.startOffset ?? line.text.length;
}

/** Fish and a number: the count that it may be is offered, not taken. */
function uncounted(line: LineContext, at: Piece, count: string): Fault {
  const says = `«${line.text.slice(at.from, at.to)}» does not say what that number is of them: counted, sold, moved, or a length?`;
  return fault('unknown-clause', at, says, count);
}

/** How the kinds of heading are called in a message. */
const HEADING_WORDS: Readonly<Record<HeadingKind, string>> = {
  room: 'the room',
  loop: 'a loop',
  tank: 'a tank',
  group: 'a group of fish',
  brood: 'a brood',
  culture: 'a culture',
  auction: 'an auction',
  species: 'a species',
  row: 'a row',
  'new loop': 'a loop',
  'new tank': 'a tank',
  'new group': 'a group of fish',
  'new culture': 'a culture',
  'new auction': 'an auction',
  'new species': 'a species',
};

const PLACES: readonly HeadingKind[] = [
  'tank',
  'loop',
  'room',
  'group',
  'brood',
  'culture',
  'new tank',
  'new group',
  'new species',
  'new loop',
  'new auction',
];

/** The one thing of that kind that the room has, if it has one only. */
function onlySubject(line: LineContext, of: string): string | null {
  if (of === HEADING_WORDS.room) return 'room';
  if (of !== HEADING_WORDS.loop) return null;
  const loops = [...line.names.all('loop')].filter(({ day }) => day <= line.day);
  return loops.length === 1 ? (loops[0]?.name ?? null) : null;
}

/** `tank C1`, where the line is of that tank alone: of what it is declared again more is told. */
function declaredAs(line: LineContext, tokens: readonly Token[]): string | null {
  const [name] = tokens.slice(tokens.findIndex(({ tokenType }) => tokenType === Colon) - 1);
  const heading = line.text.slice(0, colonOf(line, tokens)).trim().split(/\s+/u).at(-1);
  const named = name === undefined || heading !== name.image ? null : line.names.find(name.image, line.day);
  return named?.kind === 'tank' || named?.kind === 'loop' ? `${named.kind} ${named.name}` : null;
}

/** The heading under which the words would be a clause. */
function clauseElsewhere(
  tokens: readonly Token[],
  heading: HeadingKind,
): { of: string; declared: boolean; length: number } | null {
  for (const other of PLACES) {
    // `male gone`: of fish that stand nobody is declared.
    if (other === 'new group' && SEX_WORDS.has(wordOf(tokens[0]))) continue;
    const match = other === heading ? null : matchPhrase(tokens, 0, openersUnder(other));
    if (match === null || match.phrase.kind === 'two readings') continue;
    // `water cloudy`, `sump low`: of its declaration a number would be told, or nothing more.
    const next = tokens[match.length];
    if (other.startsWith('new ') && match.length === 1 && next?.tokenType === Word && numberEnd(tokens, 1) === 1)
      continue;
    return { of: HEADING_WORDS[other], declared: other.startsWith('new '), length: match.length };
  }
  return null;
}

/** A clause whose words do not go together. */
export function unreadClause(
  line: LineContext,
  { clause, at, rule, tokens }: ParseFault,
  heading: HeadingKind,
): Fault[] {
  const often = oftenSaid(line, clause, heading);
  if (often !== null) return [often];
  const head = tokens.find(({ tokenType }) => HEAD_TYPES.has(tokenType));
  const phrase = head === undefined ? null : line.text.slice(head.startOffset, endOf(head)) || null;
  const link = linkAt(tokens, at);
  if (link !== null && (rule !== 'clauses' || at.from === at.to)) {
    const { form } = LINKS[link.name];
    const wants = form === 'flag' ? 'something' : FORM_WORDS[form];
    const place = at.from === at.to ? link.at : at;
    const wrong = fault(
      'something-missing',
      place,
      `after \`${line.text.slice(link.at.from, link.at.to)}\` comes ${wants}`,
    );
    const jar = heading === 'culture' ? jarByNumber(line, at, clause.to) : null;
    if (jar !== null) return [{ ...wrong, from: jar.from, to: jar.to, edit: jar }];
    // `to 12`, where a tank is called 12: beside other words a number needs its kind.
    const called = /^\d+(?!\S)/.exec(line.text.slice(at.from, clause.to))?.[0] ?? null;
    if (called !== null && line.names.find(called, line.day)?.kind === 'tank') {
      const number = { from: at.from, to: at.from + called.length };
      return [{ ...wrong, ...number, edit: { ...number, text: `tank ${called}` } }];
    }
    // `for a sponge` says no price, and nothing else that the clause has a place for.
    const words = { from: link.at.from, to: clause.to };
    const remark = link.name === 'for' && at.from < at.to ? remarkOf(line, words, heading) : null;
    return [{ ...wrong, edit: remark }];
  }
  if (at.from === at.to) return [fault('something-missing', clause, 'something is missing at the end of this clause')];
  // `cleaned pump`: with a remark it would be all the layers.
  if (head?.tokenType === HEADS.get('layers cleaned') && !tokens.some(({ tokenType }) => tokenType === Num)) {
    const words = { from: at.from, to: clause.to };
    return [
      fault('not-understood', words, `«${line.text.slice(words.from, words.to)}» is none of the prefilter's layers`),
    ];
  }
  // `change air stone`: with a remark it would be water that was changed.
  if (head !== undefined && /^change$/i.test(phrase ?? '') && !tokens.some(({ tokenType }) => tokenType === Num)) {
    const words = { from: head.startOffset, to: clause.to };
    const said = line.text.slice(words.from, words.to).trim();
    return [
      fault('not-understood', words, `«${said}» tells of no water: is it to be done?`, `to do ${asRemark(said)}`),
    ];
  }
  return strayWords(line, withUnknownBefore(line, at, tokens), clause.to, phrase, heading);
}

const HEAD_TYPES = new Set(HEADS.values());

/** The word before the place that leads to something. */
function linkAt(tokens: readonly Token[], at: Piece): { name: LinkName; at: Piece } | null {
  const before = tokens.filter((token) => endOf(token) <= at.from).at(-1);
  if (before === undefined) return null;
  for (const [name, type] of LINK_TOKENS) {
    if (before.tokenType === type && LINKS[name].form !== 'flag')
      return { name, at: { from: before.startOffset, to: endOf(before) } };
  }
  return null;
}

/** Words that no clause is made of, as keepers write them all the same: what they may mean is offered and never taken. */
import { matchPhrase, numberEnd, wordOf } from '../../grammar/matching.ts';
import { clausesUnder, openersUnder } from '../../grammar/phrases.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import type { Piece } from '../../grammar/syntax.ts';
import { endOf, Word } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { FOODS, SEX_WORDS } from '../../grammar/words.ts';
import { nearest } from '../core/suggest.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';
import type { Names } from './names.ts';
import { nearestPhrase } from './stray.ts';

/** What words that open no clause may be; null where nothing is known of them. */
export function saidOtherwise(line: LineContext, tokens: readonly Token[], heading: HeadingKind): Fault | null {
  const [first, last] = [tokens[0], tokens.at(-1)];
  if (first === undefined || last === undefined) return null;
  const at = { from: first.startOffset, to: endOf(last) };
  const said = { line, tokens, at, text: line.text.slice(at.from, at.to), clauses: clausesUnder(heading) };
  return glued(said) ?? partOfWater(said) ?? siphoned(said) ?? layers(said) ?? wanted(said) ?? went(said) ?? feed(said);
}

interface Said {
  readonly line: LineContext;
  readonly tokens: readonly Token[];
  readonly at: Piece;
  readonly text: string;
  readonly clauses: ReturnType<typeof clausesUnder>;
}

const GLUED = /(?<!\p{L})(ph|kh|gh|tan|amm|temp|ec|tds)(?=\d)/giu;

/** `pH7.2 KH4` */
function glued({ at, text, clauses }: Said): Fault | null {
  const parted = text.replace(GLUED, '$1 ');
  if (parted === text || !clauses.has('test')) return null;
  return fault('unknown-clause', at, `«${text}» lacks a blank before its number`, parted);
}

const PART_FIRST = /^(\d\s*\/\s*\d|(?:(?:a|one|two|three)\s+)?(?:third|quarter)s?)\s+(\S.*)$/iu;

/** `1/3 wc` */
function partOfWater({ tokens, at, text, clauses }: Said): Fault | null {
  const [, part, words] = PART_FIRST.exec(text) ?? [];
  const change = tokens.findIndex((_, index) => opensChange(tokens, index));
  if (part === undefined || words === undefined || change < 0 || !clauses.has('water change')) return null;
  return fault('unknown-clause', at, `how much was changed stands behind \`${words}\``, `${words} ${part}`);
}

function opensChange(tokens: readonly Token[], at: number): boolean {
  return matchPhrase(tokens, at, openersUnder('tank'))?.phrase.kind === 'water change';
}

const SIPHON =
  /^(?:gravel\s+)?(?:vac|vacs|vacced|vacuum|vacuumed|siphoned|syphoned|siphon)(?:\s+(?:the\s+)?(?:gravel|sand|bottom|mulm))?(?!\p{L})/iu;

/** `vacced`, `siphoned 10 L`: water went out with the dirt; only with an amount is that a change. */
function siphoned({ at, text, clauses }: Said): Fault | null {
  const words = SIPHON.exec(text)?.[0];
  if (words === undefined || !clauses.has('water change')) return null;
  const amount = text.slice(words.length).trim();
  const told = /^\d+(?:[.,]\d+)?\s*(?:%|l|litres?|liters?|gal|buckets?)$/iu.test(amount);
  const says = told
    ? `«${text}»: water that went out and was filled up again is a \`water change\``
    : `«${text}» does not say how much water went: \`water change\` with a number where it was filled up again, else a note`;
  return fault('unknown-clause', at, says, told ? `water change ${amount}` : null);
}

/** `2 layers` */
function layers({ at, text, clauses }: Said): Fault | null {
  if (!clauses.has('layers cleaned') || !/^(?:\d+|all)\s+(?:layers?|sponges?)$/iu.test(text)) return null;
  return fault('unknown-clause', at, `«${text}» does not say what was done with them`, `cleaned ${text}`);
}

/** `Bob wants 6`: where nothing is called so, it is somebody. */
function wanted({ line, tokens, at, text, clauses }: Said): Fault | null {
  const [who, verb] = tokens;
  if (who === undefined || verb === undefined || !/^wants?$/iu.test(verb.image) || !isStranger(line.names, who))
    return null;
  const rest = text.slice(endOf(verb) - at.from).trim();
  if (numberEnd(tokens, 2) === 2 && !SEX_WORDS.has(wordOf(tokens[3]))) return null;
  const ofSpecies = tokens.some(({ image }) => isSpecies(line, image));
  const kind = ofSpecies ? 'wanted' : 'reserved';
  const says = `«${who.image}» stands behind what is wanted: \`wanted\` with the species, or \`reserved\` of fish that are here`;
  return clauses.has(kind) ? fault('unknown-clause', at, says, `${kind} ${rest} to ${who.image}`) : null;
}

function isSpecies({ names, day }: LineContext, word: string): boolean {
  return (names.find(word, day) ?? names.find(word.replace(/s$/iu, ''), day))?.kind === 'species';
}

/** `6 to Bob`, `6 for the shop` */
function went({ line, tokens, at, text, clauses }: Said): Fault | null {
  const number = numberEnd(tokens, 0);
  const fish = SEX_WORDS.has(wordOf(tokens[number])) || line.names.isFish(tokens[number]?.image ?? '') ? 1 : 0;
  const to = wordOf(tokens[number + fish]);
  const article = wordOf(tokens[number + fish + 1]) === 'the' ? 1 : 0;
  const who = tokens[number + fish + 1 + article];
  if (number === 0 || (to !== 'to' && to !== 'for') || who === undefined || !clauses.has('sold')) return null;
  if (!isStranger(line.names, who) || /^(?:me|us|myself|ourselves)$/iu.test(who.image)) return null;
  const says = `«${text}» may be \`sold ${text}\`, \`gave away ${text}\` or \`reserved ${text}\`: write which`;
  return fault('two-readings', at, says, `${to === 'for' ? 'reserved' : 'sold'} ${text}`);
}

/** A word that names nothing here, nor with a slip in it. */
export function isStranger(names: Names, { image, tokenType }: Pick<Token, 'image' | 'tokenType'>): boolean {
  if (tokenType !== Word || names.isName(image)) return false;
  return (
    nearest(
      image,
      [...names.all()].map(({ name }) => name),
      1,
    ).length === 0
  );
}

/** Who takes fish and buys none. */
export function isEater(words: string): boolean {
  return /(?<!\p{L})(?:cat|dog|heron|kingfisher|otter|snails?|crayfish|crab|dragonfly|planaria)(?!\p{L})/iu.test(words);
}

const FOOD_FIRST = /^(?:frozen|live|crushed|powdered|dry|fresh|egg|first|(?:a\s+|\d+\s+)?pinch(?:es)?(?:\s+of)?)\s/iu;
const EATEN = /^(?:food|yolk|feed)$/iu;

/** `frozen bbs`, `a pinch of flake` */
function feed({ tokens, at, text, clauses }: Said): Fault | null {
  const isFood = tokens.some(({ image }) => FOODS.has(image.toLowerCase()) || EATEN.test(image));
  if (!clauses.has('fed') || !FOOD_FIRST.test(text) || !isFood || tokens.length > 5) return null;
  return fault(
    'unknown-clause',
    at,
    `«${text}» lacks its verb: \`fed\``,
    `fed ${text.replace(/^first\s+(?:feed|food)\s*/iu, '')}`.trim(),
  );
}

/** `Birch ded`, `2 ded`: fish, and a phrase with a slip in it. */
export function slipAfterFish(line: LineContext, tokens: readonly Token[], heading: HeadingKind): Fault | null {
  let at = numberEnd(tokens, 0);
  while (SEX_WORDS.has(wordOf(tokens[at])) || line.names.isFish(tokens[at]?.image ?? '')) at += 1;
  const near = at === 0 ? null : nearestPhrase(tokens.slice(at), heading);
  const [first, last] = [tokens[at], tokens[at + (near?.words ?? 1) - 1]];
  if (near === null || first === undefined || last === undefined) return null;
  const place = { from: first.startOffset, to: endOf(last) };
  const says = `«${line.text.slice(place.from, place.to)}» is no clause that is read here`;
  return fault('unknown-clause', place, says, near.phrase);
}

/** Words that are no names: those that declare, those that join, and all that a declaration must not take. */
import { CLAUSE_KINDS, CLAUSES } from './phrases.ts';
import type { ClauseKind } from './phrases.ts';
import { LATER_SEX_WORDS, SEX_WORDS, UNIT_WORDS } from './words.ts';

/** Words that begin a declaring line, and what each declares. */
export const DECLARING: ReadonlyMap<string, 'row' | 'loop' | 'tank' | 'species' | 'group' | 'culture' | 'auction'> =
  new Map([
    ['row', 'row'],
    ['loop', 'loop'],
    ['tank', 'tank'],
    ['tray', 'tank'],
    ['species', 'species'],
    ['pair', 'group'],
    ['pr', 'group'],
    ['trio', 'group'],
    ['harem', 'group'],
    ['colony', 'group'],
    ['group', 'group'],
    ['culture', 'culture'],
    ['auction', 'auction'],
  ]);

/** Kinds of group, as a heading may name the one in a tank: `A1 pair`. */
export const GROUP_WORDS: ReadonlySet<string> = new Set(['pair', 'pr', 'trio', 'harem', 'colony', 'group']);

const OTHER_REFUSED =
  'all the rest half some about and in on at to from room tanks except note mistake also read ago x every by until for with as or each';

/** Words that join others, and are never a name. */
export const JOINING_WORDS: ReadonlySet<string> = new Set(
  'and in on at to from by until every for with as or of the a'.split(' '),
);

/** Units of one letter that a thumb may also mean as a name: refused but for rows and loops, which never follow a number. */
const UNIT_LETTERS = ['c', 'f', 'l', 'g', 'h', 'm'];

let words: ReadonlySet<string> | null = null;

/** Worked out when a declaration first asks: the words of every clause are among them. */
function refused(): ReadonlySet<string> {
  words ??= new Set([
    ...CLAUSE_KINDS.flatMap(openingWords),
    ...DECLARING.keys(),
    ...OTHER_REFUSED.split(' '),
    ...[...SEX_WORDS.keys()].filter((word) => word.length > 1 && !LATER_SEX_WORDS.has(word)),
    ...[...UNIT_WORDS.keys()].filter((spelling) => spelling.length > 1 && !spelling.includes(' ')),
  ]);
  return words;
}

/** First words of the phrases that open a clause, but for those that give way to a name. */
function openingWords(kind: ClauseKind): string[] {
  const { says, yields = '' } = CLAUSES[kind];
  const yielding = yields.split('|');
  const phrases = Object.values(says).flatMap((each) => each.split('|'));
  return phrases
    .filter((phrase) => phrase !== '' && !yielding.includes(phrase))
    .map((phrase) => phrase.replace(/ .*/, ''));
}

/** True for a name that a declaration must not take, since the reader would take it for something else. */
export function isRefusedName(name: string, declares: string): boolean {
  const word = name.toLowerCase();
  if (refused().has(word)) return true;
  return UNIT_LETTERS.includes(word) && declares !== 'row' && declares !== 'loop';
}

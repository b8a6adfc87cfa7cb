/** What reading one line has at hand: the line, its day, what is known of names and conventions, and where faults go. */
import type { Piece } from '../../grammar/syntax.ts';
import { MONTHS, WEEKDAYS } from '../../grammar/words.ts';
import type { ProblemKind } from '../core/problem-kinds.ts';
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import { nearest } from '../core/suggest.ts';
import type { Conventions } from './conventions.ts';
import { asRemark, fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { Named, NameKind, Names } from './names.ts';
import { turns } from './turns.ts';

export interface LineContext {
  /** As written, without its line end. */
  readonly text: string;
  readonly day: Day;
  readonly names: Names;
  readonly conventions: Conventions;
  readonly faults: Fault[];
}

const CALLED: Readonly<Record<NameKind, string>> = {
  tank: 'a tank',
  loop: 'a loop',
  row: 'a row',
  species: 'a species',
  group: 'a group',
  fish: 'a fish',
  brood: 'a brood',
  culture: 'a culture',
  auction: 'an auction',
};

/** A kind of named thing with its article. */
export function kindWords(kind: NameKind): string {
  return CALLED[kind];
}

export interface Lookup {
  /** The kinds that will do here; all where null. */
  readonly kinds: readonly NameKind[] | null;
  /** What the place calls for, in words: `a tank`. */
  readonly wants: string;
  /** Kind of the fault where nothing has that name. */
  readonly unknown: ProblemKind;
  /** Set where common words stand as well: whether a word that looks like a name may be one not yet declared. */
  readonly looksLikeName?: 'may be new' | 'is none';
  /** A line that would declare it, after the date: nothing is told of it but what its kind calls for. */
  readonly declares: (name: string) => string;
}

/** Looks a name up; null after a fault was noted. */
export function lookUp(line: LineContext, word: string, at: Piece, want: Lookup): Named | null {
  const named = line.names.find(word, line.day) ?? (want === SPECIES ? singular(line, word) : null);
  if (named === null) {
    line.faults.push(unknownName(line, word, at, want));
    return null;
  }
  if (want.kinds !== null && !want.kinds.includes(named.kind)) {
    const says = `«${named.name}» is ${kindWords(named.kind)}; here stands ${want.wants}`;
    line.faults.push({
      ...fault('wrong-kind', at, says),
      edit: edit(line, word, at, want),
    });
    return null;
  }
  if (named.day > line.day && named.kind !== 'brood') {
    const says = `«${named.name}» is declared only on ${isoDay(named.day)}`;
    line.faults.push({ ...fault('not-yet-declared', at, says), line: redated(line, named.day) });
    return null;
  }
  return named;
}

function unknownName(line: LineContext, word: string, at: Piece, want: Lookup): Fault {
  const mended = edit(line, word, at, want);
  const says = `nothing here is called «${word}»`;
  const { from, to } = at;
  if (mended !== null) return { kind: want.unknown, from, to, says, edit: mended };
  // A common word is no name that somebody forgot to declare.
  if (want.looksLikeName === 'is none' || (want.looksLikeName !== undefined && !isNameLike(word))) {
    if (want.unknown === 'unknown-name') return { kind: want.unknown, from, to, says, edit: null };
    // Where it stands for the fish themselves, a remark would make a fact of other fish.
    const remark = want.looksLikeName === 'is none' && !turns(word) ? asRemark(word) : null;
    return fault('not-understood', at, `«${word}» is not understood here`, remark);
  }
  return { kind: want.unknown, from, to, says, edit: null, line: `${isoDay(line.day)} ${want.declares(word)}` };
}

function edit(line: LineContext, word: string, at: Piece, want: Lookup): Fault['edit'] {
  const candidates: string[] = [];
  for (const { kind, name, day } of line.names.all()) {
    // `A9` is no slip for `A1`: digits tell tanks and broods apart.
    if (digitsOf(name) !== digitsOf(word)) continue;
    if ((want.kinds === null || want.kinds.includes(kind)) && day <= line.day) candidates.push(name);
  }
  const heading = want === ANYTHING ? headingMeant(line, word, at) : null;
  if (heading !== null) return heading;
  const near = nearest(word, candidates, 1)[0] ?? nearestBrood(line, word, want);
  return near === undefined ? null : { from: at.from, to: at.to, text: near };
}

/** Headings that say who is meant, and not as it is read: `all:`, `A1-A6:`, `Rowan 1:`. */
function headingMeant({ names, text, day }: LineContext, word: string, { from, to }: Piece): Fault['edit'] {
  if (/^(?:all|everything|everyone|every tank)$/iu.test(word) && /^\s*:/u.test(text.slice(to)))
    return { from, to, text: 'all tanks' };
  const [, first = '', last = ''] = /^([^-]+)-([^-]+)$/u.exec(word) ?? [];
  const [one, other] = [names.find(first, day), names.find(last, day)];
  if (one?.kind === 'tank' && other?.kind === 'tank') return { from, to, text: `${one.name} to ${other.name}` };
  const group = /^\d+$/.test(word) ? (/(\S+)\s+$/u.exec(text.slice(0, from))?.[1] ?? '') : '';
  const brood = group === '' ? null : names.find(`${group}-${word}`, day);
  const start = text.slice(0, from).trimEnd().length - group.length;
  return brood?.kind === 'brood' ? { from: start, to, text: brood.name } : null;
}

function digitsOf(word: string): string {
  return word.replace(/\D+/g, ' ').trim();
}

/** The tank that stands for the new water is called so in small letters too. */
const NEW_WATER = 'tap';

/** True for a word that may well be a name: it has a capital or a digit, or its script has no capitals. */
export function isNameLike(word: string): boolean {
  const day = word.toLowerCase();
  const like = /^[\p{Lu}\p{Lt}\p{Lo}]|\d/u.test(word) || day === NEW_WATER;
  return like && !WEEKDAYS.has(day) && !MONTHS.has(day);
}

/** `6 kribs`, `4 guppies`. */
export function singular(line: LineContext, word: string): Named | null {
  const one = word.replace(/ies$/i, 'y');
  const named = /s$/i.test(word)
    ? (line.names.find(word.slice(0, -1), line.day) ?? line.names.find(one, line.day))
    : null;
  return named?.kind === 'species' ? named : null;
}

/** `Rowna-1` is meant for a brood of Rowan, and so is `rowan1`. */
function nearestBrood(line: LineContext, word: string, want: Lookup): string | undefined {
  const [, group, number] = /^(.*[^\d-])-?(\d+)$/.exec(word) ?? [];
  if (group === undefined || number === undefined || want.kinds?.includes('brood') === false) return undefined;
  const groups = [...line.names.all('group')]
    .filter(({ name, day }) => day <= line.day && digitsOf(name) === digitsOf(group))
    .map(({ name }) => name);
  const near = nearest(group, groups, 1)[0];
  return near === undefined ? undefined : `${near}-${number}`;
}

/** The line with another day at its start. */
function redated(line: LineContext, day: Day): string {
  return line.text.replace(/^(\s*)\S+/, (_, blank: string) => `${blank}${isoDay(day)}`);
}

export const TANK: Lookup = {
  kinds: ['tank'],
  wants: 'a tank',
  unknown: 'unknown-tank',
  declares: (name) => `tank ${name}:`,
  looksLikeName: 'may be new',
};

export const LOOP: Lookup = {
  kinds: ['loop'],
  wants: 'a loop',
  unknown: 'unknown-loop',
  declares: (name) => `loop ${name}:`,
};

export const SPECIES: Lookup = {
  kinds: ['species'],
  wants: 'a species',
  unknown: 'unknown-species',
  declares: (name) => `species ${name}:`,
};

export const FISH: Lookup = {
  kinds: ['group', 'fish', 'brood'],
  wants: 'a fish, a group or a brood',
  unknown: 'unknown-fish',
  looksLikeName: 'may be new',
  declares: (name) => `group ${name}: some`,
};

/** Fish named where a clause hardly ever names any: after `free-swimming`, after `chasing`. */
export const FISH_DECLARED: Lookup = { ...FISH, looksLikeName: 'is none' };

export const CULTURE: Lookup = {
  kinds: ['culture'],
  wants: 'a culture',
  unknown: 'unknown-culture',
  declares: (name) => `culture ${name}:`,
};

export const AUCTION: Lookup = {
  kinds: ['auction'],
  wants: 'an auction',
  unknown: 'unknown-auction',
  declares: (name) => `auction ${name}:`,
};

export const ANYTHING: Lookup = {
  kinds: null,
  wants: 'a name',
  unknown: 'unknown-name',
  looksLikeName: 'may be new',
  declares: (name) => `tank ${name}:`,
};

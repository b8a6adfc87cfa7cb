/**
 * The first walk over a journal: everything that gets a name, and the conventions, before any clause is
 * read. Only lines that can name something are looked at; lines are in any order, so days decide.
 */
import { CLAUSE_KINDS, CLAUSES } from '../../grammar/phrases.ts';
import { LAST_DAY, toDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { EventKind } from '../journal/event.ts';
import type { GroupKind, Sex } from '../journal/subject.ts';
import type { Fact } from './build/build.ts';
import { Conventions } from './conventions.ts';
import { readEntry, openEntry } from './entry.ts';
import type { Fault } from './faults.ts';
import type { Declaration } from './heading.ts';
import { nameKey, Names } from './names.ts';
import type { Named } from './names.ts';
import type { RawEntry } from './source.ts';

export interface Declared {
  readonly names: Names;
  readonly conventions: Conventions;
  /** Where groups were said to live when they were declared. */
  readonly homes: { readonly tank: string; readonly group: string; readonly day: Day }[];
}

const DECLARING =
  /^\s*\S+\s+(?:\d{1,2}:\d{2}\s+)?(?:row|loop|tank|tray|species|pair|trio|harem|colony|group|culture|auction)\s/i;
const ROOM = /^\s*\S+\s+(?:\d{1,2}:\d{2}\s+)?(?:the\s+)?room\s*:/i;
/** Kinds of event that settle how other lines are read; the room alone is told of them. */
const CONVENTIONS: ReadonlySet<string> = new Set<EventKind>(['units set', 'nitrogen set', 'walk set', 'scoop set']);
/** The words that their clauses begin with: a line of the room without any of them settles nothing. */
const SETTLING = new RegExp(
  `\\b(?:${CLAUSE_KINDS.filter((kind) => CLAUSES[kind].makes.some((made) => CONVENTIONS.has(made)))
    .flatMap((kind) => Object.values(CLAUSES[kind].says))
    .flatMap((says) => says.split('|').map((phrase) => phrase.split(' ', 1).join()))
    .join('|')})\\b`,
  'i',
);
const NAMING = /\b(?:brood|batch|as|named|called|new)\b/i;
/** What follows these words is a name, perhaps one that is known without them: `brood Rowan-3`. */
const BROOD_NAMED = /\b(?:brood|batch)\s+([^\s,;:"]+)/gi;

/** Collects names and conventions from all lines. */
export function declare(entries: readonly RawEntry[]): Declared {
  const found: Declared = { names: new Names(), conventions: new Conventions(), homes: [] };
  const lines = entries.filter(({ reads, text }) => !reads && mayDeclare(text));
  addDeclarations(
    found,
    lines.filter(({ text }) => DECLARING.test(text)),
  );
  // Rows, walking order and members name what was declared elsewhere: all names have to be there first.
  for (const entry of lines) if (mayName(entry.text, found.names)) addNamedInside(found, entry);
  return found;
}

/** False for an ordinary line that names nothing but a brood whose name is known: most spawns of a long journal. */
function mayName(text: string, names: Names): boolean {
  if (DECLARING.test(text) || isSettling(text)) return true;
  return NAMING.test(text.replace(BROOD_NAMED, (all, name: string) => (names.isName(name) ? '' : all)));
}

/** Whether a line may name something or set a convention, whatever is named already. */
export function mayDeclare(text: string): boolean {
  return DECLARING.test(text) || isSettling(text) || NAMING.test(text);
}

function isSettling(text: string): boolean {
  return ROOM.test(text) && SETTLING.test(text);
}

/** Whether a line may name something or set a convention, and so change how other lines are read. */
export function isDeclaring(text: string, names: Names): boolean {
  return mayDeclare(text) && mayName(text, names);
}

/** Adds what one more line declares; for a line that is not yet filed. */
export function declareMore(found: Declared, entry: RawEntry): void {
  if (DECLARING.test(entry.text)) addDeclarations(found, [entry]);
  addNamedInside(found, entry);
}

/** More than any heading takes: what follows is not needed to know what is declared. */
const LONGEST_HEADING = 500;

interface Opened {
  readonly declaration: Declaration;
  readonly day: Day;
  readonly place: Place;
}

function addDeclarations({ names, conventions }: Declared, entries: readonly RawEntry[]): void {
  const opened: Opened[] = [];
  for (const entry of entries) {
    const faults: Fault[] = [];
    // No name is known yet, so only a name's form can be at fault here.
    const read = openEntry(entry.text.slice(0, LONGEST_HEADING), new Names(), conventions, faults);
    const declaration = read?.heading?.declaration;
    if (read && declaration) {
      const place = { file: entry.file, line: entry.line, from: declaration.at.from, to: declaration.at.to };
      opened.push({ declaration, day: read.line.day, place });
    }
  }
  opened.sort((a, b) => a.day - b.day);
  opened.forEach(({ declaration, day, place }, rank) => {
    const { declares, name, groupKind } = declaration;
    if (isBroodName(names, name)) return;
    // What a line says inside comes after its heading, whatever file and line it stands in.
    const named: Named = { kind: declares, name, day, place, rank: rank - opened.length };
    names.add(declares === 'group' ? { ...named, groupKind } : named);
  });
}

function isBroodName(names: Names, name: string): boolean {
  return names.find(name, toDay(LAST_DAY))?.kind === 'brood';
}

function addNamedInside(found: Declared, entry: RawEntry): void {
  const { names, conventions } = found;
  const read = readEntry(entry.text, names, conventions);
  if (read.day === null) return;
  for (const fact of read.loose) addFact(found, fact, read.day, entry);
}

function addFact(found: Declared, fact: Fact, day: Day, entry: RawEntry): void {
  const { names, conventions } = found;
  const { body } = fact;
  const place = { file: entry.file, line: entry.line, from: fact.at.from, to: fact.at.to };
  const rank = entry.line;
  switch (body.kind) {
    case 'units set':
      return conventions.units.set(day, body.units);
    case 'nitrogen set':
      return conventions.nitrogen.set(day, body.as);
    case 'walk set':
      return conventions.walk.set(day, body.tanks);
    case 'scoop set':
      return conventions.setOwn(body.name, day, body);
    case 'row declared':
      if (body.tanks.length > 0) names.add({ kind: 'row', name: body.row, day, place, rank, tanks: body.tanks });
      return;
    case 'group declared':
      if (body.tank !== null) found.homes.push({ tank: body.tank, group: body.group, day });
      for (const { member } of body.members) addFish(names, member.name, member.sex, body.group, { day, place, rank });
      return;
    case 'new mate':
      return addFish(names, body.name, body.sex, groupOf(found, fact.subject, day), { day, place, rank });
    case 'spawned':
    case 'stage seen':
      if (body.brood !== null && names.find(body.brood, day) === null)
        names.add({ kind: 'brood', name: body.brood, day, place, rank });
      return;
    case 'bought':
      if (body.group !== null) addGroup(names, body.group, 'group', { day, place, rank });
      return;
    default:
  }
}

type At = Pick<Named, 'day' | 'place' | 'rank'>;

/** A fish may be declared in a group, and again in another to which it went. */
function addFish(names: Names, name: string | null, sex: Sex | null, group: string | null, at: At): void {
  if (name === null || isBroodName(names, name) || (group !== null && nameKey(name) === nameKey(group))) return;
  const named: Named = { kind: 'fish', name, sex, ...at };
  names.add(group === null ? named : { ...named, group });
}

/** The group that a line is about: the one declared to live in its tank, where it names none. */
function groupOf({ homes }: Declared, subject: Fact['subject'], day: Day): string | null {
  if (subject.kind === 'group') return subject.group;
  if (subject.kind !== 'tank') return null;
  const there = homes.filter((home) => home.tank === subject.tank && home.day <= day);
  return there.sort((a, b) => a.day - b.day).at(-1)?.group ?? null;
}

function addGroup(names: Names, name: string, groupKind: GroupKind, at: At): void {
  names.add({ kind: 'group', name, groupKind, ...at });
}

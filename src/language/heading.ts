/** Who or what a line is about: the heading's names looked up, several subjects listed one by one. */
import { DECLARING, isRefusedName } from '../../grammar/reserved.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import type { HeadingNode, NameNode, Piece, RangeNode } from '../../grammar/syntax.ts';
import type { FishRef, GroupKind, Sex, Subject } from '../journal/subject.ts';
import { walkBetween } from './build/places.ts';
import { fault } from './faults.ts';
import { groupKind, IMPLIED } from './fish.ts';
import { ANYTHING, kindWords, LOOP, lookUp, TANK } from './line.ts';
import type { LineContext } from './line.ts';
import { byName } from './names.ts';
import type { Named, NameKind } from './names.ts';
import { broodRef } from './refs.ts';

/** What a declaring line can declare. */
export type Declares = Exclude<NameKind, 'fish' | 'brood'>;

export interface Declaration {
  readonly declares: Declares;
  readonly name: string;
  readonly groupKind: GroupKind;
  readonly at: Piece;
}

export interface ReadHeading {
  readonly kind: HeadingKind;
  readonly subjects: readonly Subject[];
  /** The fish that every clause is about unless it names another. */
  readonly fish: FishRef;
  readonly declaration: Declaration | null;
}

/** Looks up a heading; null after a fault. */
export function readHeading(line: LineContext, node: HeadingNode): ReadHeading | null {
  switch (node.type) {
    case 'room':
      return heading('room', [{ kind: 'room' }]);
    case 'all tanks':
      return heading('tank', [{ kind: 'tanks', of: 'all', except: exceptions(line, node.except) }]);
    case 'declare':
      return declared(line, node);
    case 'names':
      return node.tanks ? tanksOf(line, node) : named(line, node);
    default:
      return null;
  }
}

function heading(kind: HeadingKind, subjects: readonly Subject[], fish: FishRef = IMPLIED): ReadHeading {
  return { kind, subjects, fish, declaration: null };
}

function exceptions(line: LineContext, names: readonly NameNode[]): string[] {
  return names.map((name) => lookUp(line, name.text, name, TANK)?.name ?? name.text);
}

const NEW: Readonly<Record<Declares, HeadingKind>> = {
  tank: 'new tank',
  loop: 'new loop',
  row: 'row',
  species: 'new species',
  group: 'new group',
  culture: 'new culture',
  auction: 'new auction',
};

function declared(line: LineContext, node: HeadingNode & { type: 'declare' }): ReadHeading | null {
  const declares = DECLARING.get(node.word.sense) ?? 'tank';
  const [name, ...more] = node.names;
  if (name === undefined) return null;
  if (more.length > 0 && isOneName(line, node)) {
    const at = { from: name.from, to: (more.at(-1) ?? name).to };
    const joined = node.names.map(({ text }, index) => (index > 0 && !/^\d/.test(text) ? `-${text}` : text)).join('');
    line.faults.push(fault('declare-one', at, `a name is one word: «${joined}», say`, joined));
    return null;
  }
  if (more.length > 0) return severalTanks(line, node);
  const there = line.names.find(name.text, line.day);
  const shown = there?.name ?? name.text;
  if (!mayBeCalled(line, name, declares, there)) return null;
  const declaration = { declares, name: shown, groupKind: groupKind(node.word.sense) ?? 'group', at: name };
  const subjects: readonly Subject[] =
    declares === 'row' ? (there?.tanks ?? []).map((tank) => ({ kind: 'tank', tank })) : [subjectOf(declares, shown)];
  return { kind: NEW[declares], subjects, fish: fishOfSubject(subjects), declaration };
}

/** `tank Big One: …`: words side by side are one name of several words; of tanks, where nobody has them for a name. */
function isOneName(line: LineContext, { names, word }: HeadingNode & { type: 'declare' }): boolean {
  return names.every(({ text, from, numbered }, index) => {
    const before = names[index - 1];
    const beside = before === undefined ? !numbered : line.text.slice(before.to, from).trim() === '';
    return beside && (word.sense !== 'tank' || line.names.find(text, line.day) === null);
  });
}

/** `tank 12 and 13: …` declares nothing: it is about both. */
function severalTanks(line: LineContext, node: HeadingNode & { type: 'declare' }): ReadHeading | null {
  if (node.word.sense !== 'tank') {
    const { sense } = node.word;
    const first = line.text.slice(node.from, node.names[0]?.to ?? node.to);
    line.faults.push(fault('declare-one', node, `one line declares one ${sense}: write a line for each`, first));
    return null;
  }
  const tanks = node.names.map((name) => lookUp(line, name.text, name, TANK)?.name ?? null);
  const found = tanks.filter((tank) => tank !== null);
  return found.length < tanks.length
    ? null
    : heading(
        'tank',
        found.map((tank) => ({ kind: 'tank', tank })),
      );
}

/** Whether a declaration may give that name; else notes why not. */
function mayBeCalled(line: LineContext, name: NameNode, declares: Declares, there: Named | null): boolean {
  const free = `${name.text}${/\d$/.test(name.text) ? '-a' : '1'}`;
  if (name.numbered && declares !== 'tank') {
    line.faults.push(fault('name-is-number', name, 'only tanks may be called by a number', `${declares}-${name.text}`));
  } else if (isRefusedName(name.text, declares)) {
    line.faults.push(
      fault('name-is-word', name, `«${name.text}» would be read as a word of the journal, not as a name`, free),
    );
  } else if (there !== null && there.kind === 'brood' && there.group !== undefined) {
    line.faults.push(
      fault('name-is-brood', name, `names like «${name.text}» are kept for the broods of ${there.group}`, free),
    );
  } else if (there !== null && there.kind !== declares) {
    const says = `«${there.name}» is ${kindWords(there.kind)} already, and a name has one meaning`;
    line.faults.push({ ...fault('name-taken', name, says, free), also: [there.place] });
  } else return true;
  return false;
}

function subjectOf(declares: Exclude<Declares, 'row'>, name: string): Subject {
  switch (declares) {
    case 'tank':
      return { kind: 'tank', tank: name };
    case 'loop':
      return { kind: 'loop', loop: name };
    case 'species':
      return { kind: 'species', species: name };
    case 'group':
      return { kind: 'group', group: name, member: null };
    case 'culture':
      return { kind: 'culture', culture: name };
    case 'auction':
      return { kind: 'auction', auction: name };
    default:
      return { kind: 'room' };
  }
}

/** A journal names the same tanks and broods in line after line: one subject stands in all of their events. */
const known = new WeakMap<Named, readonly Subject[]>();

function subjectsOf(found: Named): readonly Subject[] {
  const before = known.get(found);
  if (before !== undefined) return before;
  const made = asSubjects(found);
  known.set(found, made);
  return made;
}

function asSubjects(found: Named): readonly Subject[] {
  switch (found.kind) {
    case 'row':
      return (found.tanks ?? []).map((tank) => ({ kind: 'tank', tank }));
    case 'fish': {
      const member = { sex: found.sex ?? null, name: found.name };
      return [{ kind: 'group', group: found.group ?? '', member }];
    }
    case 'brood':
      return [broodRef(found)];
    case 'tank':
    case 'loop':
    case 'species':
    case 'group':
    case 'culture':
    case 'auction':
      return [subjectOf(found.kind, found.name)];
    default:
      return [];
  }
}

/** `Long tanks`, `Long tanks except A1`. */
function tanksOf(line: LineContext, node: HeadingNode & { type: 'names' }): ReadHeading | null {
  const [range] = node.ranges;
  if (range === undefined || node.ranges.length > 1 || range.last !== null) {
    line.faults.push(fault('one-loop', node, 'before `tanks` stands the name of one loop'));
    return null;
  }
  const found = lookUp(line, range.first.text, range.first, { ...LOOP, kinds: ['loop', 'row'] });
  if (found === null) return null;
  const except = exceptions(line, node.except);
  if (found.kind === 'loop') return heading('tank', [{ kind: 'tanks', of: { loop: found.name }, except }]);
  return heading(
    'tank',
    subjectsOf(found).filter((each) => each.kind !== 'tank' || !except.includes(each.tank)),
  );
}

function named(line: LineContext, node: HeadingNode & { type: 'names' }): ReadHeading | null {
  const before = line.faults.length;
  const subjects = node.ranges.flatMap((range) => rangeOf(line, range));
  if (line.faults.length > before) return null;
  const [first, second] = subjects;
  if (first === undefined) {
    line.faults.push(fault('empty-row', node, 'that row has no tanks on that day'));
    return null;
  }
  const sex = sexOf(node.sex?.sense);
  const kind = groupKind(node.group?.sense ?? '');
  // `A1 Rowan-1: …`: a tank, and the fish in it.
  const apart = node.ranges.some(({ joined }) => joined);
  if (!apart && subjects.length === 2 && first.kind === 'tank' && second !== undefined && isFish(second)) {
    return heading('tank', [first], withMember(fishOfSubject([second]), sex));
  }
  if (subjects.some((subject) => subject.kind !== first.kind)) {
    line.faults.push(
      fault('mixed-heading', node, 'the subjects of one line are of one kind: all tanks, or all groups'),
    );
    return null;
  }
  if (first.kind === 'tank') return heading('tank', subjects, inTank(kind, sex));
  if (kind !== null && first.kind !== 'group') {
    line.faults.push(
      fault('no-such-fish', node.group ?? node, `${node.group?.text ?? ''} does not go with ${first.kind}`, ''),
    );
    return null;
  }
  return heading(kindOf(first), memberSubjects(subjects, sex), withMember(fishOfSubject(subjects), sex));
}

function rangeOf(line: LineContext, range: RangeNode): readonly Subject[] {
  if (range.last === null) {
    const found = lookUp(line, range.first.text, range.first, ANYTHING);
    return found === null ? [] : subjectsOf(found);
  }
  const first = lookUp(line, range.first.text, range.first, TANK);
  const last = lookUp(line, range.last.text, range.last, TANK);
  if (first === null || last === null) return [];
  const tanks = walkBetween(line, first.name, last.name);
  if (tanks.length === 0) {
    const says = `${last.name} comes before ${first.name} in walking order`;
    line.faults.push(fault('range-order', range, says, `${last.name} to ${first.name}`));
  }
  return tanks.map((tank) => ({ kind: 'tank', tank }));
}

function isFish(subject: Subject): boolean {
  return subject.kind === 'group' || subject.kind === 'brood';
}

function sexOf(text: string | undefined): Sex | null {
  return text === 'male' || text === 'female' ? text : null;
}

function inTank(kind: GroupKind | null, sex: Sex | null): FishRef {
  if (kind === null && sex === null) return IMPLIED;
  const member = sex === null ? null : { sex, name: null };
  return kind === null
    ? { kind: 'group', group: null, member }
    : { kind: 'group', group: null, member, groupKind: kind };
}

/** The fish of a line about one group, fish or brood; with several subjects each has its own. */
function fishOfSubject(subjects: readonly Subject[]): FishRef {
  const [subject] = subjects;
  if (subjects.length !== 1 || subject === undefined) return IMPLIED;
  return subject.kind === 'brood' || subject.kind === 'group' ? subject : IMPLIED;
}

function withMember(fish: FishRef, sex: Sex | null): FishRef {
  return fish.kind === 'group' && sex !== null ? { ...fish, member: { sex, name: null } } : fish;
}

function memberSubjects(subjects: readonly Subject[], sex: Sex | null): readonly Subject[] {
  if (sex === null) return subjects;
  return subjects.map((each) => (each.kind === 'group' ? { ...each, member: { sex, name: null } } : each));
}

function kindOf(subject: Subject): HeadingKind {
  return subject.kind === 'tanks' ? 'tank' : subject.kind;
}

/** Order in which declarations of one day count: what others rest on first, then by name. */
export function declarationOrder(
  a: Pick<Declaration, 'declares' | 'name'>,
  b: Pick<Declaration, 'declares' | 'name'>,
): number {
  return ORDER.indexOf(a.declares) - ORDER.indexOf(b.declares) || byName(a.name, b.name);
}

const ORDER: readonly Declares[] = ['loop', 'tank', 'row', 'species', 'culture', 'auction', 'group'];

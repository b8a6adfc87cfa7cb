/**
 * Parents and shared parents: of every pair, of one fish, brood or group by name, or of two that might be
 * paired. Founders are unknown, so an inbreeding coefficient is always "at least".
 */
import type { Because } from '../core/because.ts';
import { linesOf, type LineRef, type Place } from '../core/span.ts';
import { listWords } from '../core/words.ts';
import { isBrood, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { stockName } from '../state/promised.ts';
import { rowId } from './id.ts';
import { boundWords, coefficient, kinOf, type Kin } from './kin/couple.ts';
import { lineOf, linesIn, type Line } from './kin/lines.ts';
import { pairingsIn, type Pairing } from './kin/pairings.ts';
import { pedigree, type Animal, type Pedigree } from './kin/pedigree.ts';
import type { WhyRow } from './whyrow.ts';

interface RowBase {
  readonly id: string;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** A male and a female, and what their young are or would be. */
export interface CoupleRow extends RowBase {
  readonly name: string;
  readonly species: string | null;
  readonly one: ParentRow;
  readonly other: ParentRow;
  readonly kin: Kin;
}

interface ParentRow {
  readonly fish: string;
  readonly origin: string;
  readonly line: string;
}

/** A brood or group with its parents as far back as the journal goes. */
export interface TreeRow extends RowBase {
  readonly name: string;
  readonly species: string | null;
  readonly tree: readonly { readonly depth: number; readonly says: string }[];
}

export interface LineRow extends RowBase, Omit<Line, 'places'> {}

export interface PairingRow extends RowBase, Omit<Pairing, 'places'> {}

export interface KinAnswer {
  /** What was asked: the whole room, one name, or two. */
  readonly asked: readonly string[];
  readonly couples: readonly CoupleRow[];
  readonly trees: readonly TreeRow[];
  readonly lines: readonly LineRow[];
  readonly pairings: readonly PairingRow[];
}

const RULE =
  'the young of two fish are inbred by half of what the two are related (tabular method); parents that nobody wrote count as unrelated founders, so it is at least that much';
const SOURCE = 'Wright 1922; Falconer & Mackay 1996, ch. 5';

/** Every pair of the room, its lines, and the best pairings. */
export function kin(room: Room): KinAnswer {
  const known = pedigree(room);
  const groups = [...room.stock.groups.values()].filter(({ kind, total }) => kind !== 'colony' && total.high > 0);
  return {
    asked: [],
    couples: groups.flatMap(({ name }) => couplesIn(room, known, name)),
    trees: [],
    lines: linesIn(room, known).map(lineRow),
    pairings: pairingsIn(room, known).map(pairingRow),
  };
}

/** One group, brood or fish: its parents and theirs, and what its own young are. */
export function kinOfOne(room: Room, name: string): KinAnswer | null {
  const known = pedigree(room);
  const found = find(room, known, name);
  if (found === null) return null;
  const { body, fish } = found;
  const species = body.species;
  return {
    asked: [found.name],
    couples: isBrood(body) ? [] : couplesIn(room, known, body.name),
    trees: [treeRow(room, known, found.name, body, fish)],
    lines: linesIn(room, known)
      .filter((line) => line.species === species && fish.some((one) => lineOf(known, one) === line.name))
      .map(lineRow),
    pairings: pairingsIn(room, known)
      .filter((pairing) => pairing.species === species)
      .map(pairingRow),
  };
}

/** Two that might be paired: every male of the one with every female of the other, young of either sex. */
export function kinOfTwo(room: Room, one: string, other: string): KinAnswer | null {
  const known = pedigree(room);
  const a = find(room, known, one);
  const b = find(room, known, other);
  if (a === null || b === null) return null;
  const rows = a.fish.flatMap((mine) =>
    b.fish.flatMap((theirs) =>
      couldPair(mine, theirs) ? [coupleRow(known, `${mine.name} × ${theirs.name}`, mine, theirs)] : [],
    ),
  );
  return { asked: [a.name, b.name], couples: once(rows), trees: [], lines: [], pairings: [] };
}

/** Names that `kin` takes, for a name that is none. */
export function kinNames(room: Room): readonly string[] {
  const fish = [...room.stock.groups.values()].flatMap(({ members }) => members.flatMap(({ name }) => name ?? []));
  return [...room.stock.groups.keys(), ...room.stock.broods.keys(), ...fish];
}

export function kinWhy(room: Room): readonly WhyRow[] {
  const { couples, lines, pairings } = kin(room);
  const broods = [...room.stock.living.values()].filter(({ suspected }) => !suspected);
  const trees = broods.flatMap(({ name }) => kinOfOne(room, name)?.trees ?? []);
  return [
    ...couples.map((row) => ({ ...row, title: `${row.name} kin: ${row.kin.says}` })),
    ...lines.map((row) => ({ ...row, title: `the line ${row.name}` })),
    ...pairings.map((row) => ({ ...row, title: `${row.one} × ${row.other}` })),
    ...trees.map((row) => ({ ...row, title: `${row.name} kin` })),
  ].map(({ id, title, because, lines: refs }) => ({ id, title, because, lines: refs }));
}

interface Named {
  readonly name: string;
  readonly body: SeenBody;
  readonly fish: readonly Animal[];
}

function find(room: Room, known: Pedigree, asked: string): Named | null {
  const same = (name: string): boolean => name.toLowerCase() === asked.toLowerCase();
  const bodies: readonly SeenBody[] = [...room.stock.groups.values(), ...room.stock.broods.values()];
  const body = bodies.find((one) => same(one.name) || same(isBrood(one) ? stockName(one) : one.name));
  if (body) return { name: isBrood(body) ? stockName(body) : body.name, body, fish: known.fishOf(body.name) };
  for (const group of room.stock.groups.values()) {
    const fish = known.fishOf(group.name).filter(({ name }) => same(name));
    if (fish.length > 0) return { name: fish[0]?.name ?? asked, body: group, fish };
  }
  return null;
}

function couldPair(one: Animal, other: Animal): boolean {
  return one.id !== other.id && (one.sex === null || other.sex === null || one.sex !== other.sex);
}

function couplesIn(room: Room, known: Pedigree, group: string): readonly CoupleRow[] {
  const fish = known.fishOf(group);
  const males = fish.filter(({ sex }) => sex === 'male');
  const females = fish.filter(({ sex }) => sex === 'female');
  const several = females.length > 1 && females.some(({ name }) => !name.startsWith('a '));
  const rows = males.flatMap((male) =>
    females.map((female) => coupleRow(known, several ? `${group} (${female.name})` : group, male, female)),
  );
  return once(rows);
}

/** Rows that say the same of fish that cannot be told apart stand once. */
function once(rows: readonly CoupleRow[]): readonly CoupleRow[] {
  return [...new Map(rows.map((row) => [`${row.id} ${boundWords(row.kin)}`, row])).values()];
}

function coupleRow(known: Pedigree, name: string, one: Animal, other: Animal): CoupleRow {
  const found = kinOf(known, one, other);
  const places = [...one.lines, ...other.lines];
  const row = (animal: Animal): ParentRow => ({
    fish: animal.name,
    origin: animal.origin,
    line: lineOf(known, animal),
  });
  return {
    id: rowId(name, 'kin'),
    name,
    species: one.species ?? other.species,
    one: row(one),
    other: row(other),
    kin: found,
    ...reason(found, [`${one.name}: ${one.origin}`, `${other.name}: ${other.origin}`], places),
  };
}

function reason(found: Kin, who: readonly string[], places: readonly Place[]): Omit<RowBase, 'id'> {
  const lines = linesOf(places);
  const steps = [
    ...who,
    found.says,
    ...(found.shared.length > 0 ? [`nearest ancestors of both: ${listWords(found.shared)}`] : []),
    `their young: ${boundWords(found)}`,
    'for comparison: young of full sibs 0.25, of half sibs 0.125',
  ];
  return { because: { rule: RULE, source: SOURCE, steps, lines }, lines };
}

function treeRow(room: Room, known: Pedigree, name: string, body: SeenBody, fish: readonly Animal[]): TreeRow {
  const who = isBrood(body) ? fish.slice(0, 1) : fish;
  const seen = new Set<string>();
  const tree = who.flatMap((animal) => branch(known, animal, 0, seen));
  const made = [...room.stock.groups.values()].filter(({ parentsFrom }) => parentsFrom.includes(body.name));
  const places = [...who.flatMap(({ lines }) => lines), ...made.map(({ declared }) => declared)];
  const steps = [
    ...tree.map(({ says }) => says),
    ...made.map((group) => `${group.name} was formed from ${body.name}`),
    ...(isBrood(body) ? inbreedingStep(known, who[0]) : []),
  ];
  const lines = linesOf(places);
  return {
    id: rowId(name, 'tree'),
    name,
    species: body.species,
    tree: [...tree, ...made.map((group) => ({ depth: 0, says: `from ${name} came ${group.name}` }))],
    because: {
      rule: 'a brood has the male and the female of its group that were together when it was laid',
      source: 'the journal',
      steps,
      lines,
    },
    lines,
  };
}

function inbreedingStep(known: Pedigree, animal: Animal | undefined): string[] {
  return animal ? inbred(known, animal) : [];
}

/** How inbred an animal itself is, where its parents are known: by their kinship. */
function inbred(known: Pedigree, { couples }: Animal): string[] {
  const [couple] = couples;
  if (couples.length !== 1 || !couple) return [];
  const sire = couple.sire === null ? undefined : known.animals.get(couple.sire);
  const dam = couple.dam === null ? undefined : known.animals.get(couple.dam);
  return sire && dam ? [boundWords(kinOf(known, sire, dam))] : [];
}

/** Generations that a tree shows; sibs after the first are not followed again. */
const DEEPEST = 4;

function branch(known: Pedigree, animal: Animal, depth: number, seen: Set<string>): TreeRow['tree'] {
  const own = { depth, says: [`${animal.name}: ${animal.origin}`, ...inbred(known, animal)].join('; ') };
  const again = seen.has(animal.choice);
  seen.add(animal.choice);
  if (again || depth === DEEPEST) return [own];
  const ids = new Set(animal.couples.flatMap(({ sire, dam }) => [sire, dam]).filter((id) => id !== null));
  const parents = [...ids].flatMap((id) => known.animals.get(id) ?? []);
  return [own, ...parents.flatMap((parent) => branch(known, parent, depth + 1, seen))];
}

function lineRow({ places, ...line }: Line): LineRow {
  const lines = linesOf(places);
  const { males, females, ne, deltaF } = line;
  return {
    ...line,
    id: rowId(line.species ?? '', line.name, 'line'),
    because: {
      rule: 'effective breeders Ne = 4 · males · females / (males + females); each generation adds 1 / (2 Ne) of inbreeding',
      source:
        'US Fish & Wildlife Service, Inland Salmonid Broodstock Handbook; Tave, FAO Fisheries Technical Paper 392',
      steps: [
        `${String(males)} male, ${String(females)} female in ${line.groups.length > 0 ? listWords(line.groups) : 'no pair'}`,
        ne === 0
          ? 'Ne 0: no couple'
          : `Ne = 4 · ${String(males)} · ${String(females)} / ${String(males + females)} = ${coefficient(ne)}; each generation adds ${coefficient(deltaF)}`,
        line.risk?.says ?? 'two of each sex: nothing hangs on one fish',
      ],
      lines,
    },
    lines,
  };
}

function pairingRow({ places, ...pairing }: Pairing): PairingRow {
  return {
    ...pairing,
    id: rowId(pairing.one, 'with', pairing.other),
    ...reason(pairing.kin, [`${pairing.one} with ${pairing.other}`], places),
  };
}

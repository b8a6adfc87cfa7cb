/** What a club asks to see of a brood, what of it the journal holds, and the line that would fill each gap. */
import { addDays, isoDay, type Day } from '../../core/day.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import { countWords, dayWords, listWords, windowWords } from '../../core/words.ts';
import { speciesOf, type SeenBrood, type SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { datesOf } from '../laying.ts';
import { stays } from '../money/stays.ts';
import { lastOf, readingsOf, readingWords, type Parameter } from '../readings.ts';
import { bodyOfWater } from '../waters.ts';
import type { AwardDays, SeenRule } from './rule.ts';

type EvidenceKind = 'species' | 'parents' | 'source' | 'laid' | 'anchor' | 'count' | 'photo' | 'water';

export interface Evidence {
  readonly kind: EvidenceKind;
  /** `parents`, `where the parents are from`: heads its line on the sheet. */
  readonly name: string;
  /** What the journal holds; null where it is missing. */
  readonly says: string | null;
  /** Where it is missing and can still be had: the line to jot. */
  readonly write: string | null;
  readonly lines: readonly LineRef[];
}

/** Readings a sheet asks for. */
const WATER: readonly Parameter[] = ['temperature', 'ph', 'gh', 'kh', 'no3', 'conductivity'];
/** Days before laying from which a reading still tells what they were bred in (ours). */
const BEFORE_DAYS = 42;

export function evidenceOf(room: Room, brood: SeenBrood, rule: SeenRule, days: AwardDays): readonly Evidence[] {
  const group = brood.group === null ? null : (room.stock.groups.get(brood.group) ?? null);
  return [
    speciesEvidence(room, brood),
    parentsEvidence(brood, group),
    sourceEvidence(group),
    laidEvidence(room, brood, days),
    ...(days.anchor === 'born' ? [] : [anchorEvidence(room, brood, days)]),
    countEvidence(room, brood, rule, days),
    photoEvidence(room, brood),
    waterEvidence(room, brood),
  ];
}

function speciesEvidence(room: Room, brood: SeenBrood): Evidence {
  const species = speciesOf(room, brood);
  const latin = species?.traits.latin ?? null;
  const name = brood.species ?? 'name';
  return {
    kind: 'species',
    name: 'species',
    says: latin === null ? null : `${latin} (${name})`,
    write: `species ${name}: …`,
    lines: species === null ? [] : linesOf([species.said.latin ?? species.place]),
  };
}

function parentsEvidence(brood: SeenBrood, group: SeenGroup | null): Evidence {
  const mixed = brood.oneOf.length > 0;
  return {
    kind: 'parents',
    name: 'parents',
    says: mixed || group === null ? null : `${group.kind} ${group.name}${mothersWords(brood)}`,
    write: null,
    lines: group === null ? [] : linesOf([group.declared]),
  };
}

function mothersWords({ mothers }: SeenBrood): string {
  return mothers.length === 0 ? '' : `, female ${mothers.join(' or ')}`;
}

function sourceEvidence(group: SeenGroup | null): Evidence {
  const from = group === null ? [] : [...group.parentsFrom, ...(group.from === null ? [] : [group.from])];
  const line = group?.line ?? null;
  const says = [...(from.length === 0 ? [] : [listWords(from)]), ...(line === null ? [] : [`line ${line}`])];
  return {
    kind: 'source',
    name: 'where the parents are from',
    says: says.length === 0 ? null : says.join(', '),
    write: group === null ? null : `${group.kind} ${group.name}: from "…"`,
    lines: group === null ? [] : linesOf([group.declared]),
  };
}

function laidEvidence(room: Room, brood: SeenBrood, { anchor }: AwardDays): Evidence {
  if (anchor === 'released') return holdingEvidence(room, brood);
  const { laid } = datesOf(room, brood);
  const known = brood.laidKnown !== 'cast back';
  return {
    kind: 'laid',
    name: anchor === 'born' ? 'born' : 'laid',
    says: known ? windowWords(laid, withYear(room)) : null,
    write: null,
    lines: linesOf(brood.lines.slice(0, 1)),
  };
}

/** Nobody sees mouthbrooders lay: the day on which she was seen holding stands for it. */
function holdingEvidence(room: Room, { looks }: SeenBrood): Evidence {
  const held = looks.find(({ stage }) => stage === 'holding');
  return {
    kind: 'laid',
    name: 'holding',
    says: held === undefined ? null : `seen holding on ${dayWords(held.day, withYear(room))}`,
    write: null,
    lines: held === undefined ? [] : linesOf([held.place]),
  };
}

function anchorEvidence(room: Room, brood: SeenBrood, { anchor, from, seen }: AwardDays): Evidence {
  const looks = brood.looks.filter(({ stage }) => stage !== 'eggs');
  return {
    kind: 'anchor',
    name: anchor,
    says: seen && from !== null ? windowWords(from, withYear(room)) : null,
    write: null,
    lines: linesOf(looks.slice(0, 1).map(({ place }) => place)),
  };
}

/** A sure count of enough of them, on a day when they were of age. */
function countEvidence(room: Room, brood: SeenBrood, rule: SeenRule, { opens }: AwardDays): Evidence {
  const from = opens?.high ?? null;
  const counted = brood.counts.findLast(
    ({ sure, count, day }) => sure && count.low >= rule.young && from !== null && day >= from,
  );
  const [tank = brood.natal ?? 'TANK'] = brood.parts.keys();
  return {
    kind: 'count',
    name: 'counted',
    says: counted === undefined ? null : `${countWords(counted.count)} on ${dayWords(counted.day, withYear(room))}`,
    write:
      from !== null && from > room.on
        ? `${isoDay(from)} ${tank}: ${brood.name} counted …`
        : `${tank}: ${brood.name} counted …`,
    lines: counted === undefined ? [] : linesOf([counted.place]),
  };
}

function photoEvidence(room: Room, brood: SeenBrood): Evidence {
  const from = brood.laid.low ?? brood.laid.high ?? room.on;
  const own = stays(room).filter(({ body }) => body === brood.name);
  const photos = room.looks.photos.filter(({ day, tanks, subject }) => {
    if (day < from) return false;
    if (subject.kind === 'brood') return subject.brood === brood.name;
    return own.some((stay) => tanks.includes(stay.tank) && stay.from <= day && day <= stay.to);
  });
  const [tank = brood.natal ?? 'TANK'] = brood.parts.keys();
  return {
    kind: 'photo',
    name: 'photos',
    says: photos.length === 0 ? null : listWords(photos.map(({ file }) => file)),
    write: `${tank}: photo "…"`,
    lines: linesOf(photos.map(({ place }) => place)),
  };
}

function waterEvidence(room: Room, brood: SeenBrood): Evidence {
  const place = brood.natal ?? [...brood.parts.keys()][0] ?? null;
  const body = place === null ? null : bodyOfWater(room, place);
  const from = brood.laid.low ?? brood.laid.high ?? room.on;
  const facts = body === null ? [] : readingsOf(room, body, addDays(from, -BEFORE_DAYS));
  const found = WATER.flatMap((of) => {
    const last = lastOf(facts, of);
    return last === null ? [] : [last];
  });
  return {
    kind: 'water',
    name: 'water',
    says: found.length === 0 ? null : found.map(({ of, value }) => readingWords(room, of, value)).join(', '),
    write: place === null ? null : `${place}: test pH …, GH … dH, KH … dH, … C`,
    lines: linesOf(found.map((one) => one.place)),
  };
}

/** Dates of evidence carry their year: the sheet outlives it. */
function withYear(room: Room): Day {
  return addDays(room.on, 2 * 366);
}

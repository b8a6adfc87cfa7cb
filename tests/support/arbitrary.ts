/**
 * Facts of every kind as fast-check makes them up, in the room of `ROOM`. Only facts that a line can state:
 * values have few digits, and a guess has the width that its words give it.
 */
import fc from 'fast-check';
import type { Arbitrary } from 'fast-check';
import { addDays } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import type { EventBase, EventKind, EventOf } from '../../src/journal/event.ts';
import type { Subject } from '../../src/journal/subject.ts';
import { DECLARED } from './declared.ts';
import {
  DAY,
  small,
  oneOf,
  maybe,
  spread,
  measured,
  exact,
  plainHeads,
  heads,
  count,
  some,
  grown,
  countable,
  whoever,
  adults,
  anyYoung,
  later,
  words,
  price,
  amount,
  dose,
  sizes,
  days,
  minutes,
  measures,
  action,
  nothing,
  about,
  fact,
  bare,
} from './values.ts';

export const ROOM = `2026-01-01 room: units metric; currency EUR; as N
2026-01-01 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-01-01 tank A1: 100 L; on Long
2026-01-01 tank B1: 60 L; alone
2026-01-01 tank 12: 60 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 trio Sedge: krib; male; females Fern and Lark; in B1
2026-01-01 culture M1: microworm
2026-01-01 culture M2: microworm
2026-01-01 auction Autumn: 20 lots
2026-01-01 Rowan: spawned brood Rowan-1
2026-01-01 Sedge: spawned brood Sedge-1
`;

/** A fact without its place, day and subject. */
export type Facts<K extends EventKind = EventKind> = { [P in K]: Omit<EventOf<P>, keyof EventBase> }[K];
export const WHEN: Arbitrary<DayWindow | null> = fc.oneof(
  fc.constant(null),
  fc.nat(30).map((ago): DayWindow => ({ low: null, likely: null, high: addDays(DAY, -ago) })),
  fc.integer({ min: 1, max: 30 }).map((ago): DayWindow => {
    const day = addDays(DAY, -ago);
    return { low: day, likely: day, high: day };
  }),
  fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1, max: 9 })).map(([from, more]): DayWindow => ({
    low: addDays(DAY, -from - more),
    likely: addDays(DAY, -Math.round((from + from + more) / 2)),
    high: addDays(DAY, -from),
  })),
);

/** Kinds whose line may say when it happened. */
export const DATED: ReadonlySet<EventKind> = new Set<EventKind>([
  'spawned',
  'stage seen',
  'lost',
  'water changed',
  'dispute sign',
  'eggs gone',
  'overflowed',
  'counted',
  'moved',
]);

const purchase = {
  count: heads,
  species: fc.constant('krib'),
  price: maybe(price),
  from: maybe(words),
  group: maybe(fc.constant('Elm')),
};

/** Every kind of fact. */
export const FACTS = {
  ...DECLARED,
  'all well': bare('all well'),
  away: fact('away', { until: later }),
  'chore set': fact('chore set', {
    action: fc.constant({ kind: 'water change', text: null } as const),
    every: days,
    monthly: nothing,
    levelAbove: maybe(exact('mm')),
    amount: maybe(exact('L')),
    takes: maybe(minutes),
  }),
  'chore stopped': fact('chore stopped', { action }),
  'to do': fact('to do', { text: words, by: maybe(later) }),
  did: fact('did', {
    action: fc.oneof(
      action,
      words.map((text) => ({ kind: 'own', text }) as const),
    ),
  }),
  'put off': fact('put off', {
    what: fc.oneof(
      action.map((each) => ({ action: each })),
      measures.map((measure) => ({ measure })),
      words.map((text) => ({ text })),
    ),
    until: later,
  }),
  level: fact('level', { level: measured('mm', 10), from: oneOf('bottom', 'lip') }),
  'layers cleaned': fc.oneof(
    fact('layers cleaned', { layers: fc.integer({ min: 1, max: 6 }), of: maybe(fc.constant(6)) }),
    fact('layers cleaned', { layers: fc.constant('all'), of: nothing }),
  ),
  'media cleaned': bare('media cleaned'),
  'sponge rinsed': bare('sponge rinsed'),
  'water changed': fact('water changed', {
    amount: fc.oneof(
      exact('L', 10),
      fc.integer({ min: 1, max: 100 }).map((n) => spread('share', n / 100, n / 100, n / 100)),
    ),
  }),
  'topped up': fact('topped up', { litres: measured('L', 10) }),
  tested: fact('tested', {
    reading: fc.record({
      ph: measured('pH', 40),
      kh: maybe(exact('dH', 20)),
      gh: maybe(exact('dH', 20)),
      tan: maybe(measured('mg/L', 100)),
      no2: maybe(measured('mg/L', 100)),
      no3: maybe(measured('mg/L')),
      temperature: maybe(measured('C', 10)),
      conductivity: maybe(exact('uS/cm')),
      salinity: maybe(exact('ppt', 10)),
      oxygen: maybe(exact('mg/L', 10)),
      chlorine: maybe(exact('mg/L', 100)),
    }),
  }),
  dosed: fact('dosed', { dose: maybe(dose), product: words }),
  'measure begun': fact('measure begun', {
    measure: measures,
    until: maybe(later),
    lasts: nothing,
    over: fc.constant(false),
    to: nothing,
  }),
  'measure undone': fact('measure undone', { measure: measures }),
  'measure stays': fact('measure stays', { measure: measures }),
  'everything undone': bare('everything undone'),
  fault: fact('fault', { text: words }),
  fixed: fact('fixed', { text: maybe(words) }),
  overflowed: bare('overflowed'),
  leak: bare('leak'),
  'power off': fact('power off', { lasts: maybe(minutes) }),
  'power on': bare('power on'),
  'heater stuck': fact('heater stuck', { at: maybe(measured('C', 10)) }),
  bonded: fact('bonded', about),
  'dispute sign': fact('dispute sign', {
    fish: adults,
    sign: oneOf('chasing', 'hiding', 'pinned', 'torn fin', 'not eating', 'scales missing', 'wounded', 'gasping'),
    doer: fc.constant({ sex: 'male', name: null } as const),
    sufferer: fc.constant({ sex: 'female', name: null } as const),
  }),
  calmer: fact('calmer', about),
  shimmying: fact('shimmying', about),
  'made up': fact('made up', about),
  'split up': fact('split up', about),
  resting: fact('resting', about),
  'member back': fact('member back', { fish: grown.filter((ref) => ref.kind === 'group' && ref.member !== null) }),
  'new mate': fact('new mate', {
    fish: adults,
    sex: oneOf('male', 'female'),
    from: maybe(fc.constant('Sedge')),
    name: maybe(fc.constant('Oak')),
  }),
  'parents chase fry': fact('parents chase fry', about),
  'about to spawn': fact('about to spawn', about),
  'no eggs': fact('no eggs', about),
  spawned: fact('spawned', {
    fish: adults,
    as: oneOf('laid', 'seen', 'maybe'),
    brood: maybe(fc.constant('R7')),
    eggs: maybe(plainHeads),
  }),
  'eggs white': fact('eggs white', { fish: anyYoung, count: plainHeads }),
  'eggs gone': fact('eggs gone', { fish: anyYoung }),
  'stage seen': fact('stage seen', {
    fish: anyYoung,
    stage: oneOf('hatched', 'wrigglers', 'free-swimming', 'fry seen', 'born', 'holding', 'released', 'stripped'),
    count: maybe(plainHeads),
    brood: maybe(fc.constant('R7')),
  }),
  counted: fact('counted', { fish: whoever, heads }),
  sized: fact('sized', { fish: whoever, sizes }),
  moved: fact('moved', {
    fish: countable,
    count: some,
    which: oneOf('any', 'largest', 'smallest'),
    to: oneOf('B1', '12'),
    with: maybe(fc.constant('her cave')),
    restStay: fc.boolean(),
  }),
  mixed: fact('mixed', {
    a: fc.constant({ kind: 'brood', brood: 'Rowan-1' } as const),
    b: fc.constant({ kind: 'brood', brood: 'Sedge-1' } as const),
  }),
  // `died` of nobody by name is asked back: one of them, or all?
  lost: fact('lost', { fish: whoever, count, how: oneOf('died', 'missing', 'eaten', 'culled') }).filter(
    ({ fish, count: lost }) => fish.kind !== 'implied' || lost !== 'unsaid',
  ),
  sick: fact('sick', { text: words, catching: maybe(fc.boolean()) }),
  catching: fact('catching', { catching: fc.boolean() }),
  treated: fact('treated', {
    product: words,
    dose: maybe(dose),
    every: maybe(fc.oneof(days, fc.constant(spread('days', 0.5, 0.5, 0.5)))),
    doses: maybe(small),
    wait: maybe(days),
  }),
  'hold begun': fact('hold begun', { text: words.filter((text) => !/^\d/u.test(text)) }),
  'hold over': bare('hold over'),
  'quarantine begun': fact('quarantine begun', { lasts: days }),
  'quarantine over': bare('quarantine over'),
  shared: fact('shared', {
    thing: fc.oneof(words, oneOf('net', 'sponge', 'water')),
    tanks: fc.uniqueArray(oneOf('A1', 'B1', '12'), { minLength: 1, maxLength: 3 }),
    way: oneOf('both', 'from', 'to'),
  }),
  bought: fc.oneof(fact('bought', purchase), fact('bought', { ...purchase, size: exact('mm') })),
  'kept back': fact('kept back', { fish: countable, count: some }),
  reserved: fact('reserved', {
    fish: countable,
    count: some,
    until: maybe(later),
    to: maybe(words),
    deposit: maybe(amount),
  }),
  wanted: fact('wanted', {
    count: heads,
    species: fc.constant('krib'),
    size: maybe(exact('mm')),
    by: maybe(later),
    to: maybe(words),
  }),
  sold: fact('sold', {
    fish: countable,
    count: some,
    price: maybe(price),
    to: maybe(words),
    auction: maybe(fc.constant('Autumn')),
  }),
  'gave away': fact('gave away', { fish: countable, count: some, to: maybe(words) }),
  spent: fact('spent', { amount, text: maybe(words) }),
  fed: fact('fed', { food: oneOf('microworm', 'brine shrimp', 'flake'), grams: maybe(exact('g', 10)) }),
  'culture started': fc.oneof(
    bare('culture started'),
    fact('culture started', { from: fc.oneof(fc.constant('M2'), words) }),
  ),
  'culture harvested': bare('culture harvested'),
  'culture split': fact('culture split', { to: fc.constant('M2') }),
  'culture sour': bare('culture sour'),
  'hatch set': fact('hatch set', { grams: maybe(exact('g', 10)), of: fc.constant('brine shrimp') }),
  note: fact('note', { text: words }),
  photo: fact('photo', { file: oneOf('1123.jpg', 'a b.png') }),
} satisfies { readonly [K in EventKind]: Arbitrary<Facts<K>> };

const SUBJECTS: Readonly<Partial<Record<EventKind, Subject>>> = {
  'units set': { kind: 'room' },
  'currency set': { kind: 'room' },
  'zone set': { kind: 'room' },
  'walk set': { kind: 'room' },
  'nitrogen set': { kind: 'room' },
  'scoop set': { kind: 'room' },
  'award rule set': { kind: 'room' },
  'row declared': { kind: 'room' },
  away: { kind: 'room' },
  'loop declared': { kind: 'loop', loop: 'Short' },
  'tank declared': { kind: 'tank', tank: 'C1' },
  'species declared': { kind: 'species', species: 'angel' },
  'group declared': { kind: 'group', group: 'Elm', member: null },
  'culture declared': { kind: 'culture', culture: 'M7' },
  'auction declared': { kind: 'auction', auction: 'Spring' },
  level: { kind: 'loop', loop: 'Long' },
  'layers cleaned': { kind: 'loop', loop: 'Long' },
  'culture started': { kind: 'culture', culture: 'M1' },
  'culture harvested': { kind: 'culture', culture: 'M1' },
  'culture split': { kind: 'culture', culture: 'M1' },
  'culture sour': { kind: 'culture', culture: 'M1' },
};

/** The subject of a fact in these tests: its own, else the tank A1. */
export function subjectOf(kind: EventKind): Subject {
  return SUBJECTS[kind] ?? { kind: 'tank', tank: 'A1' };
}

/**
 * Facts of every kind as fast-check makes them up, in the room of `ROOM`. Only facts that a line can state:
 * values have few digits, and a guess has the width that its words give it.
 */
import fc from 'fast-check';
import type { Arbitrary } from 'fast-check';
import { addDays, toDay } from '../../src/core/day.ts';
import { GUILDS } from '../../src/core/guild.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import type { Measure, Unit } from '../../src/core/quantity.ts';
import { neat } from '../../src/core/units.ts';
import type { Dose, EventBase, EventKind, EventOf, Heads, HowMany, Sizes } from '../../src/journal/event.ts';
import type { FishRef, Subject } from '../../src/journal/subject.ts';

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

/** The day of the line that states the fact. */
export const DAY = toDay(20_529);

/** A fact without its place, day and subject. */
export type Facts<K extends EventKind = EventKind> = { [P in K]: Omit<EventOf<P>, keyof EventBase> }[K];
const digits = fc.integer({ min: 1, max: 400 });
const small = fc.integer({ min: 1, max: 90 });
const oneOf = fc.constantFrom;
const maybe = <T>(value: Arbitrary<T>): Arbitrary<T | null> => fc.option(value, { freq: 2 });

function spread<U extends Unit>(unit: U, low: number, likely: number | null, high: number): Measure<U> {
  return { unit, low, likely, high };
}

/** A measured value: exact, a range, or open to one side. `scale` gives it decimals. */
function measured<U extends Unit>(unit: U, scale = 1): Arbitrary<Measure<U>> {
  const value = digits.map((number) => neat(number / scale));
  return fc.oneof(
    value.map((exact) => spread(unit, exact, exact, exact)),
    fc
      .tuple(value, value)
      .filter(([a, b]) => a < b)
      .map(([a, b]) => spread(unit, a, neat((a + b) / 2), b)),
    value.map((low) => spread(unit, low, null, Infinity)),
  );
}

function exact<U extends Unit>(unit: U, scale = 1): Arbitrary<Measure<U>> {
  return digits.map((number) => neat(number / scale)).map((value) => spread(unit, value, value, value));
}

const total: Arbitrary<Pick<Heads, 'total' | 'as'>> = fc.oneof(
  digits.map((n) => ({ total: { low: n, likely: n, high: n }, as: 'counted' }) as const),
  digits.map((n) => {
    const off = Math.max(1, n / 4);
    return {
      total: { low: Math.max(0, Math.ceil(n - off)), likely: n, high: Math.floor(n + off) },
      as: 'about',
    } as const;
  }),
  fc
    .tuple(small, small)
    .filter(([a, b]) => a < b)
    .map(([low, high]) => {
      return { total: { low, likely: Math.floor((low + high) / 2), high }, as: 'guess' } as const;
    }),
  fc.nat(60).map((low) => ({ total: { low, likely: null, high: Infinity }, as: 'guess' }) as const),
  small.map((high) => ({ total: { low: 0, likely: null, high }, as: 'guess' }) as const),
);

const apart: Arbitrary<Heads> = fc.tuple(small, small, maybe(small)).map(([males, females, young]) => {
  const sure = (n: number): Heads['total'] => ({ low: n, likely: n, high: n });
  const all = males + females + (young ?? 0);
  return {
    total: sure(all),
    males: sure(males),
    females: sure(females),
    young: young === null ? null : sure(young),
    as: 'counted',
  };
});

const plainHeads: Arbitrary<Heads> = total.map((counted) => ({ ...counted, males: null, females: null, young: null }));
const heads: Arbitrary<Heads> = fc.oneof(plainHeads, apart);
const count: Arbitrary<HowMany> = fc.oneof(heads, oneOf('all', 'rest', 'half', 'unsaid'));
const some: Arbitrary<HowMany> = fc.oneof(heads, oneOf('all', 'rest', 'half'));

const implied: FishRef = { kind: 'implied' };
const brood: Arbitrary<FishRef> = oneOf({ kind: 'brood', brood: 'Rowan-1' }, { kind: 'brood', brood: 'Sedge-1' });
const grown: Arbitrary<FishRef> = oneOf<FishRef[]>(
  { kind: 'group', group: 'Rowan', member: null },
  { kind: 'group', group: 'Sedge', member: { sex: 'female', name: 'Fern' } },
  { kind: 'group', group: 'Rowan', member: { sex: 'male', name: null } },
  { kind: 'group', group: null, member: { sex: 'female', name: null } },
);
/** A sex right after a number would tell the number apart: `2 females`. */
const countable = fc.oneof(
  fc.constant(implied),
  brood,
  grown.filter((ref) => ref.kind === 'group' && (ref.member === null || ref.member.name !== null)),
);
const whoever = fc.oneof(fc.constant(implied), brood, grown);
const adults = fc.oneof(fc.constant(implied), grown);
const anyYoung = fc.oneof(fc.constant(implied), brood);

const later = fc.integer({ min: 1, max: 200 }).map((days) => addDays(DAY, days));
const words = fc
  .array(oneOf('left', 'cave', 'valve', 'new', 'seal', 'two', 'É', '♀', '40', 'x', ';', '#', ','), {
    minLength: 1,
    maxLength: 5,
  })
  .map((all) => all.join(' '));
const price = fc.tuple(digits, oneOf('each', 'all')).map(([cents, per]) => ({ amount: cents / 100, per }) as const);
const amount = digits.map((cents) => cents / 100);
const dose: Arbitrary<Dose> = fc.oneof(exact('g', 10), exact('mL', 10), exact('g/L', 10), exact('mL/L', 10));
const sizes: Arbitrary<Sizes> = fc.oneof(
  fc
    .tuple(oneOf('largest', 'smallest', 'average', 'bulk'), measured('mm'))
    .map(([of, value]) => ({ of, values: [value] }) as const),
  fc.array(exact('mm'), { minLength: 2, maxLength: 5 }).map((values) => ({ of: 'sample', values }) as const),
);
const days = fc.oneof(
  exact('days'),
  fc.integer({ min: 1, max: 30 }).map((weeks) => spread('days', weeks * 7, weeks * 7, weeks * 7)),
);
const minutes = exact('minutes');
const measures = oneOf(
  'off the loop',
  'air filter',
  'lights off',
  'rocks out',
  'divider',
  'pump off',
  'heater off',
  'breeder net',
);

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

const fact = <K extends EventKind, T extends object>(
  kind: K,
  facts: { [P in keyof T]: Arbitrary<T[P]> },
): Arbitrary<{ readonly kind: K } & T> => fc.record(facts).map((each) => ({ kind, ...each }));
/** A fact that says nothing but its kind. */
const bare = <K extends EventKind>(kind: K): Arbitrary<{ readonly kind: K }> => fc.constant({ kind });

const action = oneOf(
  { kind: 'clean prefilter', text: null } as const,
  { kind: 'water change', text: null } as const,
  { kind: 'rinse sponge', text: null } as const,
);
const nothing = fc.constant(null);
const about = { fish: adults };

type Edges = readonly [Measure<'mm'>, Measure<'mm'>, Measure<'mm'>];

/** Every kind of fact. What declares a thing is made up in the corpus instead: its names must be new. */
export const FACTS = {
  'units set': fact('units set', { units: oneOf('metric', 'US', 'imperial') }),
  'currency set': fact('currency set', { currency: oneOf('EUR', 'GBP') }),
  'zone set': fact('zone set', { zone: oneOf('Europe/Dublin', 'America/New_York') }),
  'walk set': fact('walk set', { tanks: oneOf(['A1', 'B1'], ['B1', '12', 'A1']) }),
  'nitrogen set': fact('nitrogen set', { as: oneOf('N', 'ion') }),
  'scoop set': fact('scoop set', { name: oneOf('bucket', 'spoon'), volume: exact('L', 10), mass: nothing }),
  'award rule set': fact('award rule set', {
    name: fc.constant('club award'),
    young: small,
    age: exact('days'),
    from: oneOf('hatched', 'released'),
    notice: maybe(exact('days')),
  }),
  'row declared': fact('row declared', { row: fc.constant('Upper'), tanks: oneOf(['A1'], ['B1', '12', 'A1']) }),
  'loop declared': fact('loop declared', {
    loop: fc.constant('Short'),
    sump: exact('L', 10),
    returnFlow: maybe(exact('L/h')),
    layers: maybe(small),
    spillsAt: maybe(exact('mm')),
    spare: maybe(exact('L')),
  }),
  'tank declared': fact('tank declared', {
    tank: fc.constant('C1'),
    size: maybe(fc.tuple(exact('mm'), exact('mm'), exact('mm')).map((edges): Edges => edges)),
    nominal: maybe(exact('L', 10)),
    live: maybe(measured('L')),
    plumbing: fc.oneof(fc.constant('alone'), fc.record({ on: fc.constant('Long') })),
    filter: maybe(oneOf('sponge filter', 'corner box')),
    quarantine: oneOf(true, null),
    inTank: nothing,
    heated: maybe(measured('C', 10)),
    hides: maybe(fc.constant('two caves')),
  }),
  'tank retired': fact('tank retired', { tank: fc.constant('A1') }),
  'species declared': fact('species declared', {
    species: fc.constant('angel'),
    traits: fc.record({
      latin: fc.constant('Pterophyllum scalare'),
      guild: maybe(fc.constantFrom(...GUILDS)),
      saleAt: maybe(
        fc.oneof(
          fc.record({ size: exact('mm'), age: exact('days'), both: fc.boolean() }),
          fc.record({ size: exact('mm'), age: nothing, both: fc.constant(false) }),
        ),
      ),
      price: maybe(amount.map((each) => ({ amount: each, per: 'each' }) as const)),
      siblingSafe: maybe(fc.boolean()),
      hardToCatch: maybe(fc.boolean()),
      spiny: maybe(fc.boolean()),
      regulated: maybe(fc.boolean()),
      adult: maybe(exact('mm')),
      temperature: maybe(measured('C', 10)),
      ph: maybe(measured('pH', 40)),
      gh: maybe(measured('dH', 10)),
    }),
  }),
  'group declared': fact('group declared', {
    group: fc.constant('Elm'),
    groupKind: oneOf('pair', 'trio', 'harem', 'colony', 'group'),
    species: maybe(fc.constant('krib')),
    heads: maybe(heads),
    members: oneOf(
      [],
      [
        { member: { sex: 'male', name: null }, size: spread('mm', 80, 80, 80) },
        { member: { sex: 'female', name: null }, size: null },
      ] as const,
      [
        { member: { sex: 'female', name: 'Ivy' }, size: null },
        { member: { sex: 'female', name: 'Hazel' }, size: null },
      ] as const,
      [
        { member: { sex: 'male', name: null }, size: null },
        { member: { sex: 'male', name: null }, size: null },
      ] as const,
    ),
    tank: maybe(oneOf('A1', '12')),
    age: maybe(days),
    size: maybe(sizes),
    line: maybe(fc.constant('Moss river')),
    from: maybe(fc.constant('a friend')),
    price: maybe(price),
    parentsFrom: fc.constant([]),
  }),
  'culture declared': fact('culture declared', { culture: fc.constant('M7'), of: fc.constant('vinegar eel') }),
  'auction declared': fact('auction declared', {
    auction: fc.constant('Spring'),
    on: maybe(later),
    lots: small,
    bagOf: maybe(small),
    bagsPerSpecies: maybe(small),
    sellerShare: maybe(fc.integer({ min: 1, max: 99 }).map((n) => spread('share', n / 100, n / 100, n / 100))),
    fast: maybe(exact('days')),
    minimum: maybe(amount),
    hours: maybe(minutes),
    boxes: small,
    boxLitres: maybe(exact('L')),
  }),
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
    doer: fc.constant('male'),
    sufferer: fc.constant('female'),
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
  lost: fact('lost', { fish: whoever, count, how: oneOf('died', 'missing', 'eaten', 'culled') }),
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
  bought: fact('bought', {
    count: heads,
    species: fc.constant('krib'),
    price: maybe(price),
    from: maybe(words),
    group: maybe(fc.constant('Elm')),
  }),
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
  'culture started': bare('culture started'),
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

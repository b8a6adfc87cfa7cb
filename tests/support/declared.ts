/** Facts that set the room up, as fast-check makes them up. What they declare is new, so that no name stands twice. */
import fc from 'fast-check';
import { GUILDS } from '../../src/core/guild.ts';
import type { Measure } from '../../src/core/quantity.ts';
import {
  small,
  oneOf,
  maybe,
  spread,
  measured,
  exact,
  heads,
  later,
  price,
  amount,
  sizes,
  days,
  minutes,
  nothing,
  fact,
} from './values.ts';

type Edges = readonly [Measure<'mm'>, Measure<'mm'>, Measure<'mm'>];

/** What declares a thing or sets how lines are read, by kind. */
export const DECLARED = {
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
};

/**
 * Values of every kind as fast-check makes them up, such as the words of a line can give: few digits, and a
 * guess has the width of its words. The fish are those of `ROOM` (arbitrary.ts).
 */
import fc from 'fast-check';
import type { Arbitrary } from 'fast-check';
import { addDays, toDay } from '../../src/core/day.ts';
import type { Measure, Unit } from '../../src/core/quantity.ts';
import { neat } from '../../src/core/units.ts';
import type { Dose, EventKind, Heads, HowMany, Sizes } from '../../src/journal/event.ts';
import type { FishRef } from '../../src/journal/subject.ts';

/** The day of the line that states the fact. */
export const DAY = toDay(20_529);

export const digits = fc.integer({ min: 1, max: 400 });
export const small = fc.integer({ min: 1, max: 90 });
export const oneOf = fc.constantFrom;
export const maybe = <T>(value: Arbitrary<T>): Arbitrary<T | null> => fc.option(value, { freq: 2 });

export function spread<U extends Unit>(unit: U, low: number, likely: number | null, high: number): Measure<U> {
  return { unit, low, likely, high };
}

/** A measured value: exact, a range, or open to one side. `scale` gives it decimals. */
export function measured<U extends Unit>(unit: U, scale = 1): Arbitrary<Measure<U>> {
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

export function exact<U extends Unit>(unit: U, scale = 1): Arbitrary<Measure<U>> {
  return digits.map((number) => neat(number / scale)).map((value) => spread(unit, value, value, value));
}

export const total: Arbitrary<Pick<Heads, 'total' | 'as'>> = fc.oneof(
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

export const apart: Arbitrary<Heads> = fc.tuple(small, small, maybe(small)).map(([males, females, young]) => {
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

export const plainHeads: Arbitrary<Heads> = total.map((counted) => ({
  ...counted,
  males: null,
  females: null,
  young: null,
}));
export const heads: Arbitrary<Heads> = fc.oneof(plainHeads, apart);
export const count: Arbitrary<HowMany> = fc.oneof(heads, oneOf('all', 'rest', 'half', 'unsaid'));
export const some: Arbitrary<HowMany> = fc.oneof(heads, oneOf('all', 'rest', 'half'));

export const implied: FishRef = { kind: 'implied' };
export const brood: Arbitrary<FishRef> = oneOf(
  { kind: 'brood', brood: 'Rowan-1' },
  { kind: 'brood', brood: 'Sedge-1' },
);
export const grown: Arbitrary<FishRef> = oneOf<FishRef[]>(
  { kind: 'group', group: 'Rowan', member: null },
  { kind: 'group', group: 'Sedge', member: { sex: 'female', name: 'Fern' } },
  { kind: 'group', group: 'Rowan', member: { sex: 'male', name: null } },
  { kind: 'group', group: null, member: { sex: 'female', name: null } },
);
/** A sex right after a number would tell the number apart: `2 females`. */
export const countable = fc.oneof(
  fc.constant(implied),
  brood,
  grown.filter((ref) => ref.kind === 'group' && (ref.member === null || ref.member.name !== null)),
);
export const whoever = fc.oneof(fc.constant(implied), brood, grown);
export const adults = fc.oneof(fc.constant(implied), grown);
export const anyYoung = fc.oneof(fc.constant(implied), brood);

export const later = fc.integer({ min: 1, max: 200 }).map((days) => addDays(DAY, days));
export const words = fc
  .array(oneOf('left', 'cave', 'valve', 'new', 'seal', 'two', 'É', '♀', '40', 'x', ';', '#', ','), {
    minLength: 1,
    maxLength: 5,
  })
  .map((all) => all.join(' '));
export const price = fc
  .tuple(digits, oneOf('each', 'all'))
  .map(([cents, per]) => ({ amount: cents / 100, per }) as const);
export const amount = digits.map((cents) => cents / 100);
export const dose: Arbitrary<Dose> = fc.oneof(exact('g', 10), exact('mL', 10), exact('g/L', 10), exact('mL/L', 10));
export const sizes: Arbitrary<Sizes> = fc.oneof(
  fc
    .tuple(oneOf('largest', 'smallest', 'average', 'bulk'), measured('mm'))
    .map(([of, value]) => ({ of, values: [value] }) as const),
  fc.array(exact('mm'), { minLength: 2, maxLength: 5 }).map((values) => ({ of: 'sample', values }) as const),
);
export const days = fc.oneof(
  exact('days'),
  fc.integer({ min: 1, max: 30 }).map((weeks) => spread('days', weeks * 7, weeks * 7, weeks * 7)),
);
export const minutes = exact('minutes');
export const measures = oneOf(
  'off the loop',
  'air filter',
  'lights off',
  'rocks out',
  'divider',
  'pump off',
  'heater off',
  'breeder net',
);
export const action = oneOf(
  { kind: 'clean prefilter', text: null } as const,
  { kind: 'water change', text: null } as const,
  { kind: 'rinse sponge', text: null } as const,
);
export const nothing = fc.constant(null);
export const about = { fish: adults };

/** A fact of a kind, its parts made up one by one. */
export const fact = <K extends EventKind, T extends object>(
  kind: K,
  facts: { [P in keyof T]: Arbitrary<T[P]> },
): Arbitrary<{ readonly kind: K } & T> => fc.record(facts).map((each) => ({ kind, ...each }));
/** A fact that says nothing but its kind. */
export const bare = <K extends EventKind>(kind: K): Arbitrary<{ readonly kind: K }> => fc.constant({ kind });

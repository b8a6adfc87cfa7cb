/**
 * Live foods kept in jars: when a new jar can first be harvested, when to start the next, and when it
 * turns sour. Microworms: common practice, no source. The others: common practice, from memory.
 */
export interface FoodClock {
  /** Days from the start to the first harvest. */
  readonly first: number;
  /** Days after which a younger jar should stand beside it. */
  readonly restart: number;
  /** Days after which it is likely sour or crashed. */
  readonly sour: number;
}

const CLOCKS: readonly (readonly [named: RegExp, clock: FoodClock])[] = [
  [/^(micro|walter|banana)/u, { first: 3, restart: 14, sour: 35 }],
  [/^vinegar/u, { first: 28, restart: 120, sour: 240 }],
  [/^grindal/u, { first: 21, restart: 60, sour: 120 }],
  [/^white ?worm/u, { first: 42, restart: 90, sour: 180 }],
  [/^infusoria/u, { first: 3, restart: 7, sour: 14 }],
];

/** Jars of one food that should be alive at any time: the old one may crash. Common practice, no source. */
export const LEAST_JARS = 2;

/** Hours before they are needed at which to set brine shrimp: they burst at 12–20 h and hatch out by 24–36 h. Common practice, no source. */
export const HATCH_HOURS = { low: 24, high: 36 } as const;

/** The clock of a food by its name in the journal, or null for one whose habits nobody told. */
export function foodClock(food: string): FoodClock | null {
  const name = food.trim().toLowerCase();
  return CLOCKS.find(([named]) => named.test(name))?.[1] ?? null;
}

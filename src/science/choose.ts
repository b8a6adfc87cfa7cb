/**
 * How many of each thing to take so that the whole is worth most and no limit is broken: a whole-number
 * linear programme, solved by branch and cut. Two greedy ways stand beside it, as a floor and for tests.
 */
import { solve, type Model } from 'yalps';

/** Something that may be taken several times. */
export interface Choice {
  readonly worth: number;
  readonly most: number;
  /** What one of it takes of each limit. */
  readonly takes: ReadonlyMap<string, number>;
}

export type Limits = ReadonlyMap<string, number>;

/** Preference among plans of equal worth, far below a cent: earlier choices go first. */
const PREFERENCE = 1e-5;
const HAIR = 1e-7;
/** Branches after which the search is broken off: about a second. */
const MOST_ITERATIONS = 5000;

export interface Chosen {
  /** How many of each choice. */
  readonly amounts: readonly number[];
  /** False where the search was broken off: there may be something better, but by no more than `short`. */
  readonly proven: boolean;
  readonly short: number;
}

/** The best there is, and in no case less than the greedy ways find. */
export function chooseBest(choices: readonly Choice[], limits: Limits): Chosen {
  const solved = bySolver(choices, limits);
  const amounts = [solved.amounts, ...greedyWays(choices, limits)]
    .filter((one) => within(one, choices, limits))
    .reduce((best, one) => (ranked(one, choices) > ranked(best, choices) + HAIR / 10 ? one : best));
  if (solved.proven) return { amounts, proven: true, short: 0 };
  const bound = solve(programme(choices, limits, false)).result;
  return { amounts, proven: false, short: Math.max(0, bound - worthOf(amounts, choices)) };
}

function bySolver(
  choices: readonly Choice[],
  limits: Limits,
): { readonly amounts: readonly number[]; readonly proven: boolean } {
  const { status, variables } = solve(programme(choices, limits, true), {
    checkCycles: true,
    maxIterations: MOST_ITERATIONS,
  });
  const amounts = new Map(variables);
  return {
    amounts: choices.map((_, index) => Math.round(amounts.get(index) ?? 0)),
    proven: status === 'optimal',
  };
}

/** In whole numbers or, for a bound on what those can be worth, in any. */
function programme(choices: readonly Choice[], limits: Limits, integers: boolean): Model<number, string> {
  return {
    direction: 'maximize',
    objective: 'worth',
    constraints: [
      ...[...limits].map(([name, max]) => [`limit ${name}`, { max }] as const),
      ...choices.map(({ most }, index) => [`most ${index}`, { max: most }] as const),
    ],
    variables: choices.map((choice, index) => [index, coefficients(choice, index, choices.length)] as const),
    integers,
  };
}

function coefficients(choice: Choice, index: number, of: number): ReadonlyMap<string, number> {
  return new Map([
    ['worth', choice.worth + preference(index, of)],
    [`most ${index}`, 1],
    ...[...choice.takes].map(([name, amount]) => [`limit ${name}`, amount] as const),
  ]);
}

function preference(index: number, of: number): number {
  return PREFERENCE * ((of - index) / of);
}

function ranked(amounts: readonly number[], choices: readonly Choice[]): number {
  const liked = amounts.reduce((sum, amount, index) => sum + amount * preference(index, choices.length), 0);
  return worthOf(amounts, choices) + liked;
}

/** What so many of each choice are worth together. */
export function worthOf(amounts: readonly number[], choices: readonly Choice[]): number {
  return choices.reduce((sum, { worth }, index) => sum + worth * (amounts[index] ?? 0), 0);
}

/** True where so many of each keep to every limit, up to a hair of rounding. */
export function within(amounts: readonly number[], choices: readonly Choice[], limits: Limits): boolean {
  const few = choices.every(({ most }, index) => (amounts[index] ?? 0) >= 0 && (amounts[index] ?? 0) <= most);
  const used = (name: string): number =>
    choices.reduce((sum, { takes }, index) => sum + (takes.get(name) ?? 0) * (amounts[index] ?? 0), 0);
  return few && [...limits].every(([name, limit]) => used(name) <= limit + HAIR);
}

/** One after the other the dearest that still fits; and the dearest for what it takes of the limits. */
export function greedyWays(choices: readonly Choice[], limits: Limits): readonly (readonly number[])[] {
  const dear = choices.map(({ worth }) => worth);
  const dense = choices.map(({ worth, takes }) => {
    const share = [...limits].reduce((sum, [name, limit]) => sum + (takes.get(name) ?? 0) / Math.max(limit, HAIR), 0);
    return worth / Math.max(share, HAIR);
  });
  return [dear, dense].map((order) => greedy(choices, limits, order));
}

function greedy(choices: readonly Choice[], limits: Limits, order: readonly number[]): readonly number[] {
  const amounts = choices.map(() => 0);
  const indexes = choices.map((_, index) => index).toSorted((a, b) => (order[b] ?? 0) - (order[a] ?? 0) || a - b);
  for (const index of indexes) {
    if ((choices[index]?.worth ?? 0) < 0) continue;
    const more = (): number[] => amounts.map((amount, at) => (at === index ? amount + 1 : amount));
    while (within(more(), choices, limits)) amounts[index] = (amounts[index] ?? 0) + 1;
  }
  return amounts;
}

/**
 * What a formula gave for inputs that it had before. The formulas are pure, so this changes no answer; it
 * can be taken out at the end of a run and brought back into the next, so that the broods of many years
 * are worked out once.
 */

/** More than these are not taken along: bringing them back would take longer than working them out. */
const MOST = { all: 20_000, asked: 1_000 } as const;

const all: Worked<unknown>[] = [];

/** Results of one formula by its inputs. */
export class Worked<T> {
  private readonly known = new Map<string, T>();
  private readonly isOne: (value: unknown) => value is T;
  private readonly keeps: keyof typeof MOST;
  private readonly asked = new Set<string>();
  private fresh = 0;

  /**
   * `isOne` tells a result from anything else that is brought back. `keeps`: whether all results are taken along, or
   * only those that were asked for since they were brought back.
   */
  constructor(isOne: (value: unknown) => value is T, keeps: keyof typeof MOST) {
    this.isOne = isOne;
    this.keeps = keeps;
    all.push(this);
  }

  /** The result for these inputs; their number and order have to tell them apart. */
  of(inputs: readonly (number | string | null)[], work: () => T): T {
    const key = inputs.join(' ');
    if (this.keeps === 'asked') this.asked.add(key);
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const result = work();
    this.known.set(key, result);
    this.fresh += 1;
    return result;
  }

  get hasMore(): boolean {
    return this.fresh > 0;
  }

  /** What is worth taking along, as plain data. */
  takeOut(): readonly (readonly [string, T])[] {
    const { keeps, asked } = this;
    return [...this.known].filter(([key]) => keeps === 'all' || asked.has(key)).slice(-MOST[keeps]);
  }

  bringBack(results: unknown): void {
    for (const one of listOf(results)) {
      const [key, value] = listOf(one);
      if (typeof key === 'string' && this.isOne(value)) this.known.set(key, value);
    }
  }
}

/** Whether something was worked out that was not brought back. */
export function hasWorked(): boolean {
  return all.some((one) => one.hasMore);
}

/** All results of all formulas, as plain data. */
export function takeOutWorked(): readonly unknown[] {
  return all.map((one) => one.takeOut());
}

/** Results that the same build of the program took out. What is none of them is not taken. */
export function bringBackWorked(results: unknown): void {
  const each = listOf(results);
  all.forEach((one, index) => one.bringBack(each[index]));
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

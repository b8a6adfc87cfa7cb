/** Key lists of records by number. A list is found again key by key, since most records have one of a few. */
export class KeyLists {
  /** All that were met, by number. */
  readonly all: (readonly string[])[] = [];
  private readonly first = new Step();

  /** The number of a list: that of the same keys in the same order before, else the next one. */
  numberOf(keys: readonly string[]): number {
    let step = this.first;
    for (const key of keys) step = step.to(key);
    if (step.number === null) step.number = this.all.push(keys) - 1;
    return step.number;
  }
}

/** Some first keys of lists. */
class Step {
  /** The number of the list that ends here. */
  number: number | null = null;
  private readonly next = new Map<string, Step>();
  /** Where the last list went on from here: mostly the next one does too. */
  private last: { readonly key: string; readonly step: Step } | null = null;

  to(key: string): Step {
    if (this.last?.key === key) return this.last.step;
    const step = this.next.get(key) ?? new Step();
    this.next.set(key, step);
    this.last = { key, step };
    return step;
  }
}

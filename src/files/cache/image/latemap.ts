/** A value of a map that is opened when it is first got. */
export class Unopened {
  readonly open: () => unknown;

  constructor(open: () => unknown) {
    this.open = open;
  }
}

type Put = (key: unknown, value: unknown) => void;

/**
 * A map whose entries are put in when it is first looked at, and whose values are opened when they are got.
 * What is set before it is looked at waits: to note something new costs nothing of a long map's old entries.
 */
export class LateMap extends Map<unknown, unknown> {
  private fill: ((put: Put) => void) | null;
  private readonly waiting: [unknown, unknown][] = [];
  private allOpen = false;

  /** `fill` puts all entries, in order; those whose value is an `Unopened` are opened one by one. */
  constructor(fill: (put: Put) => void) {
    super();
    this.fill = fill;
  }

  override get size(): number {
    this.begin();
    return super.size;
  }

  override has(key: unknown): boolean {
    this.begin();
    return super.has(key);
  }

  override get(key: unknown): unknown {
    this.begin();
    const value = super.get(key);
    if (!(value instanceof Unopened)) return value;
    const opened = value.open();
    super.set(key, opened);
    return opened;
  }

  override set(key: unknown, value: unknown): this {
    if (this.fill === null) return super.set(key, value);
    this.waiting.push([key, value]);
    return this;
  }

  override delete(key: unknown): boolean {
    this.begin();
    return super.delete(key);
  }

  override clear(): void {
    this.begin();
    super.clear();
  }

  override keys(): MapIterator<unknown> {
    this.begin();
    return super.keys();
  }

  override values(): MapIterator<unknown> {
    this.openAll();
    return super.values();
  }

  override entries(): MapIterator<[unknown, unknown]> {
    this.openAll();
    return super.entries();
  }

  override [Symbol.iterator](): MapIterator<[unknown, unknown]> {
    return this.entries();
  }

  override forEach(each: (value: unknown, key: unknown, map: Map<unknown, unknown>) => void): void {
    this.openAll();
    super.forEach(each);
  }

  private begin(): void {
    const { fill } = this;
    if (fill === null) return;
    this.fill = null;
    fill((key, value) => super.set(key, value));
    for (const [key, value] of this.waiting) super.set(key, value);
    this.waiting.length = 0;
  }

  private openAll(): void {
    this.begin();
    if (this.allOpen) return;
    this.allOpen = true;
    for (const [key, value] of super.entries()) if (value instanceof Unopened) super.set(key, value.open());
  }
}

/** A value of a map that is opened when it is first got. */
export interface Late {
  open(): unknown;
  /** Whether it was opened already by another way that leads to it. */
  isOpen(): boolean;
}

class Unopened {
  readonly late: Late;

  constructor(late: Late) {
    this.late = late;
  }
}

/** Puts an entry: with its value, or with what opens it. */
export interface Put {
  value(key: unknown, value: unknown): void;
  late(key: unknown, late: Late): void;
}

/**
 * A map whose entries are put in when it is first looked at, and whose values are opened when they are got.
 * What is set before it is looked at waits: to note something new costs nothing of a long map's old entries.
 */
export class LateMap extends Map<unknown, unknown> {
  private fill: ((put: Put) => void) | null;
  private readonly waiting: [unknown, unknown][] = [];
  private allOpen = false;

  /** `fill` puts all entries, in order. */
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
    const opened = value.late.open();
    super.set(key, opened);
    return opened;
  }

  override set(key: unknown, value: unknown): this {
    if (this.fill === null) return super.set(key, value);
    this.waiting.push([key, value]);
    return this;
  }

  /** Whether the value under a key was got since the image was opened: one that was not is as it was put in. */
  isOpen(key: unknown): boolean {
    this.begin();
    const value = super.get(key);
    return !(value instanceof Unopened) || value.late.isOpen();
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
    fill({
      value: (key, value) => super.set(key, value),
      late: (key, late) => super.set(key, new Unopened(late)),
    });
    for (const [key, value] of this.waiting) super.set(key, value);
    this.waiting.length = 0;
  }

  private openAll(): void {
    this.begin();
    if (this.allOpen) return;
    this.allOpen = true;
    for (const [key, value] of super.entries()) if (value instanceof Unopened) super.set(key, value.late.open());
  }
}

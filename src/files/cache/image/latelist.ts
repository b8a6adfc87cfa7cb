/**
 * A long list whose elements are opened one by one while it is looked at from its end or added to, and all
 * at once by anything else. A room's histories grow at their end and are mostly asked for what is latest.
 */

/** Where the elements lie. */
export interface Elements {
  readonly size: number;
  open(index: number): unknown;
  /** Told once, when all elements are open: from then on the list itself can stand in its place. */
  opened(all: unknown[]): void;
}

/** Methods that look at the end alone, or go from there only as far as they need. */
const FROM_THE_END: ReadonlySet<PropertyKey> = new Set([
  'at',
  'constructor',
  'findLast',
  'findLastIndex',
  'push',
  'slice',
]);

/** Such a list. It is an array to all that use it. */
export function lateList(elements: Elements): unknown[] {
  return new Proxy<unknown[]>([], new Traps(elements));
}

class Traps implements ProxyHandler<unknown[]> {
  private readonly elements: Elements;
  private readonly known: unknown[];
  private allOpen = false;

  constructor(elements: Elements) {
    this.elements = elements;
    this.known = new Array<unknown>(elements.size);
  }

  get(_: unknown[], key: PropertyKey, receiver: unknown): unknown {
    const { known } = this;
    if (this.allOpen) return Reflect.get(known, key, known);
    if (key === 'length') return known.length;
    const index = typeof key === 'string' ? Number(key) : Number.NaN;
    if (Number.isInteger(index)) return this.element(index);
    if (FROM_THE_END.has(key)) return Reflect.get(Array.prototype, key, receiver);
    const all = this.all();
    const value: unknown = Reflect.get(all, key, all);
    // What goes through all of it goes through the list itself, not through here.
    if (typeof value !== 'function') return value;
    return (...given: unknown[]): unknown => Reflect.apply(value, all, given);
  }

  set(_: unknown[], key: PropertyKey, value: unknown): boolean {
    const { known } = this;
    // What `push` does, step by step.
    const pushed = key === String(known.length) || (key === 'length' && value === known.length);
    return Reflect.set(pushed ? known : this.all(), key, value);
  }

  has(_: unknown[], key: PropertyKey): boolean {
    if (typeof key === 'string' && Number(key) < this.known.length && !this.allOpen) return true;
    return Reflect.has(this.all(), key);
  }

  deleteProperty(_: unknown[], key: PropertyKey): boolean {
    return Reflect.deleteProperty(this.all(), key);
  }

  ownKeys(target: unknown[]): (string | symbol)[] {
    return Reflect.ownKeys(this.standing(target));
  }

  getOwnPropertyDescriptor(target: unknown[], key: PropertyKey): PropertyDescriptor | undefined {
    return Reflect.getOwnPropertyDescriptor(this.standing(target), key);
  }

  private element(index: number): unknown {
    const { known, elements } = this;
    if (index >= 0 && index < elements.size && !(index in known)) known[index] = elements.open(index);
    return known[index];
  }

  private all(): unknown[] {
    if (this.allOpen) return this.known;
    for (let index = 0; index < this.elements.size; index += 1) this.element(index);
    this.allOpen = true;
    this.elements.opened(this.known);
    return this.known;
  }

  /** Engines hold a proxy's keys against those of its target: these have to be the same. */
  private standing(target: unknown[]): unknown[] {
    target.length = 0;
    return Object.assign(target, this.all());
  }
}

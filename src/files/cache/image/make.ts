/** Makes an image of plain data: see `layout.ts`. */
import { BEFORE_HEAD, behindHead, CONSTANTS, KIND, SHARED, SIZE_BITS, TAG, TAG_BITS } from './layout.ts';
import { KeyLists } from './keylists.ts';
import type { Head } from './layout.ts';

/** The least and the largest integer that a cell holds. */
const MOST = 2 ** (31 - TAG_BITS);

/**
 * An image of parts by name. Throws a `TypeError` for what is no plain data (records, lists, maps, sets, numbers,
 * texts, booleans, null, undefined), a `RangeError` where there is too much of it. `values` are key lists of records
 * that nobody ever changes: whether two are one does not matter, and need not be remembered of millions.
 */
export function imageOf(parts: Readonly<Record<string, unknown>>, values: readonly (readonly string[])[] = []): Buffer {
  const making = new Making(values);
  const cells = Object.fromEntries(Object.entries(parts).map(([name, value]) => [name, making.cell(value)]));
  return making.bytes(cells);
}

class Making {
  private words = new Int32Array(1 << 14);
  private length = 0;
  private readonly numbers: number[] = [];
  private readonly texts = new Map<string, number>();
  private readonly shapes = new KeyLists();
  /** Shapes of records that are values. */
  private readonly values: ReadonlySet<number>;
  /** Where each other thing begins that was met. */
  private readonly begun = new Map<object, number>();

  constructor(values: readonly (readonly string[])[]) {
    this.values = new Set(values.map((keys) => this.shapes.numberOf(keys)));
  }

  cell(value: unknown): number {
    switch (typeof value) {
      case 'number':
        return this.numberCell(value);
      case 'string':
        return this.textCell(value);
      case 'boolean':
      case 'undefined':
        return tagged(CONSTANTS.indexOf(value), TAG.constant);
      case 'object':
        return value === null ? tagged(CONSTANTS.indexOf(null), TAG.constant) : tagged(this.thing(value), TAG.thing);
      default:
        throw new TypeError(`a ${typeof value} is no plain data`);
    }
  }

  bytes(parts: Head['parts']): Buffer {
    const texts = [...this.texts.keys()];
    const { shapes, length, numbers } = this;
    const head: Head = { parts, texts, shapes: shapes.all, numbers: numbers.length, words: length };
    const first = Buffer.from(JSON.stringify(head));
    const before = Buffer.alloc(behindHead(first.length));
    before.writeUInt32LE(first.length);
    first.copy(before, BEFORE_HEAD);
    const words = Buffer.from(this.words.buffer, 0, length * Int32Array.BYTES_PER_ELEMENT);
    return Buffer.concat([before, Buffer.from(new Float64Array(numbers).buffer), words]);
  }

  private numberCell(value: number): number {
    if (Number.isInteger(value) && value >= -MOST && value < MOST && !Object.is(value, -0)) {
      return tagged(value, TAG.integer);
    }
    this.numbers.push(value);
    return tagged(this.numbers.length - 1, TAG.number);
  }

  private textCell(text: string): number {
    const at = this.texts.get(text) ?? this.texts.size;
    if (at === this.texts.size) this.texts.set(text, at);
    return tagged(at, TAG.text);
  }

  private thing(value: object): number {
    if (value instanceof Map) return this.once(value, KIND.map, value.size, () => [...value].flat());
    if (value instanceof Set) return this.once(value, KIND.set, value.size, () => [...value]);
    if (Array.isArray(value)) return this.once(value, KIND.list, value.length, () => value);
    const shape = this.shapes.numberOf(Object.keys(value));
    if (this.values.has(shape)) return this.put(KIND.record, shape, Object.values(value));
    return this.once(value, KIND.record, shape, () => Object.values(value));
  }

  /** Puts what was not put before. */
  private once(value: object, kind: number, size: number, inside: () => readonly unknown[]): number {
    const before = this.begun.get(value);
    if (before === undefined) {
      this.begun.set(value, this.length);
      return this.put(kind, size, inside());
    }
    this.words[before] = (this.words[before] ?? 0) | SHARED;
    return before;
  }

  /** The place is taken before what is inside is put: that may lead back here. */
  private put(kind: number, size: number, inside: readonly unknown[]): number {
    const at = this.length;
    this.length += 1 + inside.length;
    if (this.length > this.words.length) this.grow();
    if (size >= MOST || this.length >= MOST) throw new RangeError('too much for one image');
    this.words[at] = (size << SIZE_BITS) | kind;
    for (let i = 0; i < inside.length; i += 1) {
      const cell = this.cell(inside[i]);
      this.words[at + 1 + i] = cell;
    }
    return at;
  }

  private grow(): void {
    const more = new Int32Array(Math.max(this.length, 2 * this.words.length));
    more.set(this.words);
    this.words = more;
  }
}

function tagged(value: number, tag: number): number {
  return (value << TAG_BITS) | tag;
}

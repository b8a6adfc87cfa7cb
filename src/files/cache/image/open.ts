/**
 * Opens an image: each map and each long list of it only when it is first looked at, each value of a map when
 * it is got. What is opened is the same as what was put in, and changes like any other data.
 */
import { BEFORE_HEAD, behindHead, CONSTANTS, KIND, kindOf, SHARED, SIZE_BITS, TAG, TAG_BITS } from './layout.ts';
import type { Head } from './layout.ts';
import { Pages } from '../pages.ts';
import { lateList } from './latelist.ts';
import { LateMap } from './latemap.ts';
import type { Late, Put } from './latemap.ts';

/** Lists and maps of fewer are opened at once: that costs no more than to remember where they lie. */
const FEW = 12;

const TAGS = (1 << TAG_BITS) - 1;
const KINDS = SHARED - 1;

/** Looks at a part: every look gives data of its own, in which what was one thing is one again. */
export type Image = (part: string) => unknown;

/** A kind of record that holds up to four values, none of which leads back to it: it is made in one go. */
export interface Leaf {
  readonly keys: readonly string[];
  readonly make: (a: unknown, b: unknown, c: unknown, d: unknown) => object;
}

/**
 * Opens what `imageOf` made. The bytes must be proved to be such: next to nothing is checked here. `leaves` are the
 * records that there are most of.
 */
export function openImage(given: Pages, leaves: readonly Leaf[] = []): Image {
  const pages = aligned(given);
  const { buffer, byteOffset, length: size } = pages.bytes;
  const bytes = Buffer.from(buffer, byteOffset, size);
  pages.see(0);
  const length = bytes.readUInt32LE(0);
  pages.seeAll(0, behindHead(length));
  const head: unknown = JSON.parse(bytes.toString('utf8', BEFORE_HEAD, BEFORE_HEAD + length));
  if (!isHead(head)) throw new TypeError('no image');
  const numbers = new Float64Array(buffer, byteOffset + behindHead(length), head.numbers);
  const words = new Int32Array(buffer, numbers.byteOffset + numbers.byteLength, head.words);
  const makes = head.shapes.map((keys) => leaves.find((leaf) => isSame(leaf.keys, keys))?.make ?? null);
  return (part) => new Opening(head, makes, numbers, words, pages).value(head.parts[part] ?? TAG.constant);
}

/** Numbers are looked at in place, and that has to be a multiple of their size. */
function aligned(pages: Pages): Pages {
  const { bytes } = pages;
  if (bytes.byteOffset % Float64Array.BYTES_PER_ELEMENT === 0) return pages;
  pages.seeAll(0, bytes.length);
  return Pages.of(new Uint8Array(bytes));
}

function isSame(some: readonly string[], others: readonly string[]): boolean {
  return some.length === others.length && some.every((key, index) => key === others[index]);
}

function isHead(value: unknown): value is Head {
  return typeof value === 'object' && value !== null && 'shapes' in value;
}

class Opening {
  private readonly head: Head;
  /** By shape, for those of leaves. */
  private readonly makes: readonly (Leaf['make'] | null)[];
  private readonly numbers: Float64Array;
  private readonly words: Int32Array;
  /** Null where all of it is there: to ask each time takes a run that is short a part in twenty. */
  private readonly unread: Pages | null;
  /** Where numbers and words begin in the pages. */
  private readonly numbersAt: number;
  private readonly wordsAt: number;
  /** Things that several cells lead to, by where they begin. */
  private readonly shared = new Map<number, object>();

  constructor(
    head: Head,
    makes: readonly (Leaf['make'] | null)[],
    numbers: Float64Array,
    words: Int32Array,
    pages: Pages,
  ) {
    this.head = head;
    this.makes = makes;
    this.numbers = numbers;
    this.words = words;
    this.unread = pages.isWhole ? null : pages;
    this.numbersAt = numbers.byteOffset - pages.bytes.byteOffset;
    this.wordsAt = words.byteOffset - pages.bytes.byteOffset;
  }

  value(cell: number): unknown {
    const rest = cell >> TAG_BITS;
    switch (cell & TAGS) {
      case TAG.integer:
        return rest;
      case TAG.number:
        return this.number(rest);
      case TAG.text:
        return this.head.texts[rest];
      case TAG.constant:
        return CONSTANTS[rest];
      default:
        return this.thing(rest);
    }
  }

  /** `few`: lists of fewer elements in it are opened with it. */
  private thing(at: number, few = FEW): object {
    const first = this.word(at);
    if ((first & SHARED) === 0) return this.open(at, first, few);
    return this.shared.get(at) ?? this.open(at, first, few);
  }

  private open(at: number, first: number, few: number): object {
    const size = first >> SIZE_BITS;
    switch (kindOf(first)) {
      case KIND.record:
        return this.record(at, first, size, few);
      case KIND.list:
        return this.list(at, first, size);
      case KIND.map:
        return this.map(at, first, size);
      default:
        return this.set(at, first, size);
    }
  }

  private word(at: number): number {
    if (this.unread !== null) this.unread.see(this.wordsAt + 4 * at);
    return this.words[at] ?? 0;
  }

  private number(at: number): number | undefined {
    if (this.unread !== null) this.unread.see(this.numbersAt + 8 * at);
    return this.numbers[at];
  }

  /** What leads back to a thing from inside it has to find it. */
  private found<T extends object>(at: number, first: number, thing: T): T {
    if ((first & SHARED) !== 0) this.shared.set(at, thing);
    return thing;
  }

  private record(at: number, first: number, shape: number, few: number): object {
    const keys = this.head.shapes[shape] ?? [];
    const make = this.makes[shape] ?? null;
    if (make !== null) return this.found(at, first, this.leaf(at, keys.length, make));
    const record: Record<string, unknown> = this.found(at, first, {});
    for (let i = 0; i < keys.length; i += 1) {
      const key = keys[i] ?? '';
      const cell = this.word(at + 1 + i);
      const size = this.listSize(cell);
      if (size >= few) openLate(record, key, size, (index) => this.value(this.word((cell >> TAG_BITS) + 1 + index)));
      else if (key === '__proto__') define(record, key, this.value(cell));
      else record[key] = this.value(cell);
    }
    return record;
  }

  private leaf(at: number, size: number, make: Leaf['make']): object {
    const a = this.value(this.word(at + 1));
    const b = size > 1 ? this.value(this.word(at + 2)) : undefined;
    const c = size > 2 ? this.value(this.word(at + 3)) : undefined;
    const d = size > 3 ? this.value(this.word(at + 4)) : undefined;
    return make(a, b, c, d);
  }

  /** The size of a list; 0 for anything else, and for one that two lead to: that has to be one list from the start. */
  private listSize(cell: number): number {
    if ((cell & TAGS) !== TAG.thing) return 0;
    const first = this.word(cell >> TAG_BITS);
    return (first & (SHARED | KINDS)) === KIND.list ? first >> SIZE_BITS : 0;
  }

  private list(at: number, first: number, size: number): object {
    const list: unknown[] = this.found(at, first, []);
    for (let i = 1; i <= size; i += 1) list.push(this.value(this.word(at + i)));
    return list;
  }

  private set(at: number, first: number, size: number): object {
    const set = this.found(at, first, new Set());
    for (let i = 1; i <= size; i += 1) set.add(this.value(this.word(at + i)));
    return set;
  }

  private map(at: number, first: number, size: number): object {
    if (size >= FEW) return this.found(at, first, new LateMap((put) => this.entries(at, size, put)));
    const map = this.found(at, first, new Map());
    for (let i = at + 1; i < at + 2 * size; i += 2) map.set(this.value(this.word(i)), this.value(this.word(i + 1)));
    return map;
  }

  private entries(at: number, size: number, put: Put): void {
    for (let i = at + 1; i < at + 2 * size; i += 2) {
      const key = this.value(this.word(i));
      const cell = this.word(i + 1);
      if ((cell & TAGS) === TAG.thing) put.late(key, this.late(cell));
      else put.value(key, this.value(cell));
    }
  }

  private late(cell: number): Late {
    // Of many entries most are asked for a thing or two: their lists wait, however short.
    return { open: () => this.thing(cell >> TAG_BITS, 1), isOpen: () => this.shared.has(cell >> TAG_BITS) };
  }
}

/** A key whose list is opened late: it is set up when it is first got, and gives way to the list itself. */
function openLate(record: object, key: string, size: number, open: (index: number) => unknown): void {
  Object.defineProperty(record, key, {
    configurable: true,
    enumerable: true,
    get() {
      const list = lateList({
        size,
        open,
        opened: (all) => {
          // It may have been replaced by another list since.
          if (Reflect.get(record, key) === list) define(record, key, all);
        },
      });
      define(record, key, list);
      return list;
    },
    set(value: unknown) {
      define(record, key, value);
    },
  });
}

function define(record: object, key: string, value: unknown): void {
  Object.defineProperty(record, key, { configurable: true, enumerable: true, writable: true, value });
}

/**
 * Bytes that lie in a file until they are looked at: of a large thing that is kept, most questions need a few
 * pages. They stand where they would if all had been read, so that numbers can be looked at in place.
 */

const PAGE_BITS = 16;
const PAGE = 1 << PAGE_BITS;

/** Reads bytes from one place on, as many as there are; throws where that cannot be done. */
export type ReadAt = (into: Uint8Array, from: number) => number;

export class Pages {
  /** Holds only what was asked for with `see`. */
  readonly bytes: Uint8Array;
  private readonly readAt: ReadAt | null;
  /** Of each page: 1 once it was read. */
  private readonly read: Uint8Array;

  private constructor(bytes: Uint8Array, readAt: ReadAt | null) {
    this.bytes = bytes;
    this.readAt = readAt;
    this.read = new Uint8Array(Math.ceil(bytes.length / PAGE)).fill(readAt === null ? 1 : 0);
  }

  /** Bytes that are all there. */
  static of(bytes: Uint8Array): Pages {
    return new Pages(bytes, null);
  }

  /** So many bytes that are proved already, and read when they are looked at. */
  static from(size: number, readAt: ReadAt): Pages {
    // The system gives such memory no substance before it is written to.
    return new Pages(Buffer.allocUnsafeSlow(size), readAt);
  }

  /** Whether all of it is there, so that nobody need ask for any. */
  get isWhole(): boolean {
    return this.readAt === null;
  }

  /** Sees to it that what lies at a place is there. Whatever lies within one page needs no second look. */
  see(at: number): void {
    if (this.read[at >>> PAGE_BITS] === 0) this.bring(at >>> PAGE_BITS);
  }

  /** The same for all from one place up to another. */
  seeAll(from: number, to: number): void {
    for (let at = from; at < to; at += PAGE) this.see(at);
    if (to > from) this.see(to - 1);
  }

  private bring(page: number): void {
    const from = page * PAGE;
    const into = this.bytes.subarray(from, from + PAGE);
    for (let at = 0; at < into.length;) {
      const got = this.readAt?.(into.subarray(at), from + at) ?? 0;
      if (got === 0) throw new Error('what the cache keeps became shorter while it was read');
      at += got;
    }
    this.read[page] = 1;
  }
}

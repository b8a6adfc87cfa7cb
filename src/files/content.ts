/** What a journal holds, decoded only as far as somebody looks: of a long one its latest lines mostly do. */

export interface Content {
  /** Bytes in UTF-8, without a byte-order mark. */
  readonly size: number;
  /** All of it. What is no UTF-8 shows as U+FFFD. */
  readonly text: string;
  /** So many bytes from the beginning; they are never changed. */
  before(at: number): Uint8Array;
  /** The text from a byte on at which a line begins. */
  behind(at: number): string;
}

/** What these bytes hold, which nobody changes any more. */
export function contentOf(bytes: Buffer): Content {
  return new Held(bytes);
}

/** The content of a text. */
export function contentOfText(text: string): Content {
  return new Composed(contentOf(Buffer.alloc(0)), 0, text);
}

/** The first bytes of a content, up to where a line begins, and another text behind them. */
export function withTail(head: Content, at: number, tail: string): Content {
  return new Composed(head, at, tail);
}

/** Whether two contents begin with the same bytes, so many of them. */
export function sameBefore(a: Content, b: Content, at: number): boolean {
  if (a.size < at || b.size < at) return false;
  const [some, others] = [a.before(at), b.before(at)];
  return isSamePlace(some, others) || Buffer.compare(some, others) === 0;
}

/** Whether both are the same bytes of the same memory. */
function isSamePlace(a: Uint8Array, b: Uint8Array): boolean {
  return a.buffer === b.buffer && a.byteOffset === b.byteOffset;
}

/** Their text, read in place. */
function decode(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString();
}

class Held implements Content {
  readonly size: number;
  private readonly bytes: Buffer;
  private decoded: string | null = null;
  private last: { readonly at: number; readonly text: string } | null = null;

  constructor(bytes: Buffer) {
    this.bytes = bytes;
    this.size = bytes.length;
  }

  get text(): string {
    return (this.decoded ??= this.bytes.toString());
  }

  before(at: number): Uint8Array {
    return this.bytes.subarray(0, at);
  }

  behind(at: number): string {
    if (this.last?.at !== at) this.last = { at, text: this.bytes.toString('utf8', at) };
    return this.last.text;
  }
}

class Composed implements Content {
  private readonly head: Content;
  private readonly at: number;
  private readonly tail: string;
  private known: { readonly whole: Content } | null = null;

  constructor(head: Content, at: number, tail: string) {
    this.head = head;
    this.at = at;
    this.tail = tail;
  }

  get size(): number {
    return this.at + Buffer.byteLength(this.tail);
  }

  get text(): string {
    return this.at === 0 ? this.tail : `${decode(this.head.before(this.at))}${this.tail}`;
  }

  before(at: number): Uint8Array {
    return at <= this.at ? this.head.before(at) : this.whole().before(at);
  }

  behind(at: number): string {
    return at === this.at ? this.tail : this.whole().behind(at);
  }

  private whole(): Content {
    const { head, at, tail } = this;
    return (this.known ??= { whole: contentOf(Buffer.concat([head.before(at), Buffer.from(tail)])) }).whole;
  }
}

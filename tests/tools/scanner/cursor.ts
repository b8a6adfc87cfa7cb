/** Where the scanner stands in the text, and what it can ask of the characters there. */
import { toDay, type Day } from '../../../src/core/day.ts';
import type { Place } from '../../../src/core/span.ts';
import type { Subject } from '../../../src/journal/subject.ts';

/** Characters by their code. */
export const CODE = {
  blank: 32,
  quote: 34,
  comma: 44,
  point: 46,
  zero: 48,
  nine: 57,
  colon: 58,
  semicolon: 59,
} as const;

export class Cursor {
  /** The line: its first character and the one after its last. */
  start: number;
  end = 0;
  /** The next character to read. */
  at: number;
  day: Day = toDay(0);
  /** What the clause is about. */
  subject: Subject = { kind: 'room' };
  readonly file: string;
  readonly text: string;
  line: number;

  constructor(file: string, text: string, start: number, line: number) {
    this.file = file;
    this.text = text;
    this.start = start;
    this.at = start;
    this.line = line;
  }

  /** Finds the end of the line; false after the last. */
  begin(): boolean {
    if (this.start >= this.text.length) return false;
    const newline = this.text.indexOf('\n', this.start);
    this.end = newline < 0 ? this.text.length : newline;
    this.at = this.start;
    return true;
  }

  next(): void {
    this.start = this.end + 1;
    this.line += 1;
  }

  code(): number {
    return this.text.charCodeAt(this.at);
  }

  /** Reads these words where they stand here. */
  takes(words: string): boolean {
    if (!this.text.startsWith(words, this.at)) return false;
    this.at += words.length;
    return true;
  }

  expect(words: string): void {
    if (!this.takes(words)) throw this.wrong();
  }

  /** A name: all up to a blank, a mark or the end of the line. */
  word(): string {
    const from = this.at;
    while (this.at < this.end && !endsWord(this.code())) this.at += 1;
    return this.text.slice(from, this.at);
  }

  /** Whether a digit stands here. */
  isFigure(): boolean {
    const code = this.code();
    return code >= CODE.zero && code <= CODE.nine;
  }

  /** `18`, `4.20` */
  figure(): number {
    const from = this.at;
    let value = 0;
    let scale = 0;
    for (; this.at < this.end; this.at += 1) {
      const code = this.code();
      if (code >= CODE.zero && code <= CODE.nine) {
        value = value * 10 + code - CODE.zero;
        scale *= 10;
      } else if (code === CODE.point) scale = 1;
      else break;
    }
    if (this.at === from) throw this.wrong();
    return scale > 1 ? value / scale : value;
  }

  /** `"a buyer"` */
  quoted(): string {
    this.expect('"');
    const from = this.at;
    while (this.at < this.end && this.code() !== CODE.quote) this.at += 1;
    const text = this.text.slice(from, this.at);
    this.expect('"');
    return text;
  }

  /** All that is left of the line. */
  rest(): string {
    const from = this.at;
    this.at = this.end;
    return this.text.slice(from, this.end);
  }

  /** What has been read since a character of this line. */
  placeFrom(from: number): Place {
    return { file: this.file, line: this.line, from: from - this.start, to: this.at - this.start };
  }

  wrong(): Error {
    return new Error(`${this.file}:${this.line}: no form that is generated: ${this.text.slice(this.at, this.end)}`);
  }
}

function endsWord(code: number): boolean {
  return code === CODE.blank || code === CODE.colon || code === CODE.comma || code === CODE.semicolon;
}

/** What a calculator is: named inputs with units in, results with units and their source out. No journal. */
import { scaleOf, toBase, unitsOf, type Kind } from '../../science/scales.ts';

export interface CalcResult {
  readonly name: string;
  /** Null where only a range can be told. Full precision; reports round. */
  readonly value: number | null;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
}

export interface CalcAnswer {
  readonly results: readonly CalcResult[];
  readonly source: string;
  /** The arithmetic with the numbers put in. */
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

/** What was wrong with the arguments, and a call that works. */
export class CalcFault extends Error {
  readonly write: string;
  constructor(says: string, write: string) {
    super(says);
    this.name = 'CalcFault';
    this.write = write;
  }
}

/** The words and options of one calculation, read on demand with their units. */
export class Inputs {
  readonly #words: readonly string[];
  readonly #options: ReadonlyMap<string, string>;
  readonly #example: string;
  /** How many of the words have been read: the rest would be dropped in silence. */
  #read = 0;

  constructor(words: readonly string[], options: ReadonlyMap<string, string>, example: string) {
    this.#words = words;
    this.#options = options;
    this.#example = example;
  }

  fault(says: string): CalcFault {
    return new CalcFault(says, this.#example);
  }

  word(index: number, what: string): string {
    const word = this.#words[index];
    if (word === undefined) throw this.fault(`${what} is missing`);
    this.#read = Math.max(this.#read, index + 1);
    return word;
  }

  /** The words from there on as one text: a shell parts `36 x 18 x 16 in` where nobody quotes it. */
  rest(index: number, what: string): string {
    this.word(index, what);
    this.#read = this.#words.length;
    return this.#words.slice(index).join(' ');
  }

  /** Throws where a word was not asked for. */
  checkAllRead(): void {
    const left = this.#words.slice(this.#read);
    if (left.length > 0) throw this.fault(`«${left.join(' ')}» is not read here`);
  }

  text(name: string): string | null {
    return this.#options.get(name) ?? null;
  }

  has(name: string): boolean {
    return this.#options.has(name);
  }

  /** A number with a unit of that kind, in the kind's base unit; a bare number is taken to be in `bare`. */
  optional(name: string, kind: Kind, bare: string, low = -Infinity, high = Infinity): number | null {
    const text = this.#options.get(name);
    if (text === undefined) return null;
    this.#partOrPercent(name, text, kind);
    const value = this.quantity(text, kind, bare, `--${name}`);
    if (value < low || value > high)
      throw this.fault(`--${name} ${text} is outside what can be: ${range(low, high, bare)}`);
    return value;
  }

  /** A bare 0.5 of a share is half to one and half a hundredth to another. */
  #partOrPercent(name: string, text: string, kind: Kind): void {
    const bare = kind === 'share' ? numberIn(text.trim()) : null;
    if (bare === null || bare <= 0 || bare > 1) return;
    const percent = Number((bare * 100).toPrecision(6));
    throw this.fault(
      `--${name} ${text} may be ${text} % or ${String(percent)} %: write ${text}% or ${String(percent)}%`,
    );
  }

  needed(name: string, kind: Kind, bare: string, low = -Infinity, high = Infinity): number {
    const value = this.optional(name, kind, bare, low, high);
    if (value === null) throw this.fault(`--${name} is missing`);
    return value;
  }

  /** A plain number. */
  number(name: string, low = -Infinity, high = Infinity): number | null {
    const text = this.#options.get(name);
    if (text === undefined) return null;
    const value = numberIn(text);
    if (value === null) throw this.fault(`--${name} takes a number, not «${text}»`);
    if (value < low || value > high)
      throw this.fault(`--${name} ${text} is outside what can be: ${range(low, high, '')}`);
    return value;
  }

  /** A whole number of at least one. */
  whole(name: string): number | null {
    const value = this.number(name, 1, 1e6);
    if (value !== null && !Number.isInteger(value)) throw this.fault(`--${name} takes a whole number, not ${value}`);
    return value;
  }

  quantity(text: string, kind: Kind, bare: string, what: string): number {
    const match = /^\s*([-+]?[\d.,]+(?:e[-+]?\d+)?)\s*(.*?)\s*$/i.exec(text);
    const value = match ? numberIn(match[1] ?? '') : null;
    if (match === null || value === null) throw this.fault(`${what} takes a number with its unit, not «${text}»`);
    const unit = match[2] === '' ? bare : (match[2] ?? bare);
    if (/^gal(lons?)?$/i.test(unit)) throw this.fault(`gal is two sizes: write US gal or imp gal instead of «${text}»`);
    const scale = scaleOf(unit);
    if (scale === null || scale.kind !== kind) {
      throw this.fault(`${what} «${text}»: «${unit}» is no unit of ${kind}; these are: ${unitsOf(kind).join(', ')}`);
    }
    return toBase(value, scale);
  }
}

/** A number as people write it; `1.234,5` and the like are nobody's number. */
export function numberIn(text: string): number | null {
  const plain = /^[-+]?\d+,\d{1,2}$/.test(text) ? text.replace(',', '.') : text;
  const value = plain.trim() === '' || plain.includes(',') ? NaN : Number(plain);
  return Number.isFinite(value) ? value : null;
}

function range(low: number, high: number, unit: string): string {
  if (unit === '%') return range(low * 100, high * 100, '% ');
  const end = unit === '' ? '' : ` ${unit.trim()}`;
  if (low === -Infinity) return `at most ${high}${end}`;
  return high === Infinity ? `at least ${low}${end}` : `${low} to ${high}${end}`;
}

export interface Calculator {
  readonly name: string;
  readonly says: string;
  /** Words after the name, for help. */
  readonly takes: string;
  /** Options it reads, without the dashes. */
  readonly options: readonly string[];
  readonly example: string;
  run(inputs: Inputs): CalcAnswer;
}

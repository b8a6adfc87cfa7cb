/**
 * One parsed clause on its way to an event. Builders ask it for what their kind of clause needs; what
 * nobody asked for is reported, so that no word of a line is ever dropped in silence.
 *
 * After a fault the line counts for nothing, so a method that cannot answer notes the fault and gives a
 * harmless value: builders need no branch for what will be thrown away.
 */
import { UNIT_WORDS } from '../../grammar/words.ts';
import type { DateNode, DetailNode, LinkNode, LinkValue, NameNode, Piece, QuantityNode } from '../../grammar/syntax.ts';
import { isoDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { measure } from '../core/quantity.ts';
import type { Measure, Unit } from '../core/quantity.ts';
import { canonicalUnit } from '../core/units.ts';
import type { UnitName } from '../core/units.ts';
import { readDayWords } from './dates.ts';
import type { Direction } from './dates.ts';
import { fault } from './faults.ts';
import { clauseInText } from './textclause.ts';
import { lookUp } from './line.ts';
import type { Lookup } from './line.ts';
import { figureValue, measureOf } from './quantities.ts';
import { Details } from './taking.ts';
import { isEither, unitOf } from './units.ts';
import type { EitherUnit, Quality } from './units.ts';

export class Clause extends Details {
  // Numbers

  /** A number in a canonical unit; null after a fault. */
  toMeasure<U extends Unit>(node: QuantityNode, to: U, quality: Quality = 'plain'): Measure<U> | null {
    if (node.word !== null) {
      this.fault('no-number', node, `«${this.written(node)}» is no number that can be measured`);
      return null;
    }
    if (node.scoop !== null) {
      this.wrongUnit({ ...node, unit: node.scoop }, to);
      return null;
    }
    if (node.numbers.length > 1) {
      this.fault('no-number', node, `«${this.written(node)}» are several numbers: write a clause for each of them`);
      return null;
    }
    const unit = unitOf(node, to, this.line.conventions.units.on(this.day), quality);
    if (isEither(unit)) {
      const [one, other] = unit.either;
      const unset = to === 'dH' ? '' : ', and the room has not said which (`room: units metric`)';
      const says = `«${this.written(node)}» may be ${one} or ${other}${unset}`;
      this.fault('which-unit', node, says, `${this.bare(node)} ${one}`);
      return null;
    }
    const [one, other] = [...new Set(node.units.map(({ text }) => UNIT_WORDS.get(text.toLowerCase()) ?? text))];
    if (other !== undefined) {
      const says = `«${this.written(node)}» mixes ${one ?? ''} and ${other}: write one unit for all of it`;
      this.fault('mixed-units', node, says);
      return null;
    }
    if (node.high !== null && figureValue(node.high) < figureValue(node.numbers[0] ?? node.high)) {
      this.reversed(node);
      return null;
    }
    const read = measureOf(node, unit, to);
    if (read === null) this.wrongUnit(node, to);
    else if (to === 'C' && !isWater(read)) this.notWater(node, unit);
    return read;
  }

  private bare(node: QuantityNode): string {
    const text = node.unit === null ? this.written(node) : this.line.text.slice(node.from, node.unit.from);
    return text.trim();
  }

  private wrongUnit(node: QuantityNode, to: Unit): void {
    const unit = node.unit === null ? '' : this.written(node.unit);
    const wants = WANTED[to];
    // A share is no slip of the thumb for litres.
    this.fault('wrong-unit', node.unit ?? node, `«${unit}» is no unit for ${wants[0]}`, unit === '%' ? null : wants[1]);
  }

  private reversed(node: QuantityNode): void {
    const [low, high] = [node.numbers[0], node.high];
    if (low === undefined || high === null) return;
    const says = `«${this.written(node)}» runs from high to low`;
    const range = { from: low.from, to: high.to };
    // `pH 7.4 to 6.8` may have fallen.
    const fell = /\bto\b/iu.test(this.written(range));
    this.fault('high-before-low', range, says, fell ? `${high.text} "from ${low.text}"` : `${high.text}-${low.text}`);
  }

  /** Nobody keeps fish in ice or in hot soup: the other unit is offered where that is what was read. */
  private notWater(node: QuantityNode, unit: UnitName | EitherUnit | null): void {
    const other = unit === 'F' ? 'C' : 'F';
    const meant = measureOf(node, other, 'C');
    const edit = meant !== null && isWater(meant) ? `${this.bare(node)} ${other}` : null;
    this.fault('out-of-range', node, `«${this.written(node)}» is no temperature of water with fish in it`, edit);
  }

  /** A number that this clause cannot do without. */
  need<U extends Unit>(to: U, example: string, quality: Quality = 'plain'): Measure<U> {
    const node = this.quantity();
    if (node === null) {
      this.missing(WANTED[to][0], example);
      return measure(to, 0);
    }
    return this.toMeasure(node, to, quality) ?? measure(to, 0);
  }

  /** A number in a unit of that kind, where one stands. Bare numbers count too where `bare` says so. */
  maybe<U extends Unit>(to: U, bare = false): Measure<U> | null {
    const node = this.quantity((each) => (each.unit === null ? bare && each.word === null : this.measuresIn(each, to)));
    return node === null ? null : this.toMeasure(node, to);
  }

  /** True for a number with a unit that measures in canonical `to`. */
  measuresIn(node: QuantityNode, to: Unit): boolean {
    const unit = unitOf(node, to, this.line.conventions.units.on(this.day));
    if (unit === null || node.unit === null) return false;
    if (isEither(unit)) return to === 'L' || to === 'L/h';
    const canonical = canonicalUnit(unit);
    return canonical === to || (to === 'days' && canonical === 'minutes');
  }

  /** A whole number: of layers, lots, doses. */
  whole(node: QuantityNode): number | null {
    const value = node.numbers[0];
    const plain = node.word === null && node.high === null && node.fuzz === null && !node.plus && node.unit === null;
    if (value === undefined || !plain || node.numbers.length > 1 || !Number.isInteger(figureValue(value))) {
      this.fault('no-whole-number', node, `«${this.written(node)}» should be a whole number`);
      return null;
    }
    return figureValue(value);
  }

  /** An amount of money, in the room's currency. */
  money(node: LinkValue | null): number | null {
    if (
      node?.type !== 'quantity' ||
      node.unit !== null ||
      node.word !== null ||
      node.high !== null ||
      node.numbers.length > 1
    ) {
      if (node !== null) this.fault('no-amount', node, `«${this.written(node)}» is no amount of money`);
      return null;
    }
    const value = node.numbers[0];
    return value === undefined ? null : figureValue(value);
  }

  /** Something is missing, and nothing else is wrong that would explain it. */
  missing(what: string, example: string): void {
    if (this.line.faults.some(({ from, to }) => from >= this.node.from && to <= this.node.to)) return;
    const at = this.node.head.to > this.node.head.from ? this.node.head : this.node;
    // The example is shown and not filled in: whoever took it as it stands would state what nobody saw.
    const says = `\`${this.phrase()}\` needs ${what}, as in \`${this.phrase()} ${example}\``;
    this.line.faults.push(fault('something-missing', at, says));
  }

  // Dates

  /** The day that a date means; null after a fault. */
  toDay(node: LinkValue | DateNode, direction: Direction): Day | null {
    if (node.type === 'date') {
      const day = readDayWords(node.text, this.day, direction);
      if (day === null) this.fault('no-such-date', node, `there is no ${this.written(node)} in the calendar`);
      return day;
    }
    this.fault('no-date', node, `«${this.written(node)}» is no date`, isoDay(this.day));
    return null;
  }

  // Names

  /** The declared name that a word stands for. */
  named(node: LinkValue | NameNode, want: Lookup): string {
    return this.lookUp(node, want)?.name ?? this.written(node);
  }

  lookUp(node: LinkValue | NameNode, want: Lookup): ReturnType<typeof lookUp> {
    if (node.type === 'name') return lookUp(this.line, node.text, node, want);
    const text = this.written(node).trim();
    if (node.type === 'text') return lookUp(this.line, text, node, want);
    this.fault(want.unknown, node, `here stands ${want.wants}, not «${text}»`);
    return null;
  }

  // Words

  /** The text that the clause calls for: bare words, or its first words in quotes. */
  text(): string | null {
    // The first of the two: bare words after a quote are none of it.
    const first = this.unread.find(({ type }) => type === 'text' || type === 'quote');
    const bare = this.take(
      (detail): detail is DetailNode & { type: 'text' } => detail.type === 'text' && detail === first,
    );
    if (bare === null) return this.quote();
    const clauseIn = clauseInText(this.line, this.node.kind, bare);
    if (clauseIn !== null) {
      // What was wrong with the rest of it was said of that clause.
      const { faults } = this.line;
      const others = faults.filter(({ from, to }) => from < clauseIn.from || to > this.node.to);
      faults.splice(0, faults.length, ...others, clauseIn);
    }
    return this.written(bare).trim();
  }

  /** Words in quotes; used for the remark once the clause has its text. */
  quote(): string | null {
    const quote = this.take((detail): detail is DetailNode & { type: 'quote' } => detail.type === 'quote');
    return quote === null ? null : quoteText(this.line.text, quote);
  }

  /** Words that state nothing of their own, and whatever a builder has put aside: part of the remark. */
  asides(): readonly string[] {
    const said = this.takeAll(
      (detail): detail is DetailNode & LinkNode => detail.type === 'link' && detail.link === 'aside',
    );
    const pieces = [...said, ...this.kept].sort((a, b) => a.from - b.from);
    return pieces.map((piece) => this.written(piece));
  }

  /** Keeps words that the fact has no place for in the remark. */
  setAside(at: Piece | null): void {
    if (at !== null) this.kept.push(at);
  }

  private readonly kept: Piece[] = [];

  needText(example: string): string {
    const text = this.text();
    if (text === null || text === '') this.missing('words', example);
    return text ?? '';
  }
}

/** Degrees C between which water is neither ice nor deadly to every fish (ours). */
const WATER = { low: 0, high: 45 };

function isWater({ low, high }: Interval): boolean {
  return low <= WATER.high && high >= WATER.low;
}

/** The words between quotes, as written. */
export function quoteText(line: string, at: Piece): string {
  return line.slice(at.from + 1, at.to - 1).trim();
}

/** What a unit measures, in words, and a unit that would do. */
const WANTED: Readonly<Record<Unit, readonly [string, string]>> = {
  mm: ['a length', 'mm'],
  L: ['a volume', 'L'],
  'L/h': ['a flow', 'L/h'],
  g: ['a weight', 'g'],
  C: ['a temperature', 'C'],
  'mg/L': ['a concentration', 'mg/L'],
  dH: ['a hardness', 'dH'],
  pH: ['a pH', ''],
  'uS/cm': ['a conductivity', 'µS/cm'],
  ppt: ['a salinity', 'ppt'],
  minutes: ['a length of time', 'min'],
  days: ['a number of days', 'days'],
  share: ['a share', '%'],
  'g/L': ['a dose', 'g/L'],
  'mL/L': ['a dose', 'mL/L'],
  mL: ['a volume', 'mL'],
};

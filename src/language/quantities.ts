/**
 * Numbers as written → intervals. A number is what it says; a word beside it makes it a guess, and the
 * guess keeps its width. Fish are counted in whole ones, so a guess of fish holds the whole numbers inside.
 */
import type { QuantityNode, WordNode } from '../../grammar/syntax.ts';
import { NUMBER_WORDS } from '../../grammar/words.ts';
import { between, exactly } from '../core/interval.ts';
import type { Interval } from '../core/interval.ts';
import { convert, neat } from '../core/units.ts';
import type { UnitName } from '../core/units.ts';
import { measure } from '../core/quantity.ts';
import type { Measure, Unit } from '../core/quantity.ts';
import type { Heads } from '../journal/event.ts';

const FRACTIONS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** The value of a number as written: `18`, `3,5`, `1½`, `six`. */
export function figureValue(node: WordNode): number {
  const named = NUMBER_WORDS.get(node.sense);
  if (named !== undefined) return named;
  const last = node.text.at(-1) ?? '';
  const fraction = FRACTIONS[last] ?? 0;
  const digits = fraction > 0 ? node.text.slice(0, -1) : node.text;
  return (digits === '' ? 0 : Number(digits.replace(',', '.'))) + fraction;
}

/** The share by which `about` may be off, either way. */
const ABOUT = 0.25;

export type Guessed = Pick<Heads, 'total' | 'as'>;

/** A number of fish. */
export function countOf(node: QuantityNode): Guessed {
  if (node.word !== null) return wordCount(node.word.sense);
  const first = figureValue(node.numbers[0] ?? { text: '0', sense: '', from: 0, to: 0 });
  if (node.high !== null) {
    const high = figureValue(node.high);
    return { total: between(first, high, Math.floor((first + high) / 2)), as: 'guess' };
  }
  if (node.plus) return { total: { low: first, likely: null, high: Infinity }, as: 'guess' };
  switch (node.fuzz) {
    case 'over':
      return { total: { low: first + 1, likely: null, high: Infinity }, as: 'guess' };
    case 'under':
      return { total: { low: 0, likely: null, high: Math.max(0, first - 1) }, as: 'guess' };
    case 'about':
      return { total: about(first), as: 'about' };
    case null:
      return { total: exactly(first), as: 'counted' };
    default:
      return { total: exactly(first), as: 'counted' };
  }
}

/** A quarter either way and at least one fish: the whole numbers inside. */
function about(value: number): Interval {
  const off = Math.max(1, value * ABOUT);
  return { low: Math.max(0, Math.ceil(value - off)), likely: value, high: Math.floor(value + off) };
}

function wordCount(sense: string): Guessed {
  const open = (low: number): Guessed => ({ total: { low, likely: null, high: Infinity }, as: 'guess' });
  switch (sense) {
    case 'a few':
      return { total: between(3, 6, 4), as: 'guess' };
    case 'couple':
      return { total: between(2, 3, 2), as: 'guess' };
    case 'dozen':
      return { total: about(12), as: 'about' };
    case 'loads':
      return open(50);
    case 'some':
      return open(1);
    case 'none':
      return { total: exactly(0), as: 'counted' };
    default:
      return open(0);
  }
}

/** Off by this much where `about` stands before a value whose zero is a convention. */
const ABOUT_STEP: Readonly<Partial<Record<Unit, number>>> = { C: 1, pH: 0.2 };

/** A measured value in a canonical unit, or null where `unit` measures something else. */
export function measureOf<U extends Unit>(node: QuantityNode, unit: UnitName | null, to: U): Measure<U> | null {
  const value = (figure: WordNode): number | null =>
    unit === null ? figureValue(figure) : convert(figureValue(figure), unit, to);
  const first = value(node.numbers[0] ?? { text: '0', sense: '', from: 0, to: 0 });
  if (first === null) return null;
  const last = node.high === null ? null : value(node.high);
  const { low, likely, high } = spread(node, first, last, to);
  return measure(to, low, likely, high);
}

function spread(node: QuantityNode, first: number, last: number | null, to: Unit): Interval {
  if (last !== null) return { low: first, likely: neat((first + last) / 2), high: last };
  if (node.plus || node.fuzz === 'over') return { low: first, likely: null, high: Infinity };
  if (node.fuzz === 'under') return { low: 0, likely: null, high: first };
  if (node.fuzz === null) return exactly(first);
  const off = ABOUT_STEP[to] ?? Math.abs(first) * ABOUT;
  return { low: neat(first - off), likely: first, high: neat(first + off) };
}

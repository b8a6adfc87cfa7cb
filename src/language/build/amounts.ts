/** Amounts and days that several kinds of clause share. */
import type { LinkNode, QuantityNode } from '../../../grammar/syntax.ts';
import { addDays } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure, Unit } from '../../core/quantity.ts';
import type { Dose, WaterAmount } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { asRemark, fault } from '../faults.ts';
import { figureValue } from '../quantities.ts';

/** The day after `until`, or so many days from the line's own. */
export function untilDay(clause: Clause): Day | null {
  const until = clause.linked('until');
  if (until !== null) return clause.toDay(until.value, 'ahead');
  const length = lasting(clause, 'days');
  return length === null ? null : addDays(clause.day, Math.ceil(length.high));
}

/** Stands for a day that is missing: the line gets a fault and counts for nothing. */
export function needDay(clause: Clause, link: 'until' | 'by'): Day {
  if (clause.line.faults.length === 0) clause.missing('a date', `${link} 2026-02-20`);
  return clause.day;
}

/** `by`, or `on`, a day that is ahead; null where none is named. */
export function deadline(clause: Clause): Day | null {
  const by = clause.linked('by') ?? clause.linked('on');
  return by === null ? null : clause.toDay(by.value, 'ahead');
}

/** `for 28 days`, `for 1 h`. */
export function lasting<U extends 'days' | 'minutes'>(clause: Clause, unit: U): Measure<U> | null {
  return linkedMeasure(clause, 'for', unit) ?? clause.maybe(unit);
}

/** The number after a word: `at 31 C`, `wait 14 days`. */
export function linkedMeasure<U extends Unit>(clause: Clause, link: LinkNode['link'], unit: U): Measure<U> | null {
  const linked = clause.linked(link);
  if (linked === null) return null;
  if (linked.value.type === 'quantity') return clause.toMeasure(linked.value, unit);
  // `heater off for wc` says why.
  const why = link === 'for' && linked.value.type !== 'quote' ? `"${clause.written(linked.at)}"` : null;
  const says = `after \`${clause.written(linked.at).split(/\s/)[0] ?? link}\` comes a number`;
  clause.fault('no-number', why === null ? linked.value : linked.at, says, why);
  return null;
}

/** A share or a volume of water; null where the clause gives neither. */
export function waterAmount(clause: Clause): WaterAmount | null {
  const words = clause.link('part');
  if (words !== null) return measure('share', partInWords(clause.written(words)));
  const node = clause.quantity(
    (each) => each.unit === null || clause.measuresIn(each, 'share') || clause.measuresIn(each, 'L'),
  );
  if (node === null) return otherAmount(clause);
  if (node.scoop !== null) return scooped(clause, node);
  if (node.word?.sense === 'half') return measure('share', 0.5);
  const part = partOf(clause, node);
  if (part !== null) return measure('share', part);
  if (node.unit === null) {
    const says = `«${clause.written(node)}» may be % or L`;
    clause.fault('which-unit', node, says, `${clause.written(node)} %`);
    return null;
  }
  if (!clause.measuresIn(node, 'share')) return clause.toMeasure(node, 'L');
  const share = clause.toMeasure(node, 'share');
  if (share !== null && share.low > 1) {
    clause.fault('more-than-all', node, `«${clause.written(node)}» is more than all the water`);
  }
  if (share?.high === 0)
    clause.fault('does-not-belong', node, `«${clause.written(node)}» is no water that was changed`);
  return share;
}

/** `a third`, `three quarters`. */
function partInWords(words: string): number {
  const times = /^two\s/iu.test(words) ? 2 : /^three\s/iu.test(words) ? 3 : 1;
  return inFourDigits(times / (/thirds?$/iu.test(words) ? 3 : 4));
}

/** Nobody changes a third to the drop: four digits are as good, and print short. */
function inFourDigits(part: number): number {
  return Math.round(part * 1e4) / 1e4;
}

/** `1/3`, `½`: a part of one; null for any other number. */
function partOf(clause: Clause, node: QuantityNode): number | null {
  const [figure] = node.numbers;
  const alone = node.unit === null && node.high === null && node.fuzz === null && !node.plus;
  if (figure === undefined || !alone || node.numbers.length > 1) return null;
  const of = clause.rest.find((detail) => detail.type === 'link' && detail.link === 'of');
  const whole = of?.type === 'link' && clause.written(of).startsWith('/') ? of.values[0] : undefined;
  const under = whole?.type === 'quantity' ? (whole.numbers[0] ?? null) : null;
  const exact = figureValue(figure) / (under === null ? 1 : figureValue(under));
  const part = inFourDigits(exact);
  // Of three thirds and more nobody can say what they mean, and `1` alone is a number without its unit.
  if (!(part > 0 && part < 1)) return null;
  if (under !== null) clause.link('of');
  return part;
}

/** A number in a unit that no water is measured in, `30 mm`: said so, with the unit that a change has. */
function otherAmount(clause: Clause): null {
  const node = clause.quantity((each) => each.numbers.length > 0 && !clause.measuresIn(each, 'minutes'));
  if (node !== null && node.unit !== null) {
    const unit = clause.written(node.unit);
    clause.fault('wrong-unit', node.unit, `«${unit}» is no unit for an amount of water: % or L`, '%');
  }
  return null;
}

/** Litres of a bucket of one's own. */
function scooped(clause: Clause, node: QuantityNode): Measure<'L'> | null {
  const name = node.scoop?.sense ?? '';
  const own = clause.line.conventions.ownMeasure(name, clause.day)?.volume ?? null;
  if (own === null) {
    // Litres that nobody wrote are offered to nobody: the words stay as the remark of a change of unknown size.
    const says = `how much one ${name} holds has not been said (\`room: ${name} 12 L\`)`;
    const edit = { from: node.from, to: node.to, text: asRemark(clause.written(node)) };
    clause.line.faults.push({ ...fault('unknown-measure', node.scoop ?? node, says), edit });
    return null;
  }
  const count = clause.toMeasure({ ...node, scoop: null }, 'pH');
  if (count === null) return null;
  const times = (value: number): number => value * own.low;
  return measure('L', times(count.low), count.likely === null ? null : times(count.likely), times(count.high));
}

/** Litres topped up; not known where the line does not say. */
export function litres(clause: Clause): Measure<'L'> {
  clause.link('with');
  const node = clause.quantity();
  if (node === null) return measure('L', 0, null, Infinity);
  return (node.scoop === null ? clause.toMeasure(node, 'L') : scooped(clause, node)) ?? measure('L', 0);
}

/** An amount put into the water: a weight, a volume, so much a litre, or in measures of one's own. */
export function doseOf(clause: Clause): Dose | null {
  const node = clause.quantity((each) => each.unit !== null || each.scoop !== null);
  if (node === null) return null;
  if (node.scoop !== null) {
    const value = node.numbers[0];
    return { unit: 'own', count: value === undefined ? 1 : figureValue(value), name: node.scoop.sense };
  }
  for (const unit of ['g', 'g/L', 'mL/L'] as const)
    if (clause.measuresIn(node, unit)) return clause.toMeasure(node, unit);
  if (clause.measuresIn(node, 'mg/L')) return clause.toMeasure(node, 'g/L');
  return clause.toMeasure(node, 'mL');
}

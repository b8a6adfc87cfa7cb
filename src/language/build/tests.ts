/** What a water test found. Nitrogen is kept as N; the room says once how its kit reports it. */
import type { LinkName } from '../../../grammar/phrases.ts';
import type { LinkNode, QuantityNode } from '../../../grammar/syntax.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure, Unit } from '../../core/quantity.ts';
import { AS_NITROGEN, neat } from '../../core/units.ts';
import type { Reading } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { figureValue } from '../quantities.ts';
import { isLink } from './prices.ts';
import type { Body } from './table.ts';

type Mutable<T> = { -readonly [P in keyof T]: T[P] };

const NOTHING: Reading = {
  ph: null,
  kh: null,
  gh: null,
  tan: null,
  no2: null,
  no3: null,
  temperature: null,
  conductivity: null,
  salinity: null,
  oxygen: null,
  chlorine: null,
};

export function tested(clause: Clause): Body {
  const reading: Mutable<Reading> = { ...NOTHING };
  const factor = nitrogen(clause);
  doubtHeat(clause);
  doubtSalinity(clause);
  for (const was of clause.takeAll((detail): detail is LinkNode => isLink(detail, 'was'))) clause.setAside(was);
  reading.ph = value(clause, 'pH', 'pH');
  reading.kh = value(clause, 'KH', 'dH');
  reading.gh = value(clause, 'GH', 'dH');
  reading.tan = times(value(clause, 'TAN', 'mg/L'), factor('tan'));
  reading.no2 = times(value(clause, 'NO2', 'mg/L'), factor('no2'));
  reading.no3 = times(value(clause, 'NO3', 'mg/L'), factor('no3'));
  reading.conductivity = value(clause, 'conductivity', 'uS/cm') ?? fromSolids(clause) ?? clause.maybe('uS/cm');
  reading.salinity = value(clause, 'salinity', 'ppt') ?? clause.maybe('ppt');
  reading.oxygen = value(clause, 'oxygen', 'mg/L');
  reading.chlorine = value(clause, 'chlorine', 'mg/L');
  reading.temperature = value(clause, 'temperature', 'C') ?? clause.maybe('C');
  while (clause.flag('and'));
  if (Object.values(reading).every((each) => each === null)) clause.missing('a reading', 'pH 7.2');
  return { kind: 'tested', reading };
}

/** `temp up to 29`: read on a thermometer, or the heater turned up? `nitrate up to 40`: risen, or at most? */
function doubtHeat(clause: Clause): void {
  for (const said of clause.rest) {
    const words = clause.written(said);
    const [, name, number] = /^(.+?)\s+up\s+to\s+(.+)$/iu.exec(words) ?? [];
    if (said.type !== 'link' || name === undefined || number === undefined) continue;
    const other = said.link === 'temperature' ? `the heater turned up (\`heat to ${number}\`)` : 'as much at most';
    const says = `«${words}» may be a reading (\`${name} ${number}\`) or ${other}: write which`;
    clause.fault('two-readings', said, says, `${name} ${number}`);
  }
}

/** `salinity 1.005`: in parts of a thousand that is next to nothing, as a specific gravity it is a salty tank. */
function doubtSalinity(clause: Clause): void {
  const said = clause.rest.find((detail) => detail.type === 'link' && detail.link === 'salinity');
  const value = said?.type === 'link' ? said.values[0] : undefined;
  if (value?.type !== 'quantity' || value.unit !== null || !/^1[.,]0\d\d?$/.test(clause.written(value))) return;
  clause.fault(
    'which-unit',
    value,
    `«${clause.written(value)}» may be a specific gravity or ppt; salinity is kept in ppt`,
  );
}

/**
 * A meter of dissolved solids measures conductivity, and shows it times a factor that its maker chose: in fresh water
 * 0.48 mg/L for each µS/cm where it stands for table salt, up to 0.71 for a mixture like natural water (table of a
 * conductivity meter's manual, Nova-Tech pH/CON 300, appendix 1). Nobody writes which beside a reading.
 */
const SOLIDS = { low: 0.48, high: 0.71 };

function fromSolids(clause: Clause): Measure<'uS/cm'> | null {
  const at = clause.rest.find((detail) => isLink(detail, 'solids')) ?? null;
  const read = value(clause, 'solids', 'mg/L');
  if (at === null || read === null) return null;
  clause.setAside(at);
  const [low, high] = [Math.floor(read.low / SOLIDS.high), Math.ceil(read.high / SOLIDS.low)];
  return measure('uS/cm', low, (low + high) / 2, high);
}

/** Written in the line, else as the room's kit does; where nobody said, as N. */
function nitrogen(clause: Clause): (of: keyof typeof AS_NITROGEN) => number {
  const [asN, asIon] = [clause.flag('asN'), clause.flag('asIon')];
  const ion = asIon || (!asN && clause.line.conventions.nitrogen.on(clause.day) === 'ion');
  return (of) => (ion ? AS_NITROGEN[of] : 1);
}

function times(read: Measure<'mg/L'> | null, factor: number): Measure<'mg/L'> | null {
  if (read === null || factor === 1) return read;
  const by = (number: number): number => neat(number * factor);
  return measure('mg/L', by(read.low), read.likely === null ? null : by(read.likely), by(read.high));
}

function value<U extends Unit>(clause: Clause, label: LinkName, unit: U): Measure<U> | null {
  const found = clause.linked(label);
  if (found === null) return null;
  const now = becameOf(clause, label, found.at);
  if (now !== null) return label === 'temperature' ? null : read(clause, label, unit, now);
  return read(clause, label, unit, found);
}

/** `pH 7.2 -> 6.8`: what it was is kept as a remark. Of `temp 24 -> 27` nobody knows whether the heater was turned up. */
function becameOf(clause: Clause, label: LinkName, before: LinkNode): ReturnType<Clause['linked']> {
  const next = clause.rest.find((detail) => detail.from >= before.to);
  if (next === undefined || !isLink(next, 'became')) return null;
  const now = clause.linked('became');
  clause.setAside(before);
  if (now !== null && label === 'temperature') {
    const [was, is] = [clause.written(before), clause.written(now.value)];
    const place = { from: before.from, to: now.at.to };
    const says = `«${clause.written(place)}» may be two readings (\`temp ${is}, was …\`) or the heater turned up (\`heat to ${is}\`): write which`;
    clause.fault('two-readings', place, says, `temp ${is}, was ${was.replace(/^\D+/u, '')}`);
  }
  return now;
}

function read<U extends Unit>(
  clause: Clause,
  label: LinkName,
  unit: U,
  found: { readonly at: LinkNode; readonly value: LinkNode['values'][number] },
): Measure<U> | null {
  if (found.value.type !== 'quantity') {
    clause.fault('no-number', found.value, `after \`${label}\` comes a number`);
    return null;
  }
  if (unit === 'pH' && isNoPh(found.value)) outside(clause, found.at, found.value);
  return clause.toMeasure(found.value, unit);
}

/** The pH of any water lies between these. */
function isNoPh(node: QuantityNode): boolean {
  return [...node.numbers, ...(node.high === null ? [] : [node.high])].some((figure) => figureValue(figure) > 14);
}

function outside(clause: Clause, at: LinkNode, node: QuantityNode): void {
  clause.fault('out-of-range', node, `${clause.written(at)} cannot be: a pH lies between 0 and 14`);
}

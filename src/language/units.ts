/** Which unit a number is in: the one written, else what the room's convention says. Never a guess between two. */
import type { QuantityNode } from '../../grammar/syntax.ts';
import { UNIT_WORDS } from '../../grammar/words.ts';
import type { UnitWord } from '../../grammar/words.ts';
import type { Unit } from '../core/quantity.ts';
import type { UnitName } from '../core/units.ts';
import type { UnitSystem } from './conventions.ts';
import { figureValue } from './quantities.ts';

/** What is measured, where the canonical unit does not say how a bare number is meant. */
export type Quality = 'edge' | 'plain';

/** Two units that a number may be in, each as it would be written. */
export interface EitherUnit {
  readonly either: readonly [string, string];
}

/** The unit of a number that is to be in canonical `to`; null for a bare number without a unit of its own (pH). */
export function unitOf(
  node: QuantityNode,
  to: Unit,
  system: UnitSystem | null,
  quality: Quality = 'plain',
): UnitName | EitherUnit | null {
  const written = node.unit === null ? null : (UNIT_WORDS.get(plainSpelling(node.unit.text)) ?? null);
  if (written === null || written === 'degrees') return bareUnit(node, to, system, quality);
  return resolve(written, to, system);
}

export function isEither(unit: UnitName | EitherUnit | null): unit is EitherUnit {
  return unit !== null && typeof unit === 'object';
}

function plainSpelling(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\t ]*\/[\t ]*/g, '/')
    .replace(/[\t ]+/g, ' ');
}

/** `gal` and `gph` are of two sizes; hardness may be written in parts per million of CaCO3. */
function resolve(written: Exclude<UnitWord, 'degrees'>, to: Unit, system: UnitSystem | null): UnitName | EitherUnit {
  if (written === 'gal') {
    if (system === null) return { either: ['US gal', 'imp gal'] };
    return system === 'imperial' ? 'imp gal' : 'US gal';
  }
  if (written === 'gph') {
    if (system === null) return { either: ['US gph', 'imp gph'] };
    return system === 'imperial' ? 'imp gph' : 'US gph';
  }
  if (to === 'dH' && (written === 'ppm' || written === 'mg/L')) return 'mg/L CaCO3';
  return written;
}

/** A temperature up to here can only be in C, and from there only in F, in water that fish live in. */
const WARMEST_C = 45;
const COLDEST_F = 46;
/** Harder water than this in German degrees is none that a bare number means. */
const HARDEST_BARE = 30;

function bareUnit(
  node: QuantityNode,
  to: Unit,
  system: UnitSystem | null,
  quality: Quality,
): UnitName | EitherUnit | null {
  switch (to) {
    case 'mm':
      if (system === 'US' || system === 'imperial') return 'in';
      return quality === 'edge' ? 'cm' : 'mm';
    case 'L':
      if (system === null) return { either: ['L', 'gal'] };
      return ({ metric: 'L', US: 'US gal', imperial: 'imp gal' } as const)[system];
    case 'L/h':
      if (system === null) return { either: ['L/h', 'gph'] };
      return ({ metric: 'L/h', US: 'US gph', imperial: 'imp gph' } as const)[system];
    case 'C':
      return bareTemperature(node, system);
    case 'dH':
      return highest(node) > HARDEST_BARE ? { either: ['dH', 'mg/L CaCO3'] } : 'dH';
    case 'mg/L':
      return 'mg/L';
    case 'uS/cm':
      return 'uS/cm';
    case 'ppt':
      return 'ppt';
    case 'g':
      return 'g';
    case 'days':
      return 'days';
    case 'minutes':
      return 'minutes';
    case 'share':
      return '%';
    case 'pH':
    case 'g/L':
    case 'mL/L':
    case 'mL':
      return null;
    default:
      return null;
  }
}

function bareTemperature(node: QuantityNode, system: UnitSystem | null): UnitName | EitherUnit {
  if (system === 'metric') return 'C';
  if (system === 'US') return 'F';
  const value = highest(node);
  if (value <= WARMEST_C) return 'C';
  return value >= COLDEST_F ? 'F' : { either: ['C', 'F'] };
}

function highest(node: QuantityNode): number {
  return Math.max(0, ...[...node.numbers, ...(node.high === null ? [] : [node.high])].map(figureValue));
}

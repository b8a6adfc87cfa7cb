/**
 * Older young that may hurt or eat younger ones in the same tank. Younger than 8 mm: watch from 1 mm
 * apart, danger from 4 mm; longer: watch from 1.8 times the length, danger from 2.4 times. (Attacks from
 * about 1 mm, predation from 4–5 mm, vulnerable to about 8 mm: Fraser, Keenleyside & Wisenden 1993;
 * Fraser & Keenleyside 1995. Ratio: Fessehaye et al. 2006, from weights. The steps are ours.)
 */
import type { Because } from '../core/because.ts';
import type { Interval } from '../core/interval.ts';
import type { LineRef } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { countWords } from '../core/words.ts';
import { BROOD_CV, topOf } from '../science/growth.ts';
import { bodiesIn, isBrood, partIn, speciesOf } from '../state/bodies.ts';
import type { SeenBody, SeenBrood } from '../state/bodies.ts';
import { reached } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { adultSize, sizeOn } from './growing.ts';
import { rowId } from './id.ts';
import { laidDay } from './laying.ts';

/** What puts a brood in doubt; it is told under its row. */
export interface BroodWarning {
  readonly id: string;
  readonly younger: SeenBrood;
  readonly weight: 'danger' | 'watch';
  readonly text: string;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface Danger extends BroodWarning {
  readonly tank: string;
  readonly older: SeenBrood;
}

/** Length below which young are taken however little longer the others are, mm. */
const VULNERABLE = 8;
const GAP = { watch: 1, danger: 4 };
const RATIO = { watch: 1.8, danger: 2.4 };
/** So few left-overs, and no longer than this, scarcely matter (common practice, no source). */
const FEW = 3;
const SMALL = 10;

/** Every pair of broods in one tank of which the older may harm the younger. */
export function dangers(room: Room): Danger[] {
  return [...room.plumbing.tanks.keys()].flatMap((tank) => dangersIn(room, tank));
}

export function dangersIn(room: Room, tank: string): Danger[] {
  const swimming = bodiesIn(room, tank)
    .filter((body) => isBrood(body))
    .filter((brood) => reached(brood, 'swam') && partIn(brood, tank).high >= 1);
  if (swimming.length < 2) return [];
  return swimming.flatMap((older) =>
    swimming.flatMap((younger) => (older === younger ? [] : (dangerOf(room, tank, older, younger) ?? []))),
  );
}

/** What young of one tank, put to others, would do to them; those that do not swim yet are eaten by any that do. */
function harmOf(room: Room, older: SeenBrood, from: string, younger: SeenBrood): Danger['weight'] | null {
  if (isSiblingSafe(room, older) && older.species === younger.species) return null;
  if (reached(older, 'swam') && !reached(younger, 'swam')) return 'danger';
  return dangerOf(room, from, older, younger)?.weight ?? null;
}

/** True where young of one tank, put to others, would eat them. */
export function wouldEat(room: Room, older: SeenBrood, from: string, younger: SeenBrood): boolean {
  return harmOf(room, older, from, younger) === 'danger';
}

/** True where they may hurt them at least: nobody is sent to where he would have to be watched from the first day. */
export function mayHurt(room: Room, older: SeenBrood, from: string, younger: SeenBrood): boolean {
  return harmOf(room, older, from, younger) !== null;
}

/**
 * True where the fish of a group may hurt young put to them: by their length, because the young do not swim yet, or
 * because no line says how long or how old the others are, who may be grown.
 */
export function groupMayHurt(room: Room, group: SeenBody, tank: string, young: SeenBrood): boolean {
  if (!reached(young, 'swam') || sizeOn(room, group, room.on, tank) === null) return true;
  return lengthsOf(room, tank, group, young) !== null;
}

/** Two bodies of fish by length, mm: means of both, how many of the longer are left, their longest, and how grave that is. */
interface Lengths {
  readonly mean: number;
  readonly short: number;
  readonly left: Interval;
  readonly best: number;
  readonly gap: number;
  readonly ratio: number;
  readonly step: Danger['weight'];
}

/** Null where nobody knows a length, or the difference is nothing. */
function lengthsOf(room: Room, tank: string, older: SeenBody, younger: SeenBrood): Lengths | null {
  const mean = sizeOn(room, older, room.on, tank)?.likely ?? null;
  const short = sizeOn(room, younger, room.on, tank)?.likely ?? null;
  if (mean === null || short === null) return null;
  const left = partIn(older, tank);
  const best = Math.min(adultSize(room, older), mean * (1 + BROOD_CV * topOf(likelyCount(left))));
  const gap = best - short;
  const ratio = best / short;
  if (gap <= 0 || (left.high <= FEW && best <= SMALL)) return null;
  const step = short < VULNERABLE ? weigh(gap, GAP) : weigh(ratio, RATIO);
  return step === null ? null : { mean, short, left, best, gap, ratio, step };
}

function dangerOf(room: Room, tank: string, older: SeenBrood, younger: SeenBrood): Danger | null {
  if (isSiblingSafe(room, older) && older.species === younger.species) return null;
  const lengths = lengthsOf(room, tank, older, younger);
  if (lengths === null) return null;
  const { mean, short, left, best, gap, ratio, step } = lengths;
  // Of two of one length only the older is told of; one laid later that grew longer eats the others all the same.
  if (mean <= short && isYounger(room, older, younger)) return null;
  const read = [older, younger].every((brood) => brood.sizes.length > 0);
  const lines = linesOf([...older.lines.slice(-1), ...younger.lines.slice(-1)]);
  const mm = (value: number): string => `${String(Math.round(value))} mm`;
  return {
    id: rowId(tank, older.name, younger.name),
    tank,
    older,
    younger,
    weight: step,
    text: `${older.name} in ${tank}, about ${mm(best)} at the longest, ${step === 'danger' ? 'will eat' : 'may hurt'} ${younger.name}, about ${mm(short)}${read ? '' : ', by usual growth'}`,
    because: {
      rule: `younger than ${String(VULNERABLE)} mm: watch from ${String(GAP.watch)} mm apart, danger from ${String(GAP.danger)} mm; longer: watch from ${String(RATIO.watch)} times the length, danger from ${String(RATIO.danger)} times`,
      source:
        'Fraser, Keenleyside & Wisenden 1993; Fraser & Keenleyside 1995; Fessehaye et al. 2006; the steps are ours',
      steps: [
        `${older.name}: ${countWords(left)} in ${tank}, mean ${mm(mean)}, the longest about ${mm(best)}`,
        `${younger.name}: mean ${mm(short)}`,
        `${mm(gap)} apart, ${ratio.toFixed(1)} times as long`,
        read ? 'both were measured' : 'not both were measured: lengths as is usual for such fish',
      ],
      lines,
    },
    lines,
  };
}

/** Fish whose older young leave the younger alone, by their species or by how such fish breed. */
export function isSiblingSafe(room: Room, brood: SeenBrood): boolean {
  const traits = speciesOf(room, brood)?.traits;
  return traits?.siblingSafe ?? traits?.guild === 'rock spawner';
}

function isYounger(room: Room, a: SeenBrood, b: SeenBrood): boolean {
  return (laidDay(room, a) ?? 0) > (laidDay(room, b) ?? 0);
}

function weigh(value: number, steps: { readonly watch: number; readonly danger: number }): Danger['weight'] | null {
  return value >= steps.danger ? 'danger' : value >= steps.watch ? 'watch' : null;
}

function likelyCount(count: Interval): number {
  if (count.likely !== null) return Math.max(1, count.likely);
  return Number.isFinite(count.high) ? Math.max(1, Math.round((count.low + count.high) / 2)) : 20;
}

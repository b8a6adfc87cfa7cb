/** A temporary measure that has stood open so long that its undo was surely not written down. */
import { isoDay } from '../core/day.ts';
import type { Problem } from '../core/problem.ts';
import { plural } from '../core/words.ts';
import type { MeasureKind } from '../journal/event.ts';
import { openRigs } from '../state/rigs.ts';
import type { Check } from './check.ts';

/**
 * Days. The most patient reminder comes after a week; four times that and nobody is still waiting for
 * it. Our own judgement, no source.
 */
const FORGOTTEN_AFTER = 28;

const UNDO: Readonly<Record<MeasureKind, string>> = {
  'off the loop': 'back on the loop',
  'air filter': 'air filter out',
  'lights off': 'lights on',
  'rocks out': 'rocks in',
  divider: 'divider out',
  'pump off': 'pump on',
  'heater off': 'heater on',
  'heat raised': 'heat normal',
  'breeder net': 'breeder net out',
};

export const forgottenUndo: Check = ({ room }) =>
  openRigs(room)
    .filter((rig) => room.on - rig.day > FORGOTTEN_AFTER)
    .map((rig): Problem => ({
      kind: 'forgotten-undo',
      weight: 'doubt',
      says: `«${rig.kind}» in ${rig.where} has stood open for ${plural(room.on - rig.day, 'day')}: was its undo not written down?`,
      write: `${isoDay(room.on)} ${rig.where}: ${UNDO[rig.kind]}${STAYS.has(rig.kind) ? `   (or, if it is to stay: ${rig.kind} stays)` : ''}`,
      at: rig.begun,
      also: [],
    }));

/** Measures that may become the usual state of a tank. */
const STAYS: ReadonlySet<MeasureKind> = new Set<MeasureKind>(['off the loop', 'air filter', 'divider']);

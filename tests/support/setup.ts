/** Set-up lines that most rooms of a test need. */
import type { MeasureKind } from '../../src/journal/event.ts';
import type { FishRef } from '../../src/journal/subject.ts';
import type { Line } from './events.ts';
import { tank } from './events.ts';

/** A loop, set up on a day. */
export function loopLine(on: string, name: string): Line {
  return [
    on,
    { kind: 'loop', loop: name },
    { kind: 'loop declared', loop: name, sump: null, returnFlow: null, layers: null, spillsAt: null, spare: null },
  ];
}

/** A tank on a loop, or alone; `quarantine` marks it as the quarantine tank. */
export function tankLine(on: string, name: string, loop: string | null = null, quarantine = false): Line {
  return [
    on,
    tank(name),
    {
      kind: 'tank declared',
      tank: name,
      size: null,
      nominal: null,
      live: null,
      plumbing: loop === null ? 'alone' : { on: loop },
      filter: null,
      quarantine: quarantine ? true : null,
      inTank: null,
      heated: null,
      hides: null,
    },
  ];
}

export function rigLine(on: string, where: string, measure: MeasureKind): Line {
  return [on, tank(where), { kind: 'measure begun', measure, until: null, lasts: null, over: false, to: null }];
}

export function undoLine(on: string, where: string, measure: MeasureKind): Line {
  return [on, tank(where), { kind: 'measure undone', measure }];
}

export function groupRef(group: string): FishRef {
  return { kind: 'group', group, member: null };
}

export function broodRef(brood: string): FishRef {
  return { kind: 'brood', brood };
}

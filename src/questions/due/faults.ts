/** Faults that no line has ended: what broke, since when, and how it is closed. */
import { onDay } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { dayWords } from '../../core/words.ts';
import { linesOf } from '../../core/span.ts';
import { sameWords } from '../../state/chores.ts';
import type { Room } from '../../state/draft.ts';
import { LEAK } from '../../state/faults.ts';
import type { Fault } from '../../state/measures.ts';
import { sharers } from '../../state/tanks.ts';
import { rowId } from '../id.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';

type OpenFault = DeepReadonly<Fault>;

interface Manner {
  readonly what: (fault: OpenFault) => string;
  readonly weight: 2 | 3;
  readonly close: string;
  readonly caution?: string;
  readonly pressing: boolean;
}

const MANNERS: Readonly<Record<Fault['kind'], Manner>> = {
  fault: { what: ({ text }) => `mend: ${text}`, weight: 2, close: 'fixed', pressing: false },
  leak: {
    what: () => 'leak: find it, stop it, dry the floor',
    weight: 3,
    close: 'fixed',
    caution: CAUTION.wetFloor,
    pressing: true,
  },
  overflow: {
    what: () => 'overflowed: stop it, clean the prefilter, see to the media',
    weight: 3,
    close: 'fixed',
    caution: CAUTION.wetFloor,
    pressing: true,
  },
  power: {
    what: () => 'power is off: air on batteries, heaters and pumps checked when it is back',
    weight: 3,
    close: 'power on',
    caution: CAUTION.power,
    pressing: true,
  },
  'heater stuck': {
    what: ({ text }) => `${text}: pull its plug, cool slowly`,
    weight: 3,
    close: 'fixed',
    caution: CAUTION.heater,
    pressing: true,
  },
};

export function faultsDue(room: Room): readonly DueItem[] {
  return room.measures.faults
    .filter((fault) => fault.fixed === null && !isRetired(room, fault))
    .map((fault) => faultRow(room, fault));
}

function isRetired(room: Room, fault: OpenFault): boolean {
  return (room.plumbing.tanks.get(fault.where)?.retired ?? null) !== null;
}

function faultRow(room: Room, fault: OpenFault): DueItem {
  const manner = MANNERS[fault.kind];
  const lines = linesOf([fault.begun]);
  const hours = fault.minute === null ? '' : ` at ${clock(fault.minute)}`;
  const since = `open since ${dayWords(fault.day, room.on)}${hours}`;
  const shared = sharers(room, fault.where).length;
  const reach = fault.kind === 'heater stuck' && shared > 1 ? [`${shared} tanks share that water`] : [];
  return {
    id: isNamed(fault) ? rowId(fault.where, fault.kind, fault.text) : rowId(fault.where, fault.kind),
    place: fault.where,
    what: `${manner.what(fault)}${isNamed(fault) && fault.kind === 'leak' ? ` (${fault.text})` : ''}`,
    kind: 'fault',
    due: onDay(fault.day),
    weight: manner.weight,
    why: [since, ...reach].join('; '),
    close: closeOf(room, fault, manner),
    ...(manner.caution === undefined ? {} : { caution: manner.caution }),
    putOffKey: fault.text,
    putOffAlso: [fault.kind],
    pressing: manner.pressing,
    minutes: null,
    because: {
      rule: `a fault is open until a «${manner.close}» line`,
      source: 'the journal',
      steps: [`«${fault.text}» on ${dayWords(fault.day, room.on)}${hours}`],
      lines,
    },
    lines,
  };
}

/** Told by its words: every fault of the keeper's own words, and a leak of which they say where it is. */
function isNamed({ kind, text }: OpenFault): boolean {
  return kind === 'fault' || (kind === 'leak' && !sameWords(text, LEAK));
}

/** Where several faults of one place are open, the line names the one that it ends. */
function closeOf(room: Room, fault: OpenFault, { close }: Manner): string {
  const open = room.measures.faults.filter((one) => one.where === fault.where && one.fixed === null);
  return open.length > 1 && close === 'fixed' ? `${fault.where}: fixed "${fault.text}"` : `${fault.where}: ${close}`;
}

function clock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

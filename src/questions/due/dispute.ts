/**
 * Open disputes: wait, act, part or ask, by day and worst sign. On a divider they are parted, and the divider's own row
 * speaks, unless one was hurt: it is looked at until a line says that they are calmer.
 */
import { onDay } from '../../core/interval.ts';
import { tankInLine } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { bodiesIn, isBrood } from '../../state/bodies.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import { openDispute } from '../../state/quarrel.ts';
import { openRigs } from '../../state/rigs.ts';
import { rowId } from '../id.ts';
import { pairRow } from '../pairs.ts';
import type { OpenDispute, PairRow } from '../pairs.ts';
import { freeTank } from './destination.ts';
import type { DueItem, DueSource } from './item.ts';

export const disputesDue: DueSource = (room) => {
  const open = [...room.stock.groups.values()].flatMap((group) => {
    const asked = disputeAsked(room, group);
    return asked === null ? [] : [{ group, ...asked }];
  });
  return open.map(({ group, row, dispute }) => {
    const place = row.tank ?? row.name;
    const alone = open.filter((other) => other.row.tank === row.tank).length === 1;
    return item(room, group, row, dispute, rowId(...(alone ? [place] : [place, row.name]), 'dispute'));
  });
};

/** The dispute of a group that has a row of its own; null without one, and on a divider unless one was hurt. */
export function disputeAsked(room: Room, group: SeenGroup): { row: PairRow; dispute: OpenDispute } | null {
  if (openDispute(group) === null) return null;
  const row = pairRow(room, group);
  const { dispute } = row;
  if (dispute === null || (dispute.advice.step === 'parted' && !dispute.advice.grave)) return null;
  return { row, dispute };
}

function item(room: Room, group: SeenGroup, row: PairRow, dispute: OpenDispute, id: string): DueItem {
  const { advice } = dispute;
  return {
    id,
    place: row.tank ?? row.name,
    what: advice.what,
    kind: 'dispute',
    due: onDay(room.on),
    weight: weightOf(dispute),
    why: `${row.name}: ${advice.how}`,
    ...closing(room, group, dispute),
    caution: advice.caution,
    putOffKey: 'dispute',
    pressing: !advice.faded && (advice.rank >= 4 || advice.step === 'separate'),
    minutes: null,
    because: {
      rule: 'most disputes pass within 48 hours: wait by worst sign and day, act when either is passed, part them at once where it is dangerous',
      source: 'common practice, no source',
      steps: [...dispute.because.steps, ...advice.steps],
      lines: dispute.lines,
    },
    lines: dispute.lines,
  };
}

function weightOf({ advice }: OpenDispute): DueItem['weight'] {
  if (advice.faded) return 1;
  if (advice.step === 'parted') return 2;
  if (advice.step === 'separate' || advice.rank >= 4) return 3;
  return advice.step === 'ask' ? 1 : 2;
}

/** What a line begins with: the tank, or the name where several groups live in it. */
export function subjectFor(room: Room, group: SeenGroup): string {
  const tank = group.home;
  if (tank === null) return group.name;
  const breeders = bodiesIn(room, tank).filter((body) => !isBrood(body) && body.kind !== 'group');
  return breeders.length === 1 && breeders[0]?.name === group.name ? tank : group.name;
}

type Closing = Pick<DueItem, 'close' | 'sends'>;

function closing(room: Room, group: SeenGroup, dispute: OpenDispute): Closing {
  if (dispute.advice.step === 'separate') return parting(room, group);
  return { close: `${subjectFor(room, group)}: ${ending(room, group, dispute)}` };
}

/** One that is in already did not keep them apart, and is set anew. */
function dividerIn(room: Room, group: SeenGroup): string {
  return hasDivider(room, group) ? 'divider out, divider in' : 'divider in';
}

function hasDivider(room: Room, { home }: SeenGroup): boolean {
  return openRigs(room).some(({ kind, where }) => kind === 'divider' && where === home);
}

function ending(room: Room, group: SeenGroup, dispute: OpenDispute): string {
  const dark = dispute.measures.some((tried) => tried.measure === 'lights off' && tried.to === null);
  switch (dispute.advice.step) {
    case 'act':
    case 'separate':
      return dividerIn(room, group);
    case 'ask':
      if (dispute.advice.rank >= 4) return 'calmer';
      return dark ? 'made up, lights on' : 'made up';
    case 'parted':
      return 'calmer';
    case 'wait':
      // The row asks for a divider that is tight: with that done nothing has got past it.
      if (hasDivider(room, group)) return dividerIn(room, group);
      return dark ? 'made up, lights on' : 'made up';
  }
}

/** Moves the doer to an empty tank that is open to fish of theirs, where there is one and he is known; else the divider. */
function parting(room: Room, group: SeenGroup): Closing {
  const { home } = group;
  const subject = subjectFor(room, group);
  const empty = freeTank(room, home);
  const doer = group.disputes.at(-1)?.signs.findLast((sign) => sign.doer !== null)?.doer;
  const who = doer?.name ?? (doer?.sex ? `the ${doer.sex}` : null);
  if (who === null || empty === null) return { close: `${subject}: ${dividerIn(room, group)}` };
  return {
    close: `${subject}: moved ${who} to ${tankInLine(empty)}`,
    sends: { name: `${who} of ${group.name}`, brood: null, from: home, to: empty },
  };
}

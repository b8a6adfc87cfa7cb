/**
 * One dispute as it is told: how long, how bad, who on whom, what was tried, how it ended. Day 1 is
 * the day of its first sign.
 */
import type { Because } from '../../core/because.ts';
import type { Day } from '../../core/day.ts';
import { isoDay } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { lineOf, linesOf } from '../../core/span.ts';
import type { LineRef } from '../../core/span.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { MeasureKind } from '../../journal/event.ts';
import type { Member } from '../../journal/subject.ts';
import type { SeenBrood, SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';
import { boutsOf, rankOf } from '../../state/quarrel.ts';
import type { Dispute, DisputeSign } from '../../state/quarrel.ts';
import { isOpenOn } from '../../state/rigs.ts';
import { rowId } from '../id.ts';
import { laidDay } from '../laying.ts';

export type SeenDispute = DeepReadonly<Dispute>;
type SeenSign = DeepReadonly<DisputeSign>;

export interface Tried {
  readonly measure: MeasureKind;
  readonly from: Day;
  readonly to: Day | null;
  readonly line: LineRef;
}

export interface DisputeRow {
  /** `rowan-dispute-2026-02-14`. */
  readonly id: string;
  readonly from: Day;
  readonly to: Day | null;
  /** First to last day, both counted; of an open one, up to the day asked about. */
  readonly days: number;
  readonly worst: SeenSign['sign'];
  readonly rank: number;
  /** `male on female`, `each on the other`; null where nobody said. */
  readonly by: string | null;
  readonly measures: readonly Tried[];
  readonly endedBy: string | null;
  /** What happened shortly before it: `5 days after Rowan-2 was laid`. */
  readonly after: string | null;
  /** Stretches of more than 48 hours without a word inside it, told by the days between lines. */
  readonly gaps: readonly { readonly from: Day; readonly to: Day }[];
  /** The last day on which anybody wrote that it went on. */
  readonly lastSign: Day;
  readonly lines: readonly LineRef[];
  readonly because: Because;
}

/** Days within which a spawn or a taking away of young may have to do with a dispute (ours). */
const SOON = 10;

/** What can be rigged against a quarrel. */
const AGAINST: readonly MeasureKind[] = ['lights off', 'divider', 'breeder net', 'rocks out'];

export function disputeRow(room: Room, group: SeenGroup, dispute: SeenDispute): DisputeRow {
  const to = dispute.ended?.day ?? null;
  const worst = worstSign(dispute.signs);
  const days = (to ?? room.on) - dispute.from + 1;
  const measures = triedIn(room, group, dispute);
  const gaps = gapsIn(dispute);
  const places = [
    ...dispute.signs.map((sign) => sign.place),
    ...dispute.calmer.map((word) => word.place),
    ...(dispute.ended ? [dispute.ended.place] : []),
  ];
  const endedBy = dispute.ended?.how ?? null;
  const lines = linesOf(places);
  const after = shortlyBefore(room, group, dispute.from);
  return {
    id: rowId(group.name, 'dispute', isoDay(dispute.from)),
    from: dispute.from,
    to,
    days,
    worst: worst.sign,
    rank: rankOf(worst.sign),
    by: sidesOf(group, dispute.signs),
    measures,
    endedBy,
    after,
    gaps,
    lastSign: [...dispute.signs, ...dispute.calmer].reduce<Day>(
      (last, { day }) => (day > last ? day : last),
      dispute.from,
    ),
    lines,
    because: {
      rule: 'a dispute runs from its first sign until a line says that the pair made up, shimmied or spawned, or until its fish are parted; silence does not end it',
      source: 'common practice, no source',
      steps: [
        ...signSteps(dispute.signs, room.on),
        ...gaps.map(
          (gap) =>
            `no word from ${dayWords(gap.from, room.on)} to ${dayWords(gap.to, room.on)}, but nobody said that it was over`,
        ),
        ...(after === null ? [] : [`began ${after}`]),
        `worst sign: ${worst.sign} (${String(rankOf(worst.sign))} of 5)`,
        dispute.ended
          ? `ended ${dayWords(dispute.ended.day, room.on)}: ${dispute.ended.how}; ${plural(days, 'day')} in all`
          : `still open on ${dayWords(room.on, room.on)}: day ${String(days)}`,
      ],
      lines,
    },
  };
}

/** The worst of some signs; the latest of equals. Signs are never empty. */
export function worstSign(signs: readonly SeenSign[]): SeenSign {
  return signs.reduce((worst, sign) => (rankOf(sign.sign) >= rankOf(worst.sign) ? sign : worst));
}

/** Who on whom as the lines say, the latest two where it changed; `each on the other` where it went both ways. */
export function sidesOf(group: SeenGroup, signs: readonly SeenSign[]): string | null {
  const told = new Map<string, { doer: string; sufferer: string }>();
  for (const { doer, sufferer } of signs) {
    if (doer === null && sufferer === null) continue;
    const side = { doer: callOf(group, doer), sufferer: callOf(group, sufferer) };
    const words = sideWords(side);
    told.delete(words);
    told.set(words, side);
  }
  const sure = [...told.values()].filter((side) => !side.sufferer.startsWith('one of'));
  const sides = sure.length > 0 ? sure : [...told.values()];
  const [first, second] = sides.slice(-2);
  if (!first) return null;
  if (!second) return sideWords(first);
  const turned = first.doer === second.sufferer && first.sufferer === second.doer;
  return turned ? 'each on the other' : `${sideWords(first)}, then ${sideWords(second)}`;
}

function sideWords({ doer, sufferer }: { readonly doer: string; readonly sufferer: string }): string {
  if (doer === 'one') return `on ${sufferer}`;
  return `${doer} on ${sufferer === 'one' ? 'the other' : sufferer}`;
}

/** `Fern`, `female`, `one of Fern and Lark` where only her sex was said, `one` where nothing was. */
function callOf(group: SeenGroup, member: Member | null): string {
  if (member === null) return 'one';
  if (member.name !== null) return member.name;
  const same = livingMembers(group).filter((fish) => fish.sex === member.sex && fish.name !== null);
  if (same.length > 1) return `one of ${listWords(same.map((fish) => fish.name ?? ''))}`;
  return member.sex ?? 'one';
}

/** Measures against a quarrel that stood open in its tank while it ran. */
function triedIn(room: Room, group: SeenGroup, dispute: SeenDispute): Tried[] {
  const end = dispute.ended?.day ?? room.on;
  const tanks = new Set([...group.members.map((fish) => fish.tank), group.home]);
  return room.measures.rigs
    .filter((rig) => AGAINST.includes(rig.kind) && tanks.has(rig.where) && rig.day <= end)
    .filter((rig) => rig.day >= dispute.from || isOpenOn(rig, dispute.from))
    .map((rig) => ({ measure: rig.kind, from: rig.day, to: rig.closed?.day ?? null, line: lineOf(rig.begun) }));
}

/** Broods are noted in the order in which they were found: none is found so many days later than the next (ours). */
const FOUND_LATE = 120;

/** The broods that may have been laid shortly before a day, and all later ones; an old room is not gone through for a row of today. */
function broodsNear(room: Room, group: SeenGroup, day: Day): readonly SeenBrood[] {
  const found: SeenBrood[] = [];
  for (const name of group.broods.toReversed()) {
    const brood = room.stock.broods.get(name);
    if ((brood?.laid.high ?? day) < day - SOON - FOUND_LATE) break;
    if (brood !== undefined) found.unshift(brood);
  }
  return found;
}

/** The last spawn or taking away of young within ten days before a day, in words. */
function shortlyBefore(room: Room, group: SeenGroup, from: Day): string | null {
  const soon = (day: Day | null): day is Day => day !== null && day <= from && from - day <= SOON;
  const laid = broodsNear(room, group, from).flatMap((brood) => {
    const day = brood.suspected ? null : laidDay(room, brood);
    return soon(day) ? [{ day, what: `${brood.name} was laid` }] : [];
  });
  const moved = room.stock.moves
    .filter((move) => soon(move.day) && group.broods.includes(move.body) && livesIn(group, move.from))
    .map((move) => ({ day: move.day, what: `young of ${move.body} were moved out` }));
  const last = [...laid, ...moved].toSorted((a, b) => a.day - b.day).at(-1);
  if (!last) return null;
  return last.day === from ? `on the day that ${last.what}` : `${plural(from - last.day, 'day')} after ${last.what}`;
}

function livesIn(group: SeenGroup, tank: string | null): boolean {
  return tank !== null && (tank === group.home || group.members.some((fish) => fish.tank === tank));
}

function gapsIn(dispute: SeenDispute): DisputeRow['gaps'] {
  const words = [...dispute.signs, ...dispute.calmer.map((word) => ({ ...word, minute: null }))];
  const bouts = boutsOf(words.toSorted((a, b) => a.day - b.day));
  return bouts.slice(1).flatMap((bout, index) => {
    const before = bouts[index]?.at(-1);
    const after = bout[0];
    return before && after ? [{ from: before.day, to: after.day }] : [];
  });
}

function signSteps(signs: readonly SeenSign[], on: Day): string[] {
  const byDay = new Map<Day, string[]>();
  for (const sign of signs) byDay.set(sign.day, [...(byDay.get(sign.day) ?? []), sign.sign]);
  return [...byDay].map(([day, words]) => `${dayWords(day, on)}: ${words.join(', ')}`);
}

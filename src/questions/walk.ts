/**
 * The room tank by tank in walking order: who is in it, what stage, what is rigged, what to look at.
 * Held, sick and quarantine tanks come last, so that nothing is carried from them to the others.
 */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { linesOf } from '../core/span.ts';
import type { LineRef } from '../core/span.ts';
import { ageWords, sinceWords } from '../core/words.ts';
import { bodiesIn, isBrood, partIn } from '../state/bodies.ts';
import type { SeenBody, SeenGroup } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { openRigs } from '../state/rigs.ts';
import { homeLoopOf, loopOf } from '../state/tanks.ts';
import { due } from './due.ts';
import type { DueRow } from './due.ts';
import { rowId } from './id.ts';
import { lastReason } from './last.ts';
import { ageOf } from './laying.ts';
import { doingOf } from './pairs.ts';
import { leftOf } from './pairs/left.ts';
import { retiredWithFish, retiredWords, tanksWithFishToo, type Retired } from './retired.ts';
import { stageOf } from './stages.ts';
import type { WhyRow } from './whyrow.ts';

export interface WalkFish {
  readonly name: string;
  /** `krib pair`, `free-swimming, 13 days`. */
  readonly what: string;
  readonly count: Interval;
  /** True where the number of fish is no news: a pair of two. */
  readonly plain: boolean;
  /** `in a dispute`, `guarding Rowan-1`; null for none. */
  readonly doing: string | null;
}

export interface WalkTank {
  readonly id: string;
  readonly tank: string;
  readonly fish: readonly WalkFish[];
  /** What is rigged or broken, each with since when. */
  readonly rigged: readonly string[];
  /** What is due there today or late. */
  readonly look: readonly DueRow[];
  /** `held`, `sick`, `quarantine`: go there last, with its own net; null for the others. */
  readonly last: string | null;
  /** Set where it is retired and fish are on record there all the same. */
  readonly retired: Retired | null;
  readonly lines: readonly LineRef[];
  readonly because: Because;
}

export interface WalkAnswer {
  readonly on: Day;
  readonly tanks: readonly WalkTank[];
  /** What is due today at no tank: loops, cultures, the room. */
  readonly elsewhere: readonly DueRow[];
}

/** The room in walking order, with what is due today in each tank. */
export function walk(room: Room): WalkAnswer {
  const today = due(room, { days: 0, minutes: null }).rows.filter(({ state }) => state !== 'ahead');
  const names = tanksWithFishToo(room);
  const tanks = names.map((tank) => walkTank(room, tank, today));
  return {
    on: room.on,
    tanks: [...tanks.filter(({ last }) => last === null), ...tanks.filter(({ last }) => last !== null)],
    elsewhere: today.filter(({ place }) => !names.includes(place)),
  };
}

function walkTank(room: Room, tank: string, today: readonly DueRow[]): WalkTank {
  const bodies = bodiesIn(room, tank);
  const rigs = openRigs(room, tank);
  const faults = room.measures.faults.filter((fault) => fault.where === tank && fault.fixed === null);
  const look = today.filter(({ place }) => place === tank);
  const last = lastReason(room, tank);
  const retired = retiredWithFish(room, tank);
  const rigged = [
    ...rigs.map((rig) => `${rig.kind} ${sinceWords(rig.day, room.on)}`),
    ...valvedOff(room, tank),
    ...faults.map((fault) => `${faultWords(fault)} ${sinceWords(fault.day, room.on)}`),
  ];
  const declared = room.plumbing.tanks.get(tank)?.declared;
  const lines = linesOf([
    ...(declared ? [declared] : []),
    ...(retired?.lines ?? []),
    ...bodies.flatMap((body) => body.lines.slice(-1)),
    ...rigs.map((rig) => rig.begun),
    ...faults.map((fault) => fault.begun),
  ]);
  return {
    id: rowId(tank, 'walk'),
    tank,
    fish: bodies.map((body) => fishIn(room, tank, body)),
    rigged: [...new Set(rigged)],
    look,
    last,
    retired,
    lines,
    because: {
      rule: 'who was put there and not taken out; measures begun and not undone; what is due in that tank today',
      source: 'the journal',
      steps: [
        ...(bodies.length === 0 ? ['no fish on record in it'] : []),
        ...bodies.map((body) => `${body.name}: ${fishIn(room, tank, body).what}`),
        ...rigged,
        ...(retired === null ? [] : [retiredWords(retired)]),
        ...look.map((row) => `${row.what}: ${row.why}`),
        ...(last === null ? [] : [`last in the walk: ${last}`]),
      ],
      lines,
    },
  };
}

function fishIn(room: Room, tank: string, body: SeenBody): WalkFish {
  const count = partIn(body, tank);
  if (isBrood(body)) {
    const age = ageWords(ageOf(room, body));
    return { name: body.name, what: `${stageOf(room, body)}, ${age}`, count, plain: false, doing: null };
  }
  const whole = body.members.length > 0 && count.low === count.high && count.low === body.total.low;
  const here = body.members.filter((fish) => fish.gone === null && fish.tank === tank);
  const left = leftOf(room, body, here);
  const what = left === null ? kindWords(body) : listed([body.species, left.what, left.lost]);
  const some = whole || left !== null ? '' : here.map((fish) => fish.name ?? fish.sex ?? 'one').join(', ');
  return {
    name: body.name,
    what: some === '' ? what : `${what}: ${some}`,
    count,
    plain: whole || left !== null || some !== '',
    doing: doingOf(room, body, tank),
  };
}

/** `krib pair`. */
function kindWords({ species, kind }: SeenGroup): string {
  return [species, kind].filter((word) => word !== null).join(' ');
}

function listed(words: readonly (string | null)[]): string {
  return words.filter((word) => word !== null).join(', ');
}

/** Off its loop without a line that says so as a measure: nothing to add where a measure says it. */
function valvedOff(room: Room, tank: string): string[] {
  const home = homeLoopOf(room, tank);
  const off = home !== null && loopOf(room, tank) === null;
  return off && !openRigs(room, tank).some((rig) => rig.kind === 'off the loop') ? [`off ${home}`] : [];
}

function faultWords({ kind, text }: { readonly kind: string; readonly text: string }): string {
  if (kind === 'fault') return `fault: ${text}`;
  return kind === 'leak' && text !== kind ? `leak: ${text}` : text;
}

/** Rows for `why`: every tank as the walk tells it. */
export function walkWhy(room: Room): readonly WhyRow[] {
  return walk(room).tanks.map(({ id, tank, because, lines }) => ({ id, title: `${tank} in the walk`, because, lines }));
}

/**
 * Tank-weeks: which stock was in which tank from when to when, by the lines that moved it. Glass that
 * several stocks share on a day counts for each of them by an equal part; a tray is part of its tank.
 */
import { toDay, type Day } from '../../core/day.ts';
import type { Interval } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { isBrood, type SeenBody, type SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { Move } from '../../state/stock.ts';
import { oncePerRoom } from '../holds/once.ts';
import { laidDay } from '../laying.ts';

/** A stock in a tank, from a day to the day on which it was gone. */
export interface Stay {
  readonly body: string;
  readonly tank: string;
  readonly from: Day;
  readonly to: Day;
}

/** Weeks of glass that a stock had in a tank, its part where it was shared. */
export interface TankWeeks {
  readonly tank: string;
  readonly weeks: number;
}

interface Turn {
  readonly day: Day;
  readonly minute: number;
  readonly line: number;
  readonly tank: string;
  readonly how: 'came' | 'some left' | 'all left' | 'counted';
  readonly count: Interval;
}

/** Every stay of every stock up to the room's day. */
export const stays: (room: Room) => readonly Stay[] = oncePerRoom((room) => {
  const moves = new Map<string, DeepReadonly<Move>[]>();
  for (const move of room.stock.moves) moves.set(move.body, [...(moves.get(move.body) ?? []), move]);
  const bodies: readonly SeenBody[] = [
    ...room.stock.groups.values(),
    ...[...room.stock.broods.values()].filter(({ suspected }) => !suspected),
  ];
  return bodies.flatMap((body) => staysOf(room, body, moves.get(body.name) ?? []));
});

/** By stock: its weeks of glass between two days. */
export function tankWeeks(all: readonly Stay[], since: Day | null, on: Day): ReadonlyMap<string, readonly TankWeeks[]> {
  const byTank = new Map<string, Stay[]>();
  for (const stay of all) {
    const from = toDay(Math.max(stay.from, since ?? stay.from));
    const to = toDay(Math.min(stay.to, on));
    if (from >= to) continue;
    byTank.set(stay.tank, [...(byTank.get(stay.tank) ?? []), { ...stay, from, to }]);
  }
  const weeks = new Map<string, TankWeeks[]>();
  for (const [tank, here] of byTank) {
    for (const [body, days] of sharedDays(here)) {
      weeks.set(body, [...(weeks.get(body) ?? []), { tank, weeks: days / 7 }]);
    }
  }
  return weeks;
}

/** Days of one tank by stock: each day of it shared among those that were there. */
function sharedDays(here: readonly Stay[]): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  const marks = [...new Set(here.flatMap(({ from, to }) => [from, to]))].toSorted((a, b) => a - b);
  marks.forEach((from, index) => {
    const to = marks[index + 1];
    if (to === undefined) return;
    const bodies = new Set(here.filter((stay) => stay.from <= from && stay.to >= to).map(({ body }) => body));
    for (const body of bodies) days.set(body, (days.get(body) ?? 0) + (to - from) / bodies.size);
  });
  return days;
}

function staysOf(room: Room, body: SeenBody, moves: readonly DeepReadonly<Move>[]): readonly Stay[] {
  const start = startOf(room, body);
  const turns = turnsOf(body, moves);
  const tanks = new Set([...firstTanks(body, moves), ...body.parts.keys(), ...turns.map(({ tank }) => tank)]);
  return [...tanks].flatMap((tank) => {
    const own = turns.filter((turn) => turn.tank === tank);
    const glass = room.plumbing.tanks.get(tank)?.inTank ?? tank;
    return spansIn(room, body, tank, start, own).map(([from, to]) => ({ body: body.name, tank: glass, from, to }));
  });
}

/** Where a stock was before it ever moved. */
function firstTanks(body: SeenBody, moves: readonly DeepReadonly<Move>[]): readonly string[] {
  if (isBrood(body)) return body.natal === null ? [] : [body.natal];
  return moves.length === 0 && body.home !== null ? [body.home] : [];
}

/**
 * From when to when it was in one tank: each coming opens a span, the leaving of the last fish ends it, whether
 * the line says «all» or a number that left nobody. Fish that are there still were never all gone.
 */
function spansIn(room: Room, body: SeenBody, tank: string, start: Day, turns: readonly Turn[]): [Day, Day][] {
  const spans: [Day, Day][] = [];
  const isFirst = turns[0]?.how !== 'came' || (isBrood(body) && body.natal === tank);
  let since: Day | null = isFirst ? start : null;
  let left: Day | null = null;
  let most = isFirst ? Infinity : 0;
  for (const turn of turns) {
    const { how, day } = turn;
    most = mostAfter(most, turn);
    if (how === 'came') since ??= day;
    else if (how !== 'counted') left = day;
    if (most > 0 || since === null) continue;
    spans.push([since, day]);
    since = null;
  }
  if (since !== null) spans.push([since, lastDay(room, body, tank, left ?? since)]);
  const last = spans.at(-1);
  if (since === null && last !== undefined && (body.parts.get(tank)?.high ?? 0) > 0) last[1] = room.on;
  return spans;
}

/** The most fish that can be there after a turn. */
function mostAfter(most: number, { how, count }: Turn): number {
  switch (how) {
    case 'came':
      return most + count.high;
    case 'some left':
      return most - count.low;
    case 'all left':
      return 0;
    case 'counted':
      return count.high;
  }
}

function lastDay(room: Room, body: SeenBody, tank: string, left: Day): Day {
  if ((body.parts.get(tank)?.high ?? 0) > 0) return room.on;
  const ended = isBrood(body) ? body.ended : null;
  return ended !== null && ended.how !== 'gone' ? toDay(Math.max(left, ended.day)) : left;
}

function turnsOf(body: SeenBody, moves: readonly DeepReadonly<Move>[]): readonly Turn[] {
  const moved = moves.flatMap(({ day, minute, from, to, as, count, place }): Turn[] => {
    const when = { day, minute: minute ?? 0, line: place.line, count };
    const came: Turn = { tank: to, how: 'came', ...when };
    return from === null ? [came] : [{ tank: from, how: as === 'all' ? 'all left' : 'some left', ...when }, came];
  });
  const gone = body.gone.flatMap(({ day, tank, whole, count, place }): Turn[] =>
    tank === null ? [] : [{ day, minute: 0, line: place.line, tank, how: whole ? 'all left' : 'some left', count }],
  );
  const counted = body.counts.flatMap(({ day, minute, tank, count, replaced, place }): Turn[] =>
    tank === null || replaced ? [] : [{ day, minute: minute ?? 0, line: place.line, tank, how: 'counted', count }],
  );
  return [...moved, ...gone, ...counted].toSorted((a, b) => a.day - b.day || a.minute - b.minute || a.line - b.line);
}

/** The day on which a stock began: declared, laid (its likely day), or mixed of others. */
function startOf(room: Room, body: SeenBody): Day {
  if (!isBrood(body)) return body.day;
  const mixed = body.oneOf.flatMap((name) => mixedOn(room.stock.broods.get(name)));
  if (mixed.length > 0) return toDay(Math.max(...mixed));
  return laidDay(room, body) ?? room.on;
}

function mixedOn(brood: SeenBrood | undefined): Day[] {
  return brood?.ended?.how === 'mixed' ? [brood.ended.day] : [];
}

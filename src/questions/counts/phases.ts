/** What share of a brood goes unseen a day, by where it stands in its life: usual for its kind, or as the room's counts teach. */
import type { Day } from '../../core/day.ts';
import { isSure } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Guild } from '../../core/guild.ts';
import { FRY_DAYS, learntLoss, usualLoss } from '../../science/losses.ts';
import type { Phase } from '../../science/losses.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { clockOf, swimDays } from '../../state/stageclock.ts';
import { datesOf, laidDay } from '../laying.ts';
import { ledgerOf } from './ledger.ts';
import type { Entry } from './ledger.ts';

/** Some days at one rate of loss. `own`: broods keep their own rate through them. */
export interface Stretch {
  readonly phase: Phase;
  readonly loss: number;
  readonly days: number;
  readonly own: boolean;
}

/** The first days of a brood as they are most likely, for the share that is lost between them. */
interface Turns {
  readonly hatch: number;
  readonly swim: number;
}

function turnsOf(room: Room, brood: SeenBrood): Turns {
  const clock = clockOf(room, brood);
  const dates = datesOf(room, brood);
  const laid = laidDay(room, brood);
  const swam = (dates.swam ?? dates.released)?.likely ?? null;
  if (laid === null) return { hatch: swam ?? -Infinity, swim: swam ?? -Infinity };
  const swim = swam ?? laid + (swimDays(clock).likely ?? swimDays(clock).low);
  const hatch = dates.hatched?.likely ?? laid + (clock.hatch?.likely ?? 0);
  return { hatch: Math.min(hatch, swim), swim };
}

/** The stretches between two days. */
export function stretchesOf(room: Room, brood: SeenBrood): (from: Day, to: Day) => readonly Stretch[] {
  const { guild } = clockOf(room, brood);
  const turns = turnsOf(room, brood);
  const learnt = learntIn(room, brood);
  const rate = (phase: Phase): number => {
    const { lost, fishDays } = learnt[phase];
    return learntLoss(usualLoss(guild, phase), lost, fishDays);
  };
  const phases = phasesOf(turns).map((one) => ({ loss: rate(one.phase), ...one }));
  return (from, to) =>
    phases.flatMap(({ phase, start, end, loss }) => {
      const days = Math.min(to, end) - Math.max(from, start);
      return days > 0 ? [{ phase, loss, days, own: phase === 'fry' || phase === 'young' }] : [];
    });
}

function phasesOf({ hatch, swim }: Turns): readonly { phase: Phase; start: number; end: number }[] {
  return [
    { phase: 'egg', start: -Infinity, end: hatch },
    { phase: 'wriggler', start: hatch, end: swim },
    { phase: 'fry', start: swim, end: swim + FRY_DAYS },
    { phase: 'young', start: swim + FRY_DAYS, end: Infinity },
  ];
}

type Learnt = { readonly [P in Phase]: { readonly lost: number; readonly fishDays: number } };

interface Taught {
  readonly by: ReadonlyMap<SeenBrood, Learnt>;
  readonly of: ReadonlyMap<string, Learnt>;
}

const TAUGHT = new WeakMap<Room, Taught>();

/** What sure counts of other broods of that species teach: fish that nobody saw go, and over how many fish-days. */
export function learntIn(room: Room, brood: SeenBrood): Learnt {
  const taught = TAUGHT.get(room) ?? teach(room);
  const all = brood.species === null ? undefined : taught.of.get(brood.species);
  const own = taught.by.get(brood);
  return eachPhase((phase) => ({
    lost: Math.max(0, (all?.[phase].lost ?? 0) - (own?.[phase].lost ?? 0)),
    fishDays: Math.max(0, (all?.[phase].fishDays ?? 0) - (own?.[phase].fishDays ?? 0)),
  }));
}

/** Worked out once a room. */
function teach(room: Room): Taught {
  const by = new Map<SeenBrood, Learnt>();
  const of = new Map<string, Learnt>();
  for (const brood of room.stock.broods.values()) {
    if (brood.species === null || brood.suspected) continue;
    const taught = taughtBy(room, brood);
    const before = of.get(brood.species);
    by.set(brood, taught);
    of.set(
      brood.species,
      eachPhase((phase) => ({
        lost: taught[phase].lost + (before?.[phase].lost ?? 0),
        fishDays: taught[phase].fishDays + (before?.[phase].fishDays ?? 0),
      })),
    );
  }
  TAUGHT.set(room, { by, of });
  return { by, of };
}

function eachPhase(value: (phase: Phase) => Learnt[Phase]): Learnt {
  return { egg: value('egg'), wriggler: value('wriggler'), fry: value('fry'), young: value('young') };
}

function taughtBy(room: Room, brood: SeenBrood): Learnt {
  const found = { egg: none(), wriggler: none(), fry: none(), young: none() };
  if (brood.counts.filter(({ sure, replaced }) => sure && !replaced).length < 2) return found;
  const phases = phasesOf(turnsOf(room, brood));
  for (const { from, to, start, lost } of betweenCounts(ledgerOf(room, brood))) {
    const middle = (from + to) / 2;
    const phase = phases.find((one) => middle < one.end)?.phase ?? 'young';
    found[phase].lost += lost;
    found[phase].fishDays += (start - lost / 2) * (to - from);
  }
  return found;
}

function none(): { lost: number; fishDays: number } {
  return { lost: 0, fishDays: 0 };
}

interface Between {
  readonly from: Day;
  readonly to: Day;
  readonly start: number;
  readonly lost: number;
}

/** Pairs of sure counts in one tank with only sure numbers between them: how many were missing then that no line tells of. */
function betweenCounts(entries: readonly Entry[]): Between[] {
  const found: Between[] = [];
  const open = new Map<string, { day: Day; start: number; left: number }>();
  for (const entry of entries) {
    if (entry.kind === 'count') {
      const { tank, count } = entry.of;
      if (tank === null) continue;
      const before = open.get(tank);
      if (before && isSure(count) && count.low <= before.left && entry.day > before.day)
        found.push({ from: before.day, to: entry.day, start: before.start, lost: before.left - count.low });
      if (isSure(count)) open.set(tank, { day: entry.day, start: count.low, left: count.low });
    } else if (entry.kind === 'gone') takeOff(open, entry.of.tank, entry.of);
    else {
      takeOff(open, entry.of.from, { count: entry.of.count, whole: entry.of.as !== 'number' });
      open.delete(entry.of.to);
    }
  }
  return found;
}

function takeOff(
  open: Map<string, { day: Day; start: number; left: number }>,
  tank: string | null,
  out: DeepReadonly<{ count: { low: number; high: number; likely: number | null }; whole: boolean }>,
): void {
  if (tank === null) {
    open.clear();
    return;
  }
  const there = open.get(tank);
  if (!there) return;
  if (out.whole || !isSure(out.count)) open.delete(tank);
  else open.set(tank, { ...there, left: there.left - out.count.low });
}

/** The guild whose usual losses a brood has. */
export function guildFor(room: Room, brood: SeenBrood): Guild | null {
  return clockOf(room, brood).guild;
}

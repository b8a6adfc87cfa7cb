/**
 * The honest window of a spill (eight times in ten the lip is reached inside it), what the room's own
 * cleans have taught of it, and what the last partial clean bought. The plain three-line window is in prefilter.ts.
 */
import { addDays, toDay, type Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { dayWords, plural, rangeWords, windowWords } from '../core/words.ts';
import { WARN_DAYS } from '../science/clogging.ts';
import { learnedLife, lifeWindow, USUAL_LIFE, type LifePrior, type LifeWindow } from '../science/spill.ts';
import type { Room } from '../state/draft.ts';
import type { Loop, LoopClean, LoopLevel } from '../state/plumbing.ts';
import { isFull } from '../state/prefilter.ts';
import { isAfter, since as sinceDay } from '../state/when.ts';
import { loadClock, type LoadClock } from './load.ts';
import { lastsOf } from './prefilter.ts';
import { LEARN_FROM, readableLevels } from './levels.ts';

type Level = DeepReadonly<LoopLevel>;
type Clean = DeepReadonly<LoopClean>;
type SeenLoop = DeepReadonly<Loop>;

export interface Outlook {
  /** Eight times in ten it spills between these days. */
  readonly spill: DayWindow;
  /** Clean between these days: a week before the early and the likely day. */
  readonly cleanBy: DayWindow;
  readonly basis: 'levels' | 'own cleans' | 'usual';
  /** Days from a full clean to the lip, as this room's cleans have taught (null: too few) and as usual. */
  readonly own: Interval | null;
  readonly usual: Interval;
  readonly cycles: number;
  /** What the last clean bought, where it was a partial one. */
  readonly bought: Bought | null;
  readonly steps: readonly string[];
}

interface Bought {
  /** Days by which the spill moved. */
  readonly days: Interval;
  /** Freeboard regained over the freeboard after a full clean; null where levels do not tell. */
  readonly share: number | null;
  /** `bought 12–20 days; it won back 38 % of a full clean's freeboard`. */
  readonly words: string;
}

/** So many lives of earlier cleans teach. */
const TAUGHT_BY = 3;

/** The outlook on the room's day; null where neither a clean nor the height of the lip is on record. */
export function spillOutlook(room: Room, loop: SeenLoop): Outlook | null {
  const lip = middle(loop.spillsAt);
  const last = loop.cleans.at(-1);
  if (lip === null || last === undefined) return null;
  const cleans = loop.cleans.slice(-LEARN_FROM - 1);
  const clock = loadClock(room, loop, cleans[0]?.day ?? last.day);
  const levels = readableLevels(room, loop).kept;
  const lives = livesOf(room, { loop, lip, clock, levels, cleans });
  const prior = lives.length < TAUGHT_BY ? USUAL_LIFE : learnedLife(lives);
  const since = levels.filter((level) => isAfter(level, last));
  const window = lifeWindow(loaded(room, loop, clock, last, since), lip, shared(prior, lastsOf(loop, last).share));
  if (window === null) return null;
  const spill = onDays(clock, last.day, window);
  const own = lives.length < TAUGHT_BY ? null : spread(prior);
  const bought = isFull(last) ? null : boughtBy(room, { loop, lip, clock, levels, cleans }, last, prior, spill);
  return {
    spill,
    cleanBy: { low: less(spill.low), likely: less(spill.likely), high: less(spill.likely) },
    basis: since.length >= 2 ? 'levels' : own === null ? 'usual' : 'own cleans',
    own,
    usual: spread(USUAL_LIFE),
    cycles: lives.length,
    bought,
    steps: stepsOf(room, clock, last, since, { spill, own, cycles: lives.length, bought }),
  };
}

interface Known {
  readonly loop: SeenLoop;
  readonly lip: number;
  readonly clock: LoadClock;
  readonly levels: readonly Level[];
  readonly cleans: readonly Clean[];
}

/** The lives of earlier full cleans, each by its own levels alone; the clean that runs now teaches nothing yet. */
function livesOf(room: Room, { loop, lip, clock, levels, cleans }: Known): LifeWindow[] {
  return cleans.slice(0, -1).flatMap((clean, index) => {
    const next = cleans[index + 1];
    if (next === undefined || !isFull(clean)) return [];
    const mine = levels.filter((level) => isAfter(level, clean) && isAfter(next, level));
    const first = mine[0];
    const end = mine.at(-1);
    if (mine.some(({ spilled }) => spilled))
      return lifeBy(loaded(room, loop, clock, clean, mine), lip, USUAL_LIFE) ?? [];
    if (first === undefined || end === undefined || mine.length < 2) return [];
    // A clean cut short says little of how long it would have lasted.
    if (middle(end.level) - middle(first.level) < 0.25 * (lip - middle(first.level))) return [];
    return lifeWindow(loaded(room, loop, clock, clean, mine), lip, USUAL_LIFE, true) ?? [];
  });
}

/** The life by its levels; one that was seen to spill lasted till then, and its levels before tell the curve alone. */
function lifeBy(levels: ReturnType<typeof loaded>, lip: number, prior: LifePrior): LifeWindow | null {
  const at = levels.findIndex(({ level }) => level >= lip);
  const spilled = levels[at];
  if (spilled === undefined) return lifeWindow(levels, lip, prior);
  if (spilled.load <= 0) return null;
  const curve = at === 0 ? null : lifeWindow(levels.slice(0, at), lip, prior, true);
  const { load } = spilled;
  return { low: load, likely: load, high: load, shapes: curve?.shapes ?? prior.shapes };
}

function loaded(room: Room, loop: SeenLoop, clock: LoadClock, clean: Clean, levels: readonly Level[]) {
  return levels.map((level) => ({
    load: clock.between(clean.day, level.day),
    flushes: flushesBetween(room, loop, clean, level),
    level: middle(level.level),
  }));
}

const FLUSH = /\bflush/iu;

/** Pipes flushed since the clean, by a `did "flush …"` or the remark of a level: each is a load at once. */
function flushesBetween(room: Room, loop: SeenLoop, clean: Clean, level: Level): number {
  const said = new Set<Day>();
  for (const one of sinceDay(loop.levels, clean.day)) {
    const counts = isAfter(one, clean) && !isAfter(one, level);
    if (counts && one.remark !== null && FLUSH.test(one.remark)) said.add(one.day);
  }
  for (let at = room.chores.did.length - 1; at >= 0; at -= 1) {
    const did = room.chores.did[at];
    if (did === undefined || did.day < clean.day) break;
    const counts = did.where === loop.name && did.day > clean.day && did.day <= level.day;
    if (counts && FLUSH.test(did.action.text ?? '')) said.add(did.day);
  }
  return said.size;
}

/** A partial clean has a share of a full one's life. */
function shared(prior: LifePrior, share: number): LifePrior {
  return share >= 1 ? prior : { ...prior, median: prior.median * Math.max(0.2, share), spread: prior.spread + 0.1 };
}

function onDays(clock: LoadClock, from: Day, { low, likely, high }: LifeWindow): DayWindow {
  return {
    low: toDay(Math.floor(clock.dayAt(from, low))),
    likely: toDay(Math.round(clock.dayAt(from, likely))),
    high: toDay(Math.ceil(clock.dayAt(from, high))),
  };
}

const less = (day: Day | null): Day | null => (day === null ? null : addDays(day, -WARN_DAYS));

/** The middle eight in ten of a prior, in whole days. */
function spread({ median, spread: width }: LifePrior): Interval {
  const tenth = Math.exp(1.2816 * width);
  return { low: Math.round(median / tenth), likely: Math.round(median), high: Math.round(median * tenth) };
}

/** How far the spill moved by a partial clean: the window without it, by the levels before, against the one with it. */
function boughtBy(room: Room, known: Known, clean: Clean, prior: LifePrior, now: DayWindow): Bought | null {
  const { loop, lip, clock, levels, cleans } = known;
  const before = cleans.at(-2);
  if (before === undefined) return null;
  const mine = levels.filter((level) => isAfter(level, before) && isAfter(clean, level));
  const life = lifeBy(loaded(room, loop, clock, before, mine), lip, shared(prior, lastsOf(loop, before).share));
  if (life === null) return null;
  const then = onDays(clock, before.day, life);
  const days = (a: Day | null, b: Day | null): number => Math.max(0, (a ?? clean.day) - (b ?? clean.day));
  const gained = {
    low: days(now.low, then.high),
    likely: days(now.likely, then.likely),
    high: days(now.high, then.low),
  };
  const share = regained(known, before, clean);
  return { days: gained, share, words: boughtWords(gained, share) };
}

/** Freeboard won by a partial clean over the freeboard after the last full one. */
function regained({ loop, lip, levels }: Known, before: Clean, clean: Clean): number | null {
  const after = levels.find((level) => isAfter(level, clean) && level.day <= addDays(clean.day, 1));
  const was = levels.findLast((level) => isAfter(clean, level) && isAfter(level, before));
  const full = loop.cleans.findLast((one) => isFull(one) && isAfter(clean, one));
  const clear = full && levels.find((level) => isAfter(level, full) && level.day <= addDays(full.day, 1));
  if (after === undefined || was === undefined || clear === undefined) return null;
  const [low, high, empty] = [after, was, clear].map(({ level }) => middle(level));
  if (low === undefined || high === undefined || empty === undefined || lip <= empty) return null;
  return Math.min(1, Math.max(0, (high - low) / (lip - empty)));
}

function boughtWords(days: Interval, share: number | null): string {
  const won = share === null ? '' : `; it won back ${Math.round(share * 100)} % of a full clean's freeboard`;
  return `bought ${rangeWords(days)} days${won}`;
}

function stepsOf(
  room: Room,
  clock: LoadClock,
  last: Clean,
  since: readonly Level[],
  found: Pick<Outlook, 'spill' | 'own' | 'cycles' | 'bought'>,
): string[] {
  const usual = spread(USUAL_LIFE);
  const load = clock.step(last.day);
  return [
    found.own === null
      ? `from a full clean to the lip: usually ${rangeWords(usual)} days (rule of ours); this room has taught ${found.cycles} of the ${TAUGHT_BY} cleans that it takes`
      : `from a full clean to the lip: here ${rangeWords(found.own)} days (${plural(found.cycles, 'clean')}), usually ${rangeWords(usual)}`,
    ...(load === null ? [] : [load]),
    `every life, curve and starting level weighed by ${plural(since.length, 'level')}: eight times in ten it spills ${windowWords(found.spill, room.on)}`,
    ...(found.bought === null || last.of === null
      ? []
      : [`${last.layers} of ${last.of} layers on ${dayWords(last.day, room.on)} ${found.bought.words}`]),
  ];
}

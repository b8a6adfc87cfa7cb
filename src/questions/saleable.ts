/** When fish can be sold, by the rule of their species: the share at sale size today, and the days when the first, half and all will be. */
import type { Because } from '../core/because.ts';
import { toDay, type Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { exactly, middle } from '../core/interval.ts';
import { normalAt } from '../core/stats.ts';
import { linesOf, type LineRef } from '../core/span.ts';
import { ageWords, dayWords, rangeWords, windowWords } from '../core/words.ts';
import { guildDefaults } from '../science/guilds.ts';
import { ageAtSize, BROOD_CV, shareAtLeast } from '../science/growth.ts';
import type { Part } from '../science/growth.ts';
import { beginningOf, isBrood, speciesOf } from '../state/bodies.ts';
import type { SeenBody } from '../state/bodies.ts';
import { since } from '../state/broodlife.ts';
import type { Room } from '../state/draft.ts';
import { dayAtAge } from '../state/stagewindows.ts';
import { withoutWord } from '../state/withoutword.ts';
import { dayAt, growthIn, growthOf, sizeOn, timesIn, type Growth } from './growing.ts';
import { sortedIn, type Sorted } from './growing/sorted.ts';
import { datesOf } from './laying.ts';
import { unmatedWords } from './unmated.ts';

export { sizeOn } from './growing.ts';

export interface Saleable {
  /** From the first fish to the last: `likely` is the day when half of them are. */
  readonly window: DayWindow;
  readonly first: DayWindow;
  readonly half: DayWindow;
  readonly all: DayWindow;
  /** Share of them that may be sold on the day asked about, 0 to 1. */
  readonly share: Interval;
  /** Sale size, mm; null where the rule goes by age alone. */
  readonly size: number | null;
  /** The rule in words: `35 mm or 16 weeks`. */
  readonly rule: string;
  readonly because: Because;
}

interface Rule {
  readonly size: number | null;
  readonly age: Interval | null;
  readonly both: boolean;
  readonly source: string;
}

/**
 * When these fish can be sold, and the share that can be on a day; null where neither a rule nor an age or length is
 * known, and where nobody knows whether they live or the eggs are fertile. With a tank, those that live there: of a
 * sorted brood the rest is not as long as the largest.
 */
export function saleableFrom(
  room: Room,
  body: SeenBody,
  on: Day = room.on,
  tank: string | null = null,
): Saleable | null {
  if (isBrood(body) && (withoutWord(room, body) !== null || unmatedWords(body) !== null)) return null;
  const rule = ruleOf(room, body);
  const growth = tank === null ? growthOf(room, body) : growthIn(room, body, tank);
  const side = sideIn(room, body, tank);
  const born = isBrood(body) ? datesOf(room, body).laid : body.born;
  if (rule === null || (growth === null && (rule.size !== null || born === null))) return null;
  if (rule.both && born === null) return null;
  const by = (part: Part): DayWindow => {
    const sized = rule.size === null || growth === null ? null : sizedBy(growth, rule.size, part, side);
    const aged = rule.age === null || born === null ? null : dayAtAge(born, rule.age);
    return joined(sized, aged, rule.both);
  };
  const [first, half, all] = [by('first'), by('half'), by('all')];
  const window = { low: first.low, likely: half.likely, high: all.high };
  const sized = tank === null ? shareSized(room, body, rule, on) : shareThere(room, body, rule, on, tank);
  const share = shareOn(rule, born, on, sized);
  const words = ruleWords(rule);
  return {
    window,
    first,
    half,
    all,
    share,
    size: rule.size,
    rule: words,
    because: {
      rule: `for sale at ${words}`,
      source: rule.source,
      steps: [
        ...(growth?.because.steps ?? []),
        ...agedSteps(room, rule, born),
        `the first by ${windowWords(first, room.on)}, half by ${windowWords(half, room.on)}, all by ${windowWords(all, room.on)}`,
        ...sizedSteps(room, rule, on, sizeOn(room, body, on, tank)),
        ...(tank === null ? [] : sortedSteps(room, body, tank)),
        `share that can be sold${on === room.on ? ' today' : ` on ${dayWords(on, room.on)}`}: ${rangeWords({ low: share.low * 100, likely: null, high: share.high * 100 })} %`,
      ],
      lines: linesOf([...ruleLines(room, body), ...(growth?.because.lines ?? beginningOf(body))]),
    },
  };
}

/** The day on which they are of age: `2 Feb + 112 days = 25 May`. */
function agedSteps(room: Room, rule: Rule, born: DayWindow | null): string[] {
  if (rule.age === null || born === null) return [];
  const days = rule.age.low === rule.age.high ? String(rule.age.low) : rangeWords(rule.age);
  const sum = windowWords(dayAtAge(born, rule.age), room.on);
  return [`of age: ${windowWords(born, room.on)} + ${days} days = ${sum}`];
}

/** Lengths within a brood are normal about the mean: how far the sale size stands off it. */
function sizedSteps(room: Room, rule: Rule, on: Day, size: Interval | null): string[] {
  if (size === null || rule.size === null) return [];
  const wanted = rule.size;
  const off = (mean: number): string => {
    const z = (wanted - mean) / (BROOD_CV * mean);
    return `(${wanted} − ${mean.toFixed(1)}) / (${BROOD_CV} × ${mean.toFixed(1)}) = ${z.toFixed(1)} spreads, so ${Math.round(shareAtLeast(wanted, mean) * 100)} % at ${wanted} mm`;
  };
  return [
    `mean length on ${dayWords(on, room.on)}: ${rangeWords(size)} mm`,
    `at the shortest ${off(size.low)}`,
    `at the longest ${off(size.high)}`,
  ];
}

/** The days on which a part of them reaches a size; of a sorted brood, as far off the mean of all as its sides may be. */
function sizedBy(growth: Growth, size: number, part: Part, side: Side | null): DayWindow {
  const at = (by: number): DayWindow => dayAt(growth, ageAtSize(growth.line, size / by, part));
  if (side === null) return at(1);
  const { times, bestGone } = side;
  const slow = at(times.low).high;
  if (part !== 'first' || bestGone === 0)
    return { low: at(times.high).low, likely: at(times.likely).likely, high: slow };
  // Well sorted, the longest of the rest comes behind all that went.
  const longest = normalAt(1 - bestGone - FIRST * (1 - bestGone));
  const behind = dayAt(growth, ageAtSize(growth.line, size / (1 + BROOD_CV * longest), 'half')).high;
  const high = slow === null || behind === null ? null : toDay(Math.max(slow, behind));
  return { low: at(times.high).low, likely: at(times.likely).likely, high };
}

/** "The first": five of a hundred, as where nobody sorted them. */
const FIRST = 0.05;

interface Side {
  readonly times: Sorted['times'];
  readonly bestGone: number;
}

/** How far those of a tank stand off the mean of all; null where nobody parted them by size. */
function sideIn(room: Room, body: SeenBody, tank: string | null): Side | null {
  const sorted = tank === null ? null : sortedIn(room, body, tank);
  return tank === null || sorted === null ? null : { times: timesIn(room, body, tank), bestGone: sorted.bestGone };
}

function sortedSteps(room: Room, body: SeenBody, tank: string): string[] {
  const sorted = sortedIn(room, body, tank);
  if (sorted === null) return [];
  const share = (times: number): string => String(Math.round(times * 100));
  const { low, high } = timesIn(room, body, tank);
  return [
    `${sorted.words}: ${low === high ? share(low) : `${share(low)}–${share(high)}`} % of the mean of all of them${sorted.read ? ', measured since' : ', as nobody knows how well they were sorted'}`,
  ];
}

function ruleOf(room: Room, body: SeenBody): Rule | null {
  const species = speciesOf(room, body);
  const said = species?.traits.saleAt ?? null;
  if (said !== null && (said.size !== null || said.age !== null)) {
    return {
      size: said.size === null ? null : (said.size.likely ?? said.size.low),
      age: said.age,
      both: said.both,
      source: 'the journal: the rule set for the species',
    };
  }
  const guild = species?.traits.guild ?? null;
  if (guild === null) return null;
  const usual = guildDefaults(guild).saleSize;
  return {
    size: usual.likely ?? usual.low,
    age: null,
    both: false,
    source: `usual for ${guild}s (common practice, no source)`,
  };
}

function ruleWords(rule: Rule): string {
  const size = rule.size === null ? null : `${String(rule.size)} mm`;
  const age = rule.age === null ? null : weeksWords(rule.age);
  return [size, age].filter((words) => words !== null).join(rule.both ? ' and ' : ' or ');
}

function weeksWords(age: Interval): string {
  const whole = age.low === age.high && age.low % 7 === 0;
  return whole ? `${String(age.low / 7)} weeks` : ageWords(age);
}

function ruleLines(room: Room, body: SeenBody): readonly LineRef[] {
  const species = speciesOf(room, body);
  if (species === null) return [];
  const { saleAt, guild } = species.said;
  return linesOf([saleAt ?? guild ?? species.place]);
}

/** Size or age, whichever comes first; both: whichever comes last. */
function joined(sized: DayWindow | null, aged: DayWindow | null, both: boolean): DayWindow {
  if (sized === null || aged === null) return sized ?? aged ?? { low: null, likely: null, high: null };
  const pick = (a: Day | null, b: Day | null): Day | null => {
    if (a === null || b === null) return both ? null : (a ?? b);
    return a < b === both ? b : a;
  };
  return { low: pick(sized.low, aged.low), likely: pick(sized.likely, aged.likely), high: pick(sized.high, aged.high) };
}

/** The share of all of them, or of those in a tank, that has its size; null where the rule or their length tells none. */
function shareSized(room: Room, body: SeenBody, rule: Rule, on: Day, tank: string | null = null): Interval | null {
  const size = sizeOn(room, body, on, tank);
  if (rule.size === null || size === null) return null;
  return {
    low: shareAtLeast(rule.size, size.low),
    likely: shareAtLeast(rule.size, middle(size)),
    high: shareAtLeast(rule.size, size.high),
  };
}

/** Where the largest went, those that are big enough went first: what is left of them at least is promised, no more. */
function shareThere(room: Room, body: SeenBody, rule: Rule, on: Day, tank: string): Interval | null {
  const here = shareSized(room, body, rule, on, tank);
  const gone = sortedIn(room, body, tank)?.bestGone ?? 0;
  const size = sizeOn(room, body, on, tank);
  if (here === null || gone === 0 || size === null || rule.size === null) return here;
  const ofAll = shareAtLeast(rule.size, size.low / timesIn(room, body, tank).low);
  return { low: Math.min(here.low, Math.max(0, (ofAll - gone) / (1 - gone))), likely: here.likely, high: here.high };
}

function shareOn(rule: Rule, born: DayWindow | null, on: Day, bySize: Interval | null): Interval {
  const byAge = rule.age === null || born === null ? null : agedShare(since(born, on), rule.age);
  // Young that nobody saw swim have no length yet: their age alone meets no rule of both.
  if (bySize === null || byAge === null) return rule.both ? exactly(0) : (bySize ?? byAge ?? exactly(0));
  const pick = rule.both ? Math.min : Math.max;
  return {
    low: pick(bySize.low, byAge.low),
    likely: pick(bySize.likely ?? bySize.low, byAge.likely ?? byAge.low),
    high: pick(bySize.high, byAge.high),
  };
}

/** All of them are of age on one day: 0 before, 1 after, between where the day is not known. */
function agedShare(age: Interval, wanted: Interval): Interval {
  const old = (days: number, needed: number): number => (days >= needed ? 1 : 0);
  return {
    low: old(age.low, wanted.high),
    likely: old(age.likely ?? age.low, wanted.likely ?? wanted.high),
    high: old(age.high, wanted.low),
  };
}

/** When fish can be sold, by the rule of their species: the share at sale size today, and the days when the first, half and all will be. */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import { exactly, middle } from '../core/interval.ts';
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
import { dayAt, growthOf, sizeOn } from './growing.ts';
import { datesOf } from './laying.ts';

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

/** When these fish can be sold, and the share that can be on a day; null where neither a rule nor an age or length is known, and where nobody knows whether they live. */
export function saleableFrom(room: Room, body: SeenBody, on: Day = room.on): Saleable | null {
  if (isBrood(body) && withoutWord(room, body) !== null) return null;
  const rule = ruleOf(room, body);
  const growth = growthOf(room, body);
  const born = isBrood(body) ? datesOf(room, body).laid : body.born;
  if (rule === null || (growth === null && (rule.size !== null || born === null))) return null;
  if (rule.both && born === null) return null;
  const by = (part: Part): DayWindow => {
    const sized = rule.size === null || growth === null ? null : dayAt(growth, ageAtSize(growth.line, rule.size, part));
    const aged = rule.age === null || born === null ? null : dayAtAge(born, rule.age);
    return joined(sized, aged, rule.both);
  };
  const [first, half, all] = [by('first'), by('half'), by('all')];
  const window = { low: first.low, likely: half.likely, high: all.high };
  const share = shareOn(room, body, rule, born, on);
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
        ...sizedSteps(room, body, rule, on),
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
function sizedSteps(room: Room, body: SeenBody, rule: Rule, on: Day): string[] {
  const size = rule.size === null ? null : sizeOn(room, body, on);
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

function shareOn(room: Room, body: SeenBody, rule: Rule, born: DayWindow | null, on: Day): Interval {
  const size = sizeOn(room, body, on);
  const bySize =
    rule.size === null || size === null
      ? null
      : {
          low: shareAtLeast(rule.size, size.low),
          likely: shareAtLeast(rule.size, middle(size)),
          high: shareAtLeast(rule.size, size.high),
        };
  const byAge = rule.age === null || born === null ? null : agedShare(since(born, on), rule.age);
  // Young that nobody saw swim have no length yet: their age alone meets no rule of both.
  if (bySize === null || byAge === null) return rule.both ? exactly(0) : (bySize ?? byAge ?? exactly(0));
  const pick = rule.both ? Math.min : Math.max;
  return {
    low: pick(bySize.low, byAge.low),
    likely: pick(bySize.likely, byAge.likely ?? 0),
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

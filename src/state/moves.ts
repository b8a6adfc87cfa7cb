/** Fish that change tanks, and stocks that are mixed: from then on each is "one of the two". */
import type { DayWindow } from '../core/interval.ts';
import { NONE, meet, plus } from '../core/interval.ts';
import { toDay } from '../core/day.ts';
import { countWords, listWords, tankInLine } from '../core/words.ts';
import type { EventOf } from '../journal/event.ts';
import { takeAlong } from './along.ts';
import { isBrood } from './bodies.ts';
import { reached } from './broodlife.ts';
import type { Draft } from './draft.ts';
import { countOf, leaversOf, tankOfAll } from './leavers.ts';
import { livingMembers, memberName, membersMoved } from './members.ts';
import { isRunning, isWhole, isWritten } from './heads.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { noteMoved } from './moved.ts';
import { mostIn } from './ceilings.ts';
import { swamUnsaid } from './swamunsaid.ts';
import { moveFish, newBody } from './tally.ts';
import { resolveFish } from './who.ts';
import { note, tankOf } from './meant.ts';
import type { Found } from './meant.ts';

/** Fish go to another tank; with `rest stay` at least one is left behind. */
export function moved(draft: Draft, event: EventOf<'moved'>): void {
  if (!canGoTo(draft, event)) return;
  const unplaced = groupWithoutTank(draft, event);
  if (unplaced !== null) {
    firstMove(draft, event, unplaced);
    return;
  }
  const found = resolveFish(draft, event, event.fish, event.count);
  if (!found) return;
  if (isBrood(found.body)) moveBrood(draft, event, found.body, found.tank);
  else moveGroup(draft, event, found.body, found);
}

/** The group that a line moves whole, where none said yet in which tank it lives. */
function groupWithoutTank(draft: Draft, { fish, count, restStay }: EventOf<'moved'>): Group | null {
  const name = fish.kind === 'group' && fish.member === null ? fish.group : null;
  const group = name === null ? undefined : draft.stock.groups.get(name);
  if (group === undefined || restStay || group.home !== null || group.parts.size > 0 || group.total.high === 0)
    return null;
  const isAll = isWritten(count) ? count.total.low >= group.total.high : isWhole(count);
  return isAll ? group : null;
}

/** It was in the tank of that line, where the line has one, and lives from now on where it went. */
function firstMove(draft: Draft, event: EventOf<'moved'>, group: Group): void {
  note(draft, event, group, true);
  const tank = tankOf(event);
  if (tank !== null) {
    moveFish(draft, event, group, null, tank, 'all');
    for (const fish of livingMembers(group)) fish.tank = tank;
  }
  moveGroup(draft, event, group, { body: group, tank, member: null });
}

function canGoTo(draft: Draft, event: EventOf<'moved'>): boolean {
  const to = draft.plumbing.tanks.get(event.to);
  const from = event.subject.kind === 'tank' ? event.subject.tank : null;
  if (to && to.retired === null && event.to !== from) return true;
  const retired = to?.retired ?? null;
  draft.problems.push({
    kind: retired ? 'retired-tank' : to ? 'moved-nowhere' : 'unknown-tank',
    weight: 'stops',
    says: retired
      ? `${event.to} is retired`
      : to
        ? `${event.to} is where they already are`
        : `there is no tank ${event.to} on that day`,
    write: retired
      ? `a tank in use, or declare it again: tank ${event.to}: …`
      : to
        ? 'the tank that they went to'
        : `the tank that they went to, or first: tank ${event.to}: …`,
    at: event.place,
    also: retired ? [retired.place] : [],
  });
  return false;
}

function moveBrood(draft: Draft, event: EventOf<'moved'>, brood: Brood, tank: string | null): void {
  const from = tank ?? sourceOf(brood, event.to);
  if (from === null || from === event.to) {
    draft.problems.push(whichTank(event, brood));
    return;
  }
  const out = moveFish(draft, event, brood, from, event.to, event.count, event.restStay ? 1 : 0);
  if (out === null) return;
  swamUnsaid(draft, brood, event);
  brood.moved = brood.moved || reached(brood, 'swam');
  brood.lines.push(event.place);
  noteMove(draft, event, brood.name, from, out);
}

/** Fish of several tanks, or of none but the one that they go to: the line must say from where. */
function whichTank(event: EventOf<'moved'>, body: Brood | Group): Draft['problems'][number] {
  const tanks = [...body.parts.keys()];
  const from = tanks.find((tank) => tank !== event.to);
  return {
    kind: from === undefined ? 'moved-nowhere' : 'which-tank',
    weight: 'stops',
    says:
      from === undefined
        ? `${body.name} is all in ${event.to} already`
        : `${body.name} is in ${listWords(tanks)}: this does not say from where they went`,
    write:
      from === undefined ? 'the tank that they went to' : `${from}: moved … ${body.name} to ${tankInLine(event.to)}`,
    at: event.place,
    also: body.lines.slice(-1),
  };
}

function alreadyThere(event: EventOf<'moved'>, group: Group, { member }: Found): Draft['problems'][number] {
  const who = member === null ? `${group.name} is all` : `${memberName(member)} is`;
  return {
    kind: 'moved-nowhere',
    weight: 'stops',
    says: `${who} in ${event.to} already`,
    write: 'the tank that they went to',
    at: event.place,
    also: group.lines.slice(-1),
  };
}

/** Of several tanks the one that is not where they go. */
function sourceOf(body: Brood | Group, to: string): string | null {
  const tanks = [...body.parts.keys()].filter((tank) => tank !== to);
  return tanks.length === 1 ? (tanks[0] ?? null) : null;
}

function moveGroup(draft: Draft, event: EventOf<'moved'>, group: Group, found: Found): void {
  const fish = moversOf(draft, event, group, found);
  if (fish === null) return;
  const sources = sourcesOf(event, group, found, fish);
  if (sources.length === 0) {
    const there = fish.length > 0 && fish.every(({ tank }) => tank === event.to);
    draft.problems.push(there ? alreadyThere(event, group, found) : whichTank(event, group));
    return;
  }
  const count = countOf(event.count, fish, found);
  for (const from of sources) {
    const out = moveFish(draft, event, group, from, event.to, count, event.restStay ? 1 : 0);
    if (out === null) return;
    noteMove(draft, found.member === null ? event : { ...event, count }, group.name, from, out);
    takeAlong(draft, event, group, fish, { from, to: event.to, with: event.with });
  }
  membersMoved(group, fish, event.to, event);
  group.lines.push(event.place);
  // One that is brought where the others are brings them together; one that is alone away from home may come back.
  if (group.parts.size === 1 && (found.member === null || group.total.low > 1)) group.home = event.to;
}

/** The tanks that the fish go from, null for a group that is in none; empty where a number goes and the line must say. */
function sourcesOf(
  event: EventOf<'moved'>,
  group: Group,
  { tank }: Found,
  fish: readonly Fish[],
): readonly (string | null)[] {
  if (fish.length > 0 && fish.every((one) => one.tank === event.to)) return [];
  const those = fish.filter((one) => one.tank !== event.to);
  const from = tankOfAll(tank, those) ?? sourceOf(group, event.to);
  if (from === event.to) return [];
  if (from !== null || group.parts.size === 0) return [from];
  if (!isWhole(event.count) || event.restStay) return [];
  return [...group.parts.keys()].filter((one) => one !== event.to);
}

function moversOf(draft: Draft, event: EventOf<'moved'>, group: Group, found: Found): Fish[] | null {
  const number = typeof event.count === 'string' ? 'half' : countWords(event.count.total);
  const words = {
    says: `${number} of ${group.name} moved`,
    write: (one: string) => `which of them: moved ${one} to ${tankInLine(event.to)}`,
  };
  return leaversOf(draft, event, group, found, words);
}

function noteMove(
  draft: Draft,
  event: EventOf<'moved'>,
  body: string,
  from: string | null,
  count: Found['body']['total'],
): void {
  const { day, minute, to, place } = event;
  const as = event.count === 'half' ? 'half' : isWhole(event.count) && !event.restStay ? 'all' : 'number';
  noteMoved(draft, { day, minute, body, from, to, count, as, which: event.which, with: event.with, place });
}

/** Two stocks in one tank that nobody can tell apart any more become one body, of one of the two. */
export function mixed(draft: Draft, event: EventOf<'mixed'>): void {
  const a = resolveFish(draft, event, event.a);
  const b = resolveFish(draft, event, event.b);
  if (!a || !b) return;
  const here = (tank: string): boolean => [a, b].every(({ body }) => (body.parts.get(tank)?.high ?? 0) > 0);
  const tank = [a.tank, b.tank, ...a.body.parts.keys()].find((one) => one !== null && here(one)) ?? null;
  if (tank === null || a.body === b.body) {
    draft.problems.push({
      kind: 'not-together',
      weight: 'stops',
      says:
        a.body === b.body
          ? `${a.body.name} is one stock already`
          : `${a.body.name} and ${b.body.name} are not in one tank`,
      write: `the move that brought them together, before it: ${b.tank ?? 'A1'}: moved all ${b.body.name} to ${tankInLine(a.tank ?? 'B1')}`,
      at: event.place,
      also: [],
    });
    return;
  }
  const both = [a.body, b.body];
  const count = both.map((body) => body.parts.get(tank) ?? NONE).reduce(plus, NONE);
  const mix = mixOf(both);
  mix.parts.set(tank, count);
  mix.total = count;
  boundMix(mix, tank, both, event);
  mix.natal = tank;
  mix.lines.push(event.place);
  for (const body of both) leave(body, tank, event);
  draft.stock.broods.set(mix.name, mix);
  draft.stock.living.set(mix.name, mix);
}

/** Where sure facts bound both in that tank, they bound the two together. */
function boundMix(mix: Brood, tank: string, both: readonly (Group | Brood)[], { place }: EventOf<'mixed'>): void {
  const [one, two] = both.map((body) => (isRunning(body) ? null : mostIn(body, tank)));
  if (typeof one !== 'number' || typeof two !== 'number') return;
  mix.ceiling = { count: one + two, place };
  mix.ceilings.set(tank, { count: one + two, place });
}

function mixOf(both: readonly (Group | Brood)[]): Brood {
  const names = both.flatMap((body) => (isBrood(body) && body.oneOf.length > 0 ? body.oneOf : [body.name]));
  const broods = both.filter((body) => isBrood(body));
  const swam = broods.map((brood) => brood.swam ?? brood.released).filter((window) => window !== null);
  const species = both.every((body) => body.species === both[0]?.species) ? (both[0]?.species ?? null) : null;
  const group = both.every((body) => isBrood(body) && body.group === broods[0]?.group)
    ? (broods[0]?.group ?? null)
    : null;
  return {
    ...newBody(names.join(' or '), species),
    group,
    mothers: [...new Set(broods.flatMap((brood) => brood.mothers))],
    oneOf: names,
    suspected: false,
    laid: hull(
      both.map((body) => (isBrood(body) ? body.laid : (body.born ?? { low: null, likely: null, high: null }))),
    ),
    laidKnown: 'bounded',
    unmated: false,
    quiet: [],
    hatched: null,
    swam: broods.length === both.length && swam.length === 0 ? null : hull(swam),
    released: null,
    looks: [],
    natal: null,
    left: new Map(),
    eggs: null,
    white: null,
    moved: true,
    ended: null,
    price: null,
  };
}

/** From the first to the last day of several windows; open where one of them is. */
function hull(windows: readonly DayWindow[]): DayWindow {
  const lows = windows.map((window) => window.low);
  const highs = windows.map((window) => window.high);
  const low = lows.some((day) => day === null) ? null : Math.min(...lows.filter((day) => day !== null));
  const high = highs.some((day) => day === null) ? null : Math.max(...highs.filter((day) => day !== null));
  const ends = {
    low: low === null || !Number.isFinite(low) ? null : toDay(low),
    high: high === null || !Number.isFinite(high) ? null : toDay(high),
  };
  return { ...ends, likely: ends.low === null || ends.high === null ? null : toDay((ends.low + ends.high) / 2) };
}

/** What a body had in that tank is now part of the mix. */
function leave(body: Group | Brood, tank: string, event: EventOf<'mixed'>): void {
  const part = body.parts.get(tank) ?? NONE;
  body.parts.delete(tank);
  body.ceilings.delete(tank);
  body.lines.push(event.place);
  const rest = [...body.parts.values()].reduce(plus, NONE);
  body.total =
    body.parts.size === 0
      ? NONE
      : (meet(rest, { low: Math.max(0, body.total.low - part.high), likely: null, high: body.total.high }) ?? rest);
  body.ceiling = null;
  if (isBrood(body) && body.parts.size === 0) body.ended = { how: 'mixed', day: event.day, place: event.place };
}

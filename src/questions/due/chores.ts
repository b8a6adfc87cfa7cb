/** Standing chores, by effect and not only by date, and one-off tasks. */
import type { DayWindow } from '../../core/interval.ts';
import { middle } from '../../core/interval.ts';
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { dayWords, plural } from '../../core/words.ts';
import { actionWords, type StandingChore, type Task } from '../../state/chores.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { shareOf } from '../../state/done.ts';
import type { Loop } from '../../state/plumbing.ts';
import { isOpenOn } from '../../state/rigs.ts';
import { loopVolume, liveVolume } from '../../state/volume.ts';
import { betterBy, cleanedAll, outlookAsked } from '../cleaning.ts';
import { clockOf, intervalWords, type ChoreClock } from '../clock.ts';
import { rowId } from '../id.ts';
import { levelWords, prefilterOf, type Prefilter } from '../prefilter.ts';
import { afterRaising, raisesPh, type Raised } from '../raised.ts';
import { amountWords } from '../waters.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';
import { TO_READ } from './toread.ts';

type Chore = DeepReadonly<StandingChore>;

/** From this share on a change is a large one (ours). */
const LARGE = 0.5;

export function choresDue(room: Room, days: number): readonly DueItem[] {
  const standing = room.chores.standing
    .filter((chore) => chore.stopped === null && isInUse(room, chore.where) && !isSour(room, chore))
    .flatMap((chore) => {
      const clock = clockOf(room, chore);
      const asked = clock.due === null ? null : beforeItSpills(room, clock, clock.due);
      return asked === null || !startsWithin(asked, room, days) ? [] : [choreRow(room, clock, asked)];
    });
  const tasks = room.chores.tasks.filter((task) => task.done === null && isInUse(room, task.where));
  return [...standing, ...tasks.map((task) => taskRow(room, task))];
}

/** Chores of a retired tank rest with it. */
function isInUse(room: Room, where: string): boolean {
  return (room.plumbing.tanks.get(where)?.retired ?? null) === null;
}

/** Nothing is harvested from a jar that went sour. */
function isSour(room: Room, { action, where }: Chore): boolean {
  return action.kind === 'harvest' && (room.cultures.jars.get(where)?.sour ?? null) !== null;
}

function startsWithin(due: DayWindow, room: Room, days: number): boolean {
  const first = due.low ?? due.likely ?? due.high;
  return first === null || first <= addDays(room.on, days);
}

/** The clean is asked for from the last day before it may spill, where the chore's own day is later than that. */
function beforeItSpills(room: Room, { chore }: ChoreClock, due: DayWindow): DayWindow {
  const loop = room.plumbing.loops.get(chore.where);
  if (loop === undefined || chore.action.kind !== 'clean prefilter') return due;
  const by = soonerBy(room, due, loop, prefilterOf(room, loop));
  return by === null || due.low === null || due.low <= by ? due : { ...due, low: by };
}

function choreRow(room: Room, clock: ChoreClock, due: DayWindow): DueItem {
  const { chore } = clock;
  const caution = cautionOf(room, chore);
  const raised = raisedOf(room, chore.where, chore.action);
  const lines = linesOf([...clock.places, ...levelPlaces(room, chore), ...(raised?.places ?? [])]);
  return {
    id: rowId(chore.where, actionWords(chore.action)),
    place: chore.where,
    what: whatOf(room, chore),
    kind: 'chore',
    due,
    weight: weightOf(room, clock),
    why: whyOf(room, clock),
    close: closeOf(room, chore),
    ...(caution === undefined ? {} : { caution }),
    ...(raised === null ? {} : { after: raised.says }),
    putOffKey: actionWords(chore.action),
    ...putOffFrom(clock),
    pressing: clock.over !== null || spillsSoon(room, clock),
    minutes: chore.takes === null ? null : Math.round(middle(chore.takes) ?? chore.takes.high),
    because: {
      rule: 'a chore is due an interval after it was last done in full; a part of it buys part of the interval',
      source: sourceOf(clock),
      steps: [...clock.steps, ...levelSteps(room, chore), ...(raised?.steps ?? [])],
      lines,
    },
    lines,
  };
}

/** What was put off before it was done, or before its jar was started anew, is over. */
function putOffFrom({ anew, lastWhole }: ChoreClock): Pick<DueItem, 'putOffFrom'> {
  const from = anew?.started.day ?? lastWhole?.day;
  return from === undefined ? {} : { putOffFrom: from };
}

function sourceOf(clock: ChoreClock): string {
  if (clock.over !== null) return 'the journal: the mark that you set';
  return clock.parts.length === 0
    ? 'the journal: the interval that you set'
    : 'the journal; what a part of it buys is a rule of ours until levels have taught it';
}

function weightOf(room: Room, clock: ChoreClock): 1 | 2 {
  if (clock.chore.action.kind !== 'clean prefilter') return 1;
  return clock.over !== null || spillsSoon(room, clock) ? 2 : 1;
}

/** The prefilter spills within days, and no part of a clean has bought time: it cannot be put off for long. */
function spillsSoon(room: Room, { chore, easedUntil }: ChoreClock): boolean {
  const loop = room.plumbing.loops.get(chore.where);
  if (loop === undefined || chore.action.kind !== 'clean prefilter') return false;
  return prefilterOf(room, loop).near && (easedUntil === null || easedUntil < room.on);
}

function whatOf(room: Room, chore: Chore): string {
  const { kind } = chore.action;
  const own = actionWords(chore.action);
  if (kind === 'clean prefilter') {
    const layers = room.plumbing.loops.get(chore.where)?.layers ?? null;
    return layers === null ? 'clean the prefilter' : `clean the prefilter, all ${plural(layers, 'layer')}`;
  }
  if (kind === 'water change' && chore.amount !== null) {
    const litres = litresOf(room, chore);
    return `water change ${amountWords(chore.amount)}${litres === null ? '' : ` (about ${litres} L)`}`;
  }
  return own;
}

/** Litres that a share comes to, of the live water and not of the glass box. */
function litresOf(room: Room, { amount, where }: Chore): number | null {
  if (amount === null || amount.unit !== 'share') return null;
  const held = room.plumbing.loops.has(where) ? loopVolume(room, where) : liveVolume(room, where).litres;
  const share = middle(amount);
  const litres = middle(held);
  return share === null || litres === null ? null : Math.round(share * litres);
}

function whyOf(room: Room, clock: ChoreClock): string {
  const { chore, lastWhole, parts, easedUntil, over, anew } = clock;
  const words: string[] = [];
  const loop = room.plumbing.loops.get(chore.where);
  const prefilter = chore.action.kind === 'clean prefilter';
  const whole = prefilter ? 'last full clean' : 'last';
  if (over !== null && chore.levelAbove !== null)
    words.push(`above your mark of ${Math.round(middle(chore.levelAbove) ?? 0)} mm`);
  if (anew !== null) words.push(`started ${dayWords(anew.started.day, room.on)}, ${intervalWords(chore)}`);
  else if (lastWhole === null) words.push(`not yet done, set ${dayWords(chore.day, room.on)}`);
  else words.push(`${whole} ${dayWords(lastWhole.day, room.on)}, ${intervalWords(chore)}`);
  const part = parts.at(-1);
  if (part !== undefined && easedUntil !== null) {
    words.push(`${part.told} on ${dayWords(part.day, room.on)} buys till ${dayWords(easedUntil, room.on)}`);
  }
  if (prefilter && loop !== undefined) {
    const state = prefilterOf(room, loop);
    const sooner = soonerWords(room, clock, loop, state);
    // Where the clean is asked for sooner that says already what lines make too little of.
    const odds = sooner.length > 0 ? null : (outlookAsked(room, loop, state)?.spill ?? null);
    words.push(levelWords(loop, state, room.on, odds), ...sooner);
  }
  if (chore.action.kind === 'water change') words.push(...offLoopWords(room, chore));
  return words.join('; ');
}

/** Clogging quickens: the chore's day may be too late, though the levels drawn on in a line say otherwise. */
function soonerWords(room: Room, { due }: ChoreClock, loop: DeepReadonly<Loop>, state: Prefilter): string[] {
  const by = soonerBy(room, due, loop, state);
  if (by === null) return [];
  const from = addDays(by, 1);
  const told = from <= room.on ? 'any day: better now' : `from ${dayWords(from, room.on)}: better before`;
  return [`clogging quickens, it may spill ${told}`];
}

/** The last day before it may spill, where the chore is still to come and later than that. */
function soonerBy(room: Room, due: DayWindow | null, loop: DeepReadonly<Loop>, state: Prefilter): Day | null {
  if (state.level === null || due?.likely === null || due === null || due.likely <= room.on) return null;
  return betterBy(due, outlookAsked(room, loop, state));
}

/** A loop's change does not reach the tanks that are valved off. */
function offLoopWords(room: Room, chore: Chore): string[] {
  if (!room.plumbing.loops.has(chore.where)) return [];
  const off = room.measures.unclosed.filter((rig) => rig.kind === 'off the loop' && isOpenOn(rig, room.on));
  const tanks = off.map(({ where }) => where).filter((tank) => homeOf(room, tank) === chore.where);
  return tanks.length === 0
    ? []
    : [`${tanks.join(', ')} off the loop: change ${tanks.length === 1 ? 'it' : 'them'} apart`];
}

function homeOf(room: Room, tank: string): string | null {
  return room.plumbing.tanks.get(tank)?.plumbed.at(-1)?.home ?? null;
}

function closeOf(room: Room, chore: Chore): string {
  const { where, action, amount } = chore;
  switch (action.kind) {
    case 'clean prefilter':
      return `${where}: ${cleanedAll(room.plumbing.loops.get(where)?.layers ?? null)}`;
    case 'clean media':
      return `${where}: cleaned media`;
    case 'rinse sponge':
      return `${where}: rinsed sponge`;
    case 'water change':
      return `${where}: water change${amount === null ? '' : ` ${amountWords(amount)}`}`;
    case 'top up':
      return `${where}: topped up`;
    case 'test':
      return `${where}: test ${TO_READ.usual}`;
    case 'feed':
      return `${where}: fed microworm`;
    case 'harvest':
      return `${where}: harvested`;
    case 'restart':
      return `${where}: started`;
    case 'own':
      return `${where}: did "${action.text ?? ''}"`;
  }
}

/** What would follow where a chore brings in new water, or its words name what raises pH. */
function raisedOf(room: Room, where: string, { kind, text }: Chore['action']): Raised | null {
  if (kind === 'water change') return afterRaising(room, where);
  return kind === 'own' && raisesPh(text ?? '') ? afterRaising(room, where, 'dose') : null;
}

function cautionOf(room: Room, { action, amount, where }: Chore): string | undefined {
  if (action.kind === 'clean prefilter' || action.kind === 'clean media') return CAUTION.pump;
  if (action.kind === 'top up') return CAUTION.tap;
  if (action.kind !== 'water change') return undefined;
  const share = amount === null ? null : shareOf(room, amount, where, where, room.on);
  if (share === null || share < LARGE) return CAUTION.tap;
  const days = share >= 1 ? null : Math.ceil(Math.log(1 - share) / Math.log(1 - LARGE) + 1e-9);
  const steps =
    days === null || days < 2 ? '' : `: ${Math.ceil((1 - (1 - share) ** (1 / days)) * 100)} % on each of ${days} days`;
  return `${CAUTION.tap}; ${CAUTION.largeChange}${steps}`;
}

function levelSteps(room: Room, chore: Chore): readonly string[] {
  const loop = room.plumbing.loops.get(chore.where);
  if (loop === undefined || chore.action.kind !== 'clean prefilter') return [];
  const state = prefilterOf(room, loop);
  return state.whyNot === null ? state.steps : [...state.steps, state.whyNot];
}

function levelPlaces(room: Room, chore: Chore): Prefilter['places'] {
  const loop = room.plumbing.loops.get(chore.where);
  return loop === undefined || chore.action.kind !== 'clean prefilter' ? [] : prefilterOf(room, loop).places;
}

function taskRow(room: Room, task: DeepReadonly<Task>): DueItem {
  const raised = raisesPh(task.text) ? afterRaising(room, task.where, 'dose') : null;
  const lines = linesOf([task.place, ...(raised?.places ?? [])]);
  const by = task.by === null ? 'no date set' : `by ${dayWords(task.by, room.on)}`;
  return {
    id: rowId(task.where, task.text),
    place: task.where,
    what: task.text,
    kind: 'task',
    due:
      task.by === null
        ? { low: task.day, likely: null, high: room.on }
        : { low: task.by, likely: task.by, high: task.by },
    weight: task.by === null ? 0 : 1,
    why: `to do since ${dayWords(task.day, room.on)}, ${by}`,
    close: `${task.where}: did "${task.text}"`,
    ...(raised === null ? {} : { after: raised.says }),
    putOffKey: task.text,
    pressing: false,
    minutes: null,
    because: {
      rule: 'a task is open until a did line of the same words',
      source: 'the journal',
      steps: [`set on ${dayWords(task.day, room.on)}, ${by}`, ...(raised?.steps ?? [])],
      lines,
    },
    lines,
  };
}

/** Standing chores, one-off tasks, and what was put off. Which lines count as doing a chore: see `done.ts`. */
import type { Homes } from './home.ts';
import { addDays, isoDay, type Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { ChoreAction, Event, EventOf, MeasureKind, WaterAmount } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { happened, insertInTime } from './when.ts';
import { whereOf } from './where.ts';

export interface Chores {
  standing: StandingChore[];
  tasks: Task[];
  /** Every `did`, oldest first: what no clause of its own tells. */
  did: { where: string; action: ChoreAction; day: Day; place: Place }[];
  putOffs: PutOff[];
  /** The keeper is away until that day, as said on `day`. */
  away: { day: Day; until: Day; remark: string | null; place: Place }[];
}

export interface StandingChore {
  /** Tank, loop, culture or `room`. */
  where: string;
  action: ChoreAction;
  every: Measure<'days'> | null;
  /** Every so many calendar months. */
  monthly: number | null;
  levelAbove: Measure<'mm'> | null;
  amount: WaterAmount | null;
  takes: Measure<'minutes'> | null;
  /** First set; a later line for the same thing amends it. */
  day: Day;
  place: Place;
  stopped: { day: Day; place: Place } | null;
}

export interface Task {
  where: string;
  text: string;
  by: Day | null;
  day: Day;
  place: Place;
  done: { day: Day; place: Place } | null;
}

interface PutOff {
  where: string;
  what: PutOffThing;
  day: Day;
  until: Day;
  remark: string | null;
  place: Place;
}

type PutOffThing = { readonly action: ChoreAction } | { readonly measure: MeasureKind } | { readonly text: string };

export const CHORES_HOMES: Homes<'away' | 'chore set' | 'chore stopped' | 'to do' | 'did' | 'put off'> = {
  away: (draft, event) => {
    if (!isAhead(draft, event, event.until, 'away')) return;
    const { day, until, remark, place } = event;
    draft.chores.away.push({ day, until, remark, place });
  },
  'chore set': setChore,
  'chore stopped': stopChore,
  'to do': setTask,
  did: noteDone,
  'put off': (draft, event) => {
    if (!isAhead(draft, event, event.until, `put off ${putOffName(event.what)}`)) return;
    const { what, day, until, remark, place } = event;
    draft.chores.putOffs.push({ where: whereOf(event.subject), what, day, until, remark, place });
  },
};

/** The words of a chore as a keeper writes them: `clean prefilter`, or what it says in quotes. */
export function actionWords(action: ChoreAction): string {
  return action.kind === 'own' ? (action.text ?? '') : action.kind;
}

/** What a row calls itself so that it can be put off: `water change`, `lights off`, the words of a task. */
export function putOffName(what: PutOffThing): string {
  if ('action' in what) return actionWords(what.action);
  return 'measure' in what ? what.measure : what.text;
}

/** The same words, whatever their case. */
export function sameWords(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** The same thing to do: a chore in words of one’s own is known by them. */
export function sameAction(a: ChoreAction, b: ChoreAction): boolean {
  return a.kind === b.kind && sameWords(a.text ?? '', b.text ?? '');
}

/** Sets a task; of one that is open in the same words it sets the deadline anew: it keeps the day that it was first set. */
function setTask(draft: Draft, event: EventOf<'to do'>): void {
  const where = whereOf(event.subject);
  const { text, by, day, place } = event;
  const { tasks } = draft.chores;
  const at = tasks.findIndex((one) => one.where === where && one.done === null && sameWords(one.text, text));
  const same = tasks[at];
  if (same === undefined) tasks.push({ where, text, by, day, place, done: null });
  else tasks[at] = { ...same, by: by ?? same.by, place };
}

/** Sets a chore, or amends the one that stands for the same thing: it keeps the day that it was first set. */
function setChore(draft: Draft, event: EventOf<'chore set'>): void {
  const where = whereOf(event.subject);
  const { action, every, monthly, levelAbove, amount, takes, day, place } = event;
  const same = standingChore(draft, where, action);
  const since = same?.day ?? day;
  const chore: StandingChore = {
    where,
    action,
    every,
    monthly,
    levelAbove,
    amount: amount ?? same?.amount ?? null,
    takes: takes ?? same?.takes ?? null,
    day: since,
    place,
    stopped: null,
  };
  if (same === undefined) draft.chores.standing.push(chore);
  else draft.chores.standing[draft.chores.standing.indexOf(same)] = chore;
}

function stopChore(draft: Draft, event: EventOf<'chore stopped'>): void {
  const where = whereOf(event.subject);
  const chore = standingChore(draft, where, event.action);
  if (chore !== undefined) {
    chore.stopped = { day: event.day, place: event.place };
    return;
  }
  const others = draft.chores.standing.filter((one) => one.where === where && one.stopped === null);
  const offer = others[0];
  draft.problems.push({
    kind: 'no-such-chore',
    weight: 'doubt',
    says: `no «${actionWords(event.action)}» is set for ${where}, so there is none to stop`,
    write: offer === undefined ? 'nothing' : `${where}: stop ${actionWords(offer.action)}`,
    at: event.place,
    also: others.map((one) => one.place),
  });
}

function standingChore(draft: Draft, where: string, action: ChoreAction): StandingChore | undefined {
  return draft.chores.standing.find(
    (one) => one.where === where && one.stopped === null && sameAction(one.action, action),
  );
}

/** `did` ends the oldest open task of those words, or counts for the chore of those words; neither is a doubt. */
function noteDone(draft: Draft, event: EventOf<'did'>): void {
  const where = whereOf(event.subject);
  const { action, place } = event;
  const { day } = happened(event);
  const words = actionWords(action);
  insertInTime(draft.chores.did, { where, action, day, place });
  const task = draft.chores.tasks.find((one) => one.where === where && one.done === null && sameWords(one.text, words));
  if (task !== undefined) {
    task.done = { day, place };
    return;
  }
  if (standingChore(draft, where, action) !== undefined || isForEvent(draft, words)) return;
  const open = draft.chores.tasks.find((one) => one.where === where && one.done === null);
  draft.problems.push({
    kind: 'nothing-to-do',
    weight: 'doubt',
    says: `nothing of the words «${words}» is to be done at ${where}`,
    write: open === undefined ? `${where}: note ${words}` : `${where}: did "${open.text}"`,
    at: place,
    also: open === undefined ? [] : [open.place],
  });
}

/** `did "bag for Autumn"`, `did "notice of Rowan-1 for club award"`: work that an auction's or an award's own line calls for. */
function isForEvent(draft: Draft, words: string): boolean {
  return [...draft.sale.auctions.keys(), ...draft.sale.awards.keys()].some((name) =>
    sameWords(words.slice(-name.length - 5), ` for ${name}`),
  );
}

/** True where `until` a day is not before the day of its line; else that line is left out. */
export function isAhead(draft: Draft, event: Event, until: Day, words: string): boolean {
  if (until >= event.day) return true;
  draft.problems.push({
    kind: 'until-before-line',
    weight: 'stops',
    says: 'the day that it lasts until is before the day of the line',
    write: `${isoDay(event.day)} ${whereOf(event.subject)}: ${words} until ${isoDay(addDays(event.day, 2))}`,
    at: event.place,
    also: [],
  });
  return false;
}

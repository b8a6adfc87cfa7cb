/** What a loop's own pipes ask for beside its chores: a spill that comes before any chore, a flow that fell. */
import { middle, onDay } from '../../core/interval.ts';
import { addDays, toDay, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { dayWords, listWords, windowWords } from '../../core/words.ts';
import { WARN_DAYS } from '../../science/clogging.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { Loop } from '../../state/plumbing.ts';
import { homeLoopOf } from '../../state/tanks.ts';
import { since as sinceDay } from '../../state/when.ts';
import { clockOf } from '../clock.ts';
import { rowId } from '../id.ts';
import { levelWords, mmWords, prefilterOf, type Prefilter } from '../prefilter.ts';
import { spillOutlook, type Outlook } from '../spill.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';

export function loopsDue(room: Room): readonly DueItem[] {
  return [...room.plumbing.loops.values()].flatMap((loop) => {
    const state = prefilterOf(room, loop);
    return [...fellRow(room, loop, state), ...spillRow(room, loop, state)];
  });
}

/** A level that falls without a clean is no good news: less water arrives, or the drain runs differently. */
function fellRow(room: Room, loop: DeepReadonly<Loop>, state: Prefilter): DueItem[] {
  if (state.flowFell === null) return [];
  const { from, to } = state.flowFell;
  const lines = linesOf([from.place, to.place]);
  const gone = sinceDay(room.measures.rigs, from.day).filter(
    (rig) => rig.kind === 'off the loop' && rig.day <= to.day && belongs(room, rig.where, loop.name),
  );
  const off = gone.length === 0 ? '' : `; ${listWords(gone.map(({ where }) => where))} went off the loop between`;
  const told = `${mmWords(from.level)} on ${dayWords(from.day, room.on)}, ${mmWords(to.level)} on ${dayWords(to.day, room.on)}`;
  return [
    {
      id: rowId(loop.name, 'flow fell'),
      place: loop.name,
      what: 'flow fell: check pump or drain, then read the level again',
      kind: 'water',
      due: onDay(to.day),
      weight: 2,
      why: `level ${told}, nothing cleaned between${off}`,
      close: `${loop.name}: level ${mmWords(to.level)}`,
      caution: CAUTION.pump,
      putOffKey: 'flow',
      pressing: true,
      minutes: null,
      because: {
        rule: 'a level that falls without a clean means less flow, not a cleaner sponge',
        source: 'common practice, no source',
        steps: [`level ${told}`, 'no clean between the two'],
        lines,
      },
      lines,
    },
  ];
}

function belongs(room: Room, where: string, loop: string): boolean {
  return where === loop || homeLoopOf(room, where) === loop;
}

/** Warns of a spill a week ahead, unless a cleaning chore falls due before it anyway. */
function spillRow(room: Room, loop: DeepReadonly<Loop>, state: Prefilter): DueItem[] {
  // A chore that is due already asks for the clean: no need to reckon when it would spill.
  if (state.level === null || choreComesFirst(room, loop.name, null)) return [];
  // As long as it overflows that row asks for the clean.
  if (state.level.spilled && isOverflowing(room, loop.name)) return [];
  const outlook = outlookOf(room, loop, state);
  const soon = outlook !== null && (outlook.cleanBy.likely ?? room.on + 1) <= room.on;
  if (!state.near && !soon) return [];
  const low = earliest(outlook?.spill.low ?? null, state.spill?.low ?? null);
  // The plain window speaks where there is one: the chore's own row names it, and one row a clean is enough.
  if (choreComesFirst(room, loop.name, state.spill?.low ?? low)) return [];
  const by = low === null || low - WARN_DAYS < state.level.day ? state.level.day : toDay(low - WARN_DAYS);
  const lines = linesOf(state.places);
  return [
    {
      id: rowId(loop.name, 'spill'),
      place: loop.name,
      what: state.level.spilled ? 'clean the prefilter, it spilled' : 'clean the prefilter before it spills',
      kind: 'water',
      due: { low: by, likely: by, high: low === null ? by : toDay(Math.max(by, low - 1)) },
      weight: 2,
      why: `${levelWords(loop, state, room.on)}${unreadWords(room, state, outlook)}`,
      close: `${loop.name}: cleaned ${loop.layers === null ? 'all layers' : `${loop.layers} of ${loop.layers} layers`}`,
      caution: CAUTION.pump,
      putOffKey: 'clean prefilter',
      pressing: true,
      minutes: null,
      because: {
        rule: 'clean a week before the earliest spill, or when a quarter of the freeboard is left',
        source: 'rule of ours; clogging goes fastest at the end (common practice, no source)',
        steps: [...state.steps, ...(state.whyNot === null ? [] : [state.whyNot]), ...outlookSteps(room, outlook)],
        lines,
      },
      lines,
    },
  ];
}

function isOverflowing(room: Room, loop: string): boolean {
  return room.measures.faults.some(({ kind, where, fixed }) => kind === 'overflow' && where === loop && fixed === null);
}

/** The row tells the plain window, so it never asks for the clean later than that allows. */
function earliest(a: Day | null, b: Day | null): Day | null {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
}

/** Where levels alone give no window the row tells the one that it goes by. */
function unreadWords(room: Room, { spill }: Prefilter, outlook: Outlook | null): string {
  return spill !== null || outlook === null ? '' : `; 8 in 10 spill ${windowWords(outlook.spill, room.on)}`;
}

/** How the wider window was reckoned: 8 in 10 such runs spill inside it. */
function outlookSteps(room: Room, outlook: Outlook | null): readonly string[] {
  return outlook === null ? [] : [...outlook.steps, `8 in 10 spill ${windowWords(outlook.spill, room.on)}`];
}

/**
 * The outlook takes a while to reckon and `due` is asked often: not in the two weeks after a clean, and
 * not while a fresh level has less than so much of its rise behind it, for then the lip is more than a week off.
 */
const QUIET = 14;
const FRESH = 10;
const RISEN = 0.2;

function outlookOf(room: Room, loop: DeepReadonly<Loop>, state: Prefilter): Outlook | null {
  const { lastClean, flowFell, since, level } = state;
  if (level?.spilled === true || lastClean === null || flowFell !== null || addDays(lastClean.day, QUIET) > room.on)
    return null;
  const [first, last, lip] = [since[0]?.level ?? null, level?.level ?? null, loop.spillsAt].map(middle);
  if (!state.near && level !== null && room.on - level.day <= FRESH && since.length > 1) {
    const rise = ((last ?? 0) - (first ?? 0)) / ((lip ?? 0) - (first ?? 0));
    if (rise < RISEN) return null;
  }
  return spillOutlook(room, loop);
}

function choreComesFirst(room: Room, loop: string, spill: number | null): boolean {
  return room.chores.standing.some((chore) => {
    if (chore.where !== loop || chore.action.kind !== 'clean prefilter' || chore.stopped !== null) return false;
    const due = clockOf(room, chore).due?.likely ?? null;
    return due !== null && (due <= room.on || (spill !== null && due < spill));
  });
}

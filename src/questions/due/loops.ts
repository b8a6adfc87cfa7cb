/** What a loop's own pipes ask for beside its chores: a spill that comes before any chore, a flow that fell. */
import { onDay } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { dayWords, listWords, plural, rangeWords, windowWords } from '../../core/words.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { Loop } from '../../state/plumbing.ts';
import { homeLoopOf } from '../../state/tanks.ts';
import { since as sinceDay } from '../../state/when.ts';
import { askedByHistory, askedByLevels, cleanedAll, cleaningClocks, outlookAsked } from '../cleaning.ts';
import { rowId } from '../id.ts';
import { cleanInterval, levelWords, mmWords, prefilterOf, type Prefilter } from '../prefilter.ts';
import type { Outlook } from '../spill.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';

export function loopsDue(room: Room, days = 0): readonly DueItem[] {
  return [...room.plumbing.loops.values()].flatMap((loop) => {
    const state = prefilterOf(room, loop);
    const spill = spillRow(room, loop, state);
    return [...fellRow(room, loop, state), ...(spill.length > 0 ? spill : usualRow(room, loop, state, days))];
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
      close: `${loop.name}: level … mm`,
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
  if (state.level === null || choreComesFirst(room, loop, null)) return [];
  // As long as it overflows that row asks for the clean.
  if (state.level.spilled && isOverflowing(room, loop.name)) return [];
  const outlook = outlookAsked(room, loop, state);
  const asked = askedByLevels(state, outlook);
  if (!state.near && (asked?.low ?? room.on + 1) > room.on) return [];
  // The plain window speaks where there is one: the chore's own row names it, and one row a clean is enough.
  if (choreComesFirst(room, loop, state.spill?.low ?? asked?.high ?? null)) return [];
  const lines = linesOf(state.places);
  return [
    {
      id: rowId(loop.name, 'spill'),
      place: loop.name,
      what: state.level.spilled ? 'clean the prefilter, it spilled' : 'clean the prefilter before it spills',
      kind: 'water',
      due: asked ?? onDay(state.level.day),
      weight: 2,
      why: `${levelWords(loop, state, room.on, outlook?.spill ?? null)}${unreadWords(room, state, outlook)}`,
      close: `${loop.name}: ${cleanedAll(loop.layers)}`,
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

/** Where levels alone give no window the row tells the one that it goes by. */
function unreadWords(room: Room, { spill }: Prefilter, outlook: Outlook | null): string {
  return spill !== null || outlook === null ? '' : `; 8 in 10 spill ${windowWords(outlook.spill, room.on)}`;
}

/** How the wider window was reckoned: 8 in 10 such runs spill inside it. */
function outlookSteps(room: Room, outlook: Outlook | null): readonly string[] {
  return outlook === null ? [] : [...outlook.steps, `8 in 10 spill ${windowWords(outlook.spill, room.on)}`];
}

function choreComesFirst(room: Room, loop: DeepReadonly<Loop>, spill: number | null): boolean {
  return cleaningClocks(room, loop).some(({ due: window }) => {
    const due = window?.likely ?? null;
    return due !== null && (due <= room.on || (spill !== null && due < spill));
  });
}

/** Without a chore: after as many days as full cleans are apart here, or usually. */
function usualRow(room: Room, loop: DeepReadonly<Loop>, state: Prefilter, days: number): DueItem[] {
  const usual = cleanInterval(loop);
  const asked = askedByHistory(state, usual.days);
  if (asked === null || asked.low === null || state.lastFull === null || asked.low > room.on + days) return [];
  if (state.level?.spilled === true || cleaningClocks(room, loop).length > 0) return [];
  const lines = linesOf([state.lastFull.place, ...state.places]);
  const last = `last full clean ${dayWords(state.lastFull.day, room.on)}`;
  const apart = usual.own ? `here every ${rangeWords(usual.days)} days` : 'about every 6 weeks is usual';
  return [
    {
      id: rowId(loop.name, 'clean prefilter'),
      place: loop.name,
      what: `clean the prefilter${loop.layers === null ? '' : `, all ${plural(loop.layers, 'layer')}`}`,
      kind: 'water',
      due: asked,
      weight: 1,
      why: `${last}, ${apart}; ${levelWords(loop, state, room.on)}`,
      close: `${loop.name}: ${cleanedAll(loop.layers)}`,
      caution: CAUTION.pump,
      putOffKey: 'clean prefilter',
      putOffFrom: state.lastFull.day,
      pressing: false,
      minutes: null,
      because: {
        rule: 'where no chore cleans it, after as many days as its full cleans are apart here, or usually',
        source: usual.own ? 'the journal' : 'all layers last about six weeks (common practice, no source)',
        steps: [last, usual.step, ...state.steps, ...(state.whyNot === null ? [] : [state.whyNot])],
        lines,
      },
      lines,
    },
  ];
}

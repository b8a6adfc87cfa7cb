/**
 * How many of a brood are likely there: bounds that hold the truth four times of five. The interval that
 * the lines themselves allow stands beside it: it follows what was written, this follows what is usual.
 */
import type { Because } from '../core/because.ts';
import type { Interval } from '../core/interval.ts';
import { linesOf } from '../core/span.ts';
import { countWords, dayWords } from '../core/words.ts';
import type { SeenBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { follow, windowOf } from './counts/headcount.ts';
import type { Headcount } from './counts/headcount.ts';
import { ledgerOf } from './counts/ledger.ts';
import type { Entry } from './counts/ledger.ts';
import { guildFor, learntIn, stretchesOf } from './counts/phases.ts';

/** Share of all cases in which the bounds hold the truth. */
export const LEVEL = 0.8;

export interface Likely {
  /** Null where nobody ever said a number. */
  readonly total: Interval | null;
  readonly parts: ReadonlyMap<string, Interval | null>;
  readonly because: Because;
}

/** How many of a brood there are likely to be on the room's day, together and by tank. */
export function likelyCounts(room: Room, brood: SeenBrood): Likely {
  const entries = ledgerOf(room, brood);
  const state = followed(room, brood, entries);
  const total = windowOf(state.weights, state.total, brood.ceiling?.count ?? Infinity, LEVEL);
  const most = (tank: string): number =>
    Math.min(brood.ceilings.get(tank)?.count ?? Infinity, brood.ceiling?.count ?? Infinity);
  const parts = new Map(
    [...brood.parts.keys()].map((tank) => [
      tank,
      windowOf(state.weights, state.parts.get(tank) ?? null, most(tank), LEVEL),
    ]),
  );
  return { total, parts, because: becauseOf(room, brood, entries, total) };
}

/** All of a brood together; null where nobody ever said a number. */
export function likelyCount(room: Room, brood: SeenBrood): Interval | null {
  return likelyCounts(room, brood).total;
}

/** What the first number and the usual losses alone would say: what later counts are to improve on. */
export function priorCount(room: Room, brood: SeenBrood): Interval | null {
  const entries = ledgerOf(room, brood);
  const first = entries.findIndex(({ kind }) => kind === 'count');
  const state = followed(
    room,
    brood,
    entries.filter(({ kind }, index) => kind !== 'count' || index === first),
  );
  return windowOf(state.weights, state.total, Infinity, LEVEL);
}

function followed(room: Room, brood: SeenBrood, entries: readonly Entry[]): Headcount {
  return follow(entries, stretchesOf(room, brood), brood.ended?.day ?? room.on);
}

function becauseOf(room: Room, brood: SeenBrood, entries: readonly Entry[], total: Interval | null): Because {
  const guild = guildFor(room, brood);
  const days = stretchesOf(room, brood)(entries[0]?.day ?? room.on, room.on);
  const learnt = learntIn(room, brood);
  const taught = learnt.fry.fishDays + learnt.young.fishDays;
  return {
    rule: 'a guess holds the truth within its bounds four times of five, a count settles the number, and between lines some go unseen: the bounds hold the truth four times of five',
    source:
      taught > 0
        ? `the journal: ${String(learnt.fry.lost + learnt.young.lost)} lost unseen in ${String(Math.round(taught))} fish-days between counts of other broods of that species, drawn towards what is usual (ours)`
        : `losses usual for ${guild ?? 'substrate spawner'}s (common practice, no source)`,
    steps: [
      ...entries.map((entry) => `${dayWords(entry.day, room.on)}: ${entryWords(entry)}`),
      ...days.map(
        ({ phase, loss, days: count }) =>
          `as ${PHASE_WORDS[phase]}: ${String(Math.round(count))} days at ${(loss * 100).toFixed(loss < 0.01 ? 2 : 1)} % a day unseen, e^(−${(loss * count).toFixed(2)}) = ${String(Math.round(Math.exp(-loss * count) * 100))} % live on`,
      ),
      ...alone(room, brood, entries),
      `likely there: ${total === null ? 'nobody said a number' : countWords(total)}`,
    ],
    lines: linesOf(entries.map(({ of }) => of.place)),
  };
}

/** What later counts bought: the bounds without them. */
function alone(room: Room, brood: SeenBrood, entries: readonly Entry[]): string[] {
  if (entries.filter(({ kind }) => kind === 'count').length < 2) return [];
  const first = priorCount(room, brood);
  return first === null ? [] : [`by the first number and usual losses alone: ${countWords(first)}`];
}

const PHASE_WORDS = { egg: 'eggs', wriggler: 'wrigglers', fry: 'small fry', young: 'young' } as const;

/** What a line said, in words. */
function entryWords(entry: Entry): string {
  switch (entry.kind) {
    case 'count':
      return `${entry.of.sure ? 'counted' : 'guessed'} ${countWords(entry.of.count)}${inTank(entry.of.tank)}`;
    case 'gone':
      return `${entry.of.how} ${countWords(entry.of.count)}${inTank(entry.of.tank)}`;
    case 'move':
      return `moved ${entry.of.as === 'number' ? countWords(entry.of.count) : entry.of.as}${entry.of.from === null ? '' : ` from ${entry.of.from}`} to ${entry.of.to}`;
  }
}

function inTank(tank: string | null): string {
  return tank === null ? '' : ` in ${tank}`;
}

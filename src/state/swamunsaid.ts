/**
 * Young that swim without a line that says so. Whoever measures, counts, moves or sells fish of a brood after the last day
 * on which they may still have been wrigglers has seen that they swam; when, only the clock can tell.
 */
import { toDay } from '../core/day.ts';
import { clamp } from '../core/interval.ts';
import type { EventBase } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import { rankOfStage, reached } from './broodlife.ts';
import type { Draft } from './draft.ts';
import { clockOf, swimDays } from './stageclock.ts';
import { dayAtAge } from './stagewindows.ts';
import type { Brood, Group } from './stock.ts';

/** Takes a line about living fish of a brood for word that they swam, where they must have by its day. */
export function swamUnsaid(draft: Draft, body: Brood | Group, event: Pick<EventBase, 'day'>): void {
  if (!isBrood(body) || body.suspected || reached(body, 'swam')) return;
  const clock = clockOf(draft, body);
  const usual = dayAtAge(body.laid, swimDays(clock));
  if (usual.high === null || event.day <= usual.high) return;
  // No earlier than the last look that found them short of it.
  const short = Math.max(...body.looks.filter(({ stage }) => rankOfStage(stage) < SWIMMING).map(({ day }) => day));
  const low = Math.max(short, usual.low ?? -Infinity);
  const high = short > usual.high ? event.day : usual.high;
  const likely = usual.likely === null ? null : toDay(clamp(usual.likely, low, high));
  const window = { low: Number.isFinite(low) ? toDay(low) : null, likely, high };
  if (clock.release === null) body.swam = window;
  else body.released = window;
}

const SWIMMING = rankOfStage('free-swimming');

/** The steps before an auction: their names, the rule of each, and where the rule comes from. */
import { USUAL_WAIT_DAYS } from '../holds/courses.ts';

export type Step =
  | 'last dose'
  | 'clearance'
  | 'check'
  | 'rocks out'
  | 'catch'
  | 'rocks back'
  | 'fast'
  | 'fast young'
  | 'bag'
  | 'load'
  | 'settle';

/** Days before an auction from which its work is shown. */
export const WINDOW_DAYS = 28;
/** Days before it on which promises and counts are checked (ours). */
export const CHECK_DAYS = 7;
/** Days without food before they are bagged, where the auction's line says nothing: 48 h, common practice, no source. */
export const USUAL_FAST_DAYS = 2;
/** Days after it for which its results are asked for (ours). */
export const SETTLE_DAYS = 14;
/** The most days without food for young fish (ours). */
export const YOUNG_FAST_DAYS = 1;
/** Fish shorter than this, mm, are young for a fast (ours). */
export const YOUNG_MM = 25;
/** Days more for fish that the journal calls hard to catch (ours). */
export const HARD_DAYS = 1;

export const RULES: Readonly<Record<Step, string>> = {
  'last dose': 'treated fish go nowhere until their clearance, so the last dose is that long before the auction',
  clearance: 'fish in treatment may go once the last course of their tank is clear, if that is by the auction',
  check: 'a week before, count what is unsure and settle reservations, so that no fish is promised twice',
  'rocks out': 'rocks come out on the day of the catch, so that they are out no longer than need be',
  catch: 'caught on the day before the fast, a day earlier where a species is hard to catch',
  'rocks back': 'rocks go back on the day of the catch: what stays needs its hides',
  fast: 'fish are bagged with empty guts',
  'fast young': `fish under ${String(YOUNG_MM)} mm go without food for a day at most`,
  bag: 'bags last their hours from the moment of bagging',
  load: 'boxes are loaded last',
  settle: 'what was sold, for how much, and where the unsold went, while it is known',
};

export const SOURCES: Readonly<Record<Step, string>> = {
  'last dose': `ours: ${String(USUAL_WAIT_DAYS)} days from the last dose, unless a treatment says otherwise`,
  clearance: 'the treatment lines',
  check: 'ours',
  'rocks out': 'common practice, no source',
  catch: 'common practice, no source',
  'rocks back': 'common practice, no source',
  fast: 'the auction line, else 48 hours: common practice, no source',
  'fast young': 'ours',
  bag: 'common practice, no source',
  load: 'common practice, no source',
  settle: 'ours',
};

/** The words that say that a step is done: `room: did "bag for Autumn"`. */
export function doneWords(auction: string, step: Step): string {
  return `${step} for ${auction}`;
}

/** What an award rule of the journal asks of a brood, as days: when its young are of age, when word of it is due. */
import { addDays, type Day } from '../../core/day.ts';
import type { DayWindow } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { rangeWords } from '../../core/words.ts';
import type { SeenBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { AwardRule } from '../../state/sale.ts';
import { clockOf } from '../../state/stageclock.ts';
import { datesOf, type BroodDates } from '../laying.ts';

export type SeenRule = DeepReadonly<AwardRule>;

/** What age counts from. */
type Anchor = 'hatched' | 'released' | 'born';

export interface AwardDays {
  readonly anchor: Anchor;
  /** Null where nothing tells. */
  readonly from: DayWindow | null;
  /** Somebody wrote it, it was not worked out. */
  readonly seen: boolean;
  /** The day from which they surely are of age, and the first on which they may be. */
  readonly opens: DayWindow | null;
  /** The last day on which they surely are young enough still, and the last on which they may be; null: no end. */
  readonly closes: DayWindow | null;
  /** The last day for word of the spawning, by the earliest day on which they were most likely laid; null: none asked. */
  readonly notice: Day | null;
  /** The day after which it surely is too late for word, by the latest day on which they may have been laid. */
  readonly noticeEnds: Day | null;
}

/**
 * Age counts from hatching, of mouthbrooders from release whatever the rule says: nobody sees them hatch, and clubs
 * that ask for an age from hatching take release for theirs (common practice, no source). Livebearers are born.
 * Whatever is uncertain counts against the keeper: the latest opening, the earliest end; where looks leave many
 * days open, the end goes by the earliest of the most likely ones.
 */
export function awardDays(room: Room, brood: SeenBrood, rule: SeenRule): AwardDays {
  const dates = datesOf(room, brood);
  const clock = clockOf(room, brood);
  const anchor = clock.guild === 'livebearer' ? 'born' : clock.guild === 'mouthbrooder' ? 'released' : 'hatched';
  const from = anchorDays(dates, anchor);
  const { low, high } = rule.age;
  const ends = high > low && Number.isFinite(high);
  const laid = dates.mostLikely.laid.low ?? dates.laid.low;
  const noticeDays = rule.notice === null ? null : Math.floor(rule.notice.low);
  const lastLaid = dates.laid.high;
  return {
    anchor,
    from,
    seen: anchor === 'born' || brood.looks.some((look) => LOOKS[anchor].includes(look.stage)),
    opens: from === null ? null : shifted(from, Math.ceil(low)),
    closes: from === null || !ends ? null : shifted(from, Math.floor(high)),
    notice: noticeDays === null || laid === null ? null : addDays(laid, noticeDays),
    noticeEnds: noticeDays === null || lastLaid === null ? null : addDays(lastLaid, noticeDays),
  };
}

function anchorDays(dates: BroodDates, anchor: Anchor): DayWindow | null {
  const seen = { born: dates.laid, hatched: dates.hatched, released: dates.released }[anchor];
  if (seen === null) return anchor === 'released' ? dates.swims : dates.hatches;
  const { laid, hatched, released } = dates.mostLikely;
  const likely = { born: laid, hatched, released }[anchor];
  return { ...seen, low: likely?.low ?? seen.low };
}

const EVENT: Readonly<Record<Anchor, string>> = { hatched: 'hatching', released: 'release', born: 'birth' };

/** Looks that date it: seen with yolk they have hatched within days. */
const LOOKS: Readonly<Record<'hatched' | 'released', readonly string[]>> = {
  hatched: ['hatched', 'wrigglers'],
  released: ['released', 'stripped'],
};

function shifted({ low, likely, high }: DayWindow, days: number): DayWindow {
  const move = (day: Day | null): Day | null => (day === null ? null : addDays(day, days));
  return { low: move(low), likely: move(likely), high: move(high) };
}

/** `6 young at 60 days from hatching, notice within 14 days of laying`; for one brood, from what its age counts from. */
export function ruleWords({ young, age, from, notice }: SeenRule, anchor: Anchor = from): string {
  const word = notice === null ? '' : `, notice within ${String(Math.floor(notice.low))} days of laying`;
  return `${String(young)} young at ${rangeWords(age)} days from ${EVENT[anchor]}${word}`;
}

/** The words that say that word was given, or that it was claimed: `room: did "notice of Rowan-1 for club award"`. */
export function awardWords(what: 'notice' | 'claim', brood: string, rule: string): string {
  return `${what} of ${brood} for ${rule}`;
}

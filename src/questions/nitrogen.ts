/** What the feed asks of a filter: ammonia made, the most that it has carried at zero ammonia, and the alkalinity that it eats. */
import { addDays, type Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import { dayWords, plural } from '../core/words.ts';
import { ammoniaFromFeed, CACO3_PER_DEGREE, PER_GRAM_NITRIFIED } from '../science/chemistry.ts';
import { robustLine } from '../science/trend.ts';
import type { Room } from '../state/draft.ts';
import { loopOf } from '../state/tanks.ts';
import { seriesOf, type readingsOf } from './readings.ts';
import type { WaterBody } from './waters.ts';

/** Protein of dry foods where nobody said (ours: a setting; labels of flake and pellets print 35 to 50 %). */
const PROTEIN = 0.45;
/** Days back that feed is taken from, and how many of them must be logged (ours). */
const FED_LATELY = 28;
const LOGGED_DAYS = 3;
/** What a kit shows as nothing, mg/L as N. */
const NOTHING = 0.05;
/** Days back that falling KH is read from. */
const KH_DAYS = 60;

export interface FilterLoad {
  /** Grams fed on a day that is logged; null where too few are. */
  readonly grams: number | null;
  /** Grams of ammonia nitrogen a day that come of it. */
  readonly ammonia: number | null;
  /** The most fed a day in the four weeks before a test without ammonia and nitrite. */
  readonly carried: { readonly grams: number; readonly on: Day } | null;
  /** German degrees of KH a week: what nitrifying it eats, and what the readings show (a fall is above 0). */
  readonly khEaten: number | null;
  readonly khFell: number | null;
  readonly says: readonly string[];
  readonly steps: readonly string[];
  readonly places: readonly Place[];
}

/** The load of a body of water on the room's day. */
export function filterLoad(
  room: Room,
  body: WaterBody,
  litres: Interval | null,
  facts: ReturnType<typeof readingsOf>,
): FilterLoad {
  const now = fedBefore(room, body, room.on);
  const ammonia = now === null ? null : ammoniaFromFeed(now.grams, PROTEIN);
  const carried = carriedBy(room, body, facts);
  const held = middle(litres);
  const khEaten =
    ammonia === null || held === null || held <= 0
      ? null
      : (7 * ammonia * 1000 * PER_GRAM_NITRIFIED.alkalinity) / held / CACO3_PER_DEGREE;
  const kh = seriesOf(facts, 'kh').filter(({ day }) => day > room.on - KH_DAYS);
  const line = robustLine(kh.map(({ day, value }) => ({ x: day, y: middle(value) })));
  const khFell = line === null ? null : -7 * line.slope;
  const tested = carried === null ? [] : [carried.place];
  return {
    grams: now?.grams ?? null,
    ammonia,
    carried: carried === null ? null : { grams: carried.grams, on: carried.on },
    khEaten,
    khFell,
    says: [...feedWords(room, now?.grams ?? null, ammonia, carried), ...khWords(khEaten, khFell, kh.length)],
    steps:
      now === null || ammonia === null
        ? []
        : [
            `${figure(now.grams)} g fed a day (${plural(now.days, 'day')} logged since ${dayWords(now.since, room.on)}) × protein ${PROTEIN} × 0.092 = ${figure(ammonia)} g of ammonia N a day (Timmons & Ebeling)`,
            ...(khEaten === null
              ? []
              : [
                  `each gram nitrified eats ${PER_GRAM_NITRIFIED.alkalinity.toFixed(2)} g of alkalinity as CaCO3, in ${Math.round(held ?? 0)} L: ${figure(khEaten)} dH a week`,
                ]),
          ],
    places: [...(now?.places ?? []), ...tested],
  };
}

function feedWords(
  room: Room,
  grams: number | null,
  ammonia: number | null,
  carried: { readonly grams: number; readonly on: Day } | null,
): string[] {
  if (grams === null || ammonia === null) return [];
  const made = `feed ${figure(grams)} g a day makes about ${figure(ammonia)} g of ammonia N a day`;
  if (carried === null) return [`${made}; what the filter carries is not tested yet`];
  const over = grams > carried.grams * 1.1 ? ': more than it has shown, test ammonia and nitrite' : '';
  return [
    `${made}; carried at zero ammonia: ${figure(carried.grams)} g a day (${dayWords(carried.on, room.on)})${over}`,
  ];
}

/** The fall that the feed explains beside the one that was read: more fell than is eaten means something else takes it. */
function khWords(eaten: number | null, fell: number | null, readings: number): string[] {
  if (eaten === null || eaten < 0.05) return [];
  const read = fell === null ? '' : `; its ${plural(readings, 'reading')} fell ${figure(Math.max(0, fell))} a week`;
  const more = fell !== null && fell > 2 * eaten + 0.5 ? ', more than the feed explains' : '';
  return [`nitrifying that eats KH ${figure(eaten)} dH a week, changes apart${read}${more}`];
}

interface Fed {
  readonly grams: number;
  readonly days: number;
  readonly since: Day;
  readonly places: readonly Place[];
}

/** Grams a logged day in the four weeks up to a day; null under three such days. */
function fedBefore(room: Room, body: WaterBody, day: Day): Fed | null {
  const since = addDays(day, -FED_LATELY);
  const days = new Map<Day, number>();
  const places: Place[] = [];
  const { feeds } = room.cultures;
  for (let at = feeds.length - 1; at >= 0; at -= 1) {
    const feed = feeds[at];
    if (feed === undefined || feed.day > day) continue;
    if (feed.day <= since) break;
    const grams = middle(feed.grams);
    if (grams === null || !isOf(room, body, feed)) continue;
    days.set(feed.day, (days.get(feed.day) ?? 0) + grams);
    places.push(feed.place);
  }
  const first = Math.min(...days.keys());
  if (days.size < LOGGED_DAYS) return null;
  const total = [...days.values()].reduce((sum, one) => sum + one, 0);
  return { grams: total / days.size, days: days.size, since: addDays(day, first - day), places };
}

function isOf(room: Room, body: WaterBody, { where, day }: DeepReadonly<{ where: string; day: Day }>): boolean {
  if (where === body.name) return true;
  return body.kind === 'tank' ? body.tanks.includes(where) : loopOf(room, where, day) === body.name;
}

function carriedBy(
  room: Room,
  body: WaterBody,
  facts: ReturnType<typeof readingsOf>,
): { readonly grams: number; readonly on: Day; readonly place: Place } | null {
  return facts
    .filter(({ reading }) => (reading.tan?.high ?? 1) <= NOTHING && (reading.no2?.high ?? 1) <= NOTHING)
    .flatMap(({ day, place }) => {
      const fed = fedBefore(room, body, day);
      return fed === null ? [] : [{ grams: fed.grams, on: day, place }];
    })
    .reduce<{ grams: number; on: Day; place: Place } | null>(
      (most, one) => (most === null || one.grams > most.grams ? one : most),
      null,
    );
}

function figure(value: number): string {
  return String(Number(value.toPrecision(2)));
}

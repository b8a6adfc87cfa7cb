/**
 * Numbers, lengths of time, fish and dates as a journal writes them. Everything has a canonical unit
 * inside; a `Voice` says which units the keeper would rather read, and the printer converts back.
 */
import { addDays, isoDay } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import { IMPERIAL_GALLON, US_GALLON } from '../../core/units.ts';
import type { DayWindow, Interval } from '../../core/interval.ts';
import type { Measure, Price } from '../../core/quantity.ts';
import type { Dose, Heads, HowMany, Sizes, WaterAmount } from '../../journal/event.ts';
import type { FishRef, Member, Subject } from '../../journal/subject.ts';

/** The units that a printed line uses. Canonical lines are metric. */
export interface Voice {
  readonly units: 'metric' | 'US' | 'imperial';
  /** How kits report nitrogen in this room. */
  readonly nitrogen: 'N' | 'ion';
  /** A measured guess around a middle as `about 40` rather than `30-50`: the two say the same. */
  readonly about: boolean;
  /** Whole weeks as weeks, however few; null: from six weeks on. */
  readonly weeks: boolean | null;
  /** What stands before `gal` and `gph`: nothing where the room has said which gallon it means. */
  readonly gallon: '' | 'US ' | 'imp ';
}

export const CANONICAL: Voice = { units: 'metric', nitrogen: 'N', about: false, weeks: null, gallon: '' };

/** A number without the noise that binary fractions and conversions leave behind: the shortest that is as good. */
export function num(value: number): string {
  for (let digits = 6; digits < 13; digits += 1) {
    const short = Number(value.toPrecision(digits));
    if (Math.abs(short - value) <= Math.abs(value) * NOISE) return String(short);
  }
  return String(Number(value.toPrecision(13)));
}

/** Share of a value by which two conversions, there and back, may miss it. */
const NOISE = 5e-14;

/** The canonical one of the spellings in a row of the vocabulary. */
export function first(says: string): string {
  return says.split('|')[0] ?? says;
}

/** A number converted back into the unit that it was written in: conversions there and back miss by a little. */
export function back(value: number): string {
  return String(Number(value.toPrecision(11)));
}

/** An amount of money: cents are always written. */
export function money(amount: number): string {
  return Number.isInteger(Math.round(amount * 1e6) / 1e4) ? amount.toFixed(2) : num(amount);
}

/** Words in quotes. A double quote cannot stand inside one, so it becomes a single one. */
export function quoted(text: string): string {
  return `"${text.replaceAll(/["“”„‟]/gu, "'")}"`;
}

export { tankInLine as tank } from '../../core/words.ts';

/** Parts that there are, one blank between. */
export function words(...parts: readonly (string | null | undefined | false)[]): string {
  return parts.filter((part): part is string => typeof part === 'string' && part !== '').join(' ');
}

/** Parts that there are, as details of one clause. */
export function details(...parts: readonly (string | null | undefined | false)[]): string {
  return parts.filter((part): part is string => typeof part === 'string' && part !== '').join(', ');
}

/** A measured interval, `write` giving one number: `18`, `22-26`, `about 40`, `40+`, `under 10`, `?`. */
export function span(value: Interval, voice: Voice, write: (value: number) => string = num): string {
  const { low, likely, high } = value;
  if (low === high) return write(low);
  if (high === Infinity) return low <= 0 ? '?' : `${write(low)}+`;
  if (likely === null && low === 0) return `under ${write(high)}`;
  return voice.about && likely !== null ? `about ${write(likely)}` : `${write(low)}-${write(high)}`;
}

/** A number of fish: `43`, `about 40`, `30-50`, `40+`, `loads`, `a few`, `some`, `?`. */
export function count(total: Interval, as: Heads['as']): string {
  const { low, likely, high } = total;
  if (low === high) return num(low);
  if (as === 'about' && likely !== null) return `about ${num(likely)}`;
  if (high === Infinity) {
    if (low <= 0) return '?';
    if (low === 1) return 'some';
    return low === 50 && likely === null ? 'loads' : `${num(low)}+`;
  }
  if (low === 3 && high === 6) return 'a few';
  return low === 0 && likely === null ? `under ${num(high + 1)}` : `${num(low)}-${num(high)}`;
}

/** Fish told apart where the line does: `4 males, 2 females, 22 young`. */
export function heads(value: Heads): string {
  const { males, females, young, as } = value;
  const apart = details(
    males && `${count(males, as)} ${one(males) ? 'male' : 'males'}`,
    females && `${count(females, as)} ${one(females) ? 'female' : 'females'}`,
    young && `${count(young, as)} young`,
  );
  return apart === '' ? count(value.total, as) : apart;
}

function one(value: Interval): boolean {
  return value.low === 1 && value.high === 1;
}

/** A number of those fish, as `moved`, `sold` and their like want it: `40 Rowan-1`, `half of Rowan-1`, `Fern`. */
export function lot(count: HowMany, whose: string): string {
  const share = whose !== '' && (count === 'half' || count === 'rest');
  return words(howMany(count), share && 'of', whose);
}

/** `6`, `all`, `the rest`; nothing where the line left it out. */
export function howMany(value: HowMany): string {
  if (value === 'unsaid') return '';
  if (value === 'rest') return 'the rest';
  return typeof value === 'string' ? value : heads(value);
}

const INCH = 25.4;

export function length(value: Measure<'mm'>, voice: Voice): string {
  if (voice.units === 'metric') return `${span(value, voice)} mm`;
  return `${span(value, voice, (mm) => back(mm / INCH))} in`;
}

/** A tank's three edges. */
export function box(edges: readonly Measure<'mm'>[], voice: Voice): string {
  const [unit, factor] = voice.units === 'metric' ? ['cm', 10] : ['in', INCH];
  return `${edges.map((edge) => span(edge, voice, (mm) => back(mm / factor))).join(' x ')} ${unit}`;
}

export function litres(value: Measure<'L'>, voice: Voice): string {
  if (voice.units === 'metric') return `${span(value, voice)} L`;
  const factor = voice.units === 'US' ? US_GALLON : IMPERIAL_GALLON;
  return `${span(value, voice, (L) => back(L / factor))} ${voice.gallon}gal`;
}

export function flow(value: Measure<'L/h'>, voice: Voice): string {
  if (voice.units === 'metric') return `${span(value, voice)} L/h`;
  const factor = voice.units === 'US' ? US_GALLON : IMPERIAL_GALLON;
  return `${span(value, voice, (L) => back(L / factor))} ${voice.gallon}gph`;
}

export function degrees(value: Measure<'C'>, voice: Voice): string {
  return voice.units === 'US' ? `${span(value, voice, (C) => back((C * 9) / 5 + 32))} F` : `${span(value, voice)} C`;
}

export function percent(value: Measure<'share'>, voice: Voice): string {
  return `${span(value, voice, (share) => num(share * 100))} %`;
}

export function waterAmount(value: WaterAmount, voice: Voice): string {
  if (value.unit === 'share') return percent(value, voice);
  return litres(value, voice);
}

/** Days up to six weeks, whole weeks from there, hours below two days. */
export function days(value: Measure<'days'>, voice: Voice): string {
  const { low, likely, high } = value;
  const every = (test: (side: number) => boolean): boolean => [low, likely ?? low, high].every(test);
  if (every((side) => side > 0 && side < 1)) return `${span(value, voice, (d) => num(d * 24))} h`;
  const fewest = voice.weeks === null ? 42 : voice.weeks ? 7 : Infinity;
  if (every((side) => side >= fewest && side % 7 === 0)) {
    return `${span(value, voice, (d) => num(d / 7))} ${low === 7 && high === 7 ? 'week' : 'weeks'}`;
  }
  return `${span(value, voice)} ${low === 1 && high === 1 ? 'day' : 'days'}`;
}

/** In hours where it is whole or half ones. */
export function minutes(value: Measure<'minutes'>, voice: Voice): string {
  const whole = [value.low, value.likely ?? value.low, value.high].every((side) => side >= 60 && side % 30 === 0);
  return whole ? `${span(value, voice, (min) => num(min / 60))} h` : `${span(value, voice)} min`;
}

/** `4.00 each`, or the total for `for`. */
export function price(value: Price): string {
  return value.per === 'each' ? `at ${money(value.amount)} each` : `for ${money(value.amount)}`;
}

export function dose(value: Dose, voice: Voice): string {
  if (value.unit === 'own') return words(num(value.count), value.name);
  return `${span(value, voice)} ${value.unit}`;
}

export function sizes(value: Sizes, voice: Voice): string {
  const first = value.values[0];
  if (first === undefined) return 'size ?';
  if (value.of === 'sample') {
    const unit = voice.units === 'metric' ? 'mm' : 'in';
    const factor = voice.units === 'metric' ? 1 : INCH;
    return `sizes ${value.values.map((each) => span(each, voice, (mm) => back(mm / factor))).join(' ')} ${unit}`;
  }
  return `${value.of === 'bulk' ? 'size' : value.of} ${length(first, voice)}`;
}

/**
 * The words for a fish before a clause phrase: nothing where the line leaves it to be found, or where the
 * heading says it (`A1 pair`).
 */
export function fish(ref: FishRef): string {
  if (ref.kind === 'implied') return ref.young ? 'young' : (ref.species ?? '');
  if (ref.kind === 'brood') return ref.brood;
  if (ref.group === null && ref.member === null && ref.groupKind === undefined) return 'parents';
  // A fish's own name is unique in the room; a sex needs its group where one is named.
  return ref.member?.name ?? words(ref.group, ref.member?.sex);
}

/** The same for a clause in its line: what the heading says already is left out. */
export function who({ fish: ref, subject }: { readonly fish: FishRef; readonly subject: Subject }): string {
  if (subject.kind === 'brood' && ref.kind === 'brood' && ref.brood === subject.brood) return '';
  if (subject.kind !== 'group' || ref.kind !== 'group' || ref.group !== subject.group) return fish(ref);
  const said = subject.member?.name === ref.member?.name && subject.member?.sex === ref.member?.sex;
  if (said) return '';
  return ref.member === null ? fish(ref) : member(ref.member);
}

export function member(value: Member): string {
  return value.name ?? value.sex ?? '';
}

/** When it happened, seen from the day of the line; nothing where that is the day itself. */
export function whenWords(when: DayWindow | null, day: Day): string {
  if (when === null || when.high === null) return '';
  if (when.low === null) return `by ${isoDay(when.high)}`;
  const [late, early] = [day - when.high, day - when.low];
  if (late === early) return late === 0 ? 'today' : late === 1 ? 'yesterday' : `${late} days ago`;
  if (addDays(day, -late) !== when.high) return '';
  return `${late}-${early} days ago`;
}

/**
 * Breeder awards: by the rules that the journal gives, which broods can be claimed, by when, whether word had to
 * be given, and what evidence is missing. Clubs differ; nothing here is a rule unless a line says so.
 */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import type { DayWindow } from '../core/interval.ts';
import { lineOf, linesOf, type LineRef } from '../core/span.ts';
import { countWords, dayWords, windowWords } from '../core/words.ts';
import { speciesOf, type SeenBrood } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { evidenceOf, type Evidence } from './awards/evidence.ts';
import { awardDays, awardWords, ruleWords, type AwardDays, type SeenRule } from './awards/rule.ts';
import { rowId } from './id.ts';
import { oncePerRoom } from './holds/once.ts';
import { crossed } from './sale/crossed.ts';
import type { WhySource } from './whyrow.ts';

/** How a brood stands against a rule. */
type AwardState = 'claimed' | 'can be claimed' | 'perhaps' | 'growing' | 'too few' | 'notice missed' | 'over';

export interface AwardRow {
  readonly id: string;
  readonly brood: string;
  readonly species: string | null;
  readonly latin: string | null;
  readonly rule: string;
  readonly asks: string;
  readonly state: AwardState;
  /** Why it stands so, in a few words. */
  readonly says: string;
  /** Alive now or passed on since they were of age, surely and at most. */
  readonly young: { readonly sure: number; readonly most: number | null; readonly needed: number };
  readonly opens: DayWindow | null;
  readonly closes: DayWindow | null;
  /** The last day for notice; null where the rule asks for none. */
  readonly notice: Day | null;
  readonly noticed: boolean;
  readonly evidence: readonly Evidence[];
  /** The line that says that it was claimed. */
  readonly close: string;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface AwardsAnswer {
  readonly on: Day;
  readonly asked: string | null;
  readonly rules: readonly { readonly name: string; readonly asks: string; readonly lines: readonly LineRef[] }[];
  readonly rows: readonly AwardRow[];
}

/** Every brood against every rule: those that can be claimed first. With a name, that brood or that species alone. */
export function awards(room: Room, asked: string | null = null): AwardsAnswer {
  const rules = [...room.sale.awards.values()];
  return {
    on: room.on,
    asked,
    rules: rules.map((rule) => ({ name: rule.name, asks: ruleWords(rule), lines: linesOf([rule.place]) })),
    rows: rules
      .flatMap((rule) => awardRows(room, rule, (brood) => isAsked(brood, asked)))
      .toSorted((a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state) || endOf(a) - endOf(b)),
  };
}

/** Some broods against one rule. Mixes of broods can never be claimed: nobody can name their parents. */
export function awardRows(room: Room, rule: SeenRule, isMeant: (brood: SeenBrood) => boolean): readonly AwardRow[] {
  return [...room.stock.broods.values()]
    .filter((brood) => !brood.suspected && brood.oneOf.length === 0 && isMeant(brood))
    .map((brood) => awardRow(room, brood, rule));
}

const ORDER: readonly AwardState[] = [
  'can be claimed',
  'perhaps',
  'growing',
  'claimed',
  'too few',
  'notice missed',
  'over',
];

function endOf({ closes, opens }: AwardRow): number {
  return closes?.low ?? opens?.high ?? Infinity;
}

/** True for a brood by its name, its parents, or its species. */
function isAsked({ name, group, species }: SeenBrood, asked: string | null): boolean {
  if (asked === null) return true;
  const wanted = asked.toLowerCase();
  return [name, group, species].some((one) => one?.toLowerCase() === wanted);
}

/** Names that can be asked about. */
export function awardNames(room: Room): readonly string[] {
  return [...room.stock.broods.values()].filter(({ suspected }) => !suspected).map(({ name }) => name);
}

function awardRow(room: Room, brood: SeenBrood, rule: SeenRule): AwardRow {
  const days = awardDays(room, brood, rule);
  const young = youngOf(brood, rule, days);
  const noticed = didLine(room, awardWords('notice', brood.name, rule.name));
  const claimed = didLine(room, awardWords('claim', brood.name, rule.name));
  const [crossing] = crossed(room, brood);
  const facts = { rule, days, young, noticed: noticed !== null, claimed: claimed !== null };
  const stands = standing(room, { ...facts, cross: crossing?.why ?? null });
  const evidence = evidenceOf(room, brood, rule, days);
  const lines = linesOf([
    rule.place,
    ...brood.lines.slice(0, 1),
    ...brood.counts.slice(-1).map(({ place }) => place),
    ...[noticed, claimed].flatMap((line) => (line === null ? [] : [line])),
  ]);
  return {
    id: rowId(brood.name, rule.name),
    brood: brood.name,
    species: brood.species,
    latin: speciesOf(room, brood)?.traits.latin ?? null,
    rule: rule.name,
    asks: ruleWords(rule, days.anchor),
    ...stands,
    young,
    opens: days.opens,
    closes: days.closes,
    notice: days.notice,
    noticed: noticed !== null,
    evidence,
    close: `room: did "${awardWords('claim', brood.name, rule.name)}"`,
    because: becauseOf(room, brood, { rule, days, young, says: stands.says, evidence, lines }),
    lines,
  };
}

type Young = AwardRow['young'];

/** Fish sold or given away once they were of age count: they were raised. */
function youngOf(brood: SeenBrood, rule: SeenRule, { opens }: AwardDays): Young {
  const of = opens?.high ?? null;
  const passed = brood.gone.filter(({ how, day }) => of !== null && day >= of && PASSED_ON.has(how));
  const sure = passed.reduce((sum, { count }) => sum + count.low, brood.total.low);
  const most = passed.reduce((sum, { count }) => sum + count.high, brood.total.high);
  return { sure: Math.floor(sure), most: Number.isFinite(most) ? Math.ceil(most) : null, needed: rule.young };
}

const PASSED_ON: ReadonlySet<string> = new Set(['sold', 'gave away', 'joined']);

interface Facts {
  readonly rule: SeenRule;
  readonly days: AwardDays;
  readonly young: Young;
  readonly noticed: boolean;
  readonly claimed: boolean;
  /** Why they may not be what they are called; null where nothing says so. */
  readonly cross: string | null;
}

function standing(
  room: Room,
  { rule, days, young, noticed, claimed, cross }: Facts,
): { state: AwardState; says: string } {
  const { noticeEnds, anchor } = days;
  const { sure, most, needed } = young;
  const over = days.closes?.high ?? null;
  const lastSure = days.closes?.low ?? null;
  const open = days.opens?.high ?? null;
  const from = anchor === 'released' && rule.from === 'hatched' ? ', counted from release' : '';
  if (claimed) return { state: 'claimed', says: 'claimed' };
  if (over !== null && over < room.on) {
    return { state: 'over', says: `too old since ${dayWords(over, room.on)}` };
  }
  if (most !== null && most < needed)
    return { state: 'too few', says: `${String(most)} at most, ${String(needed)} asked for` };
  if (noticeEnds !== null && !noticed && noticeEnds < room.on) {
    return { state: 'notice missed', says: `no notice written by ${dayWords(noticeEnds, room.on)}` };
  }
  if (cross !== null) return { state: 'perhaps', says: cross };
  if (days.opens === null || open === null) return { state: 'perhaps', says: `nobody wrote when they were ${anchor}` };
  if (open > room.on) return { state: 'growing', says: `of age ${windowWords(days.opens, room.on)}${from}` };
  const end = lastSure === null ? '' : `, claim by ${dayWords(lastSure, room.on)}`;
  if (sure < needed)
    return { state: 'perhaps', says: `count them: surely ${String(sure)}, ${String(needed)} asked for${end}` };
  return { state: 'can be claimed', says: `${String(sure)} young, ${String(needed)} asked for; of age${from}${end}` };
}

function didLine(room: Room, words: string): LineRef | null {
  const wanted = words.toLowerCase();
  const line = room.chores.did.find(
    ({ action }) => action.kind === 'own' && (action.text ?? '').trim().toLowerCase() === wanted,
  );
  return line === undefined ? null : lineOf(line.place);
}

interface Told extends Pick<Facts, 'rule' | 'days' | 'young'> {
  readonly says: string;
  readonly evidence: readonly Evidence[];
  readonly lines: readonly LineRef[];
}

function becauseOf(room: Room, brood: SeenBrood, { rule, days, young, says, evidence, lines }: Told): Because {
  const { anchor, from, seen, opens, closes, notice } = days;
  const words = (window: DayWindow): string => windowWords(window, room.on);
  const missing = evidence.filter((one) => one.says === null).map(({ name }) => name);
  return {
    rule: `${rule.name}: ${ruleWords(rule, anchor)}; whatever is uncertain counts against the claim`,
    source: 'the award line of the journal',
    steps: [
      from === null
        ? `${anchor}: nobody wrote when`
        : `${anchor} ${words(from)}${seen ? '' : ', worked out, not seen'}`,
      ...(opens === null ? [] : [`${String(Math.ceil(rule.age.low))} days old ${words(opens)}`]),
      ...(closes === null ? [] : [`${String(Math.floor(rule.age.high))} days old ${words(closes)}`]),
      ...(notice === null
        ? []
        : [`notice by ${dayWords(notice, room.on)}, from the first day on which they were most likely laid`]),
      `${countWords(brood.total)} alive; with those passed on since they were of age surely ${String(young.sure)}, ${String(young.needed)} are asked for`,
      says,
      missing.length === 0 ? 'all evidence is on record' : `missing: ${missing.join(', ')}`,
    ],
    lines,
  };
}

export const awardsWhy: WhySource = oncePerRoom((room) =>
  awards(room).rows.map(({ id, brood, rule, state, because, lines }) => ({
    id,
    title: `${brood} ${rule}: ${state}`,
    because,
    lines,
  })),
);

/** Standing chores: what is to be done, how often, and how a line names it later. */
import type { ThingNode } from '../../../grammar/syntax.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure } from '../../core/quantity.ts';
import type { ChoreAction } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { figureValue } from '../quantities.ts';
import { linkedMeasure, waterAmount } from './amounts.ts';
import { isLink } from './prices.ts';
import type { Body } from './table.ts';

const KINDS: readonly ChoreAction['kind'][] = [
  'clean prefilter',
  'clean media',
  'rinse sponge',
  'water change',
  'top up',
  'test',
  'feed',
  'harvest',
  'restart',
];

/** A chore that stands from this day on. */
export function chore(clause: Clause, action: ChoreAction): Body {
  const often = howOften(clause);
  const levelAbove = linkedMeasure(clause, 'above', 'mm');
  const takes = linkedMeasure(clause, 'takes', 'minutes');
  const amount = action.kind === 'water change' || action.kind === 'top up' ? waterAmount(clause) : null;
  if (often.every === null && often.monthly === null && levelAbove === null) howOftenUnsaid(clause, action);
  return { kind: 'chore set', action, ...often, levelAbove, amount, takes };
}

/** `every 6 weeks`, `level above 65 mm`: to be done again and again. */
export function isStanding(clause: Clause): boolean {
  return clause.rest.some((detail) => detail.type === 'every' || isLink(detail, 'above'));
}

/** `harvest` alone: to be done, or done? */
function howOftenUnsaid(clause: Clause, { kind }: ChoreAction): void {
  const done = clause.node.before.length === 0 ? DONE[kind] : undefined;
  if (done === undefined || clause.line.faults.length > 0) return clause.missing('how often', 'every 7 days');
  const phrase = clause.phrase();
  const daily = /^(\S.*?)\s+(?:a|per|each)\s+day$/iu.exec(clause.written(clause.node))?.[1];
  // `feed twice a day` was not done yet.
  if (daily !== undefined) return clause.fault('something-missing', clause.node, HOW_OFTEN, `"${daily}" every day`);
  const says = `\`${phrase}\` needs how often, as in \`${phrase} every 7 days\`; what was done is \`${done}\``;
  clause.fault('something-missing', clause.node.head, says, done);
}

const HOW_OFTEN = 'how often a chore comes up is said by `every`: what is done so often a day is words of your own';

const DONE: Readonly<Partial<Record<ChoreAction['kind'], string>>> = {
  'clean prefilter': 'cleaned prefilter',
  'clean media': 'cleaned media',
  'rinse sponge': 'rinsed sponge',
  'top up': 'topped up',
  feed: 'fed',
  harvest: 'harvested',
  restart: 'restarted',
};

interface Often {
  readonly every: Measure<'days'> | null;
  /** Every so many calendar months, which have no one length in days. */
  readonly monthly: number | null;
}

const PERIOD_DAYS: Readonly<Record<string, number>> = { day: 1, 'other day': 2, week: 7, hour: 1 / 24 };

export function howOften(clause: Clause): Often {
  const node = clause.every();
  if (node === null) return { every: null, monthly: null };
  if (node.quantity === null) {
    const days = PERIOD_DAYS[node.period ?? ''];
    return days === undefined ? { every: null, monthly: 1 } : { every: measure('days', days), monthly: null };
  }
  const unit = node.quantity.unit?.text.toLowerCase() ?? '';
  const value = node.quantity.numbers[0];
  if (/^mo(nths?|s)?$/.test(unit) && value !== undefined) return { every: null, monthly: figureValue(value) };
  return { every: clause.toMeasure(node.quantity, 'days'), monthly: null };
}

/** The chore that `stop`, `did` or `put off` names: one of the usual ones, or one in the keeper's own words. */
export function namedAction(clause: Clause, named: ThingNode | null = clause.thing('action')): ChoreAction {
  if (named === null) return { kind: 'own', text: clause.needText('"new air stone"') };
  const kind = KINDS.find((each) => each === named.sense) ?? 'own';
  return { kind, text: kind === 'feed' || kind === 'test' ? clause.text() : null };
}

/** What was done. After a usual chore words in quotes are a remark; else they say what it was. */
export function doneAction(clause: Clause): ChoreAction {
  return namedAction(clause);
}

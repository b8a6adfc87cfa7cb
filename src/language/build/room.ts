/** Builds the daily round: looking, chores, water, filters, temporary measures, faults. */
import { SEX_WORDS } from '../../../grammar/words.ts';
import type { SexNode } from '../../../grammar/syntax.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure } from '../../core/quantity.ts';
import type { ChoreAction, MeasureKind } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { deadline, doseOf, lasting, linkedMeasure, litres, needDay, untilDay } from './amounts.ts';
import { chore, doneAction, isStanding, namedAction } from './chores.ts';
import { tested } from './tests.ts';
import { waterChange } from './waterchange.ts';
import { where } from './where.ts';
import type { Body, Builds, Task } from './table.ts';

export const ROOM_BUILDS: Builds<
  | 'all well'
  | 'away'
  | 'chore'
  | 'stop chore'
  | 'to do'
  | 'did'
  | 'put off'
  | 'level'
  | 'layers cleaned'
  | 'media cleaned'
  | 'sponge rinsed'
  | 'water change'
  | 'topped up'
  | 'test'
  | 'dosed'
  | 'rig'
  | 'unrig'
  | 'rig stays'
  | 'everything undone'
  | 'fault'
  | 'fixed'
  | 'overflowed'
  | 'leak'
  | 'power off'
  | 'power on'
  | 'heater stuck'
  | 'note'
  | 'photo'
> = {
  'all well': ({ clause }) => allWell(clause),
  // Back is away until today.
  away: ({ clause }) => ({
    kind: 'away',
    until: clause.sense === 'back' ? clause.day : (untilDay(clause) ?? needDay(clause, 'until')),
  }),
  chore: ({ clause }) => choreOrDone(clause),
  'stop chore': ({ clause }) => ({ kind: 'chore stopped', action: namedAction(clause) }),
  'to do': ({ clause }) => toDo(clause),
  did: ({ clause }) => ({ kind: 'did', action: doneAction(clause) }),
  'put off': ({ clause }) => putOff(clause),
  level: ({ clause }) => ({
    kind: 'level',
    level: clause.need('mm', '58 mm'),
    from: clause.flag('belowLip') ? 'lip' : 'bottom',
  }),
  'layers cleaned': ({ clause }) => layersCleaned(clause),
  'media cleaned': () => ({ kind: 'media cleaned' }),
  'sponge rinsed': ({ clause }) =>
    isStanding(clause) ? chore(clause, { kind: 'rinse sponge', text: null }) : { kind: 'sponge rinsed' },
  'water change': ({ clause }) => waterChange(clause),
  'topped up': ({ clause }) => {
    clause.setAside(clause.link('newWater'));
    return { kind: 'topped up', litres: litres(clause) };
  },
  test: ({ clause }) => {
    const every = clause.rest.some((detail) => detail.type === 'every');
    return every ? chore(clause, { kind: 'test', text: null }) : tested(clause);
  },
  dosed: ({ clause }) => dosed(clause),
  rig: (task) => rig(task),
  unrig: ({ clause }) => {
    // `heat back to 26`
    if (clause.sense === 'heat raised') clause.setAside(clause.quantity());
    if (clause.sense === 'heater off') heaterOnAt(clause);
    return { kind: 'measure undone', measure: measureKind(clause) };
  },
  'rig stays': ({ clause }) => ({ kind: 'measure stays', measure: measureKind(clause) }),
  'everything undone': () => ({ kind: 'everything undone' }),
  fault: ({ clause }) => ({
    kind: 'fault',
    text: clause.sense === 'named' ? clause.phrase().toLowerCase() : clause.needText('"valve weeping"'),
  }),
  fixed: ({ clause }) => ({ kind: 'fixed', text: clause.sense === 'mended' ? 'leak' : clause.text() }),
  overflowed: () => ({ kind: 'overflowed' }),
  leak: ({ clause }) => {
    clause.setAside(where(clause));
    return { kind: 'leak' };
  },
  'power off': ({ clause, subject }) => {
    if (subject.kind === 'tank' && /^blackout$/i.test(clause.phrase())) {
      const says = '«blackout» of a tank may be its light (`lights off`) or the power (`power off`): write which';
      clause.fault('two-readings', clause.node.head, says, 'lights off');
    }
    return { kind: 'power off', lasts: lasting(clause, 'minutes') };
  },
  'power on': () => ({ kind: 'power on' }),
  'heater stuck': ({ clause }) => ({
    kind: 'heater stuck',
    at: linkedMeasure(clause, 'at', 'C') ?? clause.maybe('C', true),
  }),
  note: ({ clause }) => ({ kind: 'note', text: noteText(clause) }),
  photo: ({ clause }) => ({ kind: 'photo', file: clause.needText('"1123.jpg"') }),
};

/** `heater on 26`: what the water was, or what the heater was set to? */
function heaterOnAt(clause: Clause): void {
  const number = clause.quantity();
  if (number === null) return;
  const [on, told] = [clause.phrase(), clause.written(number)];
  const says = `«${told}» may be a reading (\`temp ${told}\`) or what the heater was set to (\`heat to ${told}\`): write which`;
  clause.fault('two-readings', { from: clause.node.head.from, to: number.to }, says, `${on}; temp ${told}`);
}

/** Everything after `note`, a colon after it left out. */
function noteText(clause: Clause): string {
  const text = clause.written(clause.node.head).slice('note'.length).replace(/^\s*:/, '').trim();
  if (text === '') clause.missing('words', 'she likes the left cave');
  return text;
}

function actionOf(clause: Clause): ChoreAction {
  const { sense } = clause;
  if (sense === 'own') return { kind: 'own', text: clause.needText('"check the alarm"') };
  const kind = ACTIONS.find((action) => action === sense) ?? 'own';
  return { kind, text: clause.text() };
}

const ACTIONS = ['clean prefilter', 'clean media', 'rinse sponge', 'top up', 'feed', 'harvest', 'restart'] as const;

function putOff(clause: Clause): Body {
  const until = untilDay(clause) ?? null;
  const rig = clause.thing('measure');
  const action = rig === null ? clause.thing('action') : null;
  const kind = rig === null ? undefined : MEASURES.find((each) => each === rig.sense);
  const what =
    kind !== undefined ? { measure: kind } : action !== null ? { action: namedAction(clause, action) } : null;
  const text = what ?? { text: clause.needText('"new air stone"') };
  if ('text' in text && until === null && clause.sense === 'keep' && /^\d/.test(text.text)) keptBack(clause);
  return { kind: 'put off', what: text, until: until ?? needDay(clause, 'until') };
}

/** `must order salt` is a task, `must be 40` and `must spawn soon` are guesses. */
function toDo(clause: Clause): Body {
  const by = deadline(clause);
  const asked = clause.needText('"new air stone"');
  // `order salt`: what is to be done is in the word itself.
  const text = clause.sense === 'verb' ? `${clause.phrase().toLowerCase()} ${asked}` : asked;
  if (/^must$/i.test(clause.phrase()) && /^(?:be|have|spawn|hatch|swim|grow|settle|calm)\b/i.test(text)) {
    const says = `«${clause.written(clause.node)}» is no task: a note keeps it`;
    clause.fault('does-not-belong', clause.node, says, `note ${clause.written(clause.node)}`);
  }
  return { kind: 'to do', text, by };
}

/** `keep 8 biggest` is said of fish, `keep lights off until …` of what is rigged up. */
function keptBack(clause: Clause): void {
  const says = '`keep` says until when something stays as it is; fish that are not for sale are `kept back`';
  const others = /\sfor\s+(?!(?:me|us|myself)$)\S/iu.test(clause.written(clause.node));
  clause.fault('two-readings', clause.node.head, says, others ? 'reserved' : 'kept back');
}

/** `top up 2 L` without `every` was done, as an amount says. */
function choreOrDone(clause: Clause): Body {
  const standing = isStanding(clause);
  const amount = clause.rest.some((detail) => detail.type === 'quantity' && !detail.ago);
  return clause.sense === 'top up' && amount && !standing
    ? { kind: 'topped up', litres: litres(clause) }
    : chore(clause, actionOf(clause));
}

const MEASURES: readonly MeasureKind[] = [
  'off the loop',
  'air filter',
  'lights off',
  'rocks out',
  'divider',
  'pump off',
  'heater off',
  'heat raised',
  'breeder net',
];

function measureKind(clause: Clause): MeasureKind {
  return MEASURES.find((each) => each === clause.sense) ?? 'off the loop';
}

function rig({ clause }: Task): readonly Body[] {
  const kind = measureKind(clause);
  const until = clause.linked('until');
  const open = linkedMeasure(clause, 'for', 'minutes');
  const to = kind === 'heat raised' ? clause.need('C', '30 C') : null;
  const past = clause.maybe('minutes') ?? wholeDays(clause);
  const begun: Body = {
    kind: 'measure begun',
    measure: kind,
    until: until === null ? null : clause.toDay(until.value, 'ahead'),
    lasts: open ?? past,
    // `pump off 1 h` tells of an hour that is over; `for 1 h` begins one.
    over: open === null && past !== null,
    to,
  };
  return clause.flag('stays') ? [begun, { kind: 'measure stays', measure: kind }] : [begun];
}

function wholeDays(clause: Clause): Measure<'minutes'> | null {
  const days = clause.maybe('days');
  return days === null
    ? null
    : measure('minutes', days.low * 1440, days.likely === null ? null : days.likely * 1440, days.high * 1440);
}

function layersCleaned(clause: Clause): Body {
  if (isStanding(clause)) return chore(clause, { kind: 'clean prefilter', text: null });
  const node = clause.quantity();
  // Alone it is said of a pump as well.
  if (node === null && /^(?:rinsed|squeezed)$/i.test(clause.phrase())) clause.missing('how many layers', '2 layers');
  const of = clause.linked('of');
  clause.flag('layers');
  clause.flag('rinsed');
  const which = clause.link('whichLayers');
  // `cleaned top layer` is not all of them.
  if (which !== null && node === null) clause.missing('how many layers', '1 layer');
  clause.setAside(which);
  // `all 6 sponges out`
  const allOf = node?.word?.sense === 'all' ? clause.quantity() : null;
  const told = of?.value.type === 'quantity' ? of.value : allOf;
  const total = told === null ? null : clause.whole(told);
  if (node === null || node.word?.sense === 'all') return { kind: 'layers cleaned', layers: 'all', of: total };
  const layers = clause.whole(node) ?? 0;
  if (layers === 0 && node.word === null) clause.fault('no-whole-number', node, 'no layers are none that were cleaned');
  if (total !== null && layers > total) {
    clause.fault(
      'more-than-all',
      node,
      `${String(layers)} of ${String(total)} layers is more than all of them`,
      String(total),
    );
  }
  return { kind: 'layers cleaned', layers, of: total };
}

function dosed(clause: Clause): Body {
  const dose = doseOf(clause);
  const of = clause.linked('ofWhat');
  const added = /^added$/i.test(clause.phrase());
  // `added 20 L` needs no more words: it is water.
  const text = (): string => (added && dose?.unit === 'mL' ? (clause.text() ?? '') : clause.needText('"salt"'));
  const product = of === null ? text() : clause.written(of.value).replaceAll('"', '').trim();
  if (added && dose?.unit === 'mL' && (WATER.test(product) || product === '')) return addedWater(clause, dose);
  const things = NO_DOSE.test(product) || product.split(/\s+/u).some((word) => isNamed(clause, word));
  if (added && dose === null && things) noDose(clause, product);
  return { kind: 'dosed', dose, product };
}

/** Things that are put into a tank and are no dose of anything. */
const NO_DOSE =
  /(?:^|\s)(?:air ?stones?|caves?|plants?|moss|sponges?|filters?|heaters?|rocks?|wood|driftwood|sand|gravel|shells?|pots?|slate|net|divider|lid|light|fish|snails?|shrimps?)$/iu;

const WATER = /^(?:\p{L}+\s+)?water$/iu;

/** `added 20 L water`, `added 20 L`: it is topped up. */
function addedWater(clause: Clause, { low, likely, high }: Measure<'mL'>): Body {
  if (high < 1000) clause.missing('words', '"salt"');
  return { kind: 'topped up', litres: measure('L', low / 1000, likely === null ? null : likely / 1000, high / 1000) };
}

/** A fish or a tank, or a word for fish. */
function isNamed(clause: Clause, word: string): boolean {
  return SEX_WORDS.has(word.toLowerCase()) || clause.line.names.isName(word);
}

function noDose(clause: Clause, product: string): void {
  const says = `«${product}» is nothing that is dosed into the water: a note keeps it`;
  clause.fault('does-not-belong', clause.node, says, `note ${clause.written(clause.node)}`);
}

/** `f ok`: of one fish, or of all that there is to see? */
function allWell(clause: Clause): Body {
  const one = clause.take((each): each is SexNode => each.type === 'sex');
  if (one !== null) {
    const words = clause.written(clause.node);
    const says = `«${words}» is said of «${clause.written(one)}»: \`all well "${words}"\` where nothing else is to be told, else a note`;
    clause.fault('two-readings', clause.node, says, `note ${words}`);
  }
  return { kind: 'all well' };
}

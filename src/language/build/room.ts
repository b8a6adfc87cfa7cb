/** Builds the daily round: looking, chores, water, filters, temporary measures, faults. */
import type { DetailNode } from '../../../grammar/syntax.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure } from '../../core/quantity.ts';
import type { ChoreAction, MeasureKind } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { deadline, doseOf, lasting, linkedMeasure, litres, needDay, untilDay, waterAmount } from './amounts.ts';
import { chore, doneAction, namedAction } from './chores.ts';
import { tested } from './tests.ts';
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
  'all well': () => ({ kind: 'all well' }),
  // Back is away until today.
  away: ({ clause }) => ({
    kind: 'away',
    until: clause.sense === 'back' ? clause.day : (untilDay(clause) ?? needDay(clause, 'until')),
  }),
  chore: ({ clause }) => chore(clause, actionOf(clause)),
  'stop chore': ({ clause }) => ({ kind: 'chore stopped', action: namedAction(clause) }),
  'to do': ({ clause }) => ({ kind: 'to do', text: clause.needText('"new air stone"'), by: deadline(clause) }),
  did: ({ clause }) => ({ kind: 'did', action: doneAction(clause) }),
  'put off': ({ clause }) => putOff(clause),
  level: ({ clause }) => ({
    kind: 'level',
    level: clause.need('mm', '58 mm'),
    from: clause.flag('belowLip') ? 'lip' : 'bottom',
  }),
  'layers cleaned': ({ clause }) => layersCleaned(clause),
  'media cleaned': () => ({ kind: 'media cleaned' }),
  'sponge rinsed': () => ({ kind: 'sponge rinsed' }),
  'water change': ({ clause }) => waterChange(clause),
  'topped up': ({ clause }) => ({ kind: 'topped up', litres: litres(clause) }),
  test: ({ clause }) => {
    const every = clause.rest.some((detail) => detail.type === 'every');
    return every ? chore(clause, { kind: 'test', text: null }) : tested(clause);
  },
  dosed: ({ clause }) => dosed(clause),
  rig: (task) => rig(task),
  unrig: ({ clause }) => ({ kind: 'measure undone', measure: measureKind(clause) }),
  'rig stays': ({ clause }) => ({ kind: 'measure stays', measure: measureKind(clause) }),
  'everything undone': () => ({ kind: 'everything undone' }),
  fault: ({ clause }) => ({ kind: 'fault', text: clause.needText('"valve weeping"') }),
  fixed: ({ clause }) => ({ kind: 'fixed', text: clause.text() }),
  overflowed: () => ({ kind: 'overflowed' }),
  leak: () => ({ kind: 'leak' }),
  'power off': ({ clause }) => ({ kind: 'power off', lasts: lasting(clause, 'minutes') }),
  'power on': () => ({ kind: 'power on' }),
  'heater stuck': ({ clause }) => ({
    kind: 'heater stuck',
    at: linkedMeasure(clause, 'at', 'C') ?? clause.maybe('C', true),
  }),
  note: ({ clause }) => ({ kind: 'note', text: noteText(clause) }),
  photo: ({ clause }) => ({ kind: 'photo', file: clause.needText('"1123.jpg"') }),
};

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
  return { kind: 'put off', what: text, until: until ?? needDay(clause, 'until') };
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
  const node = clause.quantity();
  const of = clause.linked('of');
  clause.flag('layers');
  clause.flag('rinsed');
  // `all 6 sponges out`
  const allOf = node?.word?.sense === 'all' ? clause.quantity() : null;
  const told = of?.value.type === 'quantity' ? of.value : allOf;
  const total = told === null ? null : clause.whole(told);
  if (node === null || node.word?.sense === 'all') return { kind: 'layers cleaned', layers: 'all', of: total };
  const layers = clause.whole(node) ?? 0;
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

function waterChange(clause: Clause): Body {
  const every = clause.rest.some(
    (detail: DetailNode) => detail.type === 'every' || (detail.type === 'link' && detail.link === 'above'),
  );
  clause.flag('water');
  if (every) return chore(clause, { kind: 'water change', text: null });
  return { kind: 'water changed', amount: waterAmount(clause) ?? measure('share', 0, null, 1) };
}

function dosed(clause: Clause): Body {
  const dose = doseOf(clause);
  const of = clause.linked('ofWhat');
  const product = of === null ? clause.needText('"salt"') : clause.written(of.value).replaceAll('"', '').trim();
  return { kind: 'dosed', dose, product };
}

/** Builds what the room says of itself: units, money, zone, walking order, nitrogen, measures of its own, awards. */
import { measure } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { linkedMeasure } from './amounts.ts';
import { blankTank } from './declaring.ts';
import { placesOf } from './places.ts';
import type { Body, Builds, Task } from './table.ts';

export const SETUP_BUILDS: Builds<
  'units' | 'currency' | 'zone' | 'walk' | 'nitrogen' | 'own measure' | 'award' | 'live volume' | 'retired'
> = {
  units: ({ clause }) => units(clause),
  currency: ({ clause }) => {
    const name = clause.name();
    if (name === null) clause.missing('a currency', 'EUR');
    return { kind: 'currency set', currency: name?.text.toUpperCase() ?? '' };
  },
  zone: ({ clause }) => ({ kind: 'zone set', zone: clause.needText('Europe/Dublin') }),
  walk: ({ clause }) => ({ kind: 'walk set', tanks: placesOf(clause) }),
  nitrogen: ({ clause }) => ({ kind: 'nitrogen set', as: clause.sense === 'ion' ? 'ion' : 'N' }),
  'own measure': ({ clause }) => ownMeasure(clause),
  award: ({ clause }) => award(clause),
  'live volume': (task) => liveVolume(task),
  retired: ({ clause, subject }) => {
    if (subject.kind !== 'tank') clause.fault('one-tank', clause.node, 'tanks are retired one by one');
    return { kind: 'tank retired', tank: subject.kind === 'tank' ? subject.tank : '' };
  },
};

const SYSTEMS = ['metric', 'US', 'imperial'] as const;

function units(clause: Clause): Body {
  const name = clause.name();
  const system = SYSTEMS.find((each) => each.toLowerCase() === name?.text.toLowerCase());
  if (name === null) clause.missing('metric, US or imperial', 'metric');
  else if (system === undefined)
    clause.fault('unknown-units', name, `«${name.text}»: units are metric, US or imperial`, 'metric');
  return { kind: 'units set', units: system ?? 'metric' };
}

function ownMeasure(clause: Clause): Body {
  const volume = clause.maybe('L');
  const mass = volume === null ? clause.maybe('g') : null;
  if (volume === null && mass === null) clause.missing('how much it holds', '12 L');
  return { kind: 'scoop set', name: clause.sense, volume, mass };
}

/** `award "club award" 6 young at 60 days from hatched, notice 14 days`. */
function award(clause: Clause): Body {
  const name = clause.quote() ?? '';
  clause.flag('colon');
  const from = clause.flag('released') ? 'released' : 'hatched';
  clause.flag('hatched');
  const age = linkedMeasure(clause, 'at', 'days') ?? clause.maybe('days');
  const notice = linkedMeasure(clause, 'notice', 'days');
  const node = clause.quantity();
  clause.take((detail): detail is typeof detail & { type: 'sex' } => detail.type === 'sex');
  if (name === '' || node === null || age === null)
    clause.missing('its name, how many young and at what age', '"club award" 6 young at 60 days');
  return {
    kind: 'award rule set',
    name,
    young: node === null ? 0 : (clause.whole(node) ?? 0),
    age: age ?? measure('days', 0),
    from,
    notice,
  };
}

function liveVolume({ clause, subject }: Task): Body {
  if (subject.kind !== 'tank') clause.fault('one-tank', clause.node, 'each tank has a volume of its own');
  const tank = blankTank(subject.kind === 'tank' ? subject.tank : '');
  return { ...tank, live: clause.need('L', '130 L') };
}

/** Clauses of the daily round: looking, chores, water, filters, temporary measures, faults. */
import { isoDay } from '../../core/day.ts';
import type { ChoreAction, EventOf, Reading } from '../../journal/event.ts';
import { RIGS } from '../../../grammar/vocabulary/rigs.ts';
import { ROOM } from '../../../grammar/vocabulary/room.ts';
import { ACTIONS, MEASURES } from '../../../grammar/vocabulary/details.ts';
import type { Measure } from '../../core/quantity.ts';
import { AS_NITROGEN } from '../../core/units.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { Prints } from './table.ts';
import * as w from './words.ts';
import type { Voice } from './words.ts';

export const ROOM_PRINTS: Prints<
  | 'all well'
  | 'away'
  | 'chore set'
  | 'chore stopped'
  | 'to do'
  | 'did'
  | 'put off'
  | 'level'
  | 'layers cleaned'
  | 'media cleaned'
  | 'sponge rinsed'
  | 'water changed'
  | 'topped up'
  | 'tested'
  | 'dosed'
  | 'measure begun'
  | 'measure undone'
  | 'measure stays'
  | 'everything undone'
  | 'fault'
  | 'fixed'
  | 'overflowed'
  | 'leak'
  | 'power off'
  | 'power on'
  | 'heater stuck'
> = {
  'all well': () => w.first(ROOM['all well'].says.well),
  away: (event) => `${w.first(ROOM.away.says.away)} until ${isoDay(event.until)}`,
  'chore set': chore,
  'chore stopped': (event) => `${w.first(ROOM['stop chore'].says.stop)} ${action(event.action)}`,
  'to do': (event) =>
    w.words(w.first(ROOM['to do'].says.todo), w.quoted(event.text), event.by !== null && `by ${isoDay(event.by)}`),
  did: (event) => `${w.first(ROOM.did.says.did)} ${action(event.action)}`,
  'put off': putOff,
  level: (event, voice) =>
    w.words(w.first(ROOM.level.says.level), w.length(event.level, voice), event.from === 'lip' && 'below the lip'),
  'layers cleaned': (event) => {
    const layers = event.layers === 'all' ? 'all' : w.num(event.layers);
    return event.of === null ? `cleaned ${layers} layers` : `cleaned ${layers} of ${w.num(event.of)} layers`;
  },
  'media cleaned': () => w.first(ROOM['media cleaned'].says.media),
  'sponge rinsed': () => w.first(ROOM['sponge rinsed'].says.rinsed),
  'water changed': (event, voice) =>
    `${w.first(ROOM['water change'].says.change)} ${w.waterAmount(event.amount, voice)}`,
  'topped up': ({ litres }, voice) => {
    const unknown = litres.low <= 0 && litres.high === Infinity;
    return w.words(w.first(ROOM['topped up'].says.topped), !unknown && w.litres(litres, voice));
  },
  tested: (event, voice) => `${w.first(ROOM.test.says.test)} ${reading(event.reading, voice)}`,
  dosed: (event, voice) =>
    w.words(w.first(ROOM.dosed.says.dosed), event.dose && w.dose(event.dose, voice), w.quoted(event.product)),
  'measure begun': begun,
  'measure undone': (event) => w.first(RIGS.unrig.says[event.measure]),
  'measure stays': (event) => w.first(RIGS['rig stays'].says[event.measure]),
  'everything undone': () => w.first(RIGS['everything undone'].says.undone),
  fault: (event) => `${w.first(RIGS.fault.says.fault)} ${w.quoted(event.text)}`,
  fixed: (event) => w.words(w.first(RIGS.fixed.says.fixed), event.text !== null && w.quoted(event.text)),
  overflowed: () => w.first(RIGS.overflowed.says.overflowed),
  leak: () => w.first(RIGS.leak.says.leak),
  'power off': (event, voice) =>
    w.words(w.first(RIGS['power off'].says.off), event.lasts && w.minutes(event.lasts, voice)),
  'power on': () => w.first(RIGS['power on'].says.on),
  'heater stuck': (event, voice) =>
    w.words(w.first(RIGS['heater stuck'].says.stuck), event.at && w.degrees(event.at, voice)),
};

function begun(event: EventOf<'measure begun'>, voice: Voice): string {
  const words = w.words(w.first(RIGS.rig.says[event.measure]), event.to && w.degrees(event.to, voice));
  const lasts = event.lasts && w.words(!event.over && 'for', w.minutes(event.lasts, voice));
  return w.words(words, lasts, event.until !== null && `until ${isoDay(event.until)}`);
}

/** What is to be done, as `every`, `stop`, `did` and `put off` name it. */
export function action(value: ChoreAction): string {
  switch (value.kind) {
    case 'own':
      return w.quoted(value.text ?? '');
    case 'feed':
    case 'test':
      return w.words(w.first(ACTIONS[value.kind]), value.text);
    case 'clean prefilter':
    case 'clean media':
    case 'rinse sponge':
    case 'water change':
    case 'top up':
    case 'harvest':
    case 'restart':
      return w.first(ACTIONS[value.kind]);
    default:
      return unreachable(value.kind);
  }
}

function chore(event: EventOf<'chore set'>, voice: Voice): string {
  const often =
    event.monthly === null
      ? event.every && `every ${w.days(event.every, voice)}`
      : event.monthly === 1
        ? 'every month'
        : `every ${w.num(event.monthly)} months`;
  const level = event.levelAbove && `level above ${w.length(event.levelAbove, voice)}`;
  return w.details(
    w.words(
      action(event.action),
      event.amount && w.waterAmount(event.amount, voice),
      often && level ? `${often} or ${level}` : (often ?? level),
    ),
    event.takes && `takes ${w.minutes(event.takes, voice)}`,
  );
}

/** A measure is not put off but kept on: `keep lights off until …`. */
function putOff(event: EventOf<'put off'>): string {
  const { what } = event;
  const until = `until ${isoDay(event.until)}`;
  if ('measure' in what) return `keep ${w.first(MEASURES[what.measure])} ${until}`;
  return `put off ${'action' in what ? action(what.action) : w.quoted(what.text)} ${until}`;
}

function reading(value: Reading, voice: Voice): string {
  return w.details(
    value.ph && `pH ${w.span(value.ph, voice)}`,
    value.kh && `KH ${w.span(value.kh, voice)} dH`,
    value.gh && `GH ${w.span(value.gh, voice)} dH`,
    value.tan && `TAN ${nitrogen(value.tan, 'tan', voice)}`,
    value.no2 && `NO2 ${nitrogen(value.no2, 'no2', voice)}`,
    value.no3 && `NO3 ${nitrogen(value.no3, 'no3', voice)}`,
    value.temperature && w.degrees(value.temperature, voice),
    value.conductivity && `${w.span(value.conductivity, voice)} µS/cm`,
    value.salinity && `salinity ${w.span(value.salinity, voice)} ppt`,
    value.oxygen && `O2 ${w.span(value.oxygen, voice)} mg/L`,
    value.chlorine && `chlorine ${w.span(value.chlorine, voice)} mg/L`,
  );
}

/** Nitrogen as the room's kit reports it. */
function nitrogen(value: Measure<'mg/L'>, of: keyof typeof AS_NITROGEN, voice: Voice): string {
  return w.span(value, voice, (asN) => (voice.nitrogen === 'ion' ? w.back(asN / AS_NITROGEN[of]) : w.num(asN)));
}

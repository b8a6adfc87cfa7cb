/** Clauses of health, stock in and out, money, feed, cultures, and free words. */
import { isoDay } from '../../core/day.ts';
import type { EventOf } from '../../journal/event.ts';
import { lot } from './fish.ts';
import type { Prints } from './table.ts';
import * as w from './words.ts';

export const TRADE_PRINTS: Prints<
  | 'sick'
  | 'catching'
  | 'treated'
  | 'hold begun'
  | 'hold over'
  | 'quarantine begun'
  | 'quarantine over'
  | 'bought'
  | 'kept back'
  | 'reserved'
  | 'wanted'
  | 'sold'
  | 'gave away'
  | 'spent'
  | 'fed'
  | 'culture started'
  | 'culture harvested'
  | 'culture split'
  | 'culture sour'
  | 'hatch set'
  | 'note'
  | 'photo'
> = {
  sick: (event) => w.details(`sick ${w.quoted(event.text)}`, event.catching !== null && catching(event.catching)),
  catching: (event) => catching(event.catching),
  treated,
  'hold begun': (event) => `hold ${w.quoted(event.text)}`,
  'hold over': () => 'hold over',
  'quarantine begun': (event) => `quarantine ${w.days(event.lasts)}`,
  'quarantine over': () => 'quarantine over',
  bought: (event) =>
    w.words(
      'bought',
      w.howMany(event.count),
      event.species,
      event.group !== null && `as ${event.group}`,
      event.price && w.price(event.price),
      event.from !== null && `from ${w.quoted(event.from)}`,
    ),
  'kept back': (event) => w.words('kept back', lot(event)),
  reserved: (event) =>
    w.details(
      w.words(
        'reserved',
        lot(event),
        event.until !== null && `until ${isoDay(event.until)}`,
        event.to !== null && `to ${w.quoted(event.to)}`,
      ),
      event.deposit !== null && `deposit ${w.money(event.deposit)}`,
    ),
  wanted: (event, voice) =>
    w.words(
      'wanted',
      w.howMany(event.count),
      event.species,
      event.size && `at ${w.length(event.size, voice)}`,
      event.by !== null && `by ${isoDay(event.by)}`,
      event.to !== null && `to ${w.quoted(event.to)}`,
    ),
  sold: (event) =>
    w.words(
      'sold',
      lot(event),
      event.price && w.price(event.price),
      event.to !== null && `to ${w.quoted(event.to)}`,
      event.auction !== null && `at ${event.auction}`,
    ),
  'gave away': (event) => w.words('gave away', lot(event), event.to !== null && `to ${w.quoted(event.to)}`),
  spent: (event) => w.words('spent', w.money(event.amount), event.text !== null && w.quoted(event.text)),
  fed: (event) => w.words('fed', event.grams && `${w.span(event.grams)} g`, event.food),
  'culture started': () => 'started',
  'culture harvested': () => 'harvested',
  'culture split': (event) => `split to ${event.to}`,
  'culture sour': () => 'sour',
  'hatch set': (event) => w.words('hatch', event.grams && `${w.span(event.grams)} g`, event.of),
  note: (event) => `note ${event.text}`,
  photo: (event) => `photo ${w.quoted(event.file)}`,
};

function catching(value: boolean): string {
  return value ? 'catching' : 'not catching';
}

function treated(event: EventOf<'treated'>): string {
  return w.details(
    w.words('treat', w.quoted(event.product), event.dose && w.dose(event.dose)),
    event.every && `every ${hours(event.every)}`,
    event.doses !== null && `${w.num(event.doses)} ${event.doses === 1 ? 'dose' : 'doses'}`,
    event.wait && `wait ${w.days(event.wait)}`,
  );
}

/** Doses up to three days apart are told in hours, as labels tell them. */
function hours(every: NonNullable<EventOf<'treated'>['every']>): string {
  if (every.high > 3) return w.days(every);
  return `${w.span(every, (day) => w.num(day * 24))} h`;
}

/** Clauses of health, stock in and out, money, feed, cultures, and free words. */
import { TRADE } from '../../../grammar/vocabulary/trade.ts';
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
  | 'shared'
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
  sick: (event) =>
    w.details(
      w.words(w.first(TRADE.sick.says.sick), event.text !== null && w.quoted(event.text)),
      event.catching !== null && catching(event.catching),
    ),
  catching: (event) => catching(event.catching),
  treated,
  'hold begun': (event) => `${w.first(TRADE.hold.says.begun)} ${w.quoted(event.text)}`,
  'hold over': () => w.first(TRADE.hold.says.over),
  'quarantine begun': (event, voice) => `${w.first(TRADE.quarantine.says.begun)} ${w.days(event.lasts, voice)}`,
  'quarantine over': () => w.first(TRADE.quarantine.says.over),
  shared,
  bought: (event, voice) =>
    w.details(
      w.words(
        w.first(TRADE.bought.says.bought),
        w.howMany(event.count),
        event.species,
        event.group !== null && `as ${event.group}`,
        event.price && w.price(event.price),
        event.from !== null && `from ${w.quoted(event.from)}`,
      ),
      event.size && w.length(event.size, voice),
    ),
  'kept back': (event) => w.words(w.first(TRADE['kept back'].says.kept), lot(event)),
  reserved: (event) =>
    w.details(
      w.words(
        w.first(TRADE.reserved.says.reserved),
        lot(event),
        event.until !== null && `until ${isoDay(event.until)}`,
        event.to !== null && `to ${w.quoted(event.to)}`,
      ),
      event.deposit !== null && `deposit ${w.money(event.deposit)}`,
    ),
  wanted: (event, voice) =>
    w.words(
      w.first(TRADE.wanted.says.wanted),
      w.howMany(event.count),
      event.species,
      event.size && `at ${w.length(event.size, voice)}`,
      event.by !== null && `by ${isoDay(event.by)}`,
      event.to !== null && `to ${w.quoted(event.to)}`,
    ),
  sold: (event) =>
    w.words(
      w.first(TRADE.sold.says.sold),
      lot(event),
      event.price && w.price(event.price),
      event.to !== null && `to ${w.quoted(event.to)}`,
      event.auction !== null && `at ${event.auction}`,
    ),
  'gave away': (event) =>
    w.words(w.first(TRADE['gave away'].says.gave), lot(event), event.to !== null && `to ${w.quoted(event.to)}`),
  spent: (event) =>
    w.words(w.first(TRADE.spent.says.spent), w.money(event.amount), event.text !== null && w.quoted(event.text)),
  fed: (event, voice) =>
    w.words(w.first(TRADE.fed.says.fed), event.grams && `${w.span(event.grams, voice)} g`, event.food),
  'culture started': ({ from }) =>
    w.words(w.first(TRADE['culture started'].says.started), from !== undefined && `from ${jarOrWords(from)}`),
  'culture harvested': () => w.first(TRADE['culture harvested'].says.harvested),
  'culture split': (event) => `${w.first(TRADE['culture split'].says.split)} to ${event.to}`,
  'culture sour': () => w.first(TRADE['culture sour'].says.sour),
  'hatch set': (event, voice) =>
    w.words(w.first(TRADE.hatch.says.hatch), event.grams && `${w.span(event.grams, voice)} g`, event.of),
  note: (event) => `note ${event.text}`,
  photo: (event) => `photo ${w.quoted(event.file)}`,
};

/** A jar as jars are called stands bare, anything else in quotes. */
function jarOrWords(from: string): string {
  return /^\p{L}+\d+$/u.test(from) ? from : w.quoted(from);
}

function catching(value: boolean): string {
  return w.first(value ? TRADE.catching.says.yes : TRADE.catching.says.no);
}

function treated(event: EventOf<'treated'>, voice: w.Voice): string {
  return w.details(
    w.words(w.first(TRADE.treat.says.treat), w.quoted(event.product), event.dose && w.dose(event.dose, voice)),
    event.every && `every ${hours(event.every, voice)}`,
    event.doses !== null && `${w.num(event.doses)} ${event.doses === 1 ? 'dose' : 'doses'}`,
    event.wait && `wait ${w.days(event.wait, voice)}`,
  );
}

/** Doses up to three days apart are told in hours, as labels tell them. */
function hours(every: NonNullable<EventOf<'treated'>['every']>, voice: w.Voice): string {
  if (every.high > 3) return w.days(every, voice);
  return `${w.span(every, voice, (day) => w.num(day * 24))} h`;
}

/** Things that need no quotes. */
const PLAIN_THINGS: ReadonlySet<string> = new Set(
  'net sponge media water plants plant shells cave sand rocks wood'.split(' '),
);

function shared({ thing, tanks, way }: EventOf<'shared'>): string {
  const link = way === 'both' ? 'with' : way;
  const { says } = TRADE.shared;
  return w.words(
    w.first(way === 'both' ? says.shared : says.brought),
    PLAIN_THINGS.has(thing) ? thing : w.quoted(thing),
    tanks.length > 0 && `${link} ${tanks.map(w.tank).join(' and ')}`,
  );
}

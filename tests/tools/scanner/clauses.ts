/** Each form of clause that is generated about tanks, loops, the room and cultures → its event. */
import { measure } from '../../../src/core/quantity.ts';
import type { Event } from '../../../src/journal/event.ts';
import type { Cursor } from './cursor.ts';
import * as fish from './fish.ts';

/** Reads the clause that begins here. */
export function clauseAt(cursor: Cursor, seq: number): Event {
  // No two forms that begin with the same letter need more than a word or two to be told apart.
  switch (cursor.text[cursor.at]) {
    case 'P':
      return fish.named(cursor, seq);
    case 'a':
      return allWell(cursor, seq);
    case 'c':
      return cursor.text[cursor.at + 1] === 'h' ? fish.chasing(cursor, seq) : layersCleaned(cursor, seq);
    case 'f':
      return fed(cursor, seq);
    case 'g':
      return fish.gaveAway(cursor, seq);
    case 'h':
      return harvested(cursor, seq);
    case 'l':
      return cursor.text[cursor.at + 1] === 'e' ? level(cursor, seq) : lights(cursor, seq);
    case 'm':
      return cursor.text[cursor.at + 1] === 'o' ? fish.moved(cursor, seq) : fish.madeUp(cursor, seq);
    case 'n':
      return note(cursor, seq);
    case 'p':
      return photo(cursor, seq);
    case 'r':
      return rinsed(cursor, seq);
    case 's':
      return sellsOrSpends(cursor, seq);
    case 't':
      return testsOrTops(cursor, seq);
    case 'w':
      return waterChanged(cursor, seq);
    default:
      throw cursor.wrong();
  }
}

function sellsOrSpends(cursor: Cursor, seq: number): Event {
  const second = cursor.text[cursor.at + 1];
  if (second === 'i') return fish.size(cursor, seq, cursor.at, fish.IMPLIED);
  return second === 'o' ? fish.sold(cursor, seq) : spent(cursor, seq);
}

function testsOrTops(cursor: Cursor, seq: number): Event {
  if (cursor.text[cursor.at + 1] === 'e') return tested(cursor, seq);
  return cursor.text[cursor.at + 2] === 'r' ? fish.tornFin(cursor, seq) : toppedUp(cursor, seq);
}

function allWell(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('all well');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'all well' };
}

function harvested(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('harvested');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'culture harvested' };
}

function rinsed(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('rinsed sponge');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'sponge rinsed' };
}

function note(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('note ');
  const text = cursor.rest();
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'note', text };
}

function photo(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('photo ');
  const file = cursor.quoted();
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'photo', file };
}

function spent(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('spent ');
  const amount = cursor.figure();
  cursor.expect(' ');
  const text = cursor.quoted();
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'spent', amount, text };
}

/** `fed brine shrimp`, `fed 0.4 g "flake"` */
function fed(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('fed ');
  const weighed = cursor.isFigure();
  const grams = weighed ? measure('g', cursor.figure()) : null;
  if (weighed) cursor.expect(' g ');
  const food = weighed ? cursor.quoted() : cursor.rest();
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'fed', food, grams };
}

function toppedUp(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('topped up ');
  const litres = measure('L', cursor.figure());
  cursor.expect(' L');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'topped up', litres };
}

function waterChanged(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('water change ');
  const amount = measure('share', cursor.figure() / 100);
  cursor.expect(' %');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'water changed', amount };
}

function level(cursor: Cursor, seq: number): Event {
  const start = cursor.at;
  cursor.expect('level ');
  const level = measure('mm', cursor.figure());
  cursor.expect(' mm');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(start);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'level', level, from: 'bottom' };
}

/** `cleaned 6 of 6 layers` */
function layersCleaned(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('cleaned ');
  const layers = cursor.figure();
  cursor.expect(' of ');
  const of = cursor.figure();
  cursor.expect(' layers');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'layers cleaned', layers, of };
}

/** `lights off`, `lights on` */
function lights(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('lights o');
  const off = cursor.takes('ff');
  if (!off) cursor.expect('n');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  const measure = 'lights off';
  if (!off)
    return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'measure undone', measure };
  return {
    seq,
    day,
    minute: null,
    subject,
    place,
    remark: null,
    when: null,
    kind: 'measure begun',
    measure,
    until: null,
    lasts: null,
    over: false,
    to: null,
  };
}

/** `test pH 6.9, KH 4 dH, TAN 0, NO2 0, NO3 13, 25.0 C` */
function tested(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('test pH ');
  const ph = measure('pH', cursor.figure());
  cursor.expect(', KH ');
  const kh = measure('dH', cursor.figure());
  cursor.expect(' dH, TAN ');
  const tan = measure('mg/L', cursor.figure());
  cursor.expect(', NO2 ');
  const no2 = measure('mg/L', cursor.figure());
  cursor.expect(', NO3 ');
  const no3 = measure('mg/L', cursor.figure());
  cursor.expect(', ');
  const temperature = measure('C', cursor.figure());
  cursor.expect(' C');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  const none = { conductivity: null, salinity: null, oxygen: null, chlorine: null };
  const reading = { ph, kh, gh: null, tan, no2, no3, temperature, ...none };
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'tested', reading };
}

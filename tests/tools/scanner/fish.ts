/** Each form of clause that is generated about fish → its event. */
import { measure } from '../../../src/core/quantity.ts';
import type { Event, Heads } from '../../../src/journal/event.ts';
import type { FishRef } from '../../../src/journal/subject.ts';
import type { Cursor } from './cursor.ts';

export const IMPLIED: FishRef = { kind: 'implied' };

/** `PairA0 spawned …`, `PairA0-1 counted …`: the clause begins with whom it is about. */
export function named(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  const name = cursor.word();
  cursor.expect(' ');
  switch (cursor.text[cursor.at + 1]) {
    case 'p':
      return spawned(cursor, seq, from, name);
    case 'r':
      return stage(cursor, seq, from, name);
    case 'o':
      return counted(cursor, seq, from, name);
    default:
      return size(cursor, seq, from, { kind: 'brood', brood: name });
  }
}

/** `spawned brood PairA0-1, about 105 eggs` */
function spawned(cursor: Cursor, seq: number, from: number, group: string): Event {
  cursor.expect('spawned brood ');
  const brood = cursor.word();
  cursor.expect(', about ');
  const eggs = about(cursor.figure());
  cursor.expect(' eggs');
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'spawned',
    fish: { kind: 'group', group, member: null },
    as: 'laid',
    brood,
    eggs,
  };
}

/** `wrigglers`, `free-swimming, about 74` */
function stage(cursor: Cursor, seq: number, from: number, brood: string): Event {
  const wrigglers = cursor.takes('wrigglers');
  if (!wrigglers) cursor.expect('free-swimming, about ');
  const count = wrigglers ? null : about(cursor.figure());
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'stage seen',
    fish: { kind: 'brood', brood },
    stage: wrigglers ? 'wrigglers' : 'free-swimming',
    count,
    brood: null,
  };
}

function counted(cursor: Cursor, seq: number, from: number, brood: string): Event {
  cursor.expect('counted ');
  const heads = exactly(cursor.figure());
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  const fish: FishRef = { kind: 'brood', brood };
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'counted', fish, heads };
}

/** `size 13-16 mm` */
export function size(cursor: Cursor, seq: number, from: number, fish: FishRef): Event {
  cursor.expect('size ');
  const low = cursor.figure();
  cursor.expect('-');
  const high = cursor.figure();
  cursor.expect(' mm');
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'sized',
    fish,
    sizes: { of: 'bulk', values: [measure('mm', low, (low + high) / 2, high)] },
  };
}

/** `moved all PairA0-1 to E1` */
export function moved(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('moved all ');
  const brood = cursor.word();
  cursor.expect(' to ');
  const to = cursor.word();
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'moved',
    fish: { kind: 'brood', brood },
    count: 'all',
    which: 'any',
    to,
    with: null,
    restStay: false,
  };
}

/** `sold 18 PairA0-1 at 4.20 each to "a buyer"` */
export function sold(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('sold ');
  const count = exactly(cursor.figure());
  cursor.expect(' ');
  const brood = cursor.word();
  cursor.expect(' at ');
  const amount = cursor.figure();
  cursor.expect(' each to ');
  const to = cursor.quoted();
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'sold',
    fish: { kind: 'brood', brood },
    count,
    price: { amount, per: 'each' },
    to,
    auction: null,
  };
}

/** `gave away all PairA0-1` */
export function gaveAway(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('gave away all ');
  const brood = cursor.word();
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'gave away',
    fish: { kind: 'brood', brood },
    count: 'all',
    to: null,
  };
}

/** `chasing, male on female` */
export function chasing(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('chasing, male on female');
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'dispute sign',
    fish: IMPLIED,
    sign: 'chasing',
    doer: { sex: 'male', name: null },
    sufferer: { sex: 'female', name: null },
  };
}

export function tornFin(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('torn fin');
  const { day, subject } = cursor;
  return {
    seq,
    day,
    minute: null,
    subject,
    place: cursor.placeFrom(from),
    remark: null,
    when: null,
    kind: 'dispute sign',
    fish: IMPLIED,
    sign: 'torn fin',
    doer: null,
    sufferer: null,
  };
}

export function madeUp(cursor: Cursor, seq: number): Event {
  const from = cursor.at;
  cursor.expect('made up');
  const { day, subject } = cursor;
  const place = cursor.placeFrom(from);
  return { seq, day, minute: null, subject, place, remark: null, when: null, kind: 'made up', fish: IMPLIED };
}

function exactly(count: number): Heads {
  const total = { low: count, likely: count, high: count };
  return { total, males: null, females: null, young: null, as: 'counted' };
}

/** A quarter either way and at least one fish: the whole numbers inside, as the language has it. */
function about(count: number): Heads {
  const off = Math.max(1, count / 4);
  const total = { low: Math.max(0, Math.ceil(count - off)), likely: count, high: Math.floor(count + off) };
  return { total, males: null, females: null, young: null, as: 'about' };
}

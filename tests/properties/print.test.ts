/** Reading what is printed gives back every fact that a line can state, of every kind. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Event, EventBase, EventKind } from '../../src/journal/event.ts';
import { printEntry } from '../../src/language/print.ts';
import { readJournal } from '../../src/language/read.ts';
import { DATED, FACTS, ROOM, subjectOf, WHEN } from '../support/arbitrary.ts';
import type { Facts } from '../support/arbitrary.ts';
import { DAY } from '../support/values.ts';
import { EVENT_KINDS } from '../support/kinds.ts';

const LINE = ROOM.split('\n').length;
const REMARK = fc.option(fc.constantFrom('left cave', 'a; b # c', 'naïve ½'), { freq: 2 });
/** Their words are all text, or their text takes the quotes. */
const NO_REMARK: ReadonlySet<EventKind> = new Set<EventKind>([
  'note',
  'walk set',
  'fixed',
  'spent',
  'hold begun',
  'hatch set',
  'fed',
]);

function isKind(kind: string): kind is EventKind {
  return Object.hasOwn(EVENT_KINDS, kind);
}

function eventOf(facts: Facts, remark: string | null, when: EventBase['when']): Event {
  const { kind } = facts;
  const base: EventBase = {
    seq: 0,
    day: DAY,
    minute: null,
    subject: subjectOf(kind),
    place: { file: 'fishroom.txt', line: LINE, from: 0, to: 0 },
    remark: NO_REMARK.has(kind) || kind.endsWith('declared') || kind === 'award rule set' ? null : remark,
    when: DATED.has(kind) ? when : null,
  };
  return { ...base, ...facts };
}

function told(event: Event): unknown {
  return { ...event, place: null, seq: null };
}

describe('read after print', () => {
  it.each(Object.keys(EVENT_KINDS).filter(isKind))('gives back «%s»', (kind) => {
    const facts: fc.Arbitrary<Facts> = FACTS[kind];
    fc.assert(
      fc.property(facts, REMARK, WHEN, (stated, remark, when) => {
        const event = eventOf(stated, remark, when);
        const line = printEntry([event]);
        const { events, problems } = readJournal('fishroom.txt', `${ROOM}${line}\n`, () => ({ ok: false, says: '' }));
        expect(problems.map(({ says }) => `${line} → ${says}`)).toEqual([]);
        const read = events.filter(({ place }) => place.line === LINE);
        expect(read.map(told)).toEqual([told(event)]);
        expect(printEntry(read)).toBe(line);
      }),
      { numRuns: 60 },
    );
  });
});

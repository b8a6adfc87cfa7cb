import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/core/day.ts';
import type { Event, EventBase } from '../../src/journal/event.ts';
import { CANONICAL } from '../../src/language/print/words.ts';
import { rewriteLine } from '../../src/language/rewrite.ts';

const DAY = toDay(20_498);
const HOW = {
  keeps: () => false,
  voice: () => CANONICAL,
  word: (word: string) => (word.toLowerCase() === 'a1' ? 'A1' : word),
};

function base(text: string, clause: string): EventBase {
  const from = text.indexOf(clause);
  const place = { file: 'fishroom.txt', line: 1, from, to: from + clause.length };
  return { seq: 0, day: DAY, minute: null, subject: { kind: 'tank', tank: 'A1' }, place, remark: null, when: null };
}

function off(text: string, clause: string): Event {
  return {
    ...base(text, clause),
    kind: 'measure begun',
    measure: 'lights off',
    until: null,
    lasts: null,
    over: false,
    to: null,
  };
}

describe('a line in its usual form', () => {
  it('has single blanks, names as declared, clauses parted by semicolons, no closing full stop', () => {
    const text = '2026-02-14  a1 :  All well – Lights off.';
    const events: readonly Event[] = [{ ...base(text, 'All well'), kind: 'all well' }, off(text, 'Lights off')];
    expect(rewriteLine(text, events, HOW)).toBe('2026-02-14 A1: all well; lights off');
  });

  it('leaves out what says nothing more before a clause', () => {
    const text = '2026-02-14 A1: found all well, then found lights off';
    const events: readonly Event[] = [{ ...base(text, 'all well'), kind: 'all well' }, off(text, 'lights off')];
    expect(rewriteLine(text, events, HOW)).toBe('2026-02-14 A1: all well; lights off');
  });

  it('keeps a time of day of its own, and none that it only stands under', () => {
    const text = '2026-02-14 7:40 A1: all well';
    const event: Event = { ...base(text, 'all well'), minute: 460, kind: 'all well' };
    expect(rewriteLine(text, [event], HOW)).toBe('2026-02-14 07:40 A1: all well');
    const under = '2026-02-14 A1: all well';
    expect(rewriteLine(under, [{ ...event, ...base(under, 'all well'), minute: 460 }], HOW)).toBe(under);
  });

  it('keeps its comment as it stands', () => {
    const text = '2026-02-14 A1: All well    # filed late';
    expect(rewriteLine(text, [{ ...base(text, 'All well'), kind: 'all well' }], HOW)).toBe(
      '2026-02-14 A1: all well    # filed late',
    );
  });

  it('is nothing where any word of it gave no event', () => {
    const text = '2026-02-14 A1: all well; mistake died 2';
    expect(rewriteLine(text, [{ ...base(text, 'all well'), kind: 'all well' }], HOW)).toBeNull();
    const before = '2026-02-14 A1: perhaps; lights off';
    expect(rewriteLine(before, [off(before, 'lights off')], HOW)).toBeNull();
    const none = '2026-02-14 A1: perhaps';
    expect(rewriteLine(none, [], HOW)).toBeNull();
  });

  it('keeps a note that has no heading', () => {
    const text = '2026-02-14 Note rain; all day # long';
    const clause = text.slice(11);
    const event: Event = {
      ...base(text, clause),
      subject: { kind: 'room' },
      kind: 'note',
      text: 'rain; all day # long',
    };
    expect(rewriteLine(text, [event], HOW)).toBe('2026-02-14 note rain; all day # long');
  });
});

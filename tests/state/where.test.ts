/** What a line is about, and which tanks it speaks of on its day. */
import { describe, expect, it } from 'vitest';
import type { Event } from '../../src/journal/event.ts';
import { tanksNamed, whereOf } from '../../src/state/where.ts';
import { journalOn } from '../support/journal.ts';
import { eventsOf } from '../support/lines.ts';

const lastOf = (lines: string): Event => {
  const event = eventsOf(lines).at(-1);
  if (event === undefined) throw new Error('no event');
  return event;
};
const where = (line: string): string => whereOf(lastOf(`2026-03-10 ${line}\n`).subject);
/** The tanks that the last of some lines speaks of. */
const tanks = (...lines: readonly string[]): string => {
  const text = `${lines.map((line) => `2026-03-10 ${line}`).join('\n')}\n`;
  return tanksNamed(journalOn('2026-03-10', text), lastOf(text)).join(' ');
};

describe('a line is about', () => {
  it.each([
    ['A1: all well', 'A1'],
    ['Long: level 30 mm', 'Long'],
    ['room: all well', 'room'],
    ['all tanks: all well', 'room'],
    ['Long tanks except A1: all well', 'Long'],
    ['Ash: counted 12', 'Ash'],
    ['M1: harvested', 'M1'],
    ['auction Autumn: on 2026-09-06', 'Autumn'],
    ['species krib: sale at 12 weeks', 'krib'],
  ])('%s: %s', (line, name) => {
    expect(where(line)).toBe(name);
  });
  it('the brood that its heading names', () => {
    expect(whereOf(lastOf('2026-03-01 A1: spawned brood Rowan-1\n2026-03-12 Rowan-1: counted 20\n').subject)).toBe(
      'Rowan-1',
    );
  });
});

describe('a line speaks of', () => {
  it('its tank', () => {
    expect(tanks('A1: all well')).toBe('A1');
  });
  it('the tanks on a loop, less those that are off it', () => {
    expect(tanks('Long: all well')).toBe('A1 A2 B1');
    expect(tanks('A2: off the loop', 'Long: all well')).toBe('A1 B1');
  });
  it('all tanks for the room', () => {
    expect(tanks('room: all well').split(' ').toSorted()).toEqual(['12', 'A1', 'A2', 'B1', 'C1', 'C2', 'Q1']);
  });
  it('the tanks where the fish that it names are', () => {
    expect(tanks('Ash: counted 12')).toBe('C1');
    expect(tanks('C1: moved 4 Ash to C2', 'Ash: counted 12')).toBe('C1 C2');
    expect(tanks('A1: spawned brood Rowan-1', 'Rowan-1: all well')).toBe('A1');
    expect(tanks('A1: spawned brood Rowan-1, wrigglers', 'A1: moved all Rowan-1 to C2', 'Rowan-1: all well')).toBe(
      'C2',
    );
  });
  it('all of several tanks but those that it takes out', () => {
    expect(tanks('Long tanks except A1: all well')).toBe('A2 B1');
    expect(tanks('all tanks except Q1: all well').split(' ').toSorted()).toEqual(['12', 'A1', 'A2', 'B1', 'C1', 'C2']);
  });
  it('no tank, where it is about a culture, an auction or a species', () => {
    expect(
      ['M1: harvested', 'auction Autumn: on 2026-09-06', 'species krib: sale at 12 weeks'].map((line) => tanks(line)),
    ).toEqual(['', '', '']);
  });
});

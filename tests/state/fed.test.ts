/** Which feeds are feeds of a place: of the tank, of its loop, of all the room, of the fish that live there. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { due } from '../../src/questions/due.ts';
import { lastFeed } from '../../src/state/fed.ts';
import { journalOn } from '../support/journal.ts';

const room = (...lines: readonly string[]) => journalOn('2026-03-10', `${lines.join('\n')}\n`);

describe('the last feed', () => {
  const fed = (place: string, ...lines: readonly string[]): string | null => {
    const feed = lastFeed(room(...lines), place);
    return feed === undefined ? null : isoDay(feed.day).slice(5);
  };
  const all = '2026-03-05 room: fed flake';

  test('of the whole room is one of each tank, each loop and the room', () => {
    expect(['C1', 'A1', 'Long', 'room'].map((place) => fed(place, all))).toEqual(Array(4).fill('03-05'));
  });

  test('of a loop is one of the tanks that were on it that day', () => {
    const lines = ['2026-03-04 A2: off the loop', '2026-03-05 Long: fed flake', '2026-03-06 A2: back on the loop'];
    expect(['Long', 'A1', 'A2', 'C1', 'room'].map((place) => fed(place, ...lines))).toEqual([
      '03-05',
      '03-05',
      null,
      null,
      null,
    ]);
  });

  test('of several tanks leaves out those that were skipped', () => {
    const lines = [all, '2026-03-07 all tanks except C1: fed flake'];
    expect(['C1', 'C2', 'A1'].map((place) => fed(place, ...lines))).toEqual(['03-05', '03-07', '03-07']);
  });

  test('of a loop or of the room is the day on which the last of its tanks with fish was fed', () => {
    // Rowan in A1, Sedge in A2, Pebble in B1 on the loop; Ash in C1; nobody in C2
    const lines = ['2026-03-05 A1 A2: fed flake', '2026-03-06 A1: fed flake'];
    expect(fed('Long', ...lines)).toBe(null);
    expect(fed('Long', ...lines, '2026-03-07 B1: fed flake')).toBe('03-05');
    expect(fed('room', ...lines, '2026-03-07 B1: fed flake')).toBe(null);
    expect(fed('room', ...lines, '2026-03-07 B1 C1: fed flake')).toBe('03-05');
    expect(fed('Long', ...lines, all, '2026-03-07 B1: fed flake')).toBe('03-05');
    expect(fed('Long', all, '2026-03-07 B1: fed flake')).toBe('03-05');
  });

  test('of fish by their name is one of the tank that they live in', () => {
    expect(fed('A1', '2026-03-05 Rowan: fed flake')).toBe('03-05');
    expect(fed('A2', '2026-03-05 Rowan: fed flake')).toBe(null);
  });
});

test('what fish in two tanks were fed goes to each by half', () => {
  const { cultures } = room('2026-03-04 C1: moved 6 Ash to C2', '2026-03-05 Ash: fed 2 g flake');
  expect(cultures.feeds.map(({ where, grams }) => [where, grams?.likely])).toEqual([
    ['C1', 1],
    ['C2', 1],
  ]);
});

test('a feed of the whole room closes chores of its tanks and the rows of young that swim', () => {
  const rows = (...lines: readonly string[]): string[] =>
    due(room(...lines), { days: 0, minutes: null })
      .rows.filter(({ what }) => what.startsWith('feed'))
      .map(({ place, what }) => `${place} ${what}`);
  const lines = [
    '2026-03-01 C1: feed every day',
    '2026-02-25 A1: spawned brood Rowan-1',
    '2026-03-08 A1: Rowan-1 free-swimming, about 40',
  ];
  expect(rows(...lines)).toEqual(['A1 feed Rowan-1, little and often', 'C1 feed']);
  expect(rows(...lines, '2026-03-10 room: fed brine shrimp')).toEqual([]);
  expect(rows(...lines, '2026-03-10 all tanks except C1: fed brine shrimp')).toEqual(['C1 feed']);
  expect(rows(...lines, '2026-03-10 Rowan-1: fed brine shrimp')).toEqual(['C1 feed']);
});

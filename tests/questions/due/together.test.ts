/** Rows that send young into one tank mind each other. */
import { expect, test } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import type { DueItem, Sent } from '../../../src/questions/due/item.ts';
import { mindingEachOther } from '../../../src/questions/due/together.ts';
import type { SeenBrood } from '../../../src/state/bodies.ts';
import { broodNamed, journalRoom } from '../../support/journal.ts';

const ROOM = `2025-09-01 room: units metric
2025-09-01 tank A1: 80 L; alone
2025-09-01 tank A2: 80 L; alone
2025-09-01 tank A3: 120 L; alone
2025-09-01 species krib: cave spawner; sale at 35 mm or 16 weeks
2025-09-01 pair Rowan: krib; in A1
2025-09-01 pair Sedge: krib; in A2
2025-09-01 A3: got 6 krib, 20 mm
2025-10-01 A1: spawned brood Rowan-1, 80 eggs
2025-10-08 A1: Rowan-1 free-swimming, about 60
2026-01-10 A1: Rowan-1 largest 28 mm
2026-01-14 A1: spawned brood Rowan-2
2025-12-08 A2: spawned brood Sedge-1, 80 eggs
2025-12-15 A2: Sedge-1 free-swimming, about 50
`;

const movesOf = (text: string): readonly { readonly what: string; readonly why: string; readonly close: string }[] =>
  due(journalRoom('2026-01-16', text), { days: 7, minutes: null }).rows.filter(({ close }) =>
    /moved .* to/.test(close),
  );

test('the later says that the fish of the earlier would eat its own', () => {
  // By the day they would be twice as long: bought lately, they are company for the young.
  const lately = ROOM.replace('2025-09-01 A3: got 6 krib, 20 mm', '2026-01-14 A3: got 6 krib, 14 mm');
  const [first, second, ...more] = movesOf(lately);
  expect(more).toEqual([]);
  expect(first?.close).toBe('A1: moved all Rowan-1 to A3');
  expect(first?.why).not.toContain('not to');
  expect(second?.close).toBe('A2: moved all Sedge-1 to A3');
  expect(second?.why).toMatch(/; not to A3 if Rowan-1 goes there: it would eat these$/);
});

test('nothing is said where they go to two tanks', () => {
  const apart = `${ROOM}2026-01-15 A1: moved all Rowan-1 to A3\n`;
  expect(
    movesOf(apart)
      .map(({ why }) => why)
      .filter((why) => why.includes('not to')),
  ).toEqual([]);
});

test('young of two families of one species are not to be mixed, those of two species may be', () => {
  const text = ROOM.split('\n').slice(0, 7).join('\n').concat(`
2025-11-20 A1: spawned brood Rowan-1, 80 eggs
2025-11-30 A1: Rowan-1 free-swimming, about 60
2025-12-08 A2: spawned brood Sedge-1, 80 eggs
2025-12-16 A2: Sedge-1 free-swimming, about 50
2026-01-01 A1: spawned brood Rowan-2
2026-01-11 A1: Rowan-2 free-swimming
`);
  const said = (room: string): string[] =>
    movesOf(room).map(({ close, why }) => `${close}; ${/not to .*/.exec(why)?.[0] ?? 'nothing'}`);
  expect(said(text)).toEqual([
    'A1: moved all Rowan-1 to A3; nothing',
    'A2: moved all Sedge-1 to A3; not to A3 if Rowan-1 goes there: nobody could tell the two apart again',
  ]);
  const other = text
    .replace('pair Sedge: krib', 'pair Sedge: ram')
    .replace('2025-09-01 pair', '2025-09-01 species ram: cave spawner; sale at 35 mm or 16 weeks\n2025-09-01 pair');
  expect(said(other)[1]).toBe('A2: moved all Sedge-1 to A3; nothing');
});

test('whom a row sends stays with the list', () => {
  const { rows } = due(journalRoom('2026-01-16', ROOM), { days: 7, minutes: null });
  expect(rows.length).toBeGreaterThan(2);
  expect(rows.filter((row) => 'sends' in row)).toEqual([]);
});

test('young are not sent after the fish that was taken out of a quarrel', () => {
  const text = `${ROOM.replace('2025-09-01 A3: got 6 krib, 20 mm\n', '')}2026-01-01 tank A4: 60 L; alone
2026-01-01 A4: got 3 krib, 20 mm
2026-01-14 pair Moss: krib; male Ash; female Fern; in A5
2026-01-14 tank A5: 60 L; alone
2026-01-15 A5: wound, Ash on Fern
`;
  const moves = movesOf(text);
  expect(moves[0]?.close).toBe('A5: moved Ash to A3');
  expect(moves.slice(1).map(({ close }) => close)).toEqual([
    'A1: moved all Rowan-1 to A3',
    'A2: moved all Sedge-1 to A3',
  ]);
  for (const { why } of moves.slice(1))
    expect(why).toMatch(/; not to A3 if Ash of Moss goes there: it would eat these$/);
});

test('of two rows the later says what speaks against doing both: who would eat whom, in that tank alone', () => {
  const room = journalRoom('2026-01-16', ROOM);
  const [rowan, sedge] = ['Rowan-1', 'Sedge-1'].map((name) => broodNamed(room, name));
  if (rowan === undefined || sedge === undefined) throw new Error('no broods');
  const sent = (name: string, brood: SeenBrood | null, to = 'A3'): Sent => ({
    name,
    brood,
    from: brood?.natal ?? null,
    to,
  });
  /** What is said with the second of two. */
  const second = (first: Sent | null, then: Sent): string | undefined => {
    const rows = [first, then].map((sends) => ({ ...ITEM, ...(sends === null ? {} : { sends }) }));
    const minded = mindingEachOther(room, rows);
    expect([minded.length, minded[0]?.why]).toEqual([2, 'why']);
    return minded[1]?.why.replace(/^why(?:; )?/, '');
  };
  const [big, small, male] = [sent('Rowan-1', rowan), sent('Sedge-1', sedge), sent('the male', null)];
  expect(second(big, small)).toBe('not to A3 if Rowan-1 goes there: it would eat these');
  expect(second(small, big)).toBe('not to A3 if Sedge-1 goes there: these would eat it');
  expect(second(male, small)).toBe('not to A3 if the male goes there: it would eat these');
  expect(second(small, male)).toBe('not to A3 if Sedge-1 goes there: these would eat it');
  // Grown fish are not young, and another tank is none of its business.
  expect(second(male, sent('the female', null))).toBe('');
  // The same young out of the same tank are one thing to do.
  expect(
    mindingEachOther(
      room,
      [small, small].map((sends) => ({ ...ITEM, sends })),
    ),
  ).toHaveLength(1);
  expect(second(sent('Rowan-1', rowan, 'A4'), small)).toBe('');
  expect(second(null, small)).toBe('');
  // Out of another tank they are another thing to do, and no strangers to each other.
  expect(second(small, { ...small, from: 'A1' })).toBe('');
  // Two broods of one tank are two things to do.
  expect(second(big, { ...small, from: big.from })).toBe('not to A3 if Rowan-1 goes there: it would eat these');
  // Of what kind they are nobody wrote: then nobody can say that they are alike.
  const unknown = (name: string): Sent => sent(name, { ...sedge, species: null });
  expect(second(unknown('Moss-1'), { ...unknown('Moss-2'), from: 'A1' })).toBe('');
});

const ITEM: DueItem = {
  id: 'a1-x',
  place: 'A1',
  what: 'x',
  kind: 'young',
  due: { low: null, likely: null, high: null },
  weight: 1,
  why: 'why',
  close: 'A1: x',
  putOffKey: null,
  pressing: false,
  minutes: null,
  because: { rule: 'x', source: 'x', steps: [], lines: [] },
  lines: [],
};

test('a tank that is free is told so to the first of two species alone', () => {
  const [first, second, ...more] = movesOf(`2025-09-01 room: units metric
2025-09-01 tank A1: 80 L; alone
2025-09-01 tank A2: 80 L; alone
2025-09-01 tank A3: 120 L; alone
2025-09-01 species krib: cave spawner
2025-09-01 species ram: substrate spawner
2025-09-01 pair Rowan: krib; in A1
2025-09-01 pair Sedge: ram; in A2
2025-12-01 A1: spawned brood Rowan-1, 80 eggs
2025-12-08 A1: Rowan-1 free-swimming, about 60
2025-12-03 A2: spawned brood Sedge-1, 80 eggs
2025-12-10 A2: Sedge-1 free-swimming, about 50
`);
  expect(more).toEqual([]);
  expect([first?.close, second?.close]).toEqual(['A1: moved all Rowan-1 to A3', 'A2: moved all Sedge-1 to A3']);
  expect(first?.why).toMatch(/; A3 is free$/);
  expect(second?.why).toMatch(/; A3 is free; not if Rowan-1 goes there first$/);
});

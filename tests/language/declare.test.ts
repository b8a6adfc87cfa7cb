/** Which lines may settle how others are read: of a journal that goes on, all others are read alone. */
import { describe, expect, test } from 'vitest';
import { CLAUSES } from '../../grammar/phrases.ts';
import type { ClauseKind } from '../../grammar/phrases.ts';
import { isDeclaring, mayDeclare } from '../../src/language/declare.ts';
import { readLines } from '../support/lines.ts';

const SETTLING: readonly ClauseKind[] = ['units', 'nitrogen', 'walk', 'own measure'];
const phrases = SETTLING.flatMap((kind) => Object.values(CLAUSES[kind].says).flatMap((says) => says.split('|')));

describe('a line of the room', () => {
  test.each(phrases)('that begins with «%s» may settle something', (phrase) => {
    for (const line of [
      `2026-02-14 room: ${phrase} 12`,
      `2026-02-14 07:40 the Room : all well; ${phrase.toUpperCase()} US`,
    ])
      expect(mayDeclare(line)).toBe(true);
  });

  test.each(['all well', 'spent 12 "salt"', 'note the big one', 'away until 2026-03-01', 'hatch 2 g brine shrimp'])(
    'that says «%s» settles nothing',
    (words) => {
      expect(mayDeclare(`2026-02-14 room: ${words}`)).toBe(false);
    },
  );
});

test.each([
  '2026-02-14 tank Z1: 54 L',
  '2026-02-14 07:40 row D: A1 and C1',
  '2026-02-14 A1: new mate Fern',
  '2026-02-14 Q1: bought 4 krib as Oak',
  '2026-02-14 A1: spawned brood Nameless',
])('%s names something', (line) => {
  const { names } = readLines('').declared;
  expect(mayDeclare(line)).toBe(true);
  expect(isDeclaring(line, names)).toBe(true);
});

test('a brood of the next number of a pair is known without being named', () => {
  const { names } = readLines('2026-01-04 tank A1: 54 L\n2026-01-04 pair Rowan: some; in A1\n').declared;
  expect(isDeclaring('2026-02-14 A1: spawned brood Rowan-7', names)).toBe(false);
  expect(isDeclaring('2026-02-14 A1: spawned brood Hazel-7', names)).toBe(true);
});

import { describe, expect, test } from 'vitest';
import { complete } from '../../../src/cli/jot/complete.ts';
import { foldRoom } from '../../../src/state/fold.ts';
import { readJournal } from '../../../src/language/read.ts';
import { dayFromIso, toDay } from '../../../src/core/day.ts';

const TEXT = `2026-01-04 loop Long: sump 240 L
2026-01-04 tank A1: 100 x 40 x 40 cm; on Long
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-04 pair Rowan: krib; in A1
2026-01-04 A1: spawned brood Rowan-1
`;
const READING = readJournal('fishroom.txt', TEXT, () => ({ ok: false, says: '' }));
const ROOM = foldRoom(READING.events, dayFromIso('2026-01-05') ?? toDay(0));

describe('Tab', () => {
  test('completes the name that a line is about', () => {
    expect(complete(ROOM, 'ro')).toEqual([['Rowan: ', 'Rowan-1: ', 'room: '], 'ro']);
    expect(complete(ROOM, '')[0]).toContain('A1: ');
  });

  test('completes names and clause words behind the colon', () => {
    expect(complete(ROOM, 'A1: Row')).toEqual([['Rowan ', 'Rowan-1 '], 'Row']);
    const [fitting, part] = complete(ROOM, 'A1: chasing, li');
    expect(part).toBe('li');
    expect(fitting).toContain('lights off ');
    expect(complete(ROOM, 'A1: chasing; rocks i')).toEqual([['rocks in '], 'rocks i']);
  });

  test('knows which clauses a loop has', () => {
    expect(complete(ROOM, 'Long: sp')[0]).not.toContain('spawned ');
    expect(complete(ROOM, 'A1: sp')[0]).toContain('spawned ');
  });
});

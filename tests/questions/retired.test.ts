/** A tank that was retired with fish on record is shown wherever fish are, and asked for, until a line says where they went. */
import { describe, expect, it } from 'vitest';
import { due } from '../../src/questions/due.ts';
import { sale } from '../../src/questions/sale.ts';
import { tanks } from '../../src/questions/tanks.ts';
import { walk } from '../../src/questions/walk.ts';
import { plainLook } from '../../src/reports/look.ts';
import { tanksText } from '../../src/reports/tanks.ts';
import { walkText } from '../../src/reports/walk.ts';
import type { Room } from '../../src/state/draft.ts';
import { day } from '../support/events.ts';
import { journalRoom } from '../support/journal.ts';

const ON = '2026-03-01';
const JOT = '2026-02-10 B1: moved all Pebble to …';
const ROOM = `2026-01-04 tank A1: 54 L; alone
2026-01-04 tank B1: 54 L; alone
2026-01-04 tank C1: 54 L; alone
2026-01-04 species krib: cave spawner; sale at 35 mm or 16 weeks
2026-01-04 colony Pebble: krib; 12; age 30 weeks; in B1
2026-02-10 B1: retired
2026-02-10 C1: retired
`;
const after = (more = ''): Room => journalRoom(ON, ROOM + more);
const look = plainLook(day(ON));

describe('fish on record in a retired tank', () => {
  it('stand in the walk behind the tanks in use, with the line to jot', () => {
    const answer = walk(after());
    expect(answer.tanks.map(({ tank, retired }) => [tank, retired?.jot ?? null])).toEqual([
      ['A1', null],
      ['B1', JOT],
    ]);
    expect(walkText(answer, look)).toContain(`retired 10 Feb; jot ${JOT}`);
  });

  it('stand among the tanks, and that tank is not counted or offered as free', () => {
    const text = tanksText(tanks(after(), { free: false }), look);
    expect(text).toContain('1 tank; retired with fish on record: B1');
    expect(text).toContain(`where did they go? jot ${JOT}`);
    expect(tanks(after(), { free: true }).rows.map(({ name }) => name)).toEqual(['A1']);
  });

  it('are no stock to promise, and that is said', () => {
    const { lots } = sale(after(), { ahead: 0, auction: null, projected: false });
    expect(lots.map(({ tank, ready }) => [tank, ready])).toEqual([['B1', false]]);
    expect(lots[0]?.blockers.map(({ kind }) => kind)).toContain('retired');
  });

  it('are asked for, until a line of that day says where they went', () => {
    const ids = (room: Room): string[] => due(room, { days: 0, minutes: null }).rows.map(({ id }) => id);
    expect(ids(after())).toContain('b1-retired');
    const gone = after(`${JOT.replace('…', 'A1')}\n`);
    expect(ids(gone)).not.toContain('b1-retired');
    expect(walk(gone).tanks.map(({ tank }) => tank)).toEqual(['A1']);
  });
});

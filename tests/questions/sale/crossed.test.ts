/** Young of two kinds, and fish that bear another name than what they came of: never for sale as either. */
import { describe, expect, it } from 'vitest';
import { salePlan } from '../../../src/questions/plan/make.ts';
import { sale } from '../../../src/questions/sale.ts';
import { day } from '../../support/events.ts';
import { journalRoom } from '../../support/journal.ts';

const ROOM = `2026-01-01 tank A1: 60 L; alone
2026-01-01 tank A2: 60 L; alone
2026-01-01 tank A3: 60 L; alone
2026-01-01 species leleupi: Neolamprologus leleupi; cave spawner; sale at 25 mm; price 9.00
2026-01-01 species brich: Neolamprologus brichardi; rock spawner; sale at 25 mm; price 4.00
2026-01-01 group Amber: leleupi; 6; in A1; from "a friend"
2026-01-01 group Chalk: brich; 10; in A2; from "a friend"
2026-01-01 group Flint: brich; 4; in A1; from "a friend"
`;
const YOUNG = `2026-02-10 A3: spawned, 50 eggs
2026-02-13 A3: hatched
2026-02-20 A3: free-swimming, 40
2026-05-20 A3: Teal-1 counted 38; size 36-40 mm
`;

/** Why the young in A3 may not go; empty where they may. */
const why = (lines: string, more = ''): readonly string[] => {
  const room = journalRoom('2026-05-22', ROOM + lines + YOUNG + more);
  const { lots } = sale(room, { ahead: 0, auction: null, projected: false });
  return lots.filter(({ name }) => name === 'Teal-1').flatMap(({ blockers }) => blockers.map((one) => one.why));
};
const CROSS = 'called leleupi, but they come of brich too: a cross or a wrong name';

describe('fish that are not what they are called', () => {
  it('a pair out of stocks of two kinds, by its line or by a new mate', () => {
    expect(why('2026-01-02 pair Teal: leleupi; male from Amber; female from Chalk; in A3\n')).toEqual([CROSS]);
    const pair = '2026-01-02 pair Teal: leleupi; male; female; in A3; from Amber\n';
    expect(why(pair)).toEqual([]);
    const mate = '2026-01-20 A3: female died\n2026-01-21 A3: new female from Chalk\n';
    expect(why(pair + mate)).toEqual([CROSS]);
    expect(why(pair + mate.replace('Chalk', 'Amber'))).toEqual([]);
  });

  it('only young that were laid while the two were together', () => {
    const pair = '2026-01-02 pair Teal: leleupi; male; female; in A3; from Amber\n';
    const later = '2026-05-01 A3: Teal female died\n2026-05-02 A3: new female from Chalk\n';
    expect(why(pair, later)).toEqual([]);
  });

  it('a pair out of one stock of another kind, both of it or one', () => {
    const lines = '2026-01-02 pair Teal: leleupi; male; female; in A3; from Chalk\n';
    expect(why(lines)).toEqual([CROSS]);
    expect(why(lines.replace('from Chalk', 'from Chalk and Flint'))).toEqual([CROSS.replace(' too', '')]);
  });

  it('a cross that bears a name of its own, and two names of one kind, stand in nobody’s way', () => {
    const named = '2026-01-02 species mule: cave spawner; sale at 25 mm\n';
    expect(why(`${named}2026-01-02 pair Teal: mule; male from Amber; female from Chalk; in A3\n`)).toEqual([]);
    const other = '2026-01-02 species lemon: Neolamprologus leleupi; cave spawner; sale at 25 mm\n';
    expect(why(`${other}2026-01-02 pair Teal: lemon; male; female; in A3; from Amber\n`)).toEqual([]);
  });

  it('their own young as well, and none of them is bagged', () => {
    const cross = '2026-01-02 pair Teal: leleupi; male from Amber; female from Chalk; in A3\n';
    const room = journalRoom(
      '2026-05-22',
      `${ROOM}${cross}${YOUNG}2026-05-21 group Next: leleupi; 12; in A1; from Teal-1\n2026-05-21 A1: Next size 36-40 mm\n`,
    );
    const { lots } = salePlan(room, { auction: null, on: day('2026-05-22'), projected: false });
    expect(lots).toEqual([]);
    const next = sale(room, { ahead: 0, auction: null, projected: false }).lots.find(({ name }) => name === 'Next');
    expect(next?.blockers.map(({ kind, lines }) => [kind, lines.length > 0])).toContainEqual(['species', true]);
  });
});

/** A male and a female of two pairs, each away from its mate and together in a tank, are asked about until a line says more. */
import { describe, expect, test } from 'vitest';
import { newPairsIn } from '../../src/checks/new-pair.ts';
import { tankside } from '../support/run.ts';
import { journalRoom } from '../support/journal.ts';

const ROOM = `2026-01-04 tank A1: 54 L; alone
2026-01-04 tank A2: 54 L; alone
2026-01-04 tank B1: 54 L; alone
2026-01-04 species krib: cave spawner
2026-01-04 species limia: livebearer
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-04 pair Ash: krib; male; female; in A2
2026-01-04 pair Elm: limia; male; female; in B1
`;
const OUT = '2026-02-03 Rowan: moved the male to A2\n';
const SWAPPED = `${OUT}2026-02-03 Ash: moved the male to A1\n`;
const asked = (lines: string): string[] =>
  newPairsIn(journalRoom('2026-03-01', ROOM + lines)).map(({ write }) => write);

describe('two males of two pairs that swap tanks', () => {
  test('are both asked about, until the lines that say it', () => {
    const [one, two] = ['Rowan: new male from Ash', 'Ash: new male from Rowan'];
    expect(asked(SWAPPED)).toEqual([`if they are: ${one}`, `if they are: ${two}`]);
    expect(asked(`${SWAPPED}2026-02-04 ${one}\n`)).toEqual([`if they are: ${two}`]);
    expect(asked(`${SWAPPED}2026-02-04 ${one}\n2026-02-04 ${two}\n`)).toEqual([]);
  });

  test('not while the other pair is whole, nor of other species, nor behind a divider', () => {
    expect(asked(OUT)).toEqual([]);
    expect(asked('2026-02-03 Rowan: moved the male to B1\n2026-02-03 Elm: moved the male to A2\n')).toEqual([]);
    expect(asked(`${SWAPPED}2026-02-03 A1: divider in\n`)).toEqual(['if they are: Ash: new male from Rowan']);
    expect(asked(`${SWAPPED}2026-02-05 Ash: male back\n`)).toEqual([]);
  });

  test('a female put to the male whose mate died is asked about by his own name', () => {
    expect(asked('2026-02-03 A2: female died\n2026-02-05 Rowan: moved the female to A2\n')).toEqual([
      'if they are: Ash: new female from Rowan',
    ]);
  });
});

test('the line that brings them together is told so when it is jotted', async () => {
  const files = { '/room/fishroom.txt': ROOM + OUT };
  const { out } = await tankside(['jot', '2026-02-03 Ash: moved the male to A1'], { today: '2026-02-03', files });
  const told = out.replace(/\s+/g, ' ');
  expect(told).toContain('saved 2026-02-03 Ash: moved the male to A1');
  expect(told).toContain(
    'the male of Ash and the female of Rowan are together in A1, both without their mates, and nothing says whether they are a pair now; if they are: Rowan: new male from Ash',
  );
});

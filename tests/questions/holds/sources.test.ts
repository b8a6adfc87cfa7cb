/** What came into a sick tank before its first sign may have brought the trouble: which tanks it came from, and how it is told. */
import { describe, expect, test } from 'vitest';
import { holds } from '../../../src/questions/holds.ts';
import { journalOn } from '../../support/journal.ts';

const GROUPS = '2026-02-01 group Elm: krib; 6; in tank 12\n2026-02-01 group Oak: krib; 6; in C2\n';

/** `C2: Elm went from it to C1`, of every tank that a hold of C1 on 20 March reaches. */
function told(...lines: readonly string[]): string[] {
  const room = journalOn('2026-04-01', `${GROUPS}${lines.join('\n')}\n2026-03-20 C1: hold "velvet"\n`);
  return holds(room).holds.flatMap(({ tanks }) =>
    tanks.map(({ tank, route }) => [tank, ...route.map(({ says }) => says)].join(': ')),
  );
}

describe('a tank is a source', () => {
  const elmOn = (day: string): string => `2026-03-${day} tank 12: Elm moved 2 to C2`;

  test('of what went by way of another tank, in the order of time', () => {
    const on = '2026-03-12 C2: Oak moved 1 to C1';
    expect(told(elmOn('10'), on)).toEqual([
      '12: Oak went from it to C1: Elm went from it to C2',
      'C1',
      'C2: Oak went from it to C1',
    ]);
    expect(told(elmOn('12'), on)).toHaveLength(3);
    expect(told(elmOn('13'), on)).toEqual(['C1', 'C2: Oak went from it to C1']);
  });

  test('of what came along with the last of several comings', () => {
    const early = '2026-03-08 C2: Oak moved 1 to C1';
    const late = '2026-03-12 C2: Oak moved 1 to C1';
    const all = ['12: Oak went from it to C1: Elm went from it to C2', 'C1', 'C2: Oak went from it to C1'];
    expect(told(early, elmOn('10'), late)).toEqual(all);
    expect(told(late, elmOn('10'), early)).toEqual(all);
  });
});

/** Who is meant by a sex in a quarrel: the only fish of it that lives in the group, by name. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

const MOOR = '2026-01-02 trio Moor: krib; male Oak; females Ivy and Moss; in C2';
function sides(...lines: readonly string[]): (string | null)[] {
  const group = journalOn('2026-02-20', `${[MOOR, ...lines].join('\n')}\n`).stock.groups.get('Moor');
  return (group?.disputes ?? []).flatMap(({ signs }) =>
    signs.flatMap(({ doer, sufferer }) => [doer?.name ?? doer?.sex ?? null, sufferer?.name ?? sufferer?.sex ?? null]),
  );
}

it('the male of a trio is known by name, a female of two where the line names her', () => {
  expect(sides('2026-02-10 C2: male chasing Ivy')).toEqual(['Oak', 'Ivy']);
  expect(sides('2026-02-10 C2: chasing, female on male')).toEqual(['female', 'Oak']);
});
it('the last female left is known as well', () => {
  expect(sides('2026-02-01 C2: Moss died', '2026-02-10 C2: chasing, male on female')).toEqual(['Oak', 'Ivy']);
});
it('a fish that is gone is no side', () => {
  const text = `${MOOR}\n2026-02-01 C2: Moss died\n2026-02-10 C2: Ivy chasing Moss\n`;
  const room = journalOn('2026-02-20', text);
  expect(room.stock.groups.get('Moor')?.disputes).toEqual([]);
  expect(room.problems.map(({ kind, says }) => [kind, says])).toEqual([
    ['unknown-member', 'Moss is no longer one of Moor'],
  ]);
});

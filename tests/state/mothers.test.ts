/** Whose eggs they may be: of the females of a trio only those that were there when they can have been laid. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

const MOVED = '2026-01-06 A2: Fern moved to C2';

function mothers(...lines: readonly string[]): readonly string[] {
  const { stock } = journalOn('2026-04-30', `${lines.join('\n')}\n`);
  return [...stock.broods.values()].map((brood) => `${brood.name} of ${brood.mothers.join(' ')}`);
}

it.each([
  ['the one in the tank of the line', '2026-02-02 C2: spawned', 'Sedge-1 of Fern'],
  ['those that stayed behind', '2026-02-02 A2: spawned', 'Sedge-1 of Lark'],
  ['also of eggs that were found', '2026-02-02 C2: eggs seen', 'Sedge-1 of Fern'],
  ['and of a stage that they are cast back from', '2026-02-02 C2: wrigglers', 'Sedge-1 of Fern'],
  ['all, where the line has no tank', '2026-02-02 Sedge: spawned', 'Sedge-1 of Fern Lark'],
])('%s', (_, line, told) => {
  expect(mothers(MOVED, line)).toEqual([told]);
});

it('all, where one was moved after the eggs can have been laid', () => {
  expect(mothers('2026-02-02 A2: Fern moved to C2', '2026-02-03 A2: wrigglers')).toEqual(['Sedge-1 of Fern Lark']);
  expect(mothers('2026-02-02 A2: Fern moved to C2', '2026-02-03 A2: spawned 2-4 days ago')).toEqual([
    'Sedge-1 of Fern Lark',
  ]);
  expect(mothers('2026-02-02 A2: Fern moved to C2', '2026-02-02 C2: spawned')).toEqual(['Sedge-1 of Fern']);
});

it('two in one tank of a harem whose third is elsewhere', () => {
  const harem = '2026-01-02 harem Fell: krib; male; females Ivy, Moss and Reed; in C2';
  expect(mothers(harem, '2026-01-20 C2: Reed moved to A2', '2026-02-02 C2: spawned')).toEqual(['Fell-1 of Ivy Moss']);
});

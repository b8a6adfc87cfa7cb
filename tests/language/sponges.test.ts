/** How many sponge filters a tank has is kept: one of two that is rinsed leaves the other alive. */
import { expect, it } from 'vitest';
import { tankside } from '../support/run.ts';
import { eventsOf } from '../support/lines.ts';

const filterOf = (words: string): string | null => {
  const [declared] = eventsOf(`2026-01-02 tank E1: 54 L; alone; ${words}\n`).flatMap((event) =>
    event.kind === 'tank declared' ? [event] : [],
  );
  return declared?.filter ?? null;
};

it.each([
  ['sponge filter', 'sponge filter'],
  ['1 sponge filter', 'sponge filter'],
  ['2 sponge filters', '2 sponge filters'],
  ['two sponges', '2 sponge filters'],
  ['3 sf', '3 sponge filters'],
  ['sponges', 'sponge filters'],
  ['air filter', 'air filter'],
])('«%s»', (words, filter) => {
  expect(filterOf(words)).toBe(filter);
  expect(filterOf(filter)).toBe(filter);
});

const SETUP = '2026-01-01 room: units metric\n';
const ROOM = (filters: string): string =>
  `${SETUP}2026-01-01 tank C1: 54 L; alone; ${filters}\n2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 group Ash: krib; 6; in C1\n2026-01-20 C1: rinsed sponge\n`;

it('tidy takes no filter away', async () => {
  const files = { '/room/fishroom.txt': ROOM('2 sponge filters') };
  const { out } = await tankside(['tidy'], { files, today: '2026-01-21' });
  expect(out).toContain('nothing to tidy');
});

it('one of two that was rinsed starts no watch of the water', async () => {
  const asked = async (filters: string): Promise<boolean> => {
    const files = { '/room/fishroom.txt': ROOM(filters) };
    return (await tankside(['due'], { files, today: '2026-01-21' })).out.includes('test ammonia and nitrite');
  };
  expect([await asked('sponge filter'), await asked('2 sponge filters')]).toEqual([true, false]);
});

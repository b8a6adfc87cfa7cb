import path from 'node:path';
import { expect, test } from 'vitest';
import { dayNow } from '../../../src/cli/memory/days.ts';
import { shelfIn } from '../../../src/files/cache/shelf.ts';
import type { Shelf } from '../../../src/files/cache/shelf.ts';
import { day } from '../../support/events.ts';
import { folder } from '../../support/folder.ts';

/** Counts what is put, and gives what is kept whatever the key. */
function counting(shelf: Shelf): Shelf & { puts: number } {
  const counted = {
    puts: 0,
    get: (key: string) => shelf.get(key),
    put(key: string, text: string) {
      counted.puts += 1;
      shelf.put(key, text);
    },
  };
  return counted;
}

// Europe/Vienna is two hours ahead of UTC in July, one in January (IANA time zone data).
test('the day of a zone is the same with what is kept, at every moment of it and at the next', async () => {
  const shelf = counting(shelfIn(path.join(folder(), 'cache')));
  const zone = 'Europe/Vienna';
  const at = async (moment: string): Promise<number> => await dayNow(zone, new Date(moment), shelf);
  expect(await at('2026-07-14T12:00:00Z')).toBe(day('2026-07-14'));
  expect(await at('2026-07-14T21:59:59Z')).toBe(day('2026-07-14'));
  expect(shelf.puts).toBe(1);
  expect(await at('2026-07-14T22:00:00Z')).toBe(day('2026-07-15'));
  expect(await at('2026-07-13T22:00:00Z')).toBe(day('2026-07-14'));
});

test('no such zone is this machine’s day, and nothing is kept of it', async () => {
  const shelf = counting(shelfIn(path.join(folder(), 'cache')));
  const noon = new Date(2026, 6, 14, 12);
  expect(await dayNow('Europe/Nowhere', noon, shelf)).toBe(day('2026-07-14'));
  expect(await dayNow(null, noon, shelf)).toBe(day('2026-07-14'));
  expect(shelf.puts).toBe(0);
});

test.each(['', 'no list', '{}', '[]', '["2026-07-14", 0, 1e15]', '[1e9, 0, 1e15]', '[20648]'])(
  'what is kept as «%s» is not believed',
  async (text) => {
    const shelf: Shelf = { get: () => text, put: () => undefined };
    expect(await dayNow('Pacific/Kiritimati', new Date('2026-07-14T12:00:00Z'), shelf)).toBe(day('2026-07-15'));
  },
);

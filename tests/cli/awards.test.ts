/** `awards`: its first line says what to do next, by what runs out first. */
import { expect, test, vi } from 'vitest';
import { tankside } from '../support/run.ts';

vi.setConfig({ testTimeout: 30_000 });

const ROOM = `2026-01-01 room: units metric; award "club award": 6 young at 60-120 days from hatched, notice 14 days
2026-01-01 tank A1: 100 x 40 x 40 cm; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1; from "a friend"
2026-02-02 A1: spawned, about 90 eggs
2026-02-05 A1: hatched
2026-02-10 A1: free-swimming, about 70
`;
const NOTICE = '2026-02-12 room: did "notice of Rowan-1 for club award"\n';

/** The first line, however it was wrapped, without its date. */
async function first(on: string, more: string, ...argv: string[]): Promise<string> {
  const files = { '/room/fishroom.txt': ROOM + more };
  const { out } = await tankside(['awards', ...argv, '--on', on], {
    files,
    today: on,
    columns: 80,
    env: { NO_COLOR: '1' },
  });
  return (out.split('\n\n')[0] ?? '').replace(/\n {2}/g, ' ').replace(/^.*? 2026: /, '');
}

test('notice, while it can still be given', async () => {
  expect(await first('2026-02-11', '')).toBe('give notice of Rowan-1 by 16 Feb');
  expect(await first('2026-02-17', '')).toBe('no brood can be claimed yet');
});

test('the day from which they are of age', async () => {
  expect(await first('2026-03-01', NOTICE)).toBe('no brood can be claimed yet; first Rowan-1, of age 5–6 Apr');
  expect(await first('2026-03-01', NOTICE, 'Rowan-1')).toBe('Rowan-1 cannot be claimed yet; of age 5–6 Apr');
});

test('the evidence to get first, then the claim and its last day', async () => {
  expect(await first('2026-05-01', NOTICE)).toBe(
    'for Rowan-1 count them, take a photo and test the water, then claim it by 4 Jun',
  );
  const photo = '2026-04-20 A1: photo "1123.jpg"\n';
  expect(await first('2026-05-01', `${NOTICE}${photo}2026-04-20 A1: test pH 7, 25 C\n`)).toBe(
    'for Rowan-1 count them, then claim it by 4 Jun',
  );
  const all = `${NOTICE}${photo}2026-04-20 A1: test pH 7, 25 C; Rowan-1 counted 30\n`;
  expect(await first('2026-05-01', all)).toBe('claim Rowan-1 by 4 Jun');
  const next = '2026-03-01 A1: spawned brood Rowan-2\n2026-03-02 room: did "notice of Rowan-2 for club award"\n';
  const two = `${all}${next}2026-03-04 A1: Rowan-2 hatched, about 60\n`;
  expect(await first('2026-05-20', two)).toBe('claim Rowan-1 by 4 Jun; 1 more can be claimed');
});

test('a count, where it is not sure that there are enough', async () => {
  const few = `${NOTICE}2026-04-20 A1: Rowan-1 counted 5-9\n`;
  expect(await first('2026-05-01', few)).toBe('count Rowan-1: surely 5, 6 are asked for');
});

test('broods that are past it are named, so that one can be asked about', async () => {
  const files = { '/room/fishroom.txt': ROOM };
  const { out } = await tankside(['awards', '--on', '2026-07-01'], { files, columns: 80, env: { NO_COLOR: '1' } });
  expect(out).toMatch(/\n\nRowan-1 is too old; name one to see it\n$/);
  // Of several each is one of these things, and hardly all of them.
  const later = '2026-06-01 A1: spawned brood Rowan-2, about 60 eggs\n';
  const two = await tankside(['awards', '--on', '2026-07-01'], {
    files: { '/room/fishroom.txt': ROOM + later },
    columns: 80,
    env: { NO_COLOR: '1' },
  });
  expect(two.out).toMatch(/\n\nRowan-2 and Rowan-1 are without notice or too old; name one to see it\n$/);
});

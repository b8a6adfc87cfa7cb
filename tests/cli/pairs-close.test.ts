/** The line that a row offers ends that row, or moves it on. */
import { expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

const SET_UP = `2026-01-04 room: units metric
2026-01-04 tank A1: 100 x 40 x 40 cm; alone
2026-01-04 tank B1: 60 x 40 x 35 cm; alone
2026-01-04 tank C1: 54 L; alone
2026-01-04 tank D2: 54 L; alone
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-04 species aulo: Aulonocara; mouthbrooder
2026-01-04 species limia: Limia nigrofasciata; livebearer
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-04 trio Sedge: aulo; male; females Fern and Lark; in B1
2026-01-04 trio Tarn: limia; male; 2 females; in C1
`;

/** The rows of these kinds as id and line to jot. */
async function rows(on: string, text: string): Promise<Map<string, string>> {
  const ran = await tankside(['due', '--json', '--on', on], { today: on, files: { '/room/fishroom.txt': text } });
  expect(ran).toMatchObject({ status: 0, err: '' });
  const ids = [...ran.out.matchAll(/"id": "([^"]+)"/gu)].map((match) => match[1] ?? '');
  const closes = [...ran.out.matchAll(/"close": "([^"]*)"/gu)].map((match) => match[1] ?? '');
  return new Map(ids.slice(0, closes.length).map((id, index) => [id, closes[index] ?? '']));
}

test.each([
  ['a1-dispute', '2026-02-14', '2026-02-14 A1: chasing, male on female; lights off', 'A1: made up, lights on'],
  ['a1-dispute', '2026-02-18', '2026-02-14 A1: chasing', 'A1: made up'],
  ['a1-dispute', '2026-02-16', '2026-02-14 A1: torn fin\n2026-02-16 A1: chasing', 'A1: divider in'],
  ['a1-dispute', '2026-02-14', '2026-02-14 A1: gasping, male on female', 'A1: moved the male to D2'],
  ['a1-look-for-eggs', '2026-02-15', '2026-02-14 A1: about to spawn', 'A1: eggs seen'],
  ['a1-look-for-eggs', '2026-02-15', '2026-02-14 A1: maybe spawned', 'A1: eggs seen'],
  ['a1-late-to-spawn', '2026-03-05', '2026-02-01 A1: spawned\n2026-02-04 A1: eggs gone', 'A1: no eggs'],
  ['b1-release-sedge-1', '2026-02-20', '2026-02-01 B1: Fern holding', 'B1: Fern released'],
  ['c1-young-due', '2026-03-01', '2026-02-01 C1: born 18', 'C1: born'],
])('%s on %s', async (id, on, lines, close) => {
  const text = `${SET_UP}${lines}\n`;
  expect((await rows(on, text)).get(id)).toBe(close);
  expect((await rows(on, `${text}${on} ${close}\n`)).has(id)).toBe(false);
});

test('a wounded fish of which nobody wrote: its row moves on once it is calmer', async () => {
  const text = `${SET_UP}2026-02-14 A1: wounded\n`;
  expect((await rows('2026-02-18', text)).get('a1-dispute')).toBe('A1: calmer');
  expect((await rows('2026-02-18', `${text}2026-02-18 A1: calmer\n`)).get('a1-dispute')).toBe('A1: divider in');
});

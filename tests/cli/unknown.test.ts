/** A name that is none: every command offers the nearest there is in the same words, else how to see them all. */
import { expect, test } from 'vitest';
import { ROOM } from '../support/lines.ts';
import { tankside } from '../support/run.ts';

const JOURNAL = `${ROOM}2026-02-02 A1: spawned brood Rowan-1
2026-02-12 A1: free-swimming, 30
2026-02-13 room: award "club award": 6 young at 60 days from hatched
`;
const told = async (...argv: readonly string[]): Promise<string> => {
  const files = { '/room/fishroom.txt': JOURNAL };
  const { status, out, err } = await tankside([...argv, '--on', '2026-03-01'], { files });
  expect([status, out]).toEqual([2, '']);
  return err;
};

test.each([
  [['broods', 'Rowna-1'], 'no brood called «Rowna-1» on that day\nwrite: tankside broods Rowan-1\n'],
  [['awards', 'Rowna-1'], 'no brood called «Rowna-1» on that day\nwrite: tankside awards Rowan-1\n'],
  [['pairs', 'Rowna'], 'no pair, fish or tank called «Rowna» on that day\nwrite: tankside pairs Rowan\n'],
  [['money', 'krob'], 'no species, pair or brood called «krob» on that day\nwrite: tankside money krib\n'],
  [['kin', 'Sedge', 'Rowna'], 'no pair, brood or fish called «Rowna» on that day\nwrite: tankside kin Sedge Rowan\n'],
  [['water', 'Lnog'], 'no tank or loop called «Lnog» on that day\nwrite: tankside water Long\n'],
  [
    ['history', '--pair', 'Rowna'],
    'no pair or fish called «Rowna» on that day\nwrite: tankside history --pair Rowan\n',
  ],
  [['history', '--brood', 'zzz'], 'no brood called «zzz» on that day\nwrite: tankside broods\n'],
  [['pairs', 'zzz'], 'no pair, fish or tank called «zzz» on that day\nwrite: tankside pairs\n'],
  [['water', 'zzz'], 'no tank or loop called «zzz» on that day\nwrite: tankside water\n'],
])('%s', async (argv, says) => {
  expect(await told(...argv)).toBe(says);
});

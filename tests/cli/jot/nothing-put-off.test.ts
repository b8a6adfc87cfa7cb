/** A line that puts off what no row is called counts, and says at once that nothing is put off by it, and what there is. */
import { expect, test } from 'vitest';
import { tankside } from '../../support/run.ts';

const FILE = '/room/fishroom.txt';
const ROOM = `2026-01-04 room: units metric
2026-01-04 tank A1: 54 L; alone
2026-01-04 tank B1: 54 L; alone
2026-01-04 tank C1: 54 L; alone
2026-01-04 tank Q1: 54 L; alone; quarantine
2026-01-04 species krib: cave spawner
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-04 C1: water change 30 % every 7 days
2026-01-04 B1: water change 30 % every 7 days
2026-01-05 A1: to do "new air stone (large)"
2026-02-01 A1: lights off
`;

async function jotted(line: string): Promise<{ saved: boolean; out: string }> {
  const { out, files } = await tankside(['jot', line], { today: '2026-02-15', files: { [FILE]: ROOM } });
  return { saved: files[FILE] === `${ROOM}2026-02-15 ${line}\n`, out: out.replace(/\s+/g, ' ') };
}

test.each([
  ['C1: put off water chnge until 2026-02-20', 'C1: put off water change until 2026-02-20'],
  ['A1: put off water change until 2026-02-20', 'C1: put off water change until 2026-02-20'],
  ['room: put off water change until 2026-02-20', 'all tanks: put off water change until 2026-02-20'],
  ['A1: put off "air stone" until 2026-02-20', 'A1: put off "new air stone (large)" until 2026-02-20'],
  ['A1 B1: put off lights until 2026-02-20', 'A1: put off lights off until 2026-02-20'],
  ['B1: keep lights off until 2026-02-20', 'A1: put off lights off until 2026-02-20'],
  ['Q1: put off squeezing until 2026-02-20', 'the name of a row of tankside due, if one was meant'],
])('«%s» names no row', async (line, offered) => {
  const { saved, out } = await jotted(line);
  expect(saved).toBe(true);
  expect(out.match(/nothing on the list of/g)).toHaveLength(1);
  expect(out).toContain(`so nothing is put off; ${offered}`);
});

test('what there is is told where nothing is called nearly so', async () => {
  const { out } = await jotted('A1: put off squeezing until 2026-02-20');
  expect(out).toContain('nothing on the list of A1 is called «squeezing», so nothing is put off; on it: ');
  expect(out).toMatch(/on it: .*«lights off»/);
});

test.each([
  'C1: put off water change until 2026-02-20',
  'B1 C1: put off wc until 2026-02-20',
  'A1 C1: put off water change until 2026-02-20',
  'all tanks except Q1: put off water change until 2026-02-20',
  'A1: keep lights off until 2026-02-20',
  'Rowan: put off lights off until 2026-02-20',
  'A1: put off "New air stone (large)" until 2026-02-20',
  // Over already: it hides nothing, whatever it is called.
  '2026-02-08 A1: put off squeezing until 2026-02-10',
])('«%s» names one', async (line) => {
  expect((await jotted(line)).out).not.toContain('nothing on the list of');
});

test('all tanks but some are put off together, and those alone', async () => {
  const line = '2026-02-15 all tanks except B1: put off water change until 2026-02-20\n';
  const { out } = await tankside(['due', '--days', '0'], { today: '2026-02-16', files: { [FILE]: ROOM + line } });
  expect(out).toMatch(/B1 +late .*water change/);
  expect(out).not.toMatch(/C1 +late .*water change/);
});

import { expect, test } from 'vitest';
import { starterJournal } from '../../src/cli/starter.ts';
import { day } from '../support/events.ts';
import { tankside } from '../support/run.ts';

test('writes a journal here, dated back from today', async () => {
  const { status, out, err, files } = await tankside(['start'], { today: '2026-03-01' });
  expect([status, err]).toEqual([0, '']);
  expect(out).toContain('/room/fishroom.txt is written');
  expect(out).toContain('tankside due');
  expect(files['/room/fishroom.txt']).toMatch(/^2026-02-01 room: units metric$/m);
  expect(files['/room/fishroom.txt']).toMatch(/^2026-02-28 A1: made up$/m);
});

test('dates it back from the day that is asked for', async () => {
  const { files } = await tankside(['start', '--on', '14 Feb 2026'], { today: '2026-03-01' });
  expect(files['/room/fishroom.txt']).toBe(starterJournal(day('2026-02-14')));
  const wrong = await tankside(['start', '--on', 'someday'], { today: '2026-03-01' });
  expect([wrong.status, wrong.files]).toEqual([2, {}]);
});

test('shows how money and a loop are written, without having any', () => {
  const text = starterJournal(day('2026-03-01'));
  expect(text).toMatch(/^# 2026-02-01 loop Long: /m);
  expect(text).toMatch(/^# 2026-02-01 room: currency EUR$/m);
});

test('writes where it is told', async () => {
  const told = await tankside(['start', '--journal', '../fish.txt', '--json']);
  expect(Object.keys(told.files)).toEqual(['/fish.txt']);
  expect(JSON.parse(told.out)).toEqual({ version: 1, on: '2026-02-15', created: '/fish.txt' });
  const env = await tankside(['start'], { env: { TANKSIDE_JOURNAL: 'mine.txt' } });
  expect(Object.keys(env.files)).toEqual(['/room/mine.txt']);
});

test('never writes over a file', async () => {
  const files = { '/room/fishroom.txt': 'mine\n' };
  const again = await tankside(['start'], { files });
  expect([again.status, again.out]).toEqual([3, '']);
  expect(again.err.split('\n')[0]).toBe('/room/fishroom.txt is there already, and start never writes over a file');
  expect(again.files).toEqual(files);
});

test('writes into a folder no file of its name, and says how it would be called in there', async () => {
  const files = { '/room/fish/old.txt': 'mine\n' };
  const folder = await tankside(['start', '--journal', 'fish'], { files });
  expect([folder.status, folder.err]).toEqual([
    3,
    '/room/fish cannot be written: it is a folder\nwrite: tankside start --journal /room/fish/fishroom.txt\n',
  ]);
  expect(folder.files).toEqual(files);
});

test('writes what check has nothing to say about, the lines to come included', async () => {
  const text = starterJournal(day('2026-03-01'));
  const lines = text.replaceAll(/^# (?=2026-)/gm, '');
  expect(lines).toMatch(/^2026-03-01 room: all well$/m);
  for (const journal of [text, lines]) {
    const files = { '/room/fishroom.txt': journal };
    const { status, out } = await tankside(['check', '--json'], { today: '2026-03-01', files });
    expect([status, out]).toEqual([0, expect.stringContaining('"problems": []')]);
  }
});

test('writes a journal that answers due on the same day', async () => {
  const { files } = await tankside(['start'], { today: '2026-03-01' });
  const { out } = await tankside(['due'], { today: '2026-03-01', files: { ...files } });
  expect(out).toMatch(/^2026-03-01: \d things to do/);
  expect(out).toMatch(/^A1 {2}late 1 day +water change 30 %/m);
  expect(out).toContain('jot  A1: lights on');
});

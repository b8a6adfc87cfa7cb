import { expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

test('writes a journal here, dated back from today', async () => {
  const { status, out, err, files } = await tankside(['start'], { today: '2026-03-01' });
  expect([status, err]).toEqual([0, '']);
  expect(out).toContain('/room/fishroom.txt is written');
  expect(out).toContain('tankside due');
  expect(files['/room/fishroom.txt']).toMatch(/^2026-02-01 room: units metric$/m);
  expect(files['/room/fishroom.txt']).toMatch(/^2026-02-28 A1: made up$/m);
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

import { expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

test.each([40, 80])('a tank with a name wider than %i columns can be walked on paper', async (columns) => {
  const name = `A1${'x'.repeat(columns)}`;
  const files = { '/room/fishroom.txt': `2026-01-04 tank ${name}: 54 L; alone\n2026-02-14 ${name}: all well\n` };
  const { status, out, err } = await tankside(['walk', '--paper'], { files, columns });
  expect([status, err]).toEqual([0, '']);
  expect(out).toContain(name);
  expect(out).toMatch(/^ +_{8,}$/m);
});

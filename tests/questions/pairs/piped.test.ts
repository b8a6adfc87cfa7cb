/** Where a machine reads, the pairs stay a table of 80 columns: two dates part at a blank, and no date is cut. */
import { expect, it } from 'vitest';
import { pairs } from '../../../src/questions/pairs.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { pairsText } from '../../../src/reports/pairs.ts';
import { journalOn } from '../../support/journal.ts';

it('a spawn that nobody saw is told by its two days', () => {
  const room = journalOn(
    '2026-02-06',
    `2026-01-20 A1: no eggs
2026-01-23 A1: eggs seen, about 80
2026-01-26 A1: bonded
2026-02-05 A2: chasing
`,
  );
  const lines = pairsText(pairs(room), { ...plainLook(room.on, 80), machine: true }).split('\n');
  expect(lines.find((line) => line.startsWith('pair '))).toMatch(/^pair +where +bond +now +90 days +last spawn +next$/);
  expect(lines.every((line) => line.length <= 80)).toBe(true);
  const rowan = lines.findIndex((line) => line.startsWith('Rowan'));
  expect(lines.slice(rowan, rowan + 2).join(' ')).toMatch(/2026-01-20 to .*2026-01-23/);
});

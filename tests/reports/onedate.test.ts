/** Where a machine reads, a cell of words names its days in one way, and a column of days is ISO 8601. */
import { expect, it } from 'vitest';
import { sale } from '../../src/questions/sale.ts';
import { plainLook } from '../../src/reports/look.ts';
import { saleText } from '../../src/reports/sale.ts';
import { journalOn } from '../support/journal.ts';

it('what is in the way of a sale ends on days as its words tell them', () => {
  const room = journalOn(
    '2026-05-21',
    `2026-04-01 A1: spawned brood Rowan-1
2026-04-12 A1: free-swimming, 40
2026-05-01 A1: moved all Rowan-1 to C2
2026-05-20 C2: hold "velvet"
`,
  );
  const look = { ...plainLook(room.on, 200), machine: true };
  const text = saleText(sale(room, { ahead: 0, auction: null, projected: false }), look);
  const rows = text.slice(text.indexOf('Rowan-1'));
  // The column has the day as a machine reads it; the reason beside it does not mix both.
  expect(rows).toMatch(/^Rowan-1, krib +C2 +\d+ +20\d\d-\d\d-\d\d +on hold: velvet, until 17 Jun$/m);
  expect(rows).toMatch(/too young: .*, the first \d+[– \w]+, until \d+ \w+$/m);
});

/** Fish on record in a retired tank: who, since when, and the dated line that says where they went. */
import { expect, it } from 'vitest';
import { retiredDue } from '../../../src/questions/due/retired.ts';
import { rowsOf } from './rows.ts';

it('is asked for with all who are on record there, and offers no line of a later day', () => {
  const young = '2026-01-02 A1: spawned\n2026-01-12 A1: free-swimming, 30\n';
  const rows = rowsOf(retiredDue, '2026-02-20', `${young}2026-02-10 A1: retired\n2026-02-20 B1: retired\n`);
  expect(rows).toMatchObject([
    {
      id: 'a1-retired',
      place: 'A1',
      what: 'say where Rowan and Rowan-1 went: the tank is retired',
      due: '2026-02-20',
      weight: 0,
      why: 'retired on 10 Feb, and they are still on record there',
      close: '2026-02-10 A1: moved all Rowan to …',
      key: null,
      pressing: false,
      steps: ['retired 10 Feb', 'retired, Rowan and Rowan-1 still on record there'],
      lines: [3],
    },
    { id: 'b1-retired', why: 'retired on 20 Feb, and it is still on record there', lines: [4] },
  ]);
});

/** That fish are too young rests on the line that set their sale size, where the species was declared before it. */
import { expect, it } from 'vitest';
import { sale } from '../../src/questions/sale.ts';
import { journalRoom } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const BEFORE = ROOM.split('\n').length - 1;

function linesOfBlocker(amended: string): readonly number[] {
  const text = `${ROOM}${amended}2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 52\n`;
  const { lots } = sale(journalRoom('2026-03-10', text), { ahead: 0, auction: null, projected: false });
  const blocker = lots.flatMap(({ blockers }) => blockers).find(({ why }) => why.startsWith('too young'));
  return (blocker?.lines ?? []).map(({ line }) => line - BEFORE);
}

it('the line that set it last, not one that sets something else', () => {
  const sized = '2026-01-06 species krib: sale at 35 mm or 16 weeks\n';
  expect(linesOfBlocker(sized)).toContain(1);
  expect(linesOfBlocker(`${sized}2026-01-07 species krib: sale at 40 mm\n`)).toContain(2);
  expect(linesOfBlocker(`${sized}2026-01-07 species krib: sale at 40 mm\n`)).not.toContain(1);
  expect(linesOfBlocker(`${sized}2026-01-07 species krib: price 7.00\n`)).toContain(1);
  expect(linesOfBlocker(`${sized}2026-01-07 species krib: price 7.00\n`)).not.toContain(2);
});

/** What is said of bought fish rests on the line that bought them, whatever was written of them since. */
import { expect, it } from 'vitest';
import { sale } from '../../src/questions/sale.ts';
import { saleableFrom } from '../../src/questions/saleable.ts';
import { journalRoom } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const BEFORE = ROOM.split('\n').length - 1;

function blockers(text: string): readonly string[] {
  const { lots } = sale(journalRoom('2026-03-10', ROOM + text), { ahead: 0, auction: null, projected: false });
  const lot = lots.find(({ tank }) => tank === 'C2');
  return (lot?.blockers ?? []).map(({ why, lines }) => `${why} | ${lines.map(({ line }) => line - BEFORE).join()}`);
}

it('that neither age nor length is known', () => {
  const bought = '2026-02-11 C2: bought 6 krib at 4.00 each from "a friend"\n';
  expect(blockers(bought)).toEqual(['no age or length written | 1']);
  expect(blockers(`${bought}2026-02-20 C2: counted 5\n`)).toEqual(['no age or length written | 1']);
});

it('when they can be sold', () => {
  const room = journalRoom('2026-03-10', `${ROOM}2026-02-11 group Elm: krib; 6; in C2; age 8 weeks; from "a friend"\n`);
  const elm = room.stock.groups.get('Elm');
  const lines = elm === undefined ? [] : (saleableFrom(room, elm)?.because.lines ?? []);
  expect(lines.map(({ line }) => line - BEFORE)).toContain(1);
});

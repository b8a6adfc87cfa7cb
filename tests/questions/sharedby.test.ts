/** What jotting a dose says where more tanks share that water than the line names. */
import { expect, test } from 'vitest';
import { raisedByLines } from '../../src/questions/raisedby.ts';
import { journalOn } from '../support/journal.ts';
import { eventsOf } from '../support/lines.ts';

function told(line: string, ...before: readonly string[]): readonly string[] {
  const all = [...before, `2026-03-10 ${line}`].map((one) => `${one}\n`);
  const room = journalOn('2026-03-10', all.join(''));
  return raisedByLines(
    room,
    eventsOf(all.join('')).filter((event) => event.day === room.on),
  );
}

test('a single dose to a tank of a loop says who shares its water, as a treatment does', () => {
  const shared = 'A1 shares water and filter with 2 tanks (A2 and B1): valve off, or all are treated';
  expect(told('A1: dosed 100 g salt')).toEqual([shared]);
  expect(told('A1: treat "salt" 2 g/L')).toEqual([shared]);
  expect(told('A1: treat "epsom salt" 1 g/L')).toContain(shared);
  expect(told('A1 A2: dosed 100 g salt')).toEqual([
    'A1 shares water and filter with 1 tank (B1): valve off, or all are treated',
    'A2 shares water and filter with 1 tank (B1): valve off, or all are treated',
  ]);
});

test('it says nothing of a loop dosed as a whole, a tank alone or valved off, or all of its tanks', () => {
  expect(told('Long: dosed 100 g salt')).toEqual([]);
  expect(told('C1: dosed 100 g salt')).toEqual([]);
  expect(told('A1: dosed 100 g salt', '2026-03-09 A1: off the loop')).toEqual([]);
  expect(told('A1: off the loop; dosed 100 g salt')).toEqual([]);
  expect(told('A1 A2 B1: dosed 100 g salt')).toEqual([]);
  expect(told('Long tanks: dosed 100 g salt')).toEqual([]);
  expect(told('all tanks except B1: dosed 100 g salt')).toHaveLength(2);
});

test('nor of what is dosed to change the water', () => {
  expect(told('A1: dosed 5 mL "tap conditioner"')).toEqual([]);
  expect(told('A1: dosed 1 g "sodium bicarbonate"').join(' ')).not.toContain('shares');
  expect(told('A1: dosed 1 g "calcium chloride dihydrate"')).toEqual([]);
});

test('a tray is in the water of its tank', () => {
  expect(told('T1: dosed 1 mL "methylene blue"', '2026-03-01 tray T1: in C1')).toEqual([
    'T1 shares water and filter with 1 tank (C1): valve off, or all are treated',
  ]);
});

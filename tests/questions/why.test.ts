import { describe, expect, it, test } from 'vitest';
import { why } from '../../src/questions/why.ts';
import type { WhyRow } from '../../src/questions/whyrow.ts';
import { roomOn } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

function row(id: string, title: string): WhyRow {
  return { id, title, because: { rule: '', source: '', steps: [], lines: [] }, lines: [] };
}

const ROWS = [
  row('a1-dispute', 'A1: look at Rowan, morning and evening'),
  row('a1-water-change', 'A1: water change 30 %'),
  row('a12-water-change', 'A12: water change'),
  row('long-spill', 'Long: the prefilter will spill'),
  row('rowan-1-ready', 'Rowan-1: ready for sale'),
  row('rowan-12-ready', 'Rowan-12: ready for sale'),
];

function ask(...words: string[]) {
  const { rows, near } = why(roomOn('2026-02-15', []), words, [() => ROWS.slice(0, 4), () => ROWS.slice(1)]);
  return { ids: rows.map(({ id }) => id), near };
}

test('takes the id of a row', () => {
  expect(ask('a1-dispute').ids).toEqual(['a1-dispute']);
  expect(ask('A1', 'water', 'change').ids).toEqual(['a1-water-change']);
});

test('takes words of the id and the title, in any order and case', () => {
  expect(ask('A1 dispute').ids).toEqual(['a1-dispute']);
  expect(ask('Rowan-1', 'ready').ids).toEqual(['rowan-1-ready']);
  expect(ask('spill', 'LONG').ids).toEqual(['long-spill']);
  expect(ask('evening').ids).toEqual(['a1-dispute']);
});

test('takes whole words before beginnings, and beginnings where there are no others', () => {
  expect(ask('water', 'A1').ids).toEqual(['a1-water-change']);
  expect(ask('disp').ids).toEqual(['a1-dispute']);
});

test('gives every row that has the words, each once', () => {
  expect(ask('ready').ids).toEqual(['rowan-1-ready', 'rowan-12-ready']);
  expect(ask('water').ids).toEqual(['a1-water-change', 'a12-water-change']);
});

test('names rows that come near where none has the words', () => {
  expect(ask('A1', 'gasping')).toEqual({ ids: [], near: ['a1-dispute', 'a1-water-change'] });
  expect(ask('long-spil', 'x').ids).toEqual([]);
  expect(ask('rwoan-1-ready').near).toEqual(['rowan-1-ready', 'rowan-12-ready']);
  expect(ask('zzz').near).toEqual([]);
});

test('finds the spill of a loop by the words that its help teaches', () => {
  expect(why(journalOn('2026-02-15', ''), ['Long', 'spill']).rows.map(({ id }) => id)).toEqual(['long']);
});

describe('a tank that shares its water', () => {
  const room = journalOn('2026-03-10', '2026-03-08 Long: test pH 7.4, TAN 0.25\n2026-03-08 C1: test pH 7\n');
  const asked = (...words: string[]): string[] => why(room, words).rows.map(({ id }) => id);
  it('is asked about by its own name', () => {
    expect(asked('A1', 'water')).toEqual(['long-water']);
    expect(asked('A1', 'TAN')).toEqual(asked('Long', 'TAN'));
    expect(asked('C1', 'water')).toContain('c1-water');
  });
  it('is the tray with the tank that it hangs in', () => {
    const tray = journalOn('2026-03-10', '2026-01-02 tray T1: in C1\n2026-03-08 C1: test pH 7\n');
    expect(why(tray, ['T1', 'water']).rows.map(({ id }) => id)).toEqual(['c1-water']);
  });
  it('has rows of its own before those of its water', () => {
    const chore = journalOn('2026-03-10', '2026-01-04 A1: "polish glass" every 7 days\n');
    expect(why(chore, ['A1', 'glass']).rows.map(({ id }) => id)).toEqual(['a1-polish-glass']);
  });
});

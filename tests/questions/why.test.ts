import { expect, test } from 'vitest';
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

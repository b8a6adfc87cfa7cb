/** Fish that were promised and may not leave their water: nobody is told to hand them over. */
import { describe, expect, test } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import { promiseDue } from '../../../src/questions/due/promise.ts';
import { journalOn } from '../../support/journal.ts';
import { rowOf, rowsOf, type Told } from './rows.ts';

const BROOD = `2026-01-10 A1: spawned
2026-01-20 A1: free-swimming, 60
2026-03-01 A1: Rowan-1 moved 40 to C2
2026-05-01 C2: reserved 6 Rowan-1 until 2026-06-05
`;
const told = (lines: string, on = '2026-06-04') =>
  promiseDue(journalOn(on, BROOD + lines), 7).map(({ what, why, close }) => ({ what, why, close }));

describe('a promise of fish that may not leave', () => {
  test('on hold: who waits is told, and until when', () => {
    expect(told('2026-06-01 C2: hold "velvet"\n')).toEqual([
      {
        what: 'hand over no Rowan-1 yet: tell who waits for 6',
        why: 'on hold: velvet, until 29 Jun; reserved until 5 Jun; after that they are free again',
        close: 'C2: put off promise until 2026-06-29',
      },
    ]);
  });
  test('sick, treated or in quarantine as well', () => {
    const first = (line: string) => told(line)[0]?.why.split(';')[0];
    expect(first('2026-06-01 C2: sick "white spot", catching\n')).toMatch(/^sick: white spot, catching/);
    expect(first('2026-06-01 C2: treat "salt" 2 g/L, every 24 h, 3 doses, wait 14 days\n')).toMatch(/^treated: salt/);
    expect(first('2026-06-01 C2: quarantine 28 days\n')).toMatch(/^in quarantine since 1 Jun/);
  });
  test('is put off by its line, and asked for as before where the water is clear', () => {
    const hold = '2026-06-01 C2: hold "velvet"\n';
    expect(told(`${hold}2026-06-02 C2: hold over\n`)[0]?.what).toBe('hand over 6 Rowan-1, or let them go');
    const rows = (more: string) =>
      due(journalOn('2026-06-04', BROOD + hold + more), { days: 7, minutes: null }).rows.filter(
        ({ kind }) => kind === 'promise',
      );
    expect([rows('').length, rows('2026-06-03 C2: put off promise until 2026-06-29\n')]).toEqual([1, []]);
    expect(told('')[0]?.what).toBe('hand over 6 Rowan-1, or let them go');
    expect(told(hold, '2026-06-06')[0]?.what).toBe('6 Rowan-1: fetched after all?');
  });
});

/** Ten young in A1, twenty in C2, old enough to sell. */
const READY = `2026-01-02 species krib: sale at 35 mm or 16 weeks
2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-04-01 A1: Rowan-1 moved 20 to C2
`;
const of = (on: string, lines: string): readonly Told[] => rowsOf(promiseDue, on, READY + lines);
const one = (on: string, lines: string): Told => rowOf(promiseDue, on, READY + lines);

describe('a promise', () => {
  test('is told till its last day, then for a week as lapsed, then no more', () => {
    const line = '2026-05-01 C2: reserved 6 Rowan-1 until 2026-06-11 to "Iris"\n';
    expect(one('2026-06-10', line)).toEqual({
      id: 'rowan-1-reserved-2026-05-01',
      place: 'C2',
      what: 'hand over 6 Rowan-1, or let them go',
      due: '2026-06-11',
      weight: 1,
      why: 'reserved until 11 Jun; after that they are free again',
      close: 'C2: sold 6 Rowan-1 to "…"',
      caution: null,
      after: null,
      key: 'promise',
      pressing: false,
      steps: ['6 Rowan-1 reserved on 1 May, until 11 Jun'],
      lines: [5],
    });
    expect(one('2026-06-18', line)).toMatchObject({
      what: '6 Rowan-1: fetched after all?',
      weight: 0,
      why: 'reserved until 11 Jun: lapsed, those fish are free again',
    });
    expect(of('2026-06-19', line)).toEqual([]);
    expect(of('2026-06-10', `${line}2026-06-09 C2: sold 6 Rowan-1 to "Iris"\n`)).toEqual([]);
  });
  test('without a last day is asked about four weeks on, and goes on', () => {
    const line = '2026-05-01 C2: reserved 2 Rowan-1\n';
    expect(one('2026-06-10', line)).toMatchObject({
      due: '2026-05-29',
      weight: 1,
      why: 'reserved on 1 May, no last day was written',
    });
    expect(of('2026-09-10', line)).toHaveLength(1);
  });
  test('of a stock in two tanks waits only where neither has fish that may leave', () => {
    const line = '2026-05-01 Rowan-1: reserved 6 until 2026-06-13\n';
    const held = `${line}2026-06-09 C2: hold "velvet"\n`;
    expect(one('2026-06-10', held)).toMatchObject({ place: 'Rowan-1', what: 'hand over 6 Rowan-1, or let them go' });
    expect(one('2026-06-10', `${held}2026-06-09 A1: sick "spots"\n`)).toMatchObject({
      what: 'hand over no Rowan-1 yet: tell who waits for 6',
      due: '2026-06-13',
      weight: 1,
      close: 'Rowan-1: put off promise until 2026-06-17',
      lines: [5, 7],
    });
  });
  test('beyond what is alive asks for a count, with every promise that makes it so', () => {
    const lines =
      '2026-05-01 A1: reserved 10 Rowan-1 until 2026-06-20\n2026-05-01 C2: reserved 18 Rowan-1 until 2026-07-20\n';
    expect(of('2026-06-10', lines).map(({ id }) => id)).not.toContain('rowan-1-promised-too-often');
    expect(of('2026-06-10', `${lines}2026-05-02 C2: kept back 4 Rowan-1\n`)[0]).toMatchObject({
      id: 'rowan-1-promised-too-often',
      place: 'Rowan-1',
      what: 'count Rowan-1, or let a promise go',
      due: '2026-06-10',
      weight: 2,
      why: '32 kept back and reserved, but surely only 30 alive',
      close: 'A1: Rowan-1 counted …',
      key: null,
      pressing: false,
      lines: [7, 5, 6, 3],
    });
  });
});

describe('what is wanted', () => {
  const wanted = (words: string): string => `2026-06-01 room: wanted ${words}\n`;
  test('is offered of the largest lots, as many of them as it takes', () => {
    expect(one('2026-06-10', wanted('25 krib by 2026-07-01 to "Otto"'))).toEqual({
      id: 'krib-wanted-2026-06-01',
      place: 'C2',
      what: 'offer krib: 25 wanted',
      due: '2026-06-10..2026-07-01..2026-07-01',
      weight: 0,
      why: 'ready: 20 Rowan-1 in C2 and 10 Rowan-1 in A1',
      close: 'C2: reserved 20 Rowan-1 until 2026-07-01',
      caution: null,
      after: null,
      key: 'offer krib',
      pressing: false,
      steps: [
        '25 krib wanted since 1 Jun, by 1 Jul',
        'Rowan-1 in C2: 20 of 20, from 10 Jun',
        'Rowan-1 in A1: 5 of 10, from 10 Jun',
      ],
      lines: [5],
    });
    expect(one('2026-06-10', wanted('6 krib'))).toMatchObject({
      due: '2026-06-10..2026-06-10..',
      why: 'ready: 20 Rowan-1 in C2',
      close: 'C2: reserved 6 Rowan-1 until 2026-06-24',
    });
    expect(one('2026-06-10', wanted('20 krib')).why).toBe('ready: 20 Rowan-1 in C2');
    expect(one('2026-06-10', wanted('krib'))).toMatchObject({
      what: 'offer krib: at least 1 wanted',
      close: 'C2: reserved 1 Rowan-1 until 2026-06-24',
    });
  });
  test('is not offered of fish that may not leave, and says where they are too few', () => {
    expect(one('2026-06-10', `${wanted('40 krib')}2026-06-09 C2: hold "velvet"\n`)).toMatchObject({
      place: 'A1',
      why: 'ready: 10 Rowan-1 in A1, not all of them',
      close: 'A1: reserved 10 Rowan-1 until 2026-06-24',
    });
  });
  test('without a day is brought up for two months, by a day till then; of fish that nobody has not at all', () => {
    expect(of('2026-07-31', wanted('6 krib'))).toHaveLength(1);
    expect(of('2026-08-01', wanted('6 krib'))).toEqual([]);
    // Each counts from its own line.
    const two = `${wanted('6 krib')}2026-07-20 room: wanted 4 krib\n`;
    expect(of('2026-08-10', two).map(({ id }) => id)).toEqual(['krib-wanted-2026-07-20']);
    expect(of('2026-08-10', wanted('6 krib by 2026-08-10'))).toHaveLength(1);
    expect(of('2026-06-10', '2026-06-01 species zebra: cave spawner\n2026-06-01 room: wanted 6 zebra\n')).toEqual([]);
  });
});

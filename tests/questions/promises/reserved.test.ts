/** What is reserved, for whom until when, what was paid for it, and what is kept back: each row in its order. */
import { describe, expect, it } from 'vitest';
import { promiseDue } from '../../../src/questions/due/promise.ts';
import { promises, type PromisesAnswer } from '../../../src/questions/promises.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const YOUNG = `2026-02-02 A1: spawned
2026-02-12 A1: free-swimming
2026-03-01 A1: moved all Rowan-1 to C2
2026-04-01 C2: Rowan-1 counted 40
`;
const SETUP = ROOM.split('\n').length - 1;
const asked = (on: string, lines: string): PromisesAnswer => promises(journalOn(on, YOUNG + lines));
const toIris = '2026-04-05 C2: reserved 6 Rowan-1 until 2026-04-20, deposit 4.50, to "Iris"\n';
const steps = (on: string, lines: string): readonly string[] => asked(on, lines).reserved[0]?.because.steps ?? [];

describe('a reservation', () => {
  it('is shown as lapsed from the day after its last for a fortnight', () => {
    const shown = (on: string): boolean[] => asked(on, toIris).reserved.map(({ lapsed }) => lapsed);
    expect(['2026-04-20', '2026-04-21', '2026-05-04', '2026-05-05'].map(shown)).toEqual([[false], [true], [true], []]);
  });
  it('stands by its last day, the soonest first, and without one behind them', () => {
    const lines = `2026-04-05 C2: reserved 1 Rowan-1 to "Fen"
2026-04-05 C2: reserved 2 Rowan-1 until 2026-06-01 to "Otto"
2026-04-06 C2: reserved 3 Rowan-1 until 2026-05-01 to "Iris"
2026-04-06 C2: reserved 4 Rowan-1 to "Yew"
`;
    expect(asked('2026-04-10', lines).reserved.map(({ to }) => to)).toEqual(['Iris', 'Otto', 'Fen', 'Yew']);
  });
  it('is of the fish that were not fetched yet, and tells what was', () => {
    const part = `${toIris}2026-04-10 C2: sold 4 Rowan-1 to "Iris" for 24.00\n`;
    const [row] = asked('2026-04-12', part).reserved;
    expect(row).toMatchObject({ stock: 'Rowan-1', tank: 'C2', count: { low: 2, high: 2 }, to: 'Iris', deposit: 4.5 });
    expect(row?.lines.map(({ line }) => line - SETUP)).toEqual([5, 6]);
    expect(steps('2026-04-12', part)).toEqual([
      '6 Rowan-1 reserved on 5 Apr, until 20 Apr',
      '4 went to that buyer since',
      '4.50 paid as a deposit',
    ]);
  });
  it('tells where it has no last day or lapsed, and that none was paid', () => {
    expect(steps('2026-04-12', '2026-04-05 C2: reserved 6 Rowan-1 to "Iris"\n')).toEqual([
      '6 Rowan-1 reserved on 5 Apr, no last day',
    ]);
    expect(steps('2026-04-22', toIris).at(-1)).toBe('lapsed: those fish are free again');
  });
  it('is fetched where the fish are now: the tank of its line while some are there, else their only one', () => {
    const early = '2026-02-20 A1: reserved 6 Rowan-1 until 2026-04-20 to "Iris"\n';
    const tank = (more: string) => asked('2026-04-12', early + more).reserved.map((row) => row.tank);
    expect(tank('')).toEqual(['C2']);
    expect(tank('2026-04-02 C2: moved all Rowan-1 to Q1\n')).toEqual(['Q1']);
    expect(tank('2026-04-02 C2: moved 10 Rowan-1 to Q1\n')).toEqual([null]);
    expect(tank('2026-04-02 C2: moved 10 Rowan-1 to A1\n')).toEqual(['A1']);
    const room = journalOn('2026-04-19', YOUNG + early);
    expect(promiseDue(room, 7).map(({ place, close }) => [place, close])).toEqual([
      ['C2', 'C2: sold 6 Rowan-1 to "…"'],
    ]);
  });
  it('is covered where as many are surely there, by its own stock', () => {
    const two = `${toIris}2026-04-05 C1: reserved 13 Ash until 2026-05-01 to "Fen"\n`;
    expect(asked('2026-04-12', two).reserved.map(({ stock, covered }) => [stock, covered])).toEqual([
      ['Rowan-1', true],
      ['Ash', false],
    ]);
  });
});

describe('deposits', () => {
  it('are held for what stands, and told apart from those of what lapsed', () => {
    const lines = `${toIris}2026-04-06 C2: reserved 2 Rowan-1 until 2026-05-20, deposit 3.00, to "Otto"
2026-04-06 C2: reserved 2 Rowan-1 until 2026-05-21, deposit 2.00, to "Fen"
2026-04-06 C2: reserved 2 Rowan-1 until 2026-05-22 to "Yew"
`;
    expect(asked('2026-04-12', lines)).toMatchObject({ deposits: { held: 9.5, lapsed: 0 }, currency: 'EUR' });
    expect(asked('2026-04-25', lines).deposits).toEqual({ held: 5, lapsed: 4.5 });
    expect(asked('2026-05-10', lines).deposits).toEqual({ held: 5, lapsed: 0 });
  });
});

describe('what is kept back', () => {
  it('is a row for each stock, with every line of it', () => {
    const kept =
      '2026-04-05 C2: kept back 4 Rowan-1\n2026-04-06 C2: kept back 2 Rowan-1\n2026-04-06 C1: kept back 3 Ash\n';
    const rows = asked('2026-04-12', kept).kept;
    expect(rows).toMatchObject([
      { stock: 'Rowan-1', count: { low: 6, high: 6 } },
      { stock: 'Ash', count: { low: 3, high: 3 } },
    ]);
    expect(rows[0]?.lines.map(({ line }) => line - SETUP)).toEqual([5, 6]);
  });
  it('is none of fish that are gone, nor where something is only reserved', () => {
    const gone = '2026-04-05 C2: kept back 4 Rowan-1\n2026-04-07 C2: Rowan-1 sold all for 80.00\n';
    expect(asked('2026-04-12', gone).kept).toEqual([]);
    expect(asked('2026-04-12', toIris).kept).toEqual([]);
  });
});

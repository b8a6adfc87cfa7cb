/** A lot as it is shown: how many may go, what a count would free, what it rests on; and the answer that it stands in. */
import { describe, expect, it } from 'vitest';
import { sale, saleWhy, type Lot, type SaleAnswer } from '../../../src/questions/sale.ts';
import { exactly } from '../../../src/core/interval.ts';
import { sizedOf } from '../../../src/questions/sale/blockers.ts';
import { saleableFrom } from '../../../src/questions/saleable.ts';
import { day } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';

/** Of age 12 weeks after 2 February: 27 April. */
const YOUNG = `2026-01-02 species krib: sale at 12 weeks; price 6.00
2026-02-02 A1: spawned
2026-02-12 A1: free-swimming
2026-03-01 A1: Rowan-1 counted 40
2026-03-01 A1: moved all Rowan-1 to C2
`;
const COUNTED = '2026-04-28 C2: counted 40\n';
const LINE = { first: 20 };

function answer(lines: string, on = '2026-05-01', ahead = 0, auction: string | null = null): SaleAnswer {
  const room = journalOn(on, YOUNG + lines);
  return sale(room, {
    ahead,
    auction: auction === null ? null : (room.sale.auctions.get(auction) ?? null),
    projected: false,
  });
}
function lot(lines: string, on = '2026-05-01', name = 'Rowan-1', tank = 'C2'): Lot {
  const found = answer(lines, on).lots.find((one) => one.name === name && one.tank === tank);
  if (!found) throw new Error(`no ${name} in ${tank}`);
  return found;
}
const last = (lines: readonly { line: number }[]): number | undefined => lines.at(-1)?.line;

describe('for an auction', () => {
  const spring = '2026-03-02 auction Spring: on 2026-05-09; 20 lots; bags of 7\n';
  it('it is the day of the auction, in bags of its size', () => {
    const found = answer(COUNTED + spring, '2026-05-01', 0, 'Spring');
    expect(found).toMatchObject({ at: day('2026-05-09'), ahead: true });
    expect(found.auction).toEqual({ name: 'Spring', on: day('2026-05-09'), past: false, bagOf: 7 });
    expect(found.lots.find(({ name }) => name === 'Rowan-1')).toMatchObject({ ready: true, free: 40, bags: 5 });
  });
  it('what is not ready goes into no bag, nor does anything where no bag is told', () => {
    const held = `${COUNTED}${spring}2026-05-01 C2: hold "velvet"\n`;
    expect(answer(held, '2026-05-01', 0, 'Spring').lots.find(({ name }) => name === 'Rowan-1')).toMatchObject({
      ready: false,
      bags: null,
    });
    const loose = `${COUNTED}2026-03-02 auction Spring: on 2026-05-09; 20 lots\n`;
    expect(answer(loose, '2026-05-01', 0, 'Spring').lots[0]?.bags).toBeNull();
  });
  it('is still to come on its own day, and past the day after: then today is asked about', () => {
    const today = answer(COUNTED + spring, '2026-05-09', 0, 'Spring');
    expect([today.auction?.past, today.ahead, today.lots[0]?.bags]).toEqual([false, false, 5]);
    const past = answer(COUNTED + spring, '2026-05-10', 0, 'Spring');
    expect([past.auction?.past, past.at, past.lots[0]?.bags]).toEqual([true, day('2026-05-10'), null]);
  });
  it('without a day is none', () => {
    expect(answer(`${COUNTED}2026-03-02 auction Spring: 20 lots\n`, '2026-05-01', 0, 'Spring').auction).toBeNull();
    expect(answer(COUNTED).auction).toBeNull();
  });
});

describe('holds on a day to come', () => {
  const hold = '2026-04-20 C2: hold "velvet"\n';
  const clear = day('2026-05-18');
  it('are taken to be over from the day on which they clear, and not before', () => {
    const ahead = (days: number): unknown[] =>
      answer(COUNTED + hold, '2026-05-01', days).assumed.map((one) => one.clear);
    expect(ahead(clear - day('2026-05-01'))).toEqual([clear]);
    expect(ahead(clear - day('2026-05-01') - 1)).toEqual([]);
    expect(answer(COUNTED + hold, '2026-06-01').assumed).toEqual([]);
  });
});

describe('how many may go', () => {
  it('are those that surely have their size, not all that are there', () => {
    const sized = `2026-01-03 species krib: sale at 25 mm\n2026-05-01 C2: Rowan-1 average 26 mm\n`;
    const found = lot(COUNTED + sized);
    expect(found.grown).toBeGreaterThan(0);
    expect(found.grown).toBeLessThan(40);
    expect(found.free).toBe(found.grown);
    expect(found).toMatchObject({ ready: true, sizeRead: true });
    expect(lot(COUNTED).sizeRead).toBe(false);
  });
  it('of which none may go are all of them, for the day when they will', () => {
    expect(lot('2026-03-10 C2: counted 40\n', '2026-03-12')).toMatchObject({ ready: false, grown: 0, free: 40 });
  });
  it('all spoken for, are told with who has them', () => {
    const why = (lines: string): string | undefined => lot(lines).blockers.find(({ kind }) => kind === 'count')?.why;
    const kept = '2026-04-29 C2: kept back 30 Rowan-1\n';
    const reserved = '2026-04-29 C2: reserved 10 Rowan-1 until 2026-06-01 to "Iris"\n';
    expect(why(`${COUNTED}${kept}${reserved}`)).toBe('40 fish surely there, 30 kept back, 10 reserved');
    expect(why(`${COUNTED}2026-04-29 C2: reserved 40 Rowan-1 until 2026-06-01\n`)).toBe(
      '40 fish surely there, 40 reserved',
    );
    expect(why(`${COUNTED}2026-04-29 C2: kept back 40 Rowan-1\n`)).toBe('40 fish surely there, 40 kept back');
  });
  it('are told with all that is promised, where that is more than there are', () => {
    const why = (lines: string, tank = 'C2', name = 'Rowan-1'): string | undefined =>
      lot(lines, '2026-05-01', name, tank).blockers.find(({ kind }) => kind === 'count')?.why;
    const kept = '2026-04-29 C2: kept back 5 Rowan-1\n';
    const reserved = '2026-04-29 C2: reserved 47 Rowan-1 until 2026-06-01\n';
    expect(why(COUNTED + reserved)).toBe('40 fish surely there, 47 reserved');
    expect(why(COUNTED + kept + reserved)).toBe('40 fish surely there, 5 kept back, 47 reserved');
    const split =
      '2026-04-20 C2: moved 15 Rowan-1 to Q1, rest stay\n2026-04-28 C2: counted 25\n2026-04-28 Q1: counted 15\n';
    expect(why(split + kept + reserved)).toBe(
      '25 fish surely there; 5 kept back and 47 reserved, of 40 in all its tanks',
    );
    expect(why(split + reserved, 'Q1')).toBe('15 fish surely there; 47 reserved, of 40 in all its tanks');
    const few = '2026-04-29 C2: reserved 25 Rowan-1 until 2026-06-01\n';
    expect(why(split + few)).toBe('25 fish surely there, 25 reserved');
  });
  it('are to be counted only where that might free some', () => {
    const why = (lines: string): string | undefined => lot(lines).blockers.find(({ kind }) => kind === 'count')?.why;
    const elm = '2026-04-01 group Elm: krib; about 40; in Q1; age 20 weeks; line "Fen"\n';
    const of = (count: number): string => `${elm}2026-04-29 Q1: kept back ${String(count)} Elm\n`;
    const elmWhy = (count: number): string | undefined =>
      lot(of(count), '2026-05-01', 'Elm', 'Q1').blockers.find(({ kind }) => kind === 'count')?.why;
    expect(elmWhy(30)).toBe('30 fish surely there, 30 kept back; count them');
    expect(why(`${COUNTED}2026-04-29 C2: kept back 40 Rowan-1\n`)).not.toContain('count them');
    const some = '2026-04-28 C2: counted 0-30\n';
    expect(why(some)).toBe('not one surely there: about 15 (0–30); count them');
  });
});

describe('what a lot rests on', () => {
  const split =
    '2026-04-20 C2: moved 15 Rowan-1 to Q1, rest stay\n2026-04-28 C2: counted 25\n2026-04-28 Q1: counted 15\n';
  const first = LINE.first + 5;
  it('are the counts of its tank and what is kept or reserved, not the counts of another tank', () => {
    const { lines } = lot(`${split}2026-04-29 C2: kept back 5 Rowan-1\n`);
    expect(lines.map(({ line }) => line)).toEqual(expect.arrayContaining([first + 1, first + 3]));
    expect(lines.map(({ line }) => line)).not.toContain(first + 2);
  });
  it('and where none is free, the last count of that tank, else the last line about them', () => {
    const count = (found: Lot): number | undefined =>
      last(found.blockers.find(({ kind }) => kind === 'count')?.lines ?? []);
    expect(count(lot(`${split}2026-04-29 C2: kept back 25 Rowan-1\n`))).toBe(first + 1);
    expect(count(lot(`${COUNTED}2026-04-29 C2: counted 38\n2026-04-30 C2: kept back 38 Rowan-1\n`))).toBe(first + 1);
    const elm = '2026-04-01 group Elm: krib; 6; in Q1; age 20 weeks; line "Fen"\n2026-04-02 Q1: Elm size 20-30 mm\n';
    const found = lot(`${elm}2026-04-29 Q1: kept back 6 Elm\n`, '2026-05-01', 'Elm', 'Q1');
    expect(found.blockers.find(({ kind }) => kind === 'count')?.lines).toHaveLength(1);
  });
  it('is told step by step, with the days until which each thing stands in its way', () => {
    const { because } = lot(COUNTED);
    expect(because.source).toBe('the journal: the rule set for the species');
    expect(because.steps).toContain('40 in C2, 40 in all: 40 surely');
    expect(because.steps).toContain('40 of them surely have 12 weeks on 1 May');
    expect(because.steps).toContain('0 kept back and 0 reserved from here: 40 can be promised');
    expect(because.steps.at(-1)).toBe('nothing stands in the way on 1 May');
    const held = lot(`${COUNTED}2026-05-01 C2: hold "velvet"\n`).because.steps;
    expect(held.at(-1)).toBe('on hold: velvet (until 29 May)');
    const sick = lot(`${COUNTED}2026-05-01 C2: sick "white spot"\n`).because.steps;
    expect(sick.at(-1)).toBe('sick: white spot; say whether it is catching');
  });
  it('is what `why` prints of each', () => {
    const rows = saleWhy(journalOn('2026-05-01', `${YOUNG}${COUNTED}2026-04-29 C1: hold "velvet"\n`));
    expect(rows.map(({ title }) => title)).toContain('Rowan-1 in C2: ready for sale');
    expect(rows.map(({ title }) => title)).toContain('Ash in C1: not ready for sale');
    expect(rows.find(({ id }) => id === 'rowan-1-c2-sale')?.because.steps.length).toBeGreaterThan(3);
  });
  it('of a colony without a number kept back is the line that declared it', () => {
    const pebble = lot('2026-04-28 B1: Pebble counted 30\n', '2026-05-01', 'Pebble', 'B1');
    expect(pebble.blockers.find(({ kind }) => kind === 'colony')?.lines).toHaveLength(1);
  });
});

describe('a caution', () => {
  it('of a count that is too old goes with a lot that is ready, and with no other', () => {
    expect(lot('')).toMatchObject({ ready: true, stale: true });
    expect(lot('').cautions.join()).toMatch(
      /^last counted 1 Mar, and some die unseen: likely .+ there; count before you promise$/,
    );
    expect(lot(COUNTED)).toMatchObject({ stale: false, cautions: [] });
    expect(lot('2026-05-01 C2: hold "velvet"\n')).toMatchObject({ ready: false, stale: false, cautions: [] });
  });
  it('of what was catching and is over by its days alone, for as long again, as long as no line says so', () => {
    const sick = '2026-03-10 C2: sick "flukes", catching\n';
    const says = (on: string, more = ''): readonly string[] => lot(sick + COUNTED + more, on).cautions;
    expect(lot(sick + COUNTED, '2026-05-01')).toMatchObject({ ready: true });
    expect(says('2026-05-01')).toEqual([
      'flukes on 10 Mar, catching, and no line says that it is over: look over every fish before any go',
    ]);
    expect(says('2026-05-05')).toEqual([]);
    expect(says('2026-05-01', '2026-03-12 C2: not catching\n')).toEqual([]);
    const held = '2026-03-11 C2: hold "flukes"\n';
    expect(says('2026-05-01', held)).toEqual([]);
    expect(lot(sick + COUNTED + held, '2026-05-01').ready).toBe(false);
    expect(says('2026-05-01', `${held}2026-04-20 C2: hold over\n`)).toEqual([]);
  });
  it('of a species that is regulated comes first, and hides no other', () => {
    const law = 'a regulated species: selling and moving it is a matter of local law';
    const lines = '2026-01-03 species krib: regulated\n';
    const { cautions, stale } = lot(lines);
    expect(stale).toBe(true);
    expect(cautions).toEqual([law, expect.stringMatching(/^last counted 1 Mar, .+ there; count before you promise$/)]);
    expect(lot(lines + COUNTED).cautions).toEqual([law]);
    // C2 stands alone: of A1 the neighbour on the loop is sick.
    const sick = '2026-04-20 A2: sick "flukes", catching\n';
    expect(lot(`${lines}${sick}2026-04-28 A1: Rowan-1 counted 30\n`, '2026-05-01', 'Rowan-1', 'A1').cautions).toEqual([
      law,
      'flukes in A2, catching, on the same water: put it on hold before any go',
    ]);
  });
});

describe('the order and what to count', () => {
  const elm = '2026-04-01 group Elm: krib; 60; in Q1; age 20 weeks; line "Fen"\n';
  const yew =
    '2026-04-01 group Yew: krib; 10; in C1; age 2 weeks; line "Fen"\n2026-04-01 group Oak: krib; 10; in B1; age 4 weeks; line "Fen"\n';
  it('ready ones first, the most first; then the soonest; those of no known day last', () => {
    expect(
      answer(COUNTED + elm + yew)
        .lots.map(({ name }) => name)
        .filter((name) => name !== 'Pebble'),
    ).toEqual(['Elm', 'Rowan-1', 'Oak', 'Yew', 'Ash']);
  });
  it('is asked for where the count is wide and nothing else stands in the way', () => {
    const guess = '2026-04-28 C2: counted 30-33\n';
    expect(answer(guess).count.filter(({ tank }) => tank === 'C2')).toEqual([
      { stock: 'Rowan-1', tank: 'C2', sure: 30, unknown: false, perhaps: 33, write: 'C2: Rowan-1 counted …' },
    ]);
    const spoken = `${guess}2026-04-29 C2: kept back 4 Rowan-1\n2026-04-29 C2: reserved 6 Rowan-1 until 2026-06-01\n`;
    expect(answer(spoken).count.filter(({ tank }) => tank === 'C2')).toMatchObject([{ sure: 20, perhaps: 23 }]);
    expect(answer('2026-04-28 C2: counted 30-32\n').count.filter(({ tank }) => tank === 'C2')).toEqual([]);
    expect(answer(`${guess}2026-05-01 C2: hold "velvet"\n`).count.filter(({ tank }) => tank === 'C2')).toEqual([]);
  });
});

describe('a rule of size and age', () => {
  const elm = (age: string): string =>
    `2026-01-03 species krib: sale at 25 mm and 12 weeks\n2026-04-01 group Elm: krib; 6; in Q1${age}; line "Fen"\n2026-05-01 Q1: Elm average 60 mm\n`;
  it('is met by no length alone where nobody knows how old they are', () => {
    expect(lot(elm(''), '2026-05-01', 'Elm', 'Q1').blockers).toMatchObject([{ kind: 'size', until: null }]);
    const room = journalOn('2026-05-01', elm(''));
    const body = room.stock.groups.get('Elm');
    expect(body && saleableFrom(room, body)).toBeNull();
    expect(lot(elm('; age 20 weeks'), '2026-05-01', 'Elm', 'Q1')).toMatchObject({ ready: true, free: 6 });
  });
  it('promises a whole lot for a share that is all but whole, and of a part no fish that is not all there', () => {
    const room = journalOn('2026-05-01', elm('; age 20 weeks'));
    const body = room.stock.groups.get('Elm');
    const ripe = body ? saleableFrom(room, body) : null;
    const nobody = { low: null, likely: null, high: null };
    const sized = (low: number): number | null =>
      ripe && sizedOf(exactly(9), { ...ripe, first: nobody, share: { low, likely: null, high: 1 } }, day('2026-05-01'));
    expect([1.96 / 9, 2 / 9, 8.94 / 9, 8.96 / 9, 1].map(sized)).toEqual([1, 2, 8, 9, 9]);
  });
  it('of which one is enough is met by that', () => {
    expect(lot(elm('').replace('mm and 12', 'mm or 12'), '2026-05-01', 'Elm', 'Q1')).toMatchObject({ ready: true });
  });
});

/** The plan for an auction: the example's own, and small rooms made by chance. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { salePlan, type PlanOptions } from '../../../src/questions/plan/make.ts';
import type { SalePlan } from '../../../src/questions/plan/plan.ts';
import { sale } from '../../../src/questions/sale.ts';
import { planWhy } from '../../../src/questions/plan/why.ts';
import { bodyNamed } from '../../../src/state/bodies.ts';
import type { Room } from '../../../src/state/draft.ts';
import { sureOf } from '../../../src/state/promised.ts';
import { day } from '../../support/events.ts';
import { journalRoom } from '../../support/journal.ts';

function planOf(room: Room, name: string, more: Partial<PlanOptions> = {}): SalePlan {
  const auction = room.sale.auctions.get(name);
  if (!auction?.on) throw new Error(`no auction ${name}`);
  return salePlan(room, { auction, on: auction.on, projected: false, ...more });
}

const SMALL = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank C1: 54 L; alone
2026-01-01 tank C2: 54 L; alone
2026-01-01 tank A1: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00
2026-01-01 group Ash: krib; 20; in C1; age 40 weeks; line "Moss river"
2026-01-01 group Oak: krib; 15; in C2; age 40 weeks; line "Fen"
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-03-01 auction Spring: on 2026-05-09; 20 lots; bags of 6; 4 bags per species; seller gets 70 %
`;

/** The same without a number of bags a species. */
const OPEN = SMALL.replace(' 4 bags per species;', '');

describe('the plan of the example', () => {
  const text = readFileSync('examples/workshop/fishroom.txt', 'utf8').replace(/^.*also read.*$/gm, '');
  const room = journalRoom('2026-11-22', text);
  const plan = planOf(room, 'Winter');

  test('obeys each rule of its auction', () => {
    const bags = plan.lots.flatMap((lot) => lot.bags.map((bag) => ({ ...bag, lot })));
    expect(bags.length).toBeGreaterThan(8);
    expect(bags.length).toBeLessThanOrEqual(18);
    expect(new Set(bags.map(({ count }) => count))).toEqual(new Set([6]));
    const species = [...new Set(bags.map(({ lot }) => lot.species))];
    for (const one of species) expect(bags.filter(({ lot }) => lot.species === one).length).toBeLessThanOrEqual(3);
    for (const { lot, count } of bags) expect((lot.price ?? 0) * count).toBeGreaterThanOrEqual(12);
    expect(bags.map(({ number }) => number)).toEqual(bags.map((_, index) => index + 1));
  });

  test('promises no fish twice, and none that is held, reserved, kept back, undersized or in treatment', () => {
    const auction = room.sale.auctions.get('Winter') ?? null;
    const { lots } = sale(room, { ahead: 0, auction, projected: false });
    for (const lot of plan.lots) {
      const ready = lots.find(({ name, tank }) => name === lot.stock && tank === lot.tank);
      expect(ready).toMatchObject({ ready: true, blockers: [] });
      expect(lot.count).toBeLessThanOrEqual(ready?.free ?? 0);
      expect(lot.count).toBe(lot.bags.reduce((sum, { count }) => sum + count, 0));
      const body = bodyNamed(room, lot.stock);
      const { sure, kept, reserved } = body === null ? { sure: 0, kept: 0, reserved: 0 } : sureOf(room, body, plan.on);
      const going = plan.lots.filter(({ stock }) => stock === lot.stock).reduce((sum, { count }) => sum + count, 0);
      expect(going).toBeLessThanOrEqual(sure - kept - reserved);
    }
    expect(new Set(plan.lots.map(({ stock, tank }) => `${stock} ${tank}`)).size).toBe(plan.lots.length);
  });

  test('tells why all others stay, and every row answers why', () => {
    expect(plan.leftOut.every(({ why: reasons }) => reasons.length > 0)).toBe(true);
    expect(plan.leftOut.find(({ stock }) => stock === 'Aspen-3')?.why).toEqual(['3 bags of anomala at the most']);
    const told = planWhy(room).map(({ id }) => id);
    expect(told).toEqual([plan.id, ...[...plan.lots, ...plan.leftOut].map(({ id }) => id)]);
    expect(new Set(told).size).toBe(told.length);
  });

  test('adds up', () => {
    const income = plan.lots.reduce((sum, lot) => sum + lot.income.likely, 0);
    expect(plan.income.likely).toBeCloseTo(income, 6);
    expect(plan.worth).toBeCloseTo(income + plan.tankWeeks * plan.tankWeekValue.amount, 6);
    // 18 bags of 4.10 to 14.00: thomasi sold for 4.10 at Summer, so 18 × 4.10 × 70 % = 51.66.
    expect(plan.lots.find(({ species }) => species === 'thomasi')?.income.likely).toBeCloseTo(51.66, 2);
  });

  test('a mix of broods keeps both names, and the parents of both', () => {
    const wide = text.replace('18 lots; bags of 6; 3 bags per species', '60 lots; bags of 6');
    const { lots } = planOf(journalRoom('2026-11-22', wide), 'Winter');
    const mix = lots.find(({ name }) => name === 'Hazel-1 or Elder-1');
    expect(mix?.parents).toEqual(['Hazel', 'Elder']);
    expect(mix?.count).toBe(24);
  });

  test('half as much again for a day and a half: the journal’s hours, unless told otherwise', () => {
    const long = journalRoom('2026-11-22', `${text}2026-10-12 auction Winter: travel 36 h\n`);
    const water = (found: SalePlan): number => found.lots.find(({ stock }) => stock === 'Cedar-1')?.bags[0]?.water ?? 0;
    // Six of 0.87 g: 5.2 g ÷ 5 g/L = 1.05 L for a day, 1.57 L for 36 h, each up to a tenth.
    expect([water(plan), water(planOf(long, 'Winter'))]).toEqual([1.1, 1.6]);
    expect(planOf(long, 'Winter').rules.hours).toBe(36);
    expect(planOf(long, 'Winter', { hours: 24 }).rules.hours).toBe(24);
  });
});

describe('a small plan', () => {
  test('the lines stay apart: no bag of two stocks', () => {
    const plan = planOf(journalRoom('2026-05-01', SMALL), 'Spring');
    expect(plan.lots.map(({ stock, tank, count, line }) => ({ stock, tank, count, line }))).toEqual([
      { stock: 'Ash', tank: 'C1', count: 18, line: 'Moss river' },
      { stock: 'Oak', tank: 'C2', count: 6, line: 'Fen' },
    ]);
    expect(plan.leftOut.map(({ stock, free, why: reasons }) => [stock, free, reasons])).toEqual([
      ['Ash', 2, ['no full bag of 6']],
      ['Oak', 9, ['4 bags of krib at the most']],
    ]);
  });

  test('income: four bags of six at 6.00 and 70 %', () => {
    const { income } = planOf(journalRoom('2026-05-01', SMALL), 'Spring');
    expect(income.likely).toBeCloseTo(100.8, 6);
    expect(income.low).toBeNull();
  });

  test('without rules in the journal bags are of four to six, so that fewer stay', () => {
    const plan = salePlan(journalRoom('2026-05-01', SMALL), { auction: null, on: day('2026-05-01'), projected: false });
    expect(plan.lots.map(({ count }) => count)).toEqual([20, 15]);
    expect(plan.lots.flatMap(({ bags }) => bags.map(({ count }) => count)).every((bag) => bag >= 4 && bag <= 6)).toBe(
      true,
    );
    expect(plan.emptied).toEqual(['C1', 'C2']);
  });

  test('an auction’s minimum keeps a cheap bag at home', () => {
    const plan = planOf(journalRoom('2026-05-01', `${SMALL}2026-03-02 auction Spring: minimum 40.00\n`), 'Spring');
    expect(plan.lots).toEqual([]);
    expect(plan.leftOut[0]?.why).toEqual(['a bag of 6 would likely bring 36.00, under the minimum of 40.00']);
  });

  test('what it brought at an earlier auction is expected again, and the least of it is the low end', () => {
    const past = `2026-01-10 auction Snow: on 2026-01-20
2026-01-20 C1: sold 2 Ash at 3.00 each at Snow
2026-01-20 C1: sold 2 Ash at 5.00 each at Snow\n`;
    const [lot] = planOf(journalRoom('2026-05-01', SMALL + past), 'Spring').lots;
    expect(lot).toMatchObject({ price: 4, priceFrom: 'the middle of 2 sales of krib at auctions' });
    expect(lot?.income.low).toBeCloseTo((lot?.count ?? 0) * 3 * 0.7, 6);
  });

  test('boxes of the auction’s line bound it, unless told otherwise', () => {
    const room = journalRoom('2026-05-01', SMALL.replace('bags of 6;', 'bags of 6; 1 box of 20 L;'));
    const said = planOf(room, 'Spring');
    expect([said.rules.boxes, said.rules.boxLitres, said.boxes.length]).toEqual([1, 20, said.fish === 0 ? 0 : 1]);
    expect(said.fish).toBeLessThan(planOf(room, 'Spring', { boxes: 9 }).fish);
    expect(planOf(room, 'Spring', { boxes: 2, boxLitres: 50 }).rules).toMatchObject({ boxes: 2, boxLitres: 50 });
  });

  test('as many boxes as are needed are as many as would do', () => {
    const room = journalRoom('2026-05-01', SMALL);
    const free = planOf(room, 'Spring');
    expect(free.fish).toBeGreaterThan(0);
    const bound = planOf(room, 'Spring', { boxes: free.boxes.length });
    expect([bound.fish, bound.boxes]).toEqual([free.fish, free.boxes]);
  });

  test('boxes bound it; spiny fish travel alone and fill them sooner', () => {
    const spiny = SMALL.replace('cave spawner;', 'cave spawner; spiny;');
    const room = journalRoom('2026-05-01', spiny);
    const free = planOf(room, 'Spring');
    expect(free.lots.flatMap(({ bags }) => bags).every(({ alone, packs, count }) => alone && packs === count)).toBe(
      true,
    );
    const tight = planOf(room, 'Spring', { boxes: 1, boxLitres: 20 });
    expect(tight.fish).toBeLessThan(free.fish);
    expect(tight.boxes).toHaveLength(tight.fish === 0 ? 0 : 1);
    expect(tight.leftOut.map(({ why: reasons }) => reasons).flat()).toContain('no room in 1 box');
  });

  test('a pair goes as bonded only where it is offered and the journal says so', () => {
    const names = (more: string): (string | boolean)[][] =>
      planOf(journalRoom('2026-05-01', OPEN + more), 'Spring', { offer: ['rowan'] }).lots.map(
        ({ name, bondedPair }) => [name, bondedPair],
      );
    expect(names('').map(([name]) => name)).not.toContain('Rowan');
    expect(names('2026-02-01 A1: bonded\n')).toContainEqual(['Rowan', true]);
    const unsaid = planOf(journalRoom('2026-05-01', SMALL), 'Spring', { offer: ['Rowan'] });
    expect(unsaid.leftOut[0]).toMatchObject({
      stock: 'Rowan',
      why: ['the journal does not say that they are bonded'],
    });
    expect(planOf(journalRoom('2026-05-01', `${SMALL}2026-02-01 A1: bonded\n`), 'Spring').lots).toHaveLength(2);
  });

  test('fish in treatment, held or sick stay', () => {
    const more = '2026-05-01 C1: hold "velvet"\n2026-05-01 C2: treat "salt" 2 g/L, every 24 h, 3 doses, wait 14 days\n';
    const plan = planOf(journalRoom('2026-05-02', SMALL + more), 'Spring');
    expect(plan.lots).toEqual([]);
    expect(plan.leftOut.map(({ tank, why: [first = ''] }) => [tank, first.split(':')[0]]).toSorted()).toEqual([
      ['C1', 'on hold'],
      ['C2', 'treated'],
    ]);
  });

  test('wanted fish that the plan would take are told of', () => {
    const wanted = (count: number): readonly string[] =>
      planOf(journalRoom('2026-05-01', `${SMALL}2026-04-01 room: wanted ${count} krib by 2026-06-01\n`), 'Spring')
        .warnings;
    expect(wanted(11)).toEqual([]);
    expect(wanted(12)).toEqual([
      '12 krib wanted, and the plan leaves 11 to promise: reserve them first if they are to go there',
    ]);
  });

  test('bags of none are no rule; no lots are a rule', () => {
    const none = planOf(journalRoom('2026-05-01', SMALL.replace('bags of 6', 'bags of 0')), 'Spring');
    expect(none.rules).toMatchObject({ bagOf: { low: 4, high: 6 }, bagOfSaid: false });
    expect(none.fish).toBeGreaterThan(0);
    const closed = planOf(journalRoom('2026-05-01', SMALL.replace('20 lots', '0 lots')), 'Spring');
    expect(closed.lots).toEqual([]);
    expect(closed.leftOut.map(({ why: reasons }) => reasons)).toEqual([
      ['the auction takes no lots'],
      ['the auction takes no lots'],
    ]);
  });

  test('a kept-back fish is in no bag', () => {
    const plan = planOf(
      journalRoom('2026-05-01', `${SMALL}2026-04-01 C1: kept back 15 Ash; reserved 2 Ash\n`),
      'Spring',
    );
    expect(plan.lots.map(({ stock }) => stock)).toEqual(['Oak']);
    expect(plan.leftOut[0]).toMatchObject({ stock: 'Ash', free: 3, why: ['3 can go, no full bag of 6'] });
  });
});

interface Stock {
  readonly alive: number;
  readonly kept: number;
  readonly species: number;
}

const stock: fc.Arbitrary<Stock> = fc.record({
  alive: fc.integer({ min: 3, max: 26 }),
  kept: fc.integer({ min: 0, max: 8 }),
  species: fc.integer({ min: 0, max: 2 }),
});

const chance = fc.record({
  stocks: fc.array(stock, { minLength: 1, maxLength: 4 }),
  prices: fc.array(fc.integer({ min: 2, max: 20 }), { minLength: 3, maxLength: 3 }),
  lots: fc.integer({ min: 1, max: 6 }),
  perSpecies: fc.integer({ min: 1, max: 3 }),
  bagOf: fc.integer({ min: 3, max: 6 }),
  share: fc.constantFrom(50, 70, 100),
  minimum: fc.integer({ min: 0, max: 40 }),
  tankWeek: fc.integer({ min: 0, max: 5 }),
});
type Chance = typeof chance extends fc.Arbitrary<infer T> ? T : never;

function roomOf({ stocks, prices, lots, perSpecies, bagOf, share, minimum }: Chance): Room {
  const lines = [
    '2026-01-01 room: units metric; currency EUR',
    ...prices.map((price, one) => `2026-01-01 species kind${one}: cave spawner; sale at 16 weeks; price ${price}.00`),
    ...stocks.flatMap(({ alive, kept, species }, one) => [
      `2026-01-01 tank C${one}: 54 L; alone`,
      `2026-01-01 group Ash${one}: kind${species}; ${alive}; in C${one}; age 40 weeks; line "L${one}"`,
      ...(kept > 0 ? [`2026-01-02 C${one}: kept back ${Math.min(kept, alive)} Ash${one}`] : []),
    ]),
    `2026-01-02 auction May: on 2026-05-01; ${lots} lots; bags of ${bagOf}; ${perSpecies} bags per species; seller gets ${share} %; minimum ${minimum}.00`,
  ];
  return journalRoom('2026-04-20', `${lines.join('\n')}\n`);
}

/** Every plan there is, told from the numbers alone: no rule of ours is called. */
function worths(one: Chance): readonly number[] {
  const { stocks, prices, lots, perSpecies, bagOf, share, minimum, tankWeek } = one;
  const bagWorth = ({ species, alive }: Stock): number =>
    (prices[species] ?? 0) * bagOf * (share / 100) + (bagOf / alive) * 8 * tankWeek;
  const plans: number[] = [];
  const go = (at: number, bags: number, perKind: readonly number[], worth: number): void => {
    const next = stocks[at];
    if (next === undefined) {
      plans.push(worth);
      return;
    }
    const cheap = (prices[next.species] ?? 0) * bagOf < minimum;
    const most = cheap ? 0 : Math.floor(Math.max(0, next.alive - next.kept) / bagOf);
    for (let many = 0; many <= most; many += 1) {
      const kinds = perKind.map((count, kind) => (kind === next.species ? count + many : count));
      if (bags + many <= lots && kinds.every((count) => count <= perSpecies))
        go(at + 1, bags + many, kinds, worth + many * bagWorth(next));
    }
  };
  go(0, 0, [0, 0, 0], 0);
  return plans;
}

describe('plans of rooms made by chance', () => {
  test('are worth what the best of all plans is worth, and break no rule', () => {
    fc.assert(
      fc.property(chance, (one) => {
        const plan = planOf(roomOf(one), 'May', { tankWeek: one.tankWeek });
        expect(plan.worth).toBeCloseTo(Math.max(...worths(one)), 2);
        const bags = plan.lots.flatMap((lot) => lot.bags.map((bag) => ({ bag, lot })));
        expect(bags.length).toBeLessThanOrEqual(one.lots);
        for (const kind of ['kind0', 'kind1', 'kind2'])
          expect(bags.filter(({ lot }) => lot.species === kind).length).toBeLessThanOrEqual(one.perSpecies);
        for (const { bag, lot } of bags) {
          expect(bag.count).toBe(one.bagOf);
          expect(bag.count * (lot.price ?? 0)).toBeGreaterThanOrEqual(one.minimum);
        }
        for (const lot of plan.lots) {
          const { alive, kept } = one.stocks[Number(lot.stock.slice(3))] ?? { alive: 0, kept: 0 };
          expect(lot.count).toBeLessThanOrEqual(alive - kept);
        }
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});

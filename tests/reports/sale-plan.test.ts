/** How a plan reads, and its JSON. */
import { describe, expect, test } from 'vitest';
import { widthOf } from '../../src/reports/width.ts';
import { salePlan, type PlanOptions } from '../../src/questions/plan/make.ts';
import { plainLook } from '../../src/reports/look.ts';
import { planJson } from '../../src/reports/sale-plan-data.ts';
import { planText } from '../../src/reports/sale-plan.ts';
import type { SalePlan } from '../../src/questions/plan/plan.ts';
import { day } from '../support/events.ts';
import { journalRoom } from '../support/journal.ts';

const TEXT = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank C1: 54 L; alone
2026-01-01 tank C2: 54 L; alone
2026-01-01 tank A1: 100 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00; adult 80 mm
2026-01-01 group Ash: krib; 20; in C1; age 20 weeks; line "Moss river"
2026-01-01 group Oak: krib; 4; in C2; age 20 weeks; line "Fen"
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-02 A1: bonded
2026-03-01 C1: Ash size 30-34 mm
2026-03-20 auction Spring: on 2026-05-09; 20 lots; bags of 6; seller gets 70 %; minimum 10.00
2026-03-21 C1: reserved 2 Ash until 2026-06-01 to "Iris"
`;

function plan(more: Partial<PlanOptions> = {}): SalePlan {
  const room = journalRoom('2026-05-01', TEXT);
  const auction = room.sale.auctions.get('Spring') ?? null;
  return salePlan(room, { auction, on: day('2026-05-09'), projected: false, ...more });
}

describe('a plan', () => {
  const look = plainLook(day('2026-05-01'));

  test('reads from what goes to what stays and what it is worth', () => {
    const lines = planText(plan(), look).split('\n');
    expect(lines[0]).toBe('Fri 1 May 2026: 3 bags, 18 fish for Spring on 9 May; likely 75.60 EUR after');
    expect(lines[1]).toBe('  the split, 21.00 EUR at the least');
    const text = lines.join('\n');
    expect(text).toMatch(
      /bag +goes +where +fish +mm +likely EUR +each bag\n1–3 +Ash, krib +C1 +3 × 6 +\d+–\d+ +75\.60 +\d/,
    );
    expect(text).toContain('1 box of 40 L (as many as are needed; --boxes 2 for no more)\nbox 1: bags 1–3\n');
    expect(text).toMatch(/stays +where +free +because\nOak, krib +C2 +4 +4 can go, no full bag of 6\n/);
    expect(text).toMatch(/made as large as can be: likely income 75\.60 EUR; \d+\.\d tank-weeks go free\s+besides/);
    expect(text).toContain('before bagging: no food for 2 days\n');
    expect(text).toContain('take care: water and air for 24 h from bagging to unpacking');
  });

  test('a bonded pair is called so, and each of the two has a bag', () => {
    const text = planText(plan({ offer: ['Rowan'] }), look);
    expect(text).toMatch(/bonded pair Rowan, +A1 +2 +60–80 +8\.40 +each fish alone: 2\.2\n +krib +L water, 4\.4 L air/);
    expect(text).toMatch(/a bonded pair goes as two: ask whether it may, where bags hold\s+6/);
  });

  test('nothing that can go: one line, and why', () => {
    const text = planText(plan({ boxes: 0 }), look);
    expect(text).toMatch(/^Fri 1 May 2026: nothing can go for Spring on 9 May\n/);
    expect(text).toMatch(/Ash, krib +C1 +18 +no room in 0 boxes/);
  });

  test('for an auction that is over: what could go today by its rules', () => {
    const room = journalRoom('2026-05-20', TEXT);
    const auction = room.sale.auctions.get('Spring') ?? null;
    const late = salePlan(room, { auction, on: day('2026-05-09'), projected: false });
    const text = planText(late, plainLook(day('2026-05-20')));
    expect(text).toMatch(/^Wed 20 May 2026: Spring was on 9 May; by its rules 3 bags, 18 fish could go\s+today;/);
  });

  test('oxygen is named where it is told, and no line is wider than the terminal', () => {
    const text = planText(plan({ oxygen: true, hours: 36 }), look);
    expect(text).toContain('water and oxygen for 36 h');
    expect(text).not.toContain('L air');
    expect(Math.max(...text.split('\n').map((line) => widthOf(line)))).toBeLessThanOrEqual(80);
  });

  test('JSON has the documented keys, and no buyer', () => {
    const json = JSON.stringify(planJson(plan()));
    expect(json).not.toContain('Iris');
    expect(JSON.parse(json)).toMatchObject({
      plan: {
        id: 'spring-plan',
        auction: 'Spring',
        on: '2026-05-09',
        currency: 'EUR',
        rules: { lots: 20, bagOf: 6, sellerShare: 0.7, minimum: 10, hours: 24, oxygen: false, boxes: null },
        lots: [
          {
            id: 'spring-ash-c1-plan',
            stock: 'Ash',
            tank: 'C1',
            count: 18,
            line: 'Moss river',
            bags: [{ number: 1, count: 6, packs: 1 }, { number: 2 }, { number: 3 }],
            income: { low: 21, likely: 75.6 },
          },
        ],
        boxes: [{ number: 1, packs: [{ bag: 1, packs: 1 }, { bag: 2 }, { bag: 3 }] }],
        leftOut: [{ id: 'spring-oak-c2-stays', free: 4, why: ['4 can go, no full bag of 6'] }],
        income: { low: 21, likely: 75.6 },
        fish: 18,
      },
    });
  });
});

/** The largest bag is told as it is for these boxes: ten litres, or what goes well into a small one. */
import { expect, it } from 'vitest';
import { salePlan } from '../../../src/questions/plan/make.ts';
import type { SalePlan } from '../../../src/questions/plan/plan.ts';
import { journalRoom } from '../../support/journal.ts';

/** 40 mm by Wednesday: 0.02 × 4.0^3.03 = 1.33 g, of which 5 g go into a litre of water for a day. */
const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank C1: 54 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm; price 6.00; adult 100 mm
2026-01-01 group Ash: krib; 12; in C1; age 40 weeks; line "Moss river"
2026-01-01 auction Spring: on 2026-05-09; bags of 6; seller gets 70 %
`;

function plan(sizes: string, boxLitres: number): SalePlan {
  const room = journalRoom('2026-05-06', `${ROOM}2026-05-06 C1: average ${sizes}\n`);
  const auction = room.sale.auctions.get('Spring');
  if (!auction?.on) throw new Error('no Spring');
  return salePlan(room, { auction, on: auction.on, projected: false, boxes: 3, boxLitres });
}

const bagWords = (made: SalePlan): string => made.lots[0]?.because.steps.find((one) => one.startsWith('bag of')) ?? '';

it('a bag that a box of 40 L takes is bounded by the bag alone', () => {
  expect(bagWords(plan('40 mm', 40))).toMatch(/in 1 pack of 6;.*no bag above 10 L$/u);
});

it('a small box parts it, and says why', () => {
  const made = plan('40 mm', 16);
  expect(bagWords(made)).toMatch(/in 2 packs of 3;.*no bag above 4 L, the most that goes well into a box of 16 L$/u);
  for (const bag of made.lots.flatMap(({ bags }) => bags)) expect(bag.water + bag.air).toBeLessThanOrEqual(4);
});

it('so does a fish that no bag in such a box can carry', () => {
  const why = (boxLitres: number): string => plan('80 mm', boxLitres).leftOut[0]?.why.join() ?? 'goes';
  expect(why(16)).toMatch(/^one of \d+ g is too heavy for a bag of 4 L, the most that goes well into a box of 16 L$/u);
  expect(why(40)).not.toContain('too heavy');
});

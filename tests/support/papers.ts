/** Papers for an auction made by hand: as many lots as a test wants, with any text in every place that takes one. */
import { exactly } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { PaperLot, Papers } from '../../src/questions/papers.ts';
import type { PlanBag, PlanLot, SalePlan } from '../../src/questions/plan/plan.ts';
import { day } from './events.ts';

const BECAUSE = { rule: '', source: '', steps: [], lines: [] };
const NOTHING = { low: null, likely: 0 };

/** A bag for each number, with 100 fish and so many more, for a minimum of so much; `text` words every text of that lot. */
export function papersFor(numbers: readonly number[], text: (number: number, what: string) => string): Papers {
  const lots = numbers.map((number) => paperLot(number, (what) => text(number, what)));
  const [first = 0] = numbers;
  const plan: SalePlan = {
    id: 'autumn-plan',
    auction: text(first, 'auction'),
    on: day('2026-09-05'),
    past: false,
    currency: 'EUR',
    rules: {
      lots: null,
      bagsPerSpecies: null,
      bagOf: exactly(6),
      bagOfSaid: true,
      sellerShare: exactly(0.7),
      minimum: 5,
      hours: 24,
      oxygen: false,
      boxes: null,
      boxLitres: 40,
    },
    lots: lots.map(({ lot }) => lot),
    boxes: [{ number: 1, litres: 40, packs: numbers.map((bag) => ({ bag, packs: 1 })) }],
    leftOut: [],
    objective: '',
    income: NOTHING,
    tankWeeks: 0,
    tankWeekValue: { amount: 0, from: '' },
    emptied: [],
    worth: 0,
    fish: numbers.reduce((sum, number) => sum + 100 + number, 0),
    warnings: [text(first, 'warning')],
    because: BECAUSE,
    lines: [],
  };
  return {
    plan,
    on: day('2026-09-01'),
    lots,
    handOver: [{ says: text(first, 'wanted') }],
    days: [{ day: day('2026-09-05'), what: text(first, 'load'), done: false }],
  };
}

function paperLot(number: number, text: (what: string) => string): PaperLot {
  const bag: PlanBag = { number, count: 100 + number, packs: 1, alone: false, water: 0.7, air: 1.4, boxes: [1] };
  const lot: PlanLot = {
    id: `lot-${String(number)}`,
    stock: text('stock'),
    name: text('name'),
    species: text('trade'),
    latin: text('latin'),
    tank: text('tank'),
    count: 100 + number,
    size: measure('mm', 28, 30, 32),
    sizeRead: true,
    bondedPair: false,
    line: null,
    parents: [],
    price: 6,
    priceFrom: '',
    minimum: number,
    bags: [bag],
    income: NOTHING,
    tankWeeks: 0,
    fastDays: 2,
    cautions: [text('caution')],
    because: BECAUSE,
    lines: [],
  };
  return {
    lot,
    bags: [bag],
    size: text('size'),
    origin: text('origin'),
    laid: text('laid'),
    parents: text('parents'),
    water: { says: text('water'), read: text('read') },
  };
}

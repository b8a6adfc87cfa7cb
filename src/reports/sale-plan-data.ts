/** A plan for an auction, as JSON. No buyer's name is in it. */
import type { PlanLeft, PlanLot, SalePlan } from '../questions/plan/plan.ts';
import { countJson, dayJson, linesJson } from './json.ts';

export function planJson(plan: SalePlan): object {
  const { rules, tankWeekValue } = plan;
  return {
    plan: {
      id: plan.id,
      auction: plan.auction,
      on: dayJson(plan.on),
      past: plan.past,
      currency: plan.currency,
      rules: { ...rules, bagOf: countJson(rules.bagOf), sellerShare: countJson(rules.sellerShare) },
      lots: plan.lots.map((lot) => lotJson(lot)),
      boxes: plan.boxes.map(({ number, litres, packs }) => ({ number, litres: tenths(litres), packs })),
      leftOut: plan.leftOut.map((left) => leftJson(left)),
      objective: plan.objective,
      income: incomeJson(plan.income),
      tankWeeks: cents(plan.tankWeeks),
      tankWeekValue: { amount: cents(tankWeekValue.amount), from: tankWeekValue.from },
      worth: cents(plan.worth),
      emptied: plan.emptied,
      fish: plan.fish,
      warnings: plan.warnings,
      lines: linesJson(plan.lines),
    },
  };
}

function lotJson(lot: PlanLot): object {
  return {
    id: lot.id,
    stock: lot.stock,
    name: lot.name,
    species: lot.species,
    latin: lot.latin,
    tank: lot.tank,
    count: lot.count,
    size: countJson(lot.size),
    sizeRead: lot.sizeRead,
    bondedPair: lot.bondedPair,
    line: lot.line,
    parents: lot.parents,
    price: lot.price,
    priceFrom: lot.priceFrom,
    minimum: lot.minimum,
    bags: lot.bags.map((bag) => ({ ...bag, water: tenths(bag.water), air: tenths(bag.air) })),
    income: incomeJson(lot.income),
    tankWeeks: cents(lot.tankWeeks),
    fastDays: lot.fastDays,
    cautions: lot.cautions,
    lines: linesJson(lot.lines),
  };
}

function leftJson({ lines, ...plain }: PlanLeft): object {
  return { ...plain, lines: linesJson(lines) };
}

function incomeJson({ low, likely }: SalePlan['income']): object {
  return { low: low === null ? null : cents(low), likely: cents(likely) };
}

function cents(amount: number): number {
  return Math.round(amount * 100) / 100;
}

function tenths(litres: number): number {
  return Math.round(litres * 10) / 10;
}

/** Numbers the bags of a plan and puts their packs into boxes. */
import { intoBoxes } from '../../science/boxes.ts';
import type { PlanBag, PlanBox } from './plan.ts';
import type { Taken } from './lots.ts';
import type { Offer } from './offers.ts';

interface Chosen {
  readonly offer: Offer;
  readonly bags: number;
}

export function boxed(
  chosen: readonly Chosen[],
  boxLitres: number,
): { readonly taken: readonly Taken[]; readonly boxes: readonly PlanBox[] } {
  const bags = chosen.flatMap(({ offer, bags: many }) => Array.from({ length: many }, () => offer));
  const packs = bags.flatMap(({ packing }, index) =>
    Array.from({ length: packing.packs }, () => ({ bag: index + 1, litres: packing.water + packing.air })),
  );
  const into = intoBoxes(
    packs.map(({ litres }) => litres),
    boxLitres,
  );
  const placed = packs.map((pack, index) => ({ ...pack, box: (into[index] ?? 0) + 1 }));
  const numbered = bags.map((offer, index): { offer: Offer; bag: PlanBag } => ({
    offer,
    bag: {
      number: index + 1,
      count: offer.bag,
      packs: offer.packing.packs,
      alone: offer.of.alone !== null,
      water: offer.packing.water,
      air: offer.packing.air,
      boxes: [...new Set(placed.filter(({ bag }) => bag === index + 1).map(({ box }) => box))],
    },
  }));
  return {
    taken: chosen.map(({ offer }) => ({
      offer,
      bags: numbered.filter((one) => one.offer === offer).map(({ bag }) => bag),
    })),
    boxes: [...new Set(placed.map(({ box }) => box))].toSorted((a, b) => a - b).map((box) => boxOf(box, placed)),
  };
}

function boxOf(
  number: number,
  placed: readonly { readonly bag: number; readonly litres: number; readonly box: number }[],
): PlanBox {
  const here = placed.filter(({ box }) => box === number);
  const bags = [...new Set(here.map(({ bag }) => bag))].toSorted((a, b) => a - b);
  return {
    number,
    litres: here.reduce((sum, { litres }) => sum + litres, 0),
    packs: bags.map((bag) => ({ bag, packs: here.filter((one) => one.bag === bag).length })),
  };
}

/** Why the coming auctions' plans are as they are: the plan, each of its lots, and what stays at home. */
import type { Room } from '../../state/draft.ts';
import type { WhyRow } from '../whyrow.ts';
import type { PlanLeft } from './plan.ts';
import { usualPlan } from './usual.ts';

export function planWhy(room: Room): readonly WhyRow[] {
  return [...room.sale.auctions.values()].flatMap((auction) => {
    if (auction.on === null || auction.on < room.on) return [];
    const plan = usualPlan(room, { ...auction, on: auction.on });
    return [
      { id: plan.id, title: `${auction.name}: what to take`, because: plan.because, lines: plan.lines },
      ...plan.lots.map(({ id, name, tank, bags, because, lines }) => ({
        id,
        title: `${name} in ${tank}: ${String(bags.length)} to ${auction.name}`,
        because,
        lines,
      })),
      ...plan.leftOut.map((left) => staysRow(left, auction.name)),
    ];
  });
}

function staysRow({ id, name, tank, free, why, lines }: PlanLeft, auction: string): WhyRow {
  return {
    id,
    title: `${name} in ${tank}: stays at home from ${auction}`,
    because: {
      rule: 'fish stay where something is in their way, or where other bags are worth more within the rules of the auction',
      source: 'the journal',
      steps: [...(free > 0 ? [`${String(free)} could be promised`] : []), ...why],
      lines,
    },
    lines,
  };
}

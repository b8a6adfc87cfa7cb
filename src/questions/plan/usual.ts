/** The plan of a coming auction as it is without any option: several answers ask for it, and it takes a while to make. */
import type { Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { Room } from '../../state/draft.ts';
import type { Auction } from '../../state/sale.ts';
import { oncePerRoom } from '../holds/once.ts';
import { salePlan } from './make.ts';
import type { SalePlan } from './plan.ts';

const made = oncePerRoom(() => new Map<string, SalePlan>());

export function usualPlan(room: Room, auction: DeepReadonly<Auction> & { readonly on: Day }): SalePlan {
  const plans = made(room);
  const plan = plans.get(auction.name) ?? salePlan(room, { auction, on: auction.on, projected: false });
  plans.set(auction.name, plan);
  return plan;
}

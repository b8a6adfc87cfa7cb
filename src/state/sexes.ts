/** The sexes of a group whose fish are not told apart one by one, as lines counted them: `bought 1 male`, `2 males, 4 females`. */
import { isSure } from '../core/interval.ts';
import type { Interval } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Heads } from '../journal/event.ts';
import type { Group } from './stock.ts';

export interface Sexes {
  males: number;
  females: number;
}

/** What a count tells of all the fish that it counts; null where it leaves the sex of any open. */
export function sexesOf({ total, males, females }: Heads): Sexes | null {
  const number = (count: Interval | null): number => (count !== null && isSure(count) ? count.low : 0);
  const told = { males: number(males), females: number(females) };
  return isSure(total) && total.low > 0 && told.males + told.females === total.low ? told : null;
}

/** Fish joined a group of so many: whose sexes are known only where those of both are. */
export function joinSexes(group: Group, before: Interval, more: Sexes | null): void {
  const { sexes } = group;
  if (before.high === 0) group.sexes = more;
  else if (sexes === null || more === null) group.sexes = null;
  else group.sexes = { males: sexes.males + more.males, females: sexes.females + more.females };
}

/** How many of each sex are left. Of both, nobody knows which they were that went; of one sex are all that stay. */
export function sexesLeft({ sexes, total }: DeepReadonly<Group>): Sexes | null {
  if (sexes === null) return null;
  if (sexes.females === 0) return { males: total.low, females: 0 };
  if (sexes.males === 0) return { males: 0, females: total.low };
  return isSure(total) && total.low === sexes.males + sexes.females ? { ...sexes } : null;
}

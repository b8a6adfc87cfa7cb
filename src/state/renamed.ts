/** Fish that were called by the wrong name: a line that tells another one corrects it for their young as well. */
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { livingBroods } from './living.ts';
import type { Group } from './stock.ts';

/** A line that tells nothing but what kind they are corrects the name that they had. */
export function correctsName({ species, members, heads, tank, from, parentsFrom }: EventOf<'group declared'>): boolean {
  const others = members.length > 0 || heads !== null || tank !== null || from !== null || parentsFrom.length > 0;
  return species !== null && !others;
}

/** Their young bore the wrong name with them, and so did a mix of those young. `called`: what the group was called before. */
export function correctYoung(draft: Draft, group: Group, called: string | null): void {
  const { broods } = draft.stock;
  const named = (name: string): string | null => (broods.get(name) ?? draft.stock.groups.get(name))?.species ?? null;
  for (const name of group.broods) {
    const brood = broods.get(name);
    if (brood?.species === called) brood.species = group.species;
  }
  for (const mix of livingBroods(draft)) {
    if (!mix.oneOf.some((name) => group.broods.includes(name))) continue;
    const [kind = null, ...others] = new Set(mix.oneOf.map(named));
    mix.species = others.length === 0 ? kind : null;
  }
}

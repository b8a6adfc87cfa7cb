/** Names of broods: a group and a running number. A name written anywhere is never given to another brood. */
import type { Event } from '../journal/event.ts';

/** Every brood name that a spawning or a stage writes, on whatever day: a name is text, not knowledge. */
export function writtenBroodNames(events: readonly Event[]): Set<string> {
  const names = new Set<string>();
  for (const event of events) {
    if ((event.kind === 'spawned' || event.kind === 'stage seen') && event.brood !== null) names.add(event.brood);
  }
  return names;
}

/** Brood names that are used, and those written anywhere. */
export interface Names {
  readonly broods: ReadonlyMap<string, unknown>;
  readonly takenNames: ReadonlySet<string>;
}

/** The next name for a brood of that group: the lowest number that is neither used nor written anywhere. */
export function nextBroodName(stock: Names, group: string): string {
  for (let number = 1; ; number += 1) {
    const name = `${group}-${String(number)}`;
    if (!stock.takenNames.has(name) && !stock.broods.has(name)) return name;
  }
}

/** Who bought, was given, reserved or wants fish: people's names, which leave the room only where the keeper says so. */
import type { Event } from '../journal/event.ts';

/** Every name that a line gives a buyer, longest first, each once; `before` are those of lines before these. */
export function buyersOf(events: readonly Event[], before: readonly string[] = []): readonly string[] {
  const names = new Set(before);
  for (const event of events) {
    if (event.kind !== 'sold' && event.kind !== 'gave away' && event.kind !== 'reserved' && event.kind !== 'wanted')
      continue;
    if (event.to !== null && event.to !== '') names.add(event.to);
  }
  return [...names].sort((a, b) => b.length - a.length);
}

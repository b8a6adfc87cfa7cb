/** The day in the zone of a room, kept while it lasts: looking it up takes longer than most of an answer. */
import process from 'node:process';
import { isDay } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import type { Shelf } from '../../files/cache/shelf.ts';
import { bringDay, dayBounds, dayHere, dayIn } from '../clock.ts';

/** The day that it is now, in a zone or where this machine is; `shelf` is where it is kept, null for nowhere. */
export async function dayNow(zone: string | null, now: Date, shelf: Shelf | null): Promise<Day> {
  if (zone === null) return dayHere(now);
  const key = `day in ${zone} ${process.version}\n`;
  const kept = shelf?.get(key) ?? null;
  const before = kept === null ? null : dayFrom(kept);
  if (before !== null) bringDay(zone, before);
  const day = await dayIn(zone, now);
  if (shelf !== null && day !== null && before?.day !== day) {
    const bounds = await dayBounds(zone, day);
    if (bounds !== null) shelf.put(key, JSON.stringify([day, bounds.from, bounds.until]));
  }
  return day ?? dayHere(now);
}

function dayFrom(text: string): { day: Day; from: number; until: number } | null {
  const [day, from, until]: readonly unknown[] = listOf(text);
  const all = typeof day === 'number' && typeof from === 'number' && typeof until === 'number';
  return all && isDay(day) ? { day, from, until } : null;
}

function listOf(text: string): readonly unknown[] {
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) ? value : [];
  } catch {
    return [];
  }
}

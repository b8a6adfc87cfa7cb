/** Results of formulas, brought back before an answer and taken along after it where there are more of them. */
import v8 from 'node:v8';
import type { Chest } from '../../files/cache/chest.ts';
import { bringBackWorked, hasWorked, takeOutWorked } from '../../science/worked.ts';

/** They hold for every journal: the inputs are all that they rest on. */
const KEY = 'formulas';

export function bringBack(chest: Chest): void {
  const kept = chest.get('worked', KEY);
  if (kept !== null) bringBackWorked(v8.deserialize(kept));
}

export function takeAlong(chest: Chest): void {
  if (hasWorked()) chest.put('worked', KEY, v8.serialize(takeOutWorked()));
}

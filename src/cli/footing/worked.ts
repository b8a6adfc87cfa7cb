/** Results, brought back before an answer and taken along after it: formulas, shapes of lines, how old broods grew. */
import v8 from 'node:v8';
import { bringBackShapes, takeOutShapes } from '../../../grammar/parse.ts';
import type { Day } from '../../core/day.ts';
import type { Chest } from '../../files/cache/chest.ts';
import { bringBackPaces, takeOutPaces } from '../../questions/growing/taught.ts';
import type { OverPaces } from '../../questions/growing/taught.ts';
import { bringBackWorked, hasWorked, takeOutWorked } from '../../science/worked.ts';
import type { Room } from '../../state/draft.ts';

/** They hold for every journal: the inputs are all that formulas rest on, and the tokens all that shapes do. */
const KEY = 'formulas';
const SHAPES = 'shapes';

/** A footing that was laid: what names it, its day, and the last day of all that had been read then. */
export interface Laid {
  readonly key: string;
  readonly day: Day;
  readonly through: Day;
}

/** The room that was folded on from it. */
let folded: { readonly laid: Laid; readonly room: Room } | null = null;

/** Before any answer. */
export function bringBack(chest: Chest): void {
  const kept = chest.get('worked', KEY);
  if (kept !== null) bringBackWorked(v8.deserialize(kept));
  const shapes = chest.get('worked', SHAPES);
  if (shapes !== null) bringBackShapes(v8.deserialize(shapes), true);
}

/** Once a footing is laid: what the answer works out of this room is taken along. */
export function takeLater(laid: Laid, room: Room): void {
  // A room that holds not all that was read may be told more of its old broods by lines of before.
  if (room.on >= laid.through) folded = { laid, room };
}

/** For a room that stands on a footing. */
export function bringBackRoom(chest: Chest, { key, through }: Laid, room: Room): void {
  const kept = room.on < through ? null : chest.get('worked', key);
  const paces: unknown = kept === null ? null : v8.deserialize(kept);
  if (isPaces(paces)) bringBackPaces(room, paces);
}

/** After the answer was told. */
export function takeAlong(chest: Chest): void {
  if (hasWorked()) chest.put('worked', KEY, v8.serialize(takeOutWorked()));
  const shapes = takeOutShapes();
  if (shapes !== null) chest.put('worked', SHAPES, v8.serialize(shapes));
  const paces = folded === null ? [] : takeOutPaces(folded.room, folded.laid.day);
  if (folded !== null && paces.length > 0) chest.put('worked', folded.laid.key, v8.serialize(paces));
  folded = null;
}

/** The chest has proved the bytes: only their outline is looked at. */
function isPaces(value: unknown): value is readonly OverPaces[] {
  return Array.isArray(value);
}

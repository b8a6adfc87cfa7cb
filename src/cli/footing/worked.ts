/** Results, brought back before an answer and taken along after it: formulas, shapes of lines, how old broods grew. */
import v8 from 'node:v8';
import { bringBackShapes, takeOutShapes } from '../../../grammar/parse.ts';
import type { Day } from '../../core/day.ts';
import type { Chest } from '../../files/cache/chest.ts';
import { quietly } from '../../files/trouble.ts';
import { LateMap } from '../../files/cache/image/latemap.ts';
import { bringBackPaces, takeOutPaces } from '../../questions/growing/taught.ts';
import type { OverPaces } from '../../questions/growing/taught.ts';
import { bringBackWorked, hasWorked, takeOutWorked } from '../../science/worked.ts';
import type { Room } from '../../state/draft.ts';

/** What holds for every journal: the inputs are all that formulas rest on, and the tokens all that shapes do. */
const ALL = 'all journals';

/** A footing that was laid: whose, over which text, its day, and the last day of all that had been read then. */
export interface Laid {
  readonly path: string;
  /** Hash of the text that it stands on. */
  readonly hash: string;
  readonly day: Day;
  readonly through: Day;
}

/** The room that was folded on from it, and how many lines told of each brood when it was laid. */
let folded: { readonly laid: Laid; readonly room: Room; readonly lines: ReadonlyMap<string, number> } | null = null;

/** What is left to do until the answer was told. */
let left: (() => void) | null = null;

/** Does something once the answer was told; only the last that was asked for. */
export function afterwards(run: () => void): void {
  left = run;
}

/** Before any answer. */
export function bringBack(chest: Chest): void {
  const kept = chest.get('formulas', ALL);
  if (kept !== null) bringBackWorked(v8.deserialize(kept));
  const shapes = chest.get('shapes', ALL);
  if (shapes !== null) bringBackShapes(v8.deserialize(shapes), true);
}

/** Once a footing is laid: what the answer works out of this room is taken along. */
export function takeLater(laid: Laid, room: Room, lines: ReadonlyMap<string, number>): void {
  // A room that holds not all that was read may be told more of its old broods by lines of before.
  if (room.on >= laid.through) folded = { laid, room, lines };
}

/** For a room that stands on a footing. */
export function bringBackRoom(chest: Chest, { path, hash, through }: Laid, room: Room): void {
  const kept = room.on < through ? null : chest.get('paces', path);
  const taught: unknown = kept === null ? null : v8.deserialize(kept);
  if (!isTaught(taught) || taught.hash !== hash) return;
  const { broods } = room.stock;
  bringBackPaces(room, taught.paces, (brood) => broods instanceof LateMap && !broods.isOpen(brood));
}

/** After the answer was told. */
export function takeAlong(chest: Chest): void {
  const run = left;
  left = null;
  if (run !== null) quietly(run);
  if (hasWorked()) chest.put('formulas', ALL, v8.serialize(takeOutWorked()));
  const shapes = takeOutShapes();
  if (shapes !== null) chest.put('shapes', ALL, v8.serialize(shapes));
  const paces = folded === null ? [] : takeOutPaces(folded.room, folded.laid.day, folded.lines);
  if (folded !== null && paces.length > 0) {
    const taught: Taught = { hash: folded.laid.hash, paces };
    chest.put('paces', folded.laid.path, v8.serialize(taught));
  }
  folded = null;
}

interface Taught {
  readonly hash: string;
  readonly paces: readonly OverPaces[];
}

/** The chest has proved the bytes: only their outline is looked at. */
function isTaught(value: unknown): value is Taught {
  return typeof value === 'object' && value !== null && 'hash' in value && 'paces' in value;
}

/**
 * Finds again what the same run said before, where nothing that it rests on has changed. Part of the
 * starter, so that a daily question that was asked already loads no more than this.
 */
import { stillStanding } from '../../files/cache/rests.ts';
import type { Shelf } from '../../files/cache/shelf.ts';
import { theDisk } from '../../files/disk.ts';
import { rememberedFrom, sameSurroundings } from './remembered.ts';
import type { Remembered } from './remembered.ts';

export interface World {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly now: () => Date;
}

/** The run kept under a key, if it would say the same now; null where it has to be run. */
export async function recall(shelf: Shelf, key: string, { env, now }: World): Promise<Remembered | null> {
  const kept = shelf.get(key);
  const remembered = kept === null ? null : rememberedFrom(kept);
  if (remembered === null || !sameSurroundings(remembered, { env, now: now() })) return null;
  const rests = await stillStanding(theDisk, remembered.rests, () => now().getTime(), hashed);
  if (rests === null) return null;
  if (rests !== remembered.rests) shelf.put(key, JSON.stringify({ ...remembered, rests }));
  return remembered;
}

async function hashed(path: string): Promise<string | null> {
  const { hashFile } = await import('../../files/cache/hash.ts');
  return hashFile(theDisk, path);
}

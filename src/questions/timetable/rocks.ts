/** Whether the rocks of the tanks that are caught from are out, and back, as the lines of those tanks say. */
import { addDays } from '../../core/day.ts';
import { lineOf, type LineRef } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { DatedAuction, Going } from '../timetable.ts';

/** Rocks that came out so many days before an auction came out for its catch (ours); those that are out still are out for it too. */
const FOR_CATCH_DAYS = 7;

/** The line with which the last of them came out, and went back; null until all did. */
export function rocksOf(
  room: Room,
  { on }: DatedAuction,
  going: readonly Going[],
): { readonly out: LineRef | null; readonly back: LineRef | null } {
  const tanks = [...new Set(going.map(({ tank }) => tank))];
  const rigs = tanks.map((tank) =>
    room.measures.rigs.findLast(
      (rig) =>
        rig.kind === 'rocks out' &&
        rig.where === tank &&
        (rig.closed === null || rig.day >= addDays(on, -FOR_CATCH_DAYS)),
    ),
  );
  const last = rigs.at(-1);
  if (last === undefined || rigs.some((rig) => rig === undefined)) return { out: null, back: null };
  const isBack = rigs.every((rig) => rig !== undefined && rig.closed !== null);
  const back = isBack ? (last.closed?.place ?? null) : null;
  return { out: lineOf(last.begun), back: back === null ? null : lineOf(back) };
}

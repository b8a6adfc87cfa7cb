/** A mean length well below an earlier one, though nobody took the largest out: one of the two was misread. */
import type { Problem } from '../core/problem.ts';
import { rangeWords } from '../core/words.ts';
import { isSure, middle } from '../core/interval.ts';
import type { SizeSeen } from '../state/stock.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import type { Check } from './check.ts';

/** Fish judged twice by eye differ by so many mm and so much of their length, without anything amiss (ours). */
const EYE = 3;
const SHARE = 0.15;

export const shrinking: Check = ({ room }) =>
  [...room.stock.groups.values(), ...room.stock.broods.values()].flatMap((body) => shrunk(room, body));

function shrunk(room: Room, body: SeenBody): Problem[] {
  const read = body.sizes.filter(({ replaced }) => !replaced);
  return read.flatMap((later, at): Problem[] => {
    const before = read.slice(0, at).findLast((one) => one.sizes.of === later.sizes.of && one.tank === later.tank);
    if (!before || wasPicked(room, body, before, later)) return [];
    const fell = meanOf(before) - meanOf(later);
    if (fell <= EYE + SHARE * meanOf(before)) return [];
    return [
      {
        kind: 'sizes-shrink',
        weight: 'doubt',
        says: `${body.name}: ${later.sizes.of} ${said(later)} mm, after ${said(before)} mm before: fish do not shrink`,
        write: 'the right length in one of the two lines, or what was sold or moved in between',
        at: later.place,
        also: [before.place],
      },
    ];
  });
}

type Seen = DeepReadonly<SizeSeen>;

function meanOf({ sizes }: Seen): number {
  const values = sizes.values.map((value) => middle(value));
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

function said({ sizes }: Seen): string {
  return sizes.values.map((value) => (isSure(value) ? String(value.low) : rangeWords(value))).join(', ');
}

/** True where fish left or came between two lengths: what is left is another lot of fish. */
function wasPicked(room: Room, body: SeenBody, before: Seen, later: Seen): boolean {
  const within = (day: number): boolean => day >= before.day && day <= later.day;
  return (
    body.gone.some((gone) => gone.how !== 'missing' && within(gone.day)) ||
    room.stock.moves.some((move) => move.body === body.name && within(move.day))
  );
}

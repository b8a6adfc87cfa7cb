/**
 * A male of one pair alone with the female of another, each away from its own mate: nobody has said whether
 * they are a pair now, and the tool joins no bond by itself.
 */
import type { Problem } from '../core/problem.ts';
import type { SeenGroup } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { livingMembers } from '../state/members.ts';
import { openRigs } from '../state/rigs.ts';
import type { Check } from './check.ts';

export const newPair: Check = ({ room }) => newPairsIn(room);

/** Every such two, asked of at the line that moved the later of them. */
export function newPairsIn(room: Room): readonly Problem[] {
  const pairs = [...room.stock.groups.values()].filter((group) => group.kind === 'pair' && isParted(group));
  if (pairs.length < 2) return [];
  return pairs.flatMap((his) =>
    pairs.filter((hers) => hers !== his && isAlike(his, hers)).flatMap((hers) => asked(room, his, hers)),
  );
}

/** True where some of a pair that lives is away from its mate, or alone. */
function isParted(group: SeenGroup): boolean {
  return livingMembers(group).some((fish) => fish.tank !== null && isAlone(group, fish));
}

/** A fish with none of its own pair beside it. */
function isAlone(group: SeenGroup, fish: SeenGroup['members'][number]): boolean {
  return !livingMembers(group).some((other) => other !== fish && other.tank === fish.tank);
}

function isAlike(a: SeenGroup, b: SeenGroup): boolean {
  return a.species === null || b.species === null || a.species === b.species;
}

function asked(room: Room, his: SeenGroup, hers: SeenGroup): Problem[] {
  const males = livingMembers(his).filter((fish) => fish.sex === 'male' && isAlone(his, fish));
  const females = livingMembers(hers).filter((fish) => fish.sex === 'female' && isAlone(hers, fish));
  const tank = males.find((male) => females.some((female) => female.tank === male.tank))?.tank ?? null;
  const moved = [his, hers].flatMap(({ upset }) => (upset?.how === 'moved' ? [upset] : []));
  const [last, first] = moved.toSorted((a, b) => b.day - a.day || b.place.line - a.place.line);
  if (tank === null || last === undefined || isDivided(room, tank)) return [];
  // Whose tank it is keeps its name.
  const [stays, comes, sex] = his.home === tank ? ([his, hers, 'female'] as const) : ([hers, his, 'male'] as const);
  return [
    {
      kind: 'new-pair',
      weight: 'doubt',
      says: `the male of ${his.name} and the female of ${hers.name} are together in ${tank}, both without their mates, and nothing says whether they are a pair now`,
      write: `if they are: ${stays.name}: new ${sex} from ${comes.name}`,
      at: last.place,
      also: first === undefined ? [] : [first.place],
    },
  ];
}

function isDivided(room: Room, tank: string): boolean {
  return openRigs(room, tank).some(({ kind }) => kind === 'divider');
}

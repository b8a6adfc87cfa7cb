/**
 * Fish that are not what they would be sold as: young of two kinds, or of one that bears another name here. Nobody may
 * sell a cross as either; a keeper who gives it a species of its own has named it.
 */
import { listWords } from '../../core/words.ts';
import type { LineRef } from '../../core/span.ts';
import { linesOf } from '../../core/span.ts';
import { bodyNamed, isBrood, type SeenBody, type SeenBrood, type SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import type { Blocker } from './blockers.ts';

/** Species that a stock may come of, each with the lines that say so. */
type Kinds = ReadonlyMap<string, readonly LineRef[]>;

/** What stands in the way of a stock that is no clean one of its species; nothing where no line says otherwise. */
export function crossed(room: Room, body: SeenBody): Blocker[] {
  if (body.species === null) return [];
  const kinds = kindsOf(room, body, new Set());
  const others = [...kinds].filter(([kind]) => !isSame(room, kind, body.species));
  if (others.length === 0) return [];
  const own = [...kinds.keys()].filter((kind) => isSame(room, kind, body.species));
  // Of two kinds and called neither: the keeper has named the cross.
  if (own.length === 0 && others.length > 1) return [];
  const names = others.map(([kind]) => kind);
  const too = own.length === 0 ? '' : ' too';
  const why = `called ${body.species}, but they come of ${listWords(names)}${too}: a cross or a wrong name`;
  return [{ kind: 'species', why, until: null, lines: others.flatMap(([, lines]) => lines) }];
}

/** One species under two names has one Latin name. */
function isSame(room: Room, one: string, other: string | null): boolean {
  if (one === other) return true;
  const latin = (name: string | null): string | null =>
    name === null ? null : (room.stock.species.get(name)?.traits.latin?.toLowerCase() ?? null);
  return latin(one) !== null && latin(one) === latin(other);
}

/** `seen`: stocks on the way here, as a journal may name them in a ring. */
function kindsOf(room: Room, body: SeenBody, seen: ReadonlySet<string>): Kinds {
  if (seen.has(body.name)) return new Map();
  const way = new Set([...seen, body.name]);
  if (!isBrood(body)) return groupKinds(room, body, null, way);
  const parts = body.oneOf.flatMap((name) => bodyNamed(room, name) ?? []);
  if (parts.length > 0) return joined(parts.map((part) => kindsOf(room, part, way)));
  const parents = body.group === null ? undefined : room.stock.groups.get(body.group);
  return parents === undefined ? plain(body) : groupKinds(room, parents, body, way);
}

/** Of the fish of a group: of all that live, or of those that may be parents of a brood. */
function groupKinds(room: Room, group: SeenGroup, brood: SeenBrood | null, seen: ReadonlySet<string>): Kinds {
  const fish = group.members.filter((one) => (brood === null ? one.gone === null : mayBeParent(one, brood)));
  const first = fish.some(({ joined: later }) => later === undefined) || fish.length === 0;
  const mates = fish.flatMap(({ joined: later }) =>
    later === undefined ? [] : [fromKinds(room, group, later.from, linesOf([later.place]), seen)],
  );
  const declared = linesOf([group.declared]);
  const sources = group.parentsFrom.map((name) => fromKinds(room, group, name, declared, seen));
  // Of a pair whose one parent alone is told the other is what the line calls it.
  const untold = group.parentsFrom.length < Math.max(1, Math.min(2, fish.length)) ? [plain(group)] : [];
  return joined([...(first ? [...sources, ...untold] : []), ...mates]);
}

function mayBeParent({ sex, name, gone, joined: later }: SeenGroup['members'][number], brood: SeenBrood): boolean {
  const { low, high } = brood.laid;
  if (gone !== null && low !== null && gone.day < low) return false;
  if (later !== undefined && high !== null && later.day > high) return false;
  return sex !== 'female' || name === null || brood.mothers.length === 0 || brood.mothers.includes(name);
}

/** Of a fish out of a stock of this room, the kinds of that stock; else what its group is called. */
function fromKinds(
  room: Room,
  group: SeenGroup,
  from: string | null,
  lines: readonly LineRef[],
  seen: ReadonlySet<string>,
): Kinds {
  const source = from === null ? null : bodyNamed(room, from);
  if (source === null) return plain(group);
  const kinds = [...kindsOf(room, source, seen)];
  return new Map(kinds.map(([kind, told]) => [kind, [...lines, ...told]]));
}

function plain(body: SeenBody): Kinds {
  return new Map(body.species === null ? [] : [[body.species, []]]);
}

function joined(all: readonly Kinds[]): Kinds {
  const kinds = new Map<string, readonly LineRef[]>();
  for (const one of all) for (const [kind, lines] of one) kinds.set(kind, [...(kinds.get(kind) ?? []), ...lines]);
  return kinds;
}

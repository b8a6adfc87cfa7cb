/** Fish bought in: they make a group, or join the one that the line names. */
import { civil } from '../core/day.ts';
import { dayWords } from '../core/words.ts';
import type { EventOf, Heads } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { newGroup } from './members.ts';
import { joinSexes, sexesOf } from './sexes.ts';
import { newBody, putIn } from './tally.ts';
import { tanksNamed } from './where.ts';
import { note } from './meant.ts';

/** Puts the fish in the tank of the line, or leaves the clause out where it says neither how many nor where. */
export function buy(draft: Draft, event: EventOf<'bought'>): void {
  const tank = tanksNamed(draft, event)[0] ?? null;
  if (typeof event.count !== 'object') {
    draft.problems.push(noCount(event, tank));
    return;
  }
  const group = groupFor(draft, event, tank);
  const heads: Heads = event.count;
  joinSexes(group, group.total, sexesOf(heads));
  if (tank !== null) putIn(draft, group, tank, heads, event);
  if (event.size !== undefined) {
    const { day, minute, size, place } = event;
    group.sizes.push({ day, minute, tank, sizes: { of: 'bulk', values: [size] }, place, replaced: false });
  }
  note(draft, event, group, true);
  draft.sale.purchases.push({
    group: group.name,
    species: event.species,
    tank,
    count: heads.total,
    price: event.price,
    from: event.from,
    day: event.day,
    place: event.place,
  });
}

function groupFor(draft: Draft, event: EventOf<'bought'>, tank: string | null): ReturnType<typeof newGroup> {
  const { subject, day, place, from } = event;
  const named = event.group ?? (subject.kind === 'group' ? subject.group : null);
  const known = named === null ? undefined : draft.stock.groups.get(named);
  if (known) return known;
  const name = named ?? freeName(draft, event);
  const made = newGroup(newBody(name, event.species), { kind: 'group', day, place, tank, members: [], from });
  draft.stock.groups.set(name, made);
  return made;
}

/** `krib of 2 May`; where that is taken already, the year too, then a number. */
function freeName(draft: Draft, event: EventOf<'bought'>): string {
  const short = `${event.species} of ${dayWords(event.day, event.day)}`;
  if (!draft.stock.groups.has(short)) return short;
  const long = `${short} ${String(civil(event.day).year)}`;
  let name = long;
  for (let n = 2; draft.stock.groups.has(name); n += 1) name = `${long} (${String(n)})`;
  return name;
}

function noCount(event: EventOf<'bought'>, tank: string | null): Draft['problems'][number] {
  return {
    kind: 'no-count',
    weight: 'stops',
    says: 'it does not say how many were bought',
    write: `${tank ?? 'Q1'}: bought 6 ${event.species}`,
    at: event.place,
    also: [],
  };
}

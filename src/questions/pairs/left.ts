/** What is left of a pair, trio or harem that lost some of its fish: it goes by no name that means all of them. */
import { dayWords, listWords } from '../../core/words.ts';
import type { SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { livingMembers } from '../../state/members.ts';

export interface Left {
  /** `1 female of the pair`, `the male and Lark of the trio`. */
  readonly what: string;
  /** `male died 3 Feb`. */
  readonly lost: string;
}

type Member = SeenGroup['members'][number];

/**
 * Null while as many are there as there were at first: a new mate stands for the one that is gone. `here`: those of
 * them that are meant, where not all.
 */
export function leftOf(room: Room, group: SeenGroup, here: readonly Member[] = livingMembers(group)): Left | null {
  if (group.kind === 'colony' || group.kind === 'group') return null;
  const living = livingMembers(group);
  const gone = group.members.filter((fish) => fish.gone !== null);
  const before = group.members.filter((fish) => fish.joined === undefined);
  if (gone.length === 0 || here.length === 0 || living.length >= before.length) return null;
  const lost = gone.slice(living.length - before.length).map((fish) => lostWords(room, fish));
  return { what: `${livingWords(here)} of the ${group.kind}`, lost: lost.join(', ') };
}

/** One fish is counted; of several those with names are named. */
function livingWords(living: readonly Member[]): string {
  const [only] = living;
  if (living.length === 1) return only?.name ?? `1 ${only?.sex ?? 'fish'}`;
  const named = living.flatMap(({ name }) => name ?? []);
  const sexes = (['male', 'female'] as const).flatMap((sex) => {
    const count = living.filter((fish) => fish.name === null && fish.sex === sex).length;
    return count === 0 ? [] : [`${String(count)} ${sex}${count === 1 ? '' : 's'}`];
  });
  return listWords([...sexes, ...named]);
}

function lostWords(room: Room, { name, sex, gone }: Member): string {
  const how = gone === null ? 'gone' : (HOW.get(gone.how) ?? gone.how);
  return `${name ?? sex ?? 'one'} ${how}${gone === null ? '' : ` ${dayWords(gone.day, room.on)}`}`;
}

/** Words of the fold for how a fish left, where a keeper would use others. */
const HOW: ReadonlyMap<string, string> = new Map([
  ['gave away', 'given away'],
  ['joined', 'went to another group'],
]);

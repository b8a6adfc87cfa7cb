/** What is said where a clause does not tell which fish it is about, or names fish that are not there. */
import type { ProblemKind } from '../core/problem-kinds.ts';
import type { Problem } from '../core/problem.ts';
import type { EventKind } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import { reached } from './broodlife.ts';
import type { Draft } from './draft.ts';
import type { Clause } from './meant.ts';
import type { Brood, Group } from './stock.ts';

/** A problem of a clause that does not count for it. */
export function unclear(event: Clause, kind: ProblemKind, says: string, write: string): Problem {
  return { kind, weight: 'stops', says, write, at: event.place, also: [] };
}

/** Several fish fit: the problem lists them. */
export function severalFit(
  event: Clause,
  doing: string,
  tank: string | null,
  choice: readonly (Group | Brood)[],
  species: string | null = null,
): Problem {
  const names = choice.map((body) => body.name);
  // Of those that leave most are young, and a line taken over unread should cost no pair its fish.
  const meant = LEAVING.has(event.kind) ? choice.find((body) => isBrood(body)) : undefined;
  const first = meant?.name ?? names[0] ?? '';
  return {
    ...(species === null ? {} : { mend: { words: first, instead: species } }),
    ...unclear(
      event,
      'which-fish',
      `${tank === null ? '' : `${tank} holds `}${names.join(' and ')}: this may be about ${names.length === 2 ? 'either' : 'any of them'}${species === null ? '' : `; write which for «${species}»`}`,
      `${tank ?? first}: ${first} ${doing} …`,
    ),
    also: choice.map((body) => body.lines[0]).filter((place) => place !== undefined),
  };
}

const LEAVING: ReadonlySet<EventKind> = new Set<EventKind>(['lost', 'moved', 'sold', 'gave away', 'reserved']);

/** Nobody there that the clause can be about. */
export function nobodyFits(event: Clause, doing: string, tank: string | null): Problem {
  return unclear(
    event,
    'no-such-fish',
    tank === null ? 'this line does not say which fish' : `${tank} holds no fish that this can be about`,
    tank === null
      ? `the tank or the name of the fish before it: A1: ${doing} …`
      : `the line that put them there, or the right tank`,
  );
}

/** What a quarrel does to a pair is told of young as a sickness: nobody can say which of them it was. */
const ILL: ReadonlySet<string> = new Set(['gasping', 'hiding', 'not eating', 'torn fin', 'scales missing', 'wounded']);

/** Such a sign where only young are, or of a brood by its name; null for all other words. */
export function signOfYoung(event: Clause, doing: string, where: string, young: string): Problem | null {
  if (!ILL.has(doing)) return null;
  const water = doing === 'gasping' ? '; test the water and give air first' : '';
  const says = `«${doing}» is said of a pair or group, and ${young} are young: of them it is \`sick "${doing}"\`${water}`;
  const problem = unclear(event, 'no-such-fish', says, `${where}: sick "${doing}"`);
  return { ...problem, mend: { words: `sick "${doing}"`, instead: doing } };
}

/** Young are told of where none are on record, or none that have come so far: the line that tells of them is missing. */
export function noYoung(event: Clause, tank: string | null, there: readonly (Group | Brood)[]): Problem {
  const clutch = there.find((body) => isBrood(body));
  const lost = event.kind === 'lost';
  const stage = clutch === undefined ? 'fry seen' : lost ? 'hatched' : 'free-swimming';
  const far = clutch !== undefined && reached(clutch, 'hatched') ? 'wrigglers' : 'eggs';
  const place = tank ?? (event.subject.kind === 'group' ? event.subject.group : 'A1');
  const says =
    clutch === undefined
      ? `no young are on record ${tank === null ? `of ${place}` : `in ${tank}`}`
      : `${clutch.name} are ${far} on record${lost ? ', and eggs that die are `eggs white`' : ''}: were they \`${stage}\`?`;
  return {
    ...unclear(event, 'no-such-fish', says, `first: ${place}: ${stage}`),
    mend: { words: `${stage};`, instead: null },
  };
}

/** Fish of that name live, but not there; `others`: young that are. */
export function notThere(
  event: Clause,
  name: string,
  tank: string | null,
  all: readonly (Group | Brood)[],
  others: readonly Brood[] = [],
): Problem {
  const tanks = all.flatMap((body) => [...body.parts.keys()]);
  const unplaced = all.find(isUnplaced);
  if (unplaced && tanks.length === 0) {
    const says = `no line says in which tank ${name} is`;
    const write = `first: ${unplaced.kind} ${name}: in ${tank ?? 'A1'}`;
    return { ...unclear(event, 'not-there', says, write), also: [unplaced.declared] };
  }
  const where = tanks.length === 0 ? 'none of them are left' : `they are in ${tanks.join(' and ')}`;
  const there = others.map((body) => body.name).join(' or ');
  return {
    ...unclear(
      event,
      'not-there',
      `${name} is not ${tank === null ? 'there any more' : `in ${tank}`}: ${where}`,
      tanks[0] ? `${tanks[0]}: ${name} …` : `the name of the fish that are there${there === '' ? '' : `: ${there}`}`,
    ),
    also: all.map((body) => body.lines.at(-1)).filter((place) => place !== undefined),
  };
}

/** A group that lives, and was told without its tank. */
function isUnplaced(body: Group | Brood): body is Group {
  return !isBrood(body) && body.home === null && body.total.high > 0;
}

/** Tells that there are no fish of that name on that day. */
export function unknownFish(draft: Draft, event: Clause, name: string): null {
  const [species, day] = name.split(' of ');
  const began =
    day === undefined
      ? `the line it began with, on its own day: A1: spawned brood ${name}`
      : `the line they came with, on its own day: Q1: bought … ${species ?? ''}`;
  draft.problems.push(unclear(event, 'unknown-brood', `there is no ${name} on that day`, began));
  return null;
}

/** A stage that was seen: of the one brood that can be at it, or the first that is known of a new one. */
import { isSure } from '../core/interval.ts';
import type { EventOf, Heads } from '../journal/event.ts';
import { isBrood } from './bodies.ts';
import { beginBrood, confirmBrood, isNameless } from './broodstart.ts';
import { rankOfStage, rankSeen } from './broodlife.ts';
import { observe } from './counting.ts';
import type { Draft } from './draft.ts';
import { mothersOf, nameTaken, sameMother, settleSuspicions, tankOfSpawn } from './spawning.ts';
import { canBeAt, guildOf } from './stageclock.ts';
import { lookAt } from './stagewindows.ts';
import type { Brood, Group } from './stock.ts';
import { cannotCount, headsOf, isCounted, onlyTank } from './heads.ts';
import { putIn, tighten } from './tally.ts';
import { livingBroods, livingOf, stillHeld } from './living.ts';
import { note } from './meant.ts';
import { groupOf } from './whichgroup.ts';
import { resolveFish } from './who.ts';

type Seen = EventOf<'stage seen'>;

/** Young were seen at a stage: narrows when their brood was laid, or begins one, cast back. */
export function stageSeen(draft: Draft, event: Seen): void {
  const colony = colonyMeant(draft, event);
  if (colony) {
    learnMouth(draft, event, colony.species);
    youngOfColony(draft, event, colony);
    return;
  }
  const brood = broodMeant(draft, event);
  if (brood) seeStage(draft, event, brood);
}

function seeStage(draft: Draft, event: Seen, brood: Brood): void {
  const tank = event.subject.kind === 'tank' ? event.subject.tank : null;
  learnMouth(draft, event, brood.species);
  confirmBrood(draft, brood);
  note(draft, event, brood, event.fish.kind !== 'implied' || event.brood !== null);
  const young = cannotCount(brood);
  const further = rankOfStage(event.stage) > rankSeen(brood);
  const heads = event.count && seenOf(event.stage, event.count, further ? null : brood.total.likely);
  const more = event.stage === 'born' && brood.looks.some((look) => look.stage === 'born' && look.count !== null);
  lookAt(draft, brood, event.stage, event, heads && headsOf(heads, young));
  if (tank !== null && !brood.parts.has(tank)) brood.parts.set(tank, { low: 1, likely: null, high: Infinity });
  if (further) diedUnseen(brood);
  if (heads && more) moreBorn(draft, brood, tank, heads, event);
  else if (heads) observe(draft, brood, tank, headsOf(heads, young), isCounted(heads), event);
  brood.lines.push(event.place);
  keepMouth(draft, event, brood);
}

/** Young seen out of their shells are some of them: at least so many, and of the more that were thought likely still. */
function seenOf(stage: Seen['stage'], heads: Heads, before: number | null): Heads {
  if (stage !== 'fry seen') return heads;
  const { low, likely } = heads.total;
  const stays = before !== null && before >= low ? before : likely;
  return { ...heads, total: { low, likely: stays, high: Infinity }, as: 'guess' };
}

/** On the way from one stage to the next some go unseen: of what was guessed only the most still holds. */
function diedUnseen(brood: Brood): void {
  if (brood.moved) return;
  const one = Math.min(1, brood.total.high);
  brood.total = { low: one, likely: null, high: brood.total.high };
  for (const [tank, part] of brood.parts)
    brood.parts.set(tank, { low: Math.min(one, part.high), likely: null, high: part.high });
}

/**
 * More young of a brood: born over some days, or to two females whose young nobody tells apart. Births add
 * up, sights do not. Both lines count, so neither is a count that replaces the other.
 */
function moreBorn(draft: Draft, brood: Brood, tank: string | null, heads: Heads, event: Seen): void {
  const where = tank ?? brood.natal ?? onlyTank(brood);
  putIn(draft, brood, where, heads, event);
  tighten(brood);
  const count = where === null ? brood.total : (brood.parts.get(where) ?? brood.total);
  const { day, minute, place } = event;
  brood.counts.push({
    day,
    minute,
    tank: where,
    count,
    sure: isSure(count),
    place,
    replaced: false,
    total: brood.total,
  });
}

/** Fish that are seen to hold brood in the mouth, where no line says how they breed: their days are those of such fish. */
function learnMouth(draft: Draft, event: Seen, name: string | null): void {
  const species = name === null ? undefined : draft.stock.species.get(name);
  if (species?.traits.guild !== null || (event.stage !== 'holding' && event.stage !== 'stripped')) return;
  species.traits = { ...species.traits, guild: 'mouthbrooder' };
  species.said = { ...species.said, guild: event.place };
}

/** A mouthbrooder holds from the first look at it until the young are out. */
function keepMouth(draft: Draft, event: Seen, brood: Brood): void {
  const group = brood.group === null ? undefined : draft.stock.groups.get(brood.group);
  if (!group) return;
  settleSuspicions(group, brood);
  holdMouth(draft, event, group, brood.mothers[0] ?? null);
}

function holdMouth(draft: Draft, { stage, day, place }: Seen, group: Group, mother: string | null): void {
  if (stage === 'holding') group.holding = { day, mother, place };
  if (stage === 'released' || stage === 'stripped') group.holding = stillHeld(draft, group, day);
}

/** The colony whose young these are: the line names it, or it is the only one there that can have young. */
function colonyMeant(draft: Draft, event: Seen): Group | null {
  if (event.brood !== null || event.fish.kind === 'brood') return null;
  const { fish, subject } = event;
  const name =
    fish.kind === 'group' && fish.group !== null ? fish.group : subject.kind === 'group' ? subject.group : null;
  if (name !== null) {
    const group = draft.stock.groups.get(name);
    return group?.kind === 'colony' ? group : null;
  }
  if (subject.kind !== 'tank') return null;
  const here = [...draft.stock.groups.values()].filter((group) => (group.parts.get(subject.tank)?.high ?? 0) > 0);
  const young = candidates(draft, event, subject.tank, null);
  const only = here[0];
  return only?.kind === 'colony' && here.length === 1 && young.length === 0 ? only : null;
}

function youngOfColony(draft: Draft, event: Seen, colony: Group): void {
  note(draft, event, colony, false);
  colony.lines.push(event.place);
  holdMouth(draft, event, colony, null);
  const tank = event.subject.kind === 'tank' ? event.subject.tank : ([...colony.parts.keys()][0] ?? colony.home);
  if (!event.count || rankOfStage(event.stage) !== 2) return;
  // The same young may be seen again next week: births add up, sights do not.
  const { total } = event.count;
  putIn(draft, colony, tank, event.stage === 'fry seen' ? { ...total, low: 0 } : event.count, event);
}

function broodMeant(draft: Draft, event: Seen): Brood | null {
  const name =
    event.fish.kind === 'brood' ? event.fish.brood : event.subject.kind === 'brood' ? event.subject.brood : null;
  if (name !== null) {
    const found = resolveFish(draft, event, event.fish);
    return found && isBrood(found.body) ? found.body : null;
  }
  const known = event.brood === null ? undefined : draft.stock.broods.get(event.brood);
  if (known) return sameAsKnown(draft, event, known);
  const tank = event.subject.kind === 'tank' ? event.subject.tank : null;
  const group = ownGroup(draft, event);
  const choice = candidates(draft, event, tank, group);
  if (event.brood === null) {
    const only = choice[0];
    if (only && choice.length === 1) return only;
    if (choice.length > 1) {
      draft.problems.push(whichBrood(event, tank, choice));
      return null;
    }
  }
  const suspected = choice.filter((brood) => isNameless(draft, brood));
  const [sole] = suspected;
  if (sole === undefined || suspected.length > 1 || event.brood === null) return begin(draft, event, event.brood);
  confirmBrood(draft, sole, event.brood);
  return sole;
}

/** A written name: the same brood where it can be at that stage, even in another tank. */
function sameAsKnown(draft: Draft, event: Seen, known: Brood): Brood | null {
  const seen = event.when?.high ?? event.day;
  if (known.ended === null && canBeAt(draft, known, event.stage, seen)) return known;
  const group = known.group === null ? undefined : draft.stock.groups.get(known.group);
  if (group) nameTaken(draft, event, known.name, group);
  return null;
}

function ownGroup(draft: Draft, event: Seen): Group | null {
  const { fish, subject } = event;
  const name =
    fish.kind === 'group' && fish.group !== null ? fish.group : subject.kind === 'group' ? subject.group : null;
  return name === null ? null : (draft.stock.groups.get(name) ?? null);
}

/** Broods that can be at that stage: those not yet seen at it before those for which it is old news. */
function candidates(draft: Draft, event: Seen, tank: string | null, group: Group | null): Brood[] {
  const seen = event.when?.high ?? event.day;
  const rank = rankOfStage(event.stage);
  const possible = livingBroods(draft).filter(
    (brood) =>
      (tank === null || brood.parts.has(tank)) &&
      (group === null || brood.group === group.name) &&
      (tank !== null || group !== null) &&
      rankSeen(brood) <= rank &&
      canBeAt(draft, brood, event.stage, seen) &&
      suits(draft, brood, event),
  );
  const mother = event.fish.kind === 'group' ? (event.fish.member?.name ?? null) : null;
  const hers =
    mother === null
      ? possible
      : possible.filter((brood) => brood.mothers.length === 0 || brood.mothers.includes(mother));
  const news = hers.filter((brood) => rankSeen(brood) < rank);
  return news.length > 0 ? news : hers;
}

/** Births and mouths belong to fish that bear or hold; a second birth within days is the same one. */
function suits(draft: Draft, brood: Brood, event: Seen): boolean {
  const guild = guildOf(draft, brood.species);
  if (event.stage === 'born') return guild === 'livebearer' || brood.looks.some((look) => look.stage === 'born');
  if (event.stage === 'holding' || event.stage === 'released' || event.stage === 'stripped') {
    return guild === 'mouthbrooder' || guild === null || brood.looks.some((look) => look.stage === 'holding');
  }
  return true;
}

function begin(draft: Draft, event: Seen, name: string | null): Brood | null {
  const found = groupOf(draft, event.fish.kind === 'brood' ? { ...event, fish: { kind: 'implied' } } : event, {
    doing: event.stage,
    suits: (group) => canHave(draft, group, event),
  });
  if (!found) return null;
  const { group } = found;
  learnMouth(draft, event, group.species);
  const mothers = mothersOf(draft, event, group, event.stage, found.member);
  const tank = tankOfSpawn(event, group, mothers);
  const before = leftBehind(draft, group, event, mothers, tank);
  const brood = beginBrood(draft, event, group, event.stage, name, mothers, tank);
  group.lines.push(event.place);
  if (before) {
    draft.problems.push({
      kind: 'stages-contradict',
      weight: 'doubt',
      says: `«${event.stage}» cannot be ${before.name}, last seen as ${before.looks.at(-1)?.stage ?? 'eggs'}: taken as a spawn of its own, ${brood.name}; or one of the two was misread`,
      write: `what became of the first, or its name here: ${before.name} ${event.stage}`,
      at: event.place,
      also: before.lines.slice(-1),
    });
  }
  return brood;
}

function canHave(draft: Draft, group: Group, event: Seen): boolean {
  const guild = guildOf(draft, group.species);
  if (event.stage === 'born') return guild === 'livebearer' || guild === null;
  if (event.stage === 'holding' || event.stage === 'released' || event.stage === 'stripped') {
    return guild === 'mouthbrooder' || guild === null;
  }
  return guild !== 'livebearer' || event.stage === 'fry seen' || event.stage === 'free-swimming';
}

/** A brood of that group which was never seen to swim, and cannot be what was seen now. */
function leftBehind(
  draft: Draft,
  group: Group,
  event: Seen,
  mothers: readonly string[],
  tank: string | null,
): Brood | null {
  for (const brood of livingOf(draft, group).reverse()) {
    if (brood.suspected || rankSeen(brood) >= 2 || !sameMother(brood, mothers)) continue;
    if (tank !== null && !brood.parts.has(tank)) continue;
    if (brood.laid.high !== null && event.day - brood.laid.high <= 60) return brood;
  }
  return null;
}

function whichBrood(event: Seen, tank: string | null, choice: readonly Brood[]): Draft['problems'][number] {
  const names = choice.map((brood) => brood.name);
  return {
    kind: 'which-fish',
    weight: 'stops',
    says: `${names.join(' and ')} can be at «${event.stage}» on that day: this may be about ${names.length === 2 ? 'either' : 'any of them'}`,
    write: `${tank === null ? '' : `${tank}: `}${names[0] ?? ''} ${event.stage}`,
    at: event.place,
    also: choice.map((brood) => brood.lines[0]).filter((place) => place !== undefined),
  };
}

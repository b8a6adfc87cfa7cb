/** A new line that puts off what no row of the list is called: it counts, and is said at once, with what there is. */
import { isoDay, type Day } from '../../core/day.ts';
import type { Problem } from '../../core/problem.ts';
import { clauseKey, sameClause } from '../../core/span.ts';
import { nearest } from '../../core/suggest.ts';
import { listWords } from '../../core/words.ts';
import type { Event, EventOf } from '../../journal/event.ts';
import { putOffName } from '../../state/chores.ts';
import type { Room } from '../../state/draft.ts';
import type { DueItem } from './item.ts';
import { isAbout, isAt, isCalled } from './postponed.ts';
import { DUE_SOURCES } from './sources.ts';

/** Days ahead of which rows may be put off at the least: what is further ahead nobody puts off yet (ours). */
const AHEAD = 28;
/** So many names of rows are offered. */
const OFFERED = 4;

type PutOff = Room['chores']['putOffs'][number];

/** `after`: the room with the lines. What was put off until a day that is over hides nothing any more: it is let be. */
export function nothingPutOff(after: Room, events: readonly Event[]): readonly Problem[] {
  const clauses = new Map(
    events.flatMap((event) => (isOpen(event, after.on) ? [[clauseKey(event.place), event]] : [])),
  );
  return [...clauses.values()].flatMap(({ place, until }): Problem[] => {
    const those = after.chores.putOffs.filter((one) => sameClause(one.place, place));
    const rows = DUE_SOURCES.flatMap((source) => source(after, Math.max(AHEAD, until - after.on)));
    // A clause about several tanks is right where any of them has such a row.
    if (those.length === 0 || rows.some((row) => those.some((one) => isAbout(after, one, row)))) return [];
    return [{ kind: 'nothing-put-off', weight: 'doubt', at: place, also: [], ...told(after, those, rows) }];
  });
}

function isOpen(event: Event, on: Day): event is EventOf<'put off'> {
  return event.kind === 'put off' && event.until > on;
}

/** What there is: a row there of nearly that name, one of that name elsewhere, else all that may be put off there. */
function told(room: Room, those: readonly PutOff[], rows: readonly DueItem[]): Pick<Problem, 'says' | 'write'> {
  const said = those.map(({ what }) => putOffName(what))[0] ?? '';
  const until = those.map((one) => isoDay(one.until))[0] ?? '';
  const where = listWords(those.map((one) => one.where));
  const says = `nothing on the list of ${where} is called «${said}», so nothing is put off`;
  const line = (place: string, name: string): string => `${place}: put off ${quoted(name)} until ${until}`;
  const here = rows.filter((row) => those.some((one) => isAt(room, one.where, row.place)));
  const names = [...new Set(here.flatMap(({ putOffKey }) => putOffKey ?? []))];
  const near = nearest(said, names, 1)[0] ?? names.find((name) => holds(name, said) || holds(said, name));
  const [first] = here.filter(({ putOffKey }) => putOffKey !== null && (near === undefined || putOffKey === near));
  if (near !== undefined) return { says, write: line(first?.place ?? where, near) };
  const others = new Set(rows.filter((row) => isCalled(row, said)).map(({ place }) => place));
  const [other] = others;
  if (other !== undefined)
    return { says, write: line(where === 'room' && others.size > 1 ? 'all tanks' : other, said) };
  if (first === undefined) return { says, write: 'the name of a row of tankside due, if one was meant' };
  const some = names.slice(0, OFFERED).map((name) => `«${name}»`);
  return { says: `${says}; on it: ${listWords(some)}`, write: line(first.place, first.putOffKey ?? said) };
}

/** `lights off` holds `lights`; no word is cut. */
function holds(name: string, said: string): boolean {
  return ` ${name.toLowerCase()} `.includes(` ${said.trim().toLowerCase()} `);
}

/** Words that hold more than letters stand in quotes, so that nothing in them parts the line. */
function quoted(name: string): string {
  return /^[\p{L} -]+$/u.test(name) ? name : `"${name}"`;
}

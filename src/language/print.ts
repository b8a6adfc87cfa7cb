/**
 * Events → the canonical text of a journal. Reading what this prints gives the same events, but for
 * their places; a guess is printed as the guess that it was.
 */
import { isoDay } from '../core/day.ts';
import type { Event, EventKind, EventOf } from '../journal/event.ts';
import type { Subject } from '../journal/subject.ts';
import { unreachable } from '../core/unreachable.ts';
import { FISH_PRINTS, eggs } from './print/fish.ts';
import { ROOM_PRINTS } from './print/room.ts';
import { SETUP_PRINTS } from './print/setup.ts';
import type { Prints } from './print/table.ts';
import { TRADE_PRINTS } from './print/trade.ts';
import { CANONICAL, details, quoted, whenWords, words } from './print/words.ts';
import type { Voice } from './print/words.ts';

const PRINTS: Prints<EventKind> = { ...SETUP_PRINTS, ...ROOM_PRINTS, ...FISH_PRINTS, ...TRADE_PRINTS };

/** The clause of one event, with its `when` and remark, without date and heading. */
export function printClause(event: Event, voice: Voice = CANONICAL): string {
  const clause = words(body(event, voice), whenWords(event.when, event.day));
  // Words in quotes behind a bare `sick` would be what they are sick with.
  if (event.kind === 'sick' && event.text === null && event.remark !== null) return words(event.remark, clause);
  const counted = event.kind === 'spawned' ? eggs(event) : '';
  return words(details(clause, counted), event.remark !== null && quoted(event.remark));
}

function body<K extends EventKind>(event: EventOf<K>, voice: Voice): string {
  return PRINTS[event.kind](event, voice);
}

/** What stands before the colon for one event: the declaring words where it declares something. */
function printHeading(event: Event): string {
  switch (event.kind) {
    case 'row declared':
      return `row ${event.row}`;
    case 'loop declared':
      return `loop ${event.loop}`;
    case 'tank declared':
      return `${event.inTank === null ? 'tank' : 'tray'} ${event.tank}`;
    case 'species declared':
      return `species ${event.species}`;
    case 'group declared':
      return `${event.groupKind} ${event.group}`;
    case 'culture declared':
      return `culture ${event.culture}`;
    case 'auction declared':
      return `auction ${event.auction}`;
    default:
      return words(printSubject(event.subject), kindOfGroup(event));
  }
}

/** `pair`, where the clause is about the one pair of the tank in the heading and names none. */
function kindOfGroup(event: Event): string | null {
  if (!('fish' in event) || event.fish.kind !== 'group' || event.fish.group !== null) return null;
  return event.fish.member === null ? (event.fish.groupKind ?? null) : null;
}

/** A subject as a heading writes it; a tank whose name is a number needs the word. */
function printSubject(subject: Subject): string {
  switch (subject.kind) {
    case 'room':
      return 'room';
    case 'loop':
      return subject.loop;
    case 'tank':
      return subject.tank;
    case 'tanks': {
      const tanks = subject.of === 'all' ? 'all tanks' : `${subject.of.loop} tanks`;
      return words(tanks, subject.except.length > 0 && `except ${subject.except.join(' ')}`);
    }
    case 'group':
      // A fish's own name is unique in the room, and beside the group's it would be a second subject.
      return subject.member?.name ?? words(subject.group, subject.member?.sex);
    case 'brood':
      return subject.brood;
    case 'culture':
      return subject.culture;
    case 'auction':
      return subject.auction;
    case 'species':
      return subject.species;
    default:
      return unreachable(subject);
  }
}

/** The day and, where the line has one, the time of day that begin a line. */
function printDate(day: Event['day'], minute: number | null): string {
  if (minute === null) return isoDay(day);
  const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
  return `${isoDay(day)} ${clock}`;
}

/**
 * One line from the events of one line, in their order. Events of several subjects that share a clause
 * (same place) are written once, under all of their subjects.
 */
export function printEntry(events: readonly Event[], voice: Voice = CANONICAL): string {
  const first = events[0];
  if (first === undefined) return '';
  const all = [...new Set(events.map(printHeading))];
  // `A1 pair: chasing; lights off`: the second clause is of the tank alone, and needs no heading of its own.
  // `culture M2: microworm; started`: nor does one of what the line declares.
  const declared = events.filter(({ kind }) => kind.endsWith(' declared')).map(printHeading);
  const headings = all.filter(
    (heading) =>
      !all.some((other) => other.startsWith(`${heading} `)) && !declared.some((other) => other.endsWith(` ${heading}`)),
  );
  // A clause said of several subjects is written once; `moved 20 to B2, 10 to C1` are two facts of one clause.
  const clauses = new Map<string, string>();
  for (const event of events) {
    const clause = printClause(event, voice);
    clauses.set(`${event.place.from} ${clause}`, clause);
  }
  return `${printDate(first.day, first.minute)} ${headings.join(' ')}: ${[...clauses.values()].join('; ')}`;
}

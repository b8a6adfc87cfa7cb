/**
 * Opens the journal that a command is about: finds it, reads it, and settles which day is asked for.
 * The language is loaded here and nowhere before, so that `--help` never pays for the parser.
 */
import path from 'node:path';
import type { Day } from '../core/day.ts';
import type { LineRef } from '../core/span.ts';
import { listWords, plural } from '../core/words.ts';
import { findJournal, USUAL_NAME } from '../files/find.ts';
import type { Content, ReadFile } from '../files/port.ts';
import type { Reading } from '../language/reading.ts';
import type { Room } from '../state/draft.ts';
import type { Context } from './context.ts';
import { readDate } from './dates.ts';
import { EXIT, Stop } from './exit.ts';
import type { Get } from './flags.ts';
import { COMMON } from './flags.ts';
import { tell } from './tell.ts';
import { readingOf } from './wholereading.ts';

export { USUAL_NAME } from '../files/find.ts';

/** More places than these are summed up. */
const PLACES_TOLD = 5;

export interface Journal {
  /** Absolute path of the main file. */
  readonly path: string;
  /** All of it; read when first asked for, where `latest` does for the rest. */
  readonly reading: Reading;
  /** What was read for this answer: every problem and name, perhaps only the latest lines. */
  readonly latest: Reading;
  readonly today: Day;
  /** The day asked about. */
  readonly on: Day;
  /** The room as it stands on that day, or on another. The same day gives the same room. */
  room(on?: Day): Room;
  /** Lines of which anything did not count, by the reading or by what the room of that day knows. */
  leftOut(room: Room): readonly LineRef[];
}

/** Finds and reads the journal. Throws a `Stop`: none found, not readable, `--on` is no date. */
export async function openJournal(context: Context, get: Get): Promise<Journal> {
  const file = journalPath(context, get(COMMON.journal));
  const found = readMain(context, file);
  const { readerOf } = await import('./reader.ts');
  const reader = readerOf(context, file);
  const read = reader.read(found);
  const today = await context.today(zoneOf(read.latest));
  const asked = get(COMMON.on);
  const on = asked === null ? today : readDate(asked, today);
  const rooms = new Map<Day, Room>();
  return {
    path: file,
    latest: read.latest,
    get reading() {
      return read.whole();
    },
    today,
    on,
    room(day = on) {
      const room = rooms.get(day) ?? read.room(day, today);
      rooms.set(day, room);
      return room;
    },
    leftOut: (room) => stopped(read.latest, room),
  };
}

/** Reads another journal beside the keeper's own. Throws a `Stop` where it cannot be read. */
export async function openCopy(context: Context, file: string): Promise<Reading> {
  const at = path.resolve(context.cwd, file);
  const [found, { readJournal }] = [readCopy(context, at), await import('../language/read.ts')];
  return readingOf(context.files, at, found, readJournal);
}

/** A copy that is not there is no journal to begin. */
function readCopy(context: Context, file: string): ReturnType<typeof readMain> {
  if (context.files.isFile(file)) return readMain(context, file);
  const found = context.files.read(file);
  const says = found.ok || found.missing ? `there is no copy at ${file}` : `${file} cannot be read: ${found.says}`;
  throw new Stop(EXIT.noFile, says, 'tankside check --against FILE');
}

/**
 * The journal's path: as told, else TANKSIDE_JOURNAL, else the usual name here or in a folder above. Throws a `Stop` where
 * none is found, and where the nearest of that name cannot be read: a link to nothing is told, and no other journal
 * further up is taken for it.
 */
export function journalPath(context: Context, told: string | null): string {
  const where = { told, usual: context.env['TANKSIDE_JOURNAL'], here: context.cwd };
  const found = findJournal((file) => isThere(context, file), where);
  if (found !== null) return found;
  throw new Stop(
    EXIT.noFile,
    `no ${USUAL_NAME} here or in a folder above`,
    'tankside start (writes one here), or --journal FILE',
  );
}

function isThere(context: Context, file: string): boolean {
  if (context.files.isFile(file)) return true;
  const read = context.files.read(file);
  if (!read.ok && !read.missing) throw notReadable(context, file, read);
  return false;
}

/** The text of the main file; says what else was found beside it. Throws a `Stop` where it cannot be read. */
export function readMain(context: Context, file: string): Extract<ReadFile, { ok: true }> {
  const found = context.files.read(file);
  if (!found.ok) throw notReadable(context, file, found);
  if (endsInReturns(found.content)) {
    const says = 'its lines end in CR alone; save it with line ends LF or CRLF in your editor';
    throw new Stop(EXIT.noFile, `${file} cannot be read: ${says}`);
  }
  for (const notice of found.notices) tell(context, notice);
  return found;
}

/** Old line ends: all of it would be one line, and nothing but a comment where it begins with one. */
function endsInReturns(content: Content): boolean {
  const bytes = content.before(content.size);
  const first = bytes.includes(LINE_FEED) ? -1 : bytes.indexOf(RETURN);
  return first >= 0 && first < bytes.length - 1;
}

const LINE_FEED = 10;
const RETURN = 13;

function notReadable(context: Context, file: string, failure: Extract<ReadFile, { ok: false }>): Stop {
  if (failure.missing) {
    return new Stop(
      EXIT.noFile,
      `there is no journal at ${file}`,
      `tankside start --journal ${typedName(context, file)}`,
    );
  }
  const inside = path.join(file, USUAL_NAME);
  const write = context.files.isFile(inside) ? `--journal ${typedName(context, inside)}` : null;
  return new Stop(EXIT.noFile, `${file} cannot be read: ${failure.says}`, write);
}

/** A file as it is typed here: by its name alone in this folder, in quotes where a shell would cut it. */
export function typedName({ cwd }: Context, file: string): string {
  const name = path.dirname(file) === cwd ? path.basename(file) : file;
  return /[\s'$&;#()*?<>|]/.test(name) ? `"${name}"` : name;
}

/** The time zone that the room names last, or null. */
export function zoneOf({ events, behind }: Reading): string | null {
  const before = behind?.zone ?? null;
  return events.reduce((zone, event) => (event.kind === 'zone set' ? event.zone : zone), before);
}

function stopped(reading: Reading, room: Room): readonly LineRef[] {
  const lines = new Map<string, LineRef>();
  for (const { weight, at } of [...reading.problems, ...room.problems]) {
    if (weight === 'stops') lines.set(`${at.file}:${at.line}`, { file: at.file, line: at.line });
  }
  return [...lines.values()].sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1));
}

/** `2 lines left out: fishroom.txt lines 3 and 9; tankside check says why`; null where all were read. */
export function leftOutWords(lines: readonly LineRef[]): string | null {
  if (lines.length === 0) return null;
  const told = lines.slice(0, PLACES_TOLD);
  const files = [...new Set(told.map(({ file }) => file))];
  const places = files.map((file) => {
    const numbers = told.filter((line) => line.file === file).map(({ line }) => String(line));
    return `${file} ${numbers.length === 1 ? 'line' : 'lines'} ${listWords(numbers)}`;
  });
  const more = lines.length > told.length ? ` and ${lines.length - told.length} more` : '';
  return `${plural(lines.length, 'line')} left out: ${listWords(places)}${more}; tankside check says why`;
}

/** The room that a journal's text tells, on a day. */
import { readJournal } from '../../src/language/read.ts';
import type { SeenBrood } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from './events.ts';
import { NO_FILES, ROOM } from './lines.ts';

/** A whole journal of one file. Fails on a line that is not read, so that no test passes on a line left out. */
export function journalRoom(on: string, text: string): Room {
  const { events, problems } = readJournal('fishroom.txt', text, NO_FILES);
  const [problem] = problems.filter(({ weight }) => weight === 'stops');
  if (problem) throw new Error(`line ${String(problem.at.line)}: ${problem.says}`);
  return foldRoom(events, day(on));
}

/** Lines after those of the small room of `lines.ts`. */
export function journalOn(on: string, lines: string): Room {
  return journalRoom(on, ROOM + lines);
}

/** The brood of that name; throws with those that there are. */
export function broodNamed(room: Room, name: string): SeenBrood {
  const found = room.stock.broods.get(name);
  if (!found) throw new Error(`no ${name} among ${[...room.stock.broods.keys()].join(', ')}`);
  return found;
}

/**
 * Reads a journal for an answer: on from a footing where the cache has one that fits, else all of it, and
 * then a footing is kept. The language is loaded here and nowhere before, so that `--help` never pays for the parser.
 */
import path from 'node:path';
import type { Day } from '../core/day.ts';
import type { Also, Content, Files, ReadFile } from '../files/port.ts';
import { readJournal } from '../language/read.ts';
import { withProblems } from '../language/reading.ts';
import type { Behind, Reading } from '../language/reading.ts';
import type { Room } from '../state/draft.ts';
import { foldRoom } from '../state/fold.ts';
import { bringBuiltShapes } from './builtshapes.ts';
import type { Context } from './context.ts';
import { findFooting, foldKeeping } from './footing/footing.ts';
import type { Fetched, Footing, Source } from './footing/footing.ts';
import type { KeptRows } from './footing/rows.ts';
import { bringBack } from './footing/worked.ts';
import { tuneFor } from './shortrun.ts';
import { readingOf } from './wholereading.ts';

type Found = Extract<ReadFile, { ok: true }>;

export interface Read {
  /** Perhaps only the latest lines. */
  readonly latest: Reading;
  whole(): Reading;
  /** The room of a day; `today` is what counts as past. */
  room(on: Day, today: Day): Room;
}

export interface Reader {
  /** Of readings that stand on what the cache keeps; null where nothing is kept. */
  readonly rows: KeptRows | null;
  read(found: Found): Read;
  /** From where on a main file that holds this would be read; its beginning where nothing is kept of it. */
  start(content: Content): Behind['start'];
  /**
   * The room that a reading of this reader's tells, or one with lines more; never of a day behind it. `today` is
   * what counts as past.
   */
  fold(reading: Reading, on: Day, today: Day): Room;
}

/** Reads the main file at that path. */
export function readerOf({ files, chest }: Pick<Context, 'files' | 'chest'>, file: string): Reader {
  const source: Source = { files, path: file, name: path.basename(file) };
  const footing = chest === null ? null : findFooting(chest, source);
  if (chest !== null) bringBack(chest);
  bringBuiltShapes();
  // Readings of all of the journal that no footing served for: the fold lays one on its way.
  const wholes = new WeakMap<Reading, Whole>();
  // Readings from a footing on, with the texts that they are of.
  const tails = new WeakMap<Reading, Pick<Whole, 'content' | 'reading'>>();
  const fold = (reading: Reading, on: Day, today: Day): Room => {
    const { events, behind } = reading;
    if (footing !== null && behind !== null) {
      const room = footing.room(events, on);
      const tail = tails.get(reading);
      if (tail !== undefined) footing.layLater({ ...tail, by: today < on ? today : on }, room);
      return room;
    }
    const whole = wholes.get(reading);
    if (chest === null || whole === undefined) return foldRoom(events, on);
    const { content, bare, fetched } = whole;
    return foldKeeping(chest, source, { content, reading: bare, fetched, by: today }, on);
  };
  return {
    rows: footing === null ? null : footing.rows,
    fold,
    start: (content) => footing?.start(content) ?? BEGINNING,
    read(found) {
      const tail = footing?.read(found.content) ?? null;
      const onward = footing === null || tail === null ? null : withFiles(tail, footing, found);
      if (onward !== null && tail !== null) tails.set(onward, { content: found.content, reading: tail });
      let known: Whole | null = null;
      const whole = (): Reading => {
        known ??= readWhole(source, found);
        if (onward === null) wholes.set(known.reading, known);
        return known.reading;
      };
      return {
        latest: onward ?? whole(),
        whole,
        room(on, today) {
          const serves = onward !== null && onward.behind !== null && on >= onward.behind.day;
          return fold(serves ? onward : whole(), on, today);
        },
      };
    },
  };
}

function withFiles(reading: Reading, footing: Footing, found: Found): Reading {
  return withProblems(reading, [...found.problems, ...footing.problems, ...reading.problems]);
}

const BEGINNING: Behind['start'] = { at: 0, lines: 0 };

interface Whole {
  readonly content: Content;
  readonly reading: Reading;
  /** Without what is wrong with the files themselves. */
  readonly bare: Reading;
  readonly fetched: readonly Fetched[];
}

function readWhole({ files, path: file }: Source, found: Found): Whole {
  tuneFor(found.content.size);
  const fetched: Fetched[] = [];
  const also = (main: string): ReturnType<Files['also']> => {
    const fetch = files.also(main);
    return (from, asked) => {
      const got: Also = fetch(from, asked);
      fetched.push({ from, asked, got });
      return got;
    };
  };
  let bare: Reading | null = null;
  const reading = readingOf({ also }, file, found, (...asked) => (bare = readJournal(...asked)));
  return { content: found.content, reading, bare: bare ?? reading, fetched };
}

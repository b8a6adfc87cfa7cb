/** Every row of today's list, on many days of the journals at hand: it can be asked about, and its line closes it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { addDays } from '../../src/core/day.ts';
import type { Problem } from '../../src/core/problem.ts';
import { readJournal } from '../../src/language/read.ts';
import type { DueAnswer, DueRow } from '../../src/questions/due.ts';
import { due } from '../../src/questions/due.ts';
import { why } from '../../src/questions/why.ts';
import { foldRoom } from '../../src/state/fold.ts';
import type { Room } from '../../src/state/draft.ts';
import { day } from '../support/events.ts';
import { filled } from '../support/filled.ts';
import { isoDay } from '../../src/core/day.ts';

interface Asked {
  readonly room: Room;
  readonly answer: DueAnswer;
  readonly stops: readonly Problem[];
}

function ask(text: string, on: Day): Asked {
  const reading = readJournal('fishroom.txt', text, () => ({ ok: false, says: 'there is no such file' }));
  const room = foldRoom(reading.events, on);
  const stops = [...reading.problems, ...room.problems].filter(({ weight }) => weight === 'stops');
  return { room, answer: due(room, { days: 28, minutes: null }), stops };
}

/** Days spread over a journal, so that every season of the room is asked about. */
function days(from: string, to: string, step: number): readonly Day[] {
  const last = day(to);
  const all: Day[] = [];
  for (let on = day(from); on <= last; on = addDays(on, step)) all.push(on);
  return all;
}

const JOURNALS = [
  { name: 'corpus/sample.txt', days: days('2026-02-01', '2026-03-20', 6) },
  { name: '../examples/first/fishroom.txt', days: days('2026-01-05', '2026-12-01', 60) },
  { name: '../examples/workshop/fishroom.txt', days: days('2025-12-01', '2026-11-25', 45) },
];

describe.each(JOURNALS)('in $name', ({ name, days: asked }) => {
  const text = readFileSync(new URL(`../${name}`, import.meta.url), 'utf8');

  test.each(asked.map(isoDay))('on %s every row has its own id, its rule and its lines', (iso) => {
    const { room, answer } = ask(text, day(iso));
    const ids = answer.rows.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
    for (const row of answer.rows) {
      expect(row.lines, row.id).not.toEqual([]);
      const [found, ...others] = why(room, [row.id]).rows;
      expect([found?.id, others]).toEqual([row.id, []]);
      expect(found?.because.rule, row.id).not.toBe('');
      expect(found?.because.source, row.id).not.toBe('');
    }
  });

  test.each(asked.map(isoDay))('on %s every row is closed by its line', (iso) => {
    const on = day(iso);
    const before = ask(text, on);
    const open = before.answer.rows.filter(({ state }) => state !== 'ahead');
    const wrong = open.flatMap((row) => {
      const after = ask(`${text}\n${iso} ${filled(row.close)}`, on);
      const [stop] = after.stops.length > before.stops.length ? after.stops.slice(-1) : [];
      if (stop !== undefined) return [`${row.close}: ${stop.says}`];
      return after.answer.rows.some((other) => isSame(row, other)) ? [`${row.id} stays after ${row.close}`] : [];
    });
    expect(wrong).toEqual([]);
  });
});

function isSame(row: DueRow, other: DueRow): boolean {
  return other.id === row.id && other.state !== 'ahead';
}

/** Tasks and chores as lines set, amend, stop and do them, and what is doubted. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';

const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-01', `${lines.join('\n')}\n`);
/** `A1 air stone 02-03 by 02-10 done 02-05`. */
const tasks = (...lines: readonly string[]): string[] =>
  roomOf(...lines).chores.tasks.map(({ where, text, day: set, by, done }) =>
    [
      `${where} ${text} ${isoDay(set).slice(5)}`,
      by === null ? '' : ` by ${isoDay(by).slice(5)}`,
      done === null ? '' : ` done ${isoDay(done.day).slice(5)}`,
    ].join(''),
  );
const said = (...lines: readonly string[]): string[] => {
  const { events, problems } = readJournal('fishroom.txt', `${ROOM}${lines.join('\n')}\n`, NO_FILES);
  return [...problems, ...foldRoom(events, day('2026-04-01')).problems].map(
    ({ weight, says, write }) => `${weight}: ${says} → ${write}`,
  );
};

const stone = '2026-02-03 A1: to do "air stone" by 2026-02-10';

describe('a task', () => {
  it('said again keeps its first day, and the later deadline', () => {
    expect(tasks(stone, '2026-02-05 A1: to do "Air stone" by 2026-02-20')).toEqual(['A1 air stone 02-03 by 02-20']);
    expect(tasks(stone, '2026-02-05 A1: to do "air stone"')).toEqual(['A1 air stone 02-03 by 02-10']);
  });
  it('in other words, or in another place, is another', () => {
    expect(tasks(stone, '2026-02-05 A1: to do "new lid"', '2026-02-05 A2: to do "air stone"')).toEqual([
      'A1 air stone 02-03 by 02-10',
      'A1 new lid 02-05',
      'A2 air stone 02-05',
    ]);
  });
  it('that was done is set anew', () => {
    const lines = [stone, '2026-02-05 A1: did "air stone"', '2026-03-05 A1: to do "air stone"'];
    expect(tasks(...lines)).toEqual(['A1 air stone 02-03 by 02-10 done 02-05', 'A1 air stone 03-05']);
    expect(tasks(...lines, '2026-03-06 A1: did "air stone"')).toEqual([
      'A1 air stone 02-03 by 02-10 done 02-05',
      'A1 air stone 03-05 done 03-06',
    ]);
  });
  it('is done by its own words in its own place alone', () => {
    expect(tasks(stone, '2026-02-05 A2: did "air stone"', '2026-02-05 A1: did "new lid"')).toEqual([
      'A1 air stone 02-03 by 02-10',
    ]);
    const two = [stone, '2026-02-04 A2: to do "air stone"', '2026-02-05 A2: did "air stone"'];
    expect(tasks(...two)).toEqual(['A1 air stone 02-03 by 02-10', 'A2 air stone 02-04 done 02-05']);
  });
});

describe('words that were done, and stood nowhere', () => {
  it('are doubted, with what is open there', () => {
    expect(said('2026-02-05 A1: did "new lid"')).toEqual([
      'doubt: nothing of the words «new lid» is to be done at A1 → A1: note new lid',
    ]);
    const lines = [
      '2026-02-03 A2: to do "new lamp"',
      '2026-02-03 A1: to do "old lid"',
      '2026-02-04 A1: did "old lid"',
      stone,
    ];
    expect(said(...lines, '2026-02-05 A1: did "new lid"')).toEqual([
      'doubt: nothing of the words «new lid» is to be done at A1 → A1: did "air stone"',
    ]);
  });
  it('are none where a chore says them, or an auction that was declared asks for them', () => {
    const chore = '2026-02-01 room: "test button" every month';
    expect(said(chore, '2026-02-05 room: did "Test button"')).toEqual([]);
    expect(said(chore, '2026-02-05 room: did "other button"')).toHaveLength(1);
    expect(said(chore, '2026-02-05 A1: did "test button"')).toHaveLength(1);
    expect(said('2026-02-05 room: did "bag for Autumn"')).toEqual([]);
    expect(said('2026-02-05 room: did "bag for Spring"')).toHaveLength(1);
    expect(said('2026-02-05 room: did "Autumn for them"')).toHaveLength(1);
  });
});

describe('a chore', () => {
  const set = '2026-02-01 C1: water change 30 % every 7 days, takes 20 min';
  const standing = (...lines: readonly string[]): string[] =>
    roomOf(...lines).chores.standing.map(({ where, action, amount, takes, day: first, stopped }) =>
      [
        where,
        action.text ?? action.kind,
        amount?.likely ?? '-',
        takes?.likely ?? '-',
        isoDay(first).slice(5),
        stopped === null ? '' : `stopped ${isoDay(stopped.day).slice(5)}`,
      ].join(' '),
    );
  it('said again keeps its first day, and what the line does not say', () => {
    expect(standing(set, '2026-02-10 C1: water change every 5 days')).toEqual(['C1 water change 0.3 20 02-01 ']);
    expect(standing(set, '2026-02-10 C1: water change 20 % every 5 days')).toEqual(['C1 water change 0.2 20 02-01 ']);
  });
  it('of another kind, of other words or in another place is another', () => {
    const own = ['2026-02-01 C1: "scrape glass" every month', '2026-02-01 C1: "trim plants" every month'];
    expect(standing(set, ...own, '2026-02-01 C2: water change 30 % every 7 days')).toHaveLength(4);
    expect(standing(set, '2026-02-01 C1: rinse sponge every month')).toHaveLength(2);
  });
  it('is stopped in its place alone, and set anew afterwards', () => {
    const other = '2026-02-01 C2: water change 30 % every 7 days';
    const stop = '2026-02-08 C2: stop water change';
    expect(standing(set, other, stop)).toEqual([
      'C1 water change 0.3 20 02-01 ',
      'C2 water change 0.3 - 02-01 stopped 02-08',
    ]);
    expect(standing(set, other, stop, '2026-02-12 C2: water change 30 % every 7 days')).toHaveLength(3);
  });
  it('that is none cannot be stopped, and the line that would be read names one that is', () => {
    expect(said('2026-02-08 C1: stop water change')).toEqual([
      'doubt: no «water change» is set for C1, so there is none to stop → nothing',
    ]);
    const lines = ['2026-02-01 C2: top up every 3 days', '2026-02-01 C1: rinse sponge every month'];
    expect(said(...lines, '2026-02-08 C1: stop water change')).toEqual([
      'doubt: no «water change» is set for C1, so there is none to stop → C1: stop rinse sponge',
    ]);
    expect(said(set, '2026-02-08 C1: stop water change', '2026-02-09 C1: stop water change')).toEqual([
      'doubt: no «water change» is set for C1, so there is none to stop → nothing',
    ]);
  });
});

describe('a day that something lasts until', () => {
  it.each([
    ['C1: put off water change until 2026-02-07', 'C1: put off water change until 2026-02-10'],
    ['room: away until 2026-02-07', 'room: away until 2026-02-10'],
    ['A1: lights off until 2026-02-07', 'A1: lights off until 2026-02-10'],
  ])('is not before the line: %s', (line, write) => {
    expect(said(`2026-02-08 ${line}`)).toEqual([
      `stops: the day that it lasts until is before the day of the line → 2026-02-08 ${write}`,
    ]);
    expect(said(`2026-02-08 ${line.replace('02-07', '02-08')}`)).toEqual([]);
    const { chores, measures } = foldRoom(
      readJournal('fishroom.txt', `${ROOM}2026-02-08 ${line}\n`, NO_FILES).events,
      day('2026-04-01'),
    );
    expect([...chores.putOffs, ...chores.away, ...measures.rigs]).toEqual([]);
  });
});

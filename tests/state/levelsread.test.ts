/** Which levels of a prefilter's chamber count, and which are doubted or refused. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { trueLevels } from '../../src/state/prefilter.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';

const ON = '2026-03-10';
/** `03-02 40–40`, of those that speak of clogging. */
const counted = (...lines: readonly string[]): string[] => {
  const loop = journalOn(ON, `${lines.join('\n')}\n`).plumbing.loops.get('Long');
  return trueLevels(loop ?? { levels: [] }).map(
    ({ day: on, level }) => `${isoDay(on).slice(5)} ${String(level.low)}–${String(level.high)}`,
  );
};
/** What is said of lines, the refused among them. */
const said = (...lines: readonly string[]): string[] => {
  const { events } = readJournal('fishroom.txt', `${ROOM}${lines.join('\n')}\n`, NO_FILES);
  return foldRoom(events, day(ON)).problems.map(({ weight, says, write }) => `${weight}: ${says} → ${write}`);
};

describe('levels of one day', () => {
  it('stand for each other where they were read at one time, the later-filed for the earlier', () => {
    expect(counted('2026-03-02 Long: level 40 mm', '2026-03-02 Long: level 44 mm')).toHaveLength(1);
    expect(counted('2026-03-02 08:00 Long: level 40 mm', '2026-03-02 20:00 Long: level 44 mm')).toHaveLength(2);
    expect(counted('2026-03-01 Long: level 40 mm', '2026-03-02 Long: level 44 mm')).toHaveLength(2);
  });
  it('both stand where layers were cleaned between them', () => {
    const lines = [
      '2026-03-02 Long: level 60 mm',
      '2026-03-02 Long: cleaned 6 of 6 layers',
      '2026-03-02 Long: level 20 mm',
    ];
    expect(counted(...lines)).toHaveLength(2);
  });
  it('read before a clean of an earlier day do not', () => {
    const lines = [
      '2026-03-01 Long: cleaned 6 of 6 layers',
      '2026-03-02 Long: level 40 mm',
      '2026-03-02 Long: level 44 mm',
    ];
    expect(counted(...lines)).toHaveLength(1);
  });
  it('never take away that it spilled', () => {
    expect(counted('2026-03-02 Long: overflowed', '2026-03-02 Long: level 60 mm')).toHaveLength(2);
  });
});

describe('an overflow', () => {
  it('stands for what was read before it that day, and for no other day', () => {
    expect(
      counted('2026-03-01 Long: level 50 mm', '2026-03-02 Long: level 58 mm', '2026-03-02 Long: overflowed'),
    ).toEqual(['03-01 50–50', '03-02 80–80']);
  });
  it('leaves what was read before the clean of that day', () => {
    const cleaned = '2026-03-02 Long: cleaned 6 of 6 layers';
    expect(counted('2026-03-02 Long: level 58 mm', cleaned, '2026-03-02 Long: overflowed')).toHaveLength(2);
    expect(counted(cleaned, '2026-03-02 Long: level 58 mm', '2026-03-02 Long: overflowed')).toHaveLength(1);
    expect(
      counted('2026-02-20 Long: cleaned 6 of 6 layers', '2026-03-02 Long: level 58 mm', '2026-03-02 Long: overflowed'),
    ).toHaveLength(1);
  });
  it('of a loop whose lip nobody measured is no level', () => {
    const room = journalOn(ON, '2026-03-01 loop Low: sump 90 L\n2026-03-02 Low: overflowed\n');
    expect(room.plumbing.loops.get('Low')?.levels).toEqual([]);
  });
});

describe('a level', () => {
  it('below the lip is as high as both are known', () => {
    expect(counted('2026-03-02 Long: level 18-22 mm below the lip')).toEqual(['03-02 58–62']);
    const lip = '2026-03-01 loop Long: spills at 78-82 mm';
    expect(counted(lip, '2026-03-02 Long: level 20 mm below the lip')).toEqual(['03-02 58–62']);
  });
  it('below a lip of unknown height is refused', () => {
    expect(said('2026-03-01 loop Low: sump 90 L', '2026-03-02 Low: level 20 mm below the lip')).toEqual([
      'stops: the height at which Low spills is not known, so a level below the lip cannot be placed → 2026-03-02 loop Low: spills at 80 mm',
    ]);
  });
  it('on the floor or at the lip is nothing to doubt', () => {
    expect(said('2026-03-01 Long: level 0 mm', '2026-03-02 Long: level 80 mm')).toEqual([]);
  });
  it('little above the lip counts, and is doubted', () => {
    expect(said('2026-03-02 Long: level 90 mm')).toEqual([
      'doubt: a level of 90 mm is above the 80 mm at which Long spills → 2026-03-02 Long: overflowed',
    ]);
    expect(counted('2026-03-02 Long: level 90 mm')).toHaveLength(1);
  });
  it('far above the lip, or under the floor, does not', () => {
    expect(said('2026-03-02 Long: level 95 mm')[0]).toMatch(/^stops: a level of 95 mm is above the 80 mm/u);
    expect(said('2026-03-02 Long: level 90 mm below the lip')).toEqual([
      "stops: a level cannot stand under the chamber's floor → 2026-03-02 Long: level 20 mm",
    ]);
  });
});

describe('a level read while no water was pumped', () => {
  const read = '2026-03-02 12:00 Long: level 60 mm';
  it.each([
    ['the pump of the loop is off', '2026-03-02 08:00 Long: pump off'],
    ['it is off for hours yet', '2026-03-02 08:00 Long: pump off for 6 h'],
    ['the power of the loop is off', '2026-03-02 08:00 Long: power off'],
    ['the power of the room is off', '2026-03-02 08:00 room: power off'],
  ])('says nothing of clogging: %s', (_, off) => {
    expect(counted(off, read)).toEqual([]);
  });
  it.each([
    ['it was off for an hour', ['2026-03-02 08:00 Long: pump off for 1 h']],
    ['it is on again', ['2026-03-02 08:00 Long: pump off', '2026-03-02 09:00 Long: pump on']],
    ['its heater is off', ['2026-03-02 08:00 Long: heater off']],
    ['a pump of another place is off', ['2026-03-01 loop Low: sump 90 L', '2026-03-02 08:00 Low: pump off']],
    ['the power is back', ['2026-03-02 08:00 room: power off', '2026-03-02 09:00 room: power on']],
    ['a tank alone is dark', ['2026-03-02 08:00 C1: power off']],
    ['it has a fault of another kind', ['2026-03-02 08:00 Long: fault "valve weeping"']],
  ])('but does where %s', (_, lines) => {
    expect(counted(...lines, read)).toHaveLength(1);
  });
});

describe('layers cleaned', () => {
  const cleans = (...lines: readonly string[]): string[] =>
    (journalOn(ON, `${lines.join('\n')}\n`).plumbing.loops.get('Long')?.cleans ?? []).map(
      ({ layers, of }) => `${String(layers)} of ${String(of)}`,
    );
  it('are all of those that the line or the loop says', () => {
    expect(cleans('2026-03-02 Long: cleaned all layers')).toEqual(['6 of 6']);
    expect(cleans('2026-03-02 Long: cleaned 2 layers')).toEqual(['2 of 6']);
  });
  it('more than there are cannot be', () => {
    expect(said('2026-03-02 Long: cleaned 7 layers')).toEqual([
      'stops: 7 of 6 layers cannot be cleaned → 2026-03-02 Long: cleaned 6 of 6 layers',
    ]);
  });
  it('of another number than declared are doubted', () => {
    expect(said('2026-03-02 Long: cleaned 2 of 4 layers')).toEqual([
      'doubt: the prefilter of Long has 6 layers, this line says 4 → 2026-03-02 Long: cleaned 2 of 6 layers',
    ]);
    expect(said('2026-03-02 Long: cleaned 8 of 8 layers')[0]).toMatch(/cleaned 6 of 6 layers$/u);
    expect(said('2026-03-02 Long: cleaned 2 of 6 layers', '2026-03-03 Long: cleaned 2 layers')).toEqual([]);
    expect(said('2026-03-01 loop Low: sump 90 L', '2026-03-02 Low: cleaned 2 of 4 layers')).toEqual([]);
  });
});

/** What stage a brood is at, what comes next and when, and which days are most likely: read from lines. */
import { describe, expect, it } from 'vitest';
import { isoDay, type Day } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import { ageOf, datesOf, laidDay } from '../../src/questions/laying.ts';
import { expected, expectedWords, firstMove, isHeld, mostLikely, nextOf, stageOf } from '../../src/questions/stages.ts';
import type { SeenBrood } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

interface Seen {
  readonly room: Room;
  readonly brood: SeenBrood;
}
function on(day: string, lines: string, name = 'Rowan-1'): Seen {
  const room = journalOn(day, lines);
  const brood = room.stock.broods.get(name) ?? [...room.stock.broods.values()].find((one) => one.suspected);
  if (!brood) throw new Error(`no ${name}`);
  return { room, brood };
}
const short = (day: Day | null): string => (day === null ? 'open' : isoDay(day).slice(5));
const span = (window: DayWindow | null): string =>
  window === null ? 'none' : [window.low, window.likely, window.high].map(short).join(' ');
const stage = (day: string, lines: string, name?: string): string => {
  const { room, brood } = on(day, lines, name);
  return stageOf(room, brood);
};
const next = (day: string, lines: string, name?: string): string => {
  const { room, brood } = on(day, lines, name);
  const found = nextOf(room, brood);
  return found === null ? 'nothing' : `${found.what} ${span(found.window)}`;
};

const LAID = '2026-02-02 A1: spawned\n';
const SWAM = `${LAID}2026-02-06 A1: wrigglers\n2026-02-12 A1: free-swimming, 40\n`;
const MOUTH = `2026-01-02 species ngara: Aulonocara stuartgranti; mouthbrooder
2026-01-02 harem Heath: ngara; male; females Gorse and Ling; in C2
`;

describe('the stage', () => {
  it('is what was seen: eggs, wrigglers, swimming, then young from a fortnight on', () => {
    expect(stage('2026-02-03', LAID)).toBe('egg');
    expect(stage('2026-02-06', `${LAID}2026-02-06 A1: wrigglers\n`)).toBe('wriggler');
    expect(stage('2026-02-12', SWAM)).toBe('free-swimming');
    // Laid on 2 Feb, they swim most likely on the 11th or 12th; the fortnight counts from there.
    expect(stage('2026-02-26', SWAM)).toBe('free-swimming');
    expect(stage('2026-02-27', SWAM)).toBe('young');
  });
  it('is juvenile from half of the usual sale size on: 12.5 mm of 25', () => {
    expect(stage('2026-03-20', `${SWAM}2026-03-20 A1: Rowan-1 average 12 mm\n`)).toBe('young');
    expect(stage('2026-03-20', `${SWAM}2026-03-20 A1: Rowan-1 average 13 mm\n`)).toBe('juvenile');
  });
  it('is suspected, held or gone where that was said', () => {
    expect(stage('2026-02-03', '2026-02-02 A1: maybe spawned\n')).toBe('suspected');
    expect(stage('2026-02-04', `${LAID}2026-02-03 A1: eggs gone\n`)).toBe('gone');
    expect(stage('2026-02-03', `${MOUTH}2026-02-02 C2: Gorse holding\n`, 'Heath-1')).toBe('held');
    expect(stage('2026-02-03', LAID)).not.toBe('held');
    expect(stage('2026-02-03', `${MOUTH}2026-02-02 C2: spawned\n`, 'Heath-1')).toBe('held');
    const unknown = '2026-01-02 harem Heath: male; females Gorse and Ling; in C2\n2026-02-02 C2: Gorse holding\n';
    expect(stage('2026-02-03', unknown, 'Heath-1')).toBe('held');
  });
});

describe('what is expected', () => {
  // A cave spawner at 25 to 27 °C: hatched after 2.1 to 4.8 days, swimming after 5.5 to 14.3.
  it('is the hatch until it was seen, then the swim, from the last look on', () => {
    const { room, brood } = on('2026-02-03', LAID);
    expect(span(expected(room, brood, 'hatch'))).toBe('02-04 02-05 02-07');
    expect(span(expected(room, brood, 'swim'))).toBe('02-07 02-11 02-17');
    const hatched = on('2026-02-10', `${LAID}2026-02-09 A1: wrigglers\n`);
    expect(expected(hatched.room, hatched.brood, 'hatch')).toBeNull();
    expect(span(expected(hatched.room, hatched.brood, 'swim'))).toBe('02-09 02-11 02-17');
    const early = on('2026-02-10', `${LAID}2026-02-06 A1: wrigglers\n`);
    expect(span(expected(early.room, early.brood, 'swim'))).toMatch(/^02-07 /);
    const looks = ['06', '08', '10'].map((day) => `2026-02-${day} A1: wrigglers\n`).join('');
    const last = on('2026-02-10', LAID + looks);
    expect(span(expected(last.room, last.brood, 'swim'))).toMatch(/^02-10 /);
  });
  it('has likely days of the hatch as of the swim, and both begin after the laying', () => {
    const { room, brood } = on('2026-02-03', LAID);
    expect(span(mostLikely(room, brood, 'hatch'))).toBe('02-05 02-05 02-06');
    expect(mostLikely(room, brood, 'swim')?.low).toBeGreaterThan(room.on);
  });
  it('is nothing once they swim, or are gone', () => {
    for (const lines of [SWAM, `${LAID}2026-02-03 A1: eggs gone\n`]) {
      const { room, brood } = on('2026-02-13', lines);
      expect([expected(room, brood, 'hatch'), expected(room, brood, 'swim')]).toEqual([null, null]);
      expect([mostLikely(room, brood, 'hatch'), mostLikely(room, brood, 'swim')]).toEqual([null, null]);
    }
  });
  it('has the most likely days inside it, and says both', () => {
    const { room, brood } = on('2026-02-10', `${LAID}2026-02-09 A1: wrigglers\n`);
    const window = expected(room, brood, 'swim');
    const inside = mostLikely(room, brood, 'swim');
    expect(inside?.low).toBeGreaterThanOrEqual(window?.low ?? Infinity);
    expect(inside?.high).toBeLessThan(window?.high ?? 0);
    expect(window && expectedWords(room, brood, 'swim', window)).toMatch(/^9–17 Feb, most likely \d+–\d+$/);
  });
  it('is the release of what a mouth holds, and no hatching', () => {
    const { room, brood } = on('2026-02-03', `${MOUTH}2026-02-02 C2: Gorse holding\n`, 'Heath-1');
    expect(isHeld(room, brood)).toBe(true);
    expect(nextOf(room, brood)?.what).toBe('release');
    const nest = on('2026-02-03', LAID);
    expect(isHeld(nest.room, nest.brood)).toBe(false);
  });
});

describe('what comes next', () => {
  it('is the hatch, the swim, the first move, the sale, in that order', () => {
    expect(next('2026-02-03', LAID)).toBe('hatch 02-04 02-05 02-07');
    expect(next('2026-02-10', `${LAID}2026-02-09 A1: wrigglers\n`)).toMatch(/^swim 02-09 /);
    expect(next('2026-02-13', SWAM)).toMatch(/^first move /);
    expect(next('2026-02-04', `${LAID}2026-02-03 A1: eggs gone\n`)).toBe('nothing');
  });
  it('is the sale once they were moved, the day of the move is past, or all of them may go', () => {
    const age = '2026-01-03 species krib: sale at 12 weeks\n';
    expect(next('2026-02-20', `${age}${SWAM}2026-02-19 A1: moved all Rowan-1 to C2\n`)).toBe('sale 04-27 04-27 04-27');
    const { room, brood } = on('2026-02-13', SWAM);
    // Swam 6 to 12 Feb; moved 28 to 42 days after.
    expect(span(firstMove(room, brood))).toBe('03-06 03-19 03-26');
    expect(next('2026-03-26', `${age}${SWAM}`)).toBe('first move 03-06 03-19 03-26');
    expect(next('2026-03-27', `${age}${SWAM}`)).toBe('sale 04-27 04-27 04-27');
    expect(next('2026-04-26', `${age}${SWAM}`)).toBe('sale 04-27 04-27 04-27');
    expect(next('2026-04-27', `${age}${SWAM}`)).toBe('nothing');
    const unknown = `2026-01-02 pair Heath: male; female; in C2
2026-02-02 C2: spawned\n2026-02-12 C2: free-swimming\n2026-02-13 C2: moved all Heath-1 to Q1\n`;
    expect(next('2026-03-20', unknown, 'Heath-1')).toBe('nothing');
  });
  it('is no first move of fish that leave younger ones alone, that were moved, mixed or are gone', () => {
    const move = (lines: string, day = '2026-02-20', name?: string): DayWindow | null => {
      const seen = on(day, lines, name);
      return firstMove(seen.room, seen.brood);
    };
    expect(move(SWAM)).not.toBeNull();
    expect(move(LAID, '2026-02-03')).toBeNull();
    expect(move(`2026-01-03 species krib: sibling-safe\n${SWAM}`)).toBeNull();
    expect(move(`${SWAM}2026-02-19 A1: moved all Rowan-1 to C2\n`)).toBeNull();
    expect(move(`${SWAM}2026-02-19 A1: Rowan-1 sold all for 20.00\n`)).toBeNull();
  });
});

describe('the day of laying', () => {
  const found = '2026-03-05 A1: wrigglers\n2026-03-07 A1: free-swimming\n';
  it('is the seen one, or the most likely of the window', () => {
    const seen = on('2026-02-20', SWAM);
    expect(short(laidDay(seen.room, seen.brood))).toBe('02-02');
    expect(datesOf(seen.room, seen.brood).chances).toBeNull();
    expect(ageOf(seen.room, seen.brood)).toEqual({ low: 18, likely: 18, high: 18 });
    const cast = on('2026-03-10', found);
    const { laid, mostLikely: likely, chances } = datesOf(cast.room, cast.brood);
    expect([laid.low, laid.high].map(short)).toEqual(['02-18', '03-02']);
    expect(likely.laid.low).toBeGreaterThan(laid.low ?? Infinity);
    expect(likely.laid.likely).toBe(laid.likely);
    expect(laidDay(cast.room, cast.brood)).toBe(laid.likely);
    expect(chances?.chances.length).toBeGreaterThan(2);
    const age = ageOf(cast.room, cast.brood);
    expect([age.low, age.high]).toEqual([8, 20]);
    expect(ageOf(cast.room, cast.brood, cast.room.on).likely).toBe(cast.room.on - (laid.likely ?? 0));
  });
  it('gives the likely days of each stage inside what was seen of it', () => {
    const { room, brood } = on('2026-03-10', found);
    const dates = datesOf(room, brood);
    for (const at of ['hatched', 'swam'] as const) {
      const [hard, likely] = [dates[at], dates.mostLikely[at]];
      expect(likely?.low).toBeGreaterThanOrEqual(hard?.low ?? Infinity);
      expect(likely?.high).toBeLessThanOrEqual(hard?.high ?? -Infinity);
      expect(hard?.likely).toBe(likely?.likely);
    }
    expect(dates.mostLikely.hatched?.low).toBeGreaterThan(dates.hatched?.low ?? Infinity);
    expect(dates.released).toBeNull();
    expect(span(dates.hatched)).toMatch(/^02-20 .* 03-05$/);
    expect(span(dates.swam)).toMatch(/^03-05 .* 03-07$/);
  });
  it('of a mouthbrooder is told by its release, or by when it was stripped', () => {
    const held = on('2026-03-10', `${MOUTH}2026-02-10 C2: Gorse holding\n2026-03-05 C2: Gorse released\n`, 'Heath-1');
    const dates = datesOf(held.room, held.brood);
    expect(dates.swam).toBeNull();
    expect(span(dates.released)).toMatch(/03-05$/);
    expect(dates.mostLikely.released?.likely).toBe(dates.released?.likely);
  });
  it('of young stripped from the mouth is told by that look, as by no other', () => {
    const held = `${MOUTH}2026-02-10 C2: Gorse holding\n`;
    const laid = (lines: string): string => {
      const { room, brood } = on('2026-03-10', held + lines, 'Heath-1');
      return span(datesOf(room, brood).mostLikely.laid);
    };
    expect(laid('2026-02-24 C2: Gorse stripped\n')).not.toBe(laid(''));
  });
  it('is moved by looks that say when it hatched or swam', () => {
    const eggs = '2026-03-01 A1: eggs seen\n';
    const plain = on('2026-03-10', `${eggs}2026-03-09 A1: free-swimming\n`);
    const told = on('2026-03-10', `${eggs}2026-03-09 A1: free-swimming yesterday\n`);
    const days = ({ room, brood }: Seen): string => span(datesOf(room, brood).swam);
    expect([days(plain).slice(-5), days(told).slice(-5)]).toEqual(['03-09', '03-08']);
  });
});

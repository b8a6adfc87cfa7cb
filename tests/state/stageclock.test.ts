/** What a look at a stage says of the day of laying: by the clock alone, and by all looks together. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { DayWindow, Interval } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { Stage } from '../../src/journal/event.ts';
import { agesAt, castBack, clockOf, swimDays, type Clock } from '../../src/state/stageclock.ts';
import { dayAtAge, narrow } from '../../src/state/stagewindows.ts';
import type { SeenBrood } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { day, roomOn, type Line } from '../support/events.ts';
import { laid, look, noEggs, setUp } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';

const NEST: Clock = {
  guild: 'cave spawner',
  hatch: measure('days', 2, 3, 4),
  swim: measure('days', 6, 9, 12),
  release: null,
  temperature: null,
};
const MOUTH: Clock = { ...NEST, guild: 'mouthbrooder', hatch: null, swim: null, release: measure('days', 14, 18, 22) };
const BIRTH: Clock = { ...NEST, guild: 'livebearer', hatch: null, swim: null };
/** Low, likely and high as `03-01 03-10 03-14`. */
const span = ({ low, likely, high }: DayWindow): string =>
  [low, likely, high].map((one) => (one === null ? 'open' : isoDay(one).slice(5))).join(' ');
const SEEN = day('2026-03-20');

describe('a first look, cast back', () => {
  const cases: readonly [Clock, Stage, string][] = [
    // From laying: hatching at 2 to 4 days (3), swimming at 6 to 12 (9), out of the mouth at 14 to 22 (18).
    [NEST, 'eggs', '03-16 03-18 03-20'],
    [NEST, 'hatched', '03-08 03-17 03-18'],
    [NEST, 'wrigglers', '03-08 03-14 03-18'],
    [NEST, 'free-swimming', '03-01 03-10 03-14'],
    [NEST, 'fry seen', '02-22 03-04 03-14'],
    [MOUTH, 'holding', '02-26 03-17 03-20'],
    [MOUTH, 'released', '02-19 03-01 03-06'],
    [MOUTH, 'stripped', '02-26 03-04 03-10'],
    [BIRTH, 'born', '03-20 03-20 03-20'],
  ];
  it.each(cases)('%# at a stage', (clock, stage, expected) => {
    expect(span(castBack(clock, stage, SEEN, null))).toBe(expected);
  });
  it('reaches back no further than the last look that found none, and never past its own latest day', () => {
    expect(span(castBack(NEST, 'free-swimming', SEEN, day('2026-03-05')))).toBe('03-05 03-10 03-14');
    expect(span(castBack(NEST, 'free-swimming', SEEN, day('2026-03-12')))).toBe('03-12 03-12 03-14');
    expect(span(castBack(NEST, 'free-swimming', SEEN, day('2026-03-18')))).toBe('03-14 03-14 03-14');
  });
  it('at fish that are held for a short while was half of it ago', () => {
    const short = { ...MOUTH, release: measure('days', 3, 4, 4) };
    expect(span(castBack(short, 'holding', SEEN, null))).toBe('03-16 03-18 03-20');
    expect(span(castBack(short, 'stripped', SEEN, null))).toBe('03-16 03-16 03-17');
  });
});

describe('the ages at which a look can find a stage', () => {
  const ages = (clock: Clock, stage: Stage, before = false): number[] => {
    const { low, high }: Interval = agesAt(clock, stage, before);
    return [low, high];
  };
  it('are those of the clock, whole days outward', () => {
    expect(ages(NEST, 'eggs')).toEqual([0, 4]);
    expect(ages(NEST, 'hatched')).toEqual([2, 12]);
    expect(ages(NEST, 'wrigglers')).toEqual([2, 12]);
    expect(ages(NEST, 'free-swimming')).toEqual([6, Infinity]);
    expect(ages(MOUTH, 'holding')).toEqual([0, 22]);
    expect(ages(MOUTH, 'released')).toEqual([14, Infinity]);
    expect(ages(MOUTH, 'stripped')).toEqual([10, Infinity]);
    expect(ages({ ...MOUTH, release: measure('days', 7.5, 9, 11) }, 'stripped')).toEqual([7, Infinity]);
    expect(ages(BIRTH, 'born')).toEqual([0, 3]);
  });
  it('end three weeks after the usual time once they were seen to swim', () => {
    expect(ages(NEST, 'free-swimming', true)).toEqual([6, 33]);
    expect(ages(MOUTH, 'stripped', true)).toEqual([10, 43]);
  });
  it('of young that are born swimming begin with their birth', () => {
    expect(swimDays(BIRTH)).toEqual(measure('days', 0, 0, 0));
    expect(ages(BIRTH, 'wrigglers')).toEqual([0, 0]);
  });
});

describe('the clock of a brood', () => {
  const lines = `2026-02-02 A1: spawned
2026-02-05 A1: test 23 C
2026-03-20 A1: test 28 C
`;
  const clock = (text: string, on: string): Clock => {
    const room = journalOn(on, text);
    const brood = room.stock.broods.get('Rowan-1');
    if (!brood) throw new Error('no Rowan-1');
    return clockOf(room, brood);
  };
  it('runs at the warmth of its tank while it was young, and names the line', () => {
    const { temperature } = clock(lines, '2026-04-01');
    expect(temperature?.value).toMatchObject({ likely: 23 });
    expect(temperature?.line).toEqual({ file: 'fishroom.txt', line: 21 });
  });
  it('runs at what is usual where nobody measured until then', () => {
    expect(clock(lines, '2026-02-04').temperature).toBeNull();
    expect(clock(lines, '2026-02-04').hatch?.likely).toBe(3);
    // Colder by 3 °C than what the usual is stated at, by Q10 = 2.5: 3 × 2.5^0.3 = 3.95 days.
    expect(clock(lines, '2026-02-06').hatch?.likely).toBeCloseTo(3.95, 2);
  });
});

const brood = (room: Room): SeenBrood => {
  const found = room.stock.broods.get('Rowan-1');
  if (!found) throw new Error('no Rowan-1');
  return found;
};
const after = (lines: readonly Line[]): SeenBrood => brood(roomOn('2026-05-01', [...setUp, ...lines]));
const kinds = (lines: readonly Line[]): string[] =>
  roomOn('2026-05-01', [...setUp, ...lines]).problems.map(({ kind }) => kind);
const shown = (window: DayWindow | null): string => (window === null ? 'never' : span(window));
const stated = (low: string, high: string): DayWindow => ({ low: day(low), likely: null, high: day(high) });

// A cave spawner at 25 to 27 °C: hatched after 2.1 to 4.8 days (3), swimming after 5.5 to 14.3 (9.5).
describe('later looks', () => {
  it('bring the latest day of laying forward: they cannot swim so young', () => {
    expect(shown(after([look('2026-03-05', 'wrigglers')]).laid)).toBe('02-18 02-27 03-03');
    const both = after([look('2026-03-05', 'wrigglers'), look('2026-03-07', 'free-swimming')]);
    expect(shown(both.laid)).toBe('02-18 02-27 03-02');
    expect(shown(both.hatched)).toBe('02-20 03-02 03-05');
    expect(shown(both.swam)).toBe('03-05 03-07 03-07');
  });
  it('put the earliest day of laying back: they cannot be so old and not swim', () => {
    const slow = after([
      look('2026-03-05', 'wrigglers'),
      look('2026-03-15', 'wrigglers'),
      look('2026-03-20', 'free-swimming'),
    ]);
    expect(shown(slow.laid)).toBe('02-28 02-28 03-03');
    expect(shown(slow.swam)).toBe('03-15 03-15 03-20');
  });
  it('change nothing of a day that was seen', () => {
    const seen = after([laid('2026-03-01'), look('2026-03-05', 'wrigglers'), look('2026-03-12', 'free-swimming')]);
    expect(shown(seen.laid)).toBe('03-01 03-01 03-01');
    expect(shown(seen.hatched)).toBe('03-02 03-04 03-05');
    expect(shown(seen.swam)).toBe('03-05 03-11 03-12');
  });
  it('that say when it hatched or swam say it of that stage alone', () => {
    const hatched = look('2026-03-06', 'hatched', null, { when: stated('2026-03-03', '2026-03-04') });
    expect(shown(after([laid('2026-03-01'), hatched]).hatched)).toBe('03-03 03-04 03-04');
    const wrigglers = look('2026-03-06', 'wrigglers', null, { when: stated('2026-03-05', '2026-03-05') });
    expect(shown(after([laid('2026-03-01'), wrigglers]).hatched)).toBe('03-02 03-04 03-06');
    const swam = look('2026-03-12', 'free-swimming', null, { when: stated('2026-03-09', '2026-03-10') });
    expect(shown(after([laid('2026-03-01'), swam]).swam)).toBe('03-09 03-10 03-10');
    const seen = look('2026-03-12', 'fry seen', null, { when: stated('2026-03-11', '2026-03-11') });
    expect(shown(after([laid('2026-03-01'), seen]).swam)).toBe('03-03 03-11 03-12');
  });
  it('that say only by when count from no look after that', () => {
    const by = { low: null, likely: null, high: day('2026-03-08') };
    const swam = look('2026-03-12', 'free-swimming', null, { when: by });
    expect(shown(after([laid('2026-03-01'), look('2026-03-10', 'wrigglers'), swam]).swam)).toBe('03-03 03-08 03-08');
  });
  it('at young that were stripped or released are no look at young that swam', () => {
    const ngara = `2026-01-02 species ngara: Aulonocara stuartgranti; mouthbrooder
2026-01-02 harem Heath: ngara; male; females Gorse and Ling; in C2
2026-02-10 C2: Gorse holding
`;
    const seen = (line: string): string[] => {
      const found = journalOn('2026-05-01', ngara + line).stock.broods.get('Heath-1');
      return [shown(found?.swam ?? null), shown(found?.released ?? null).slice(-5)];
    };
    expect(seen('2026-02-26 C2: Gorse stripped\n')).toEqual(['never', '02-26']);
    expect(seen('2026-03-03 C2: Gorse released\n')).toEqual(['never', '03-03']);
    expect(seen('2026-03-03 C2: Gorse released yesterday\n')).toEqual(['never', '03-02']);
  });
  it('at a birth are the birth: they swam from that day on', () => {
    const limia = '2026-02-02 trio Yew: limia; male; 2 females; in C2\n2026-03-01 C2: Yew born 20\n';
    const found = journalOn('2026-05-01', limia).stock.broods.get('Yew-1');
    expect([shown(found?.laid ?? null), shown(found?.swam ?? null)]).toEqual([
      '03-01 03-01 03-01',
      '03-01 03-01 03-01',
    ]);
  });
  it('on the day of the one before say no more than that day', () => {
    const sameDay = [laid('2026-03-01'), look('2026-03-10', 'wrigglers'), look('2026-03-10', 'free-swimming')];
    expect(shown(after(sameDay).swam)).toBe('03-10 03-10 03-10');
  });
  it('are told as a contradiction from the day on which they cannot be', () => {
    // Eggs last 4.8 days at the longest.
    expect(kinds([laid('2026-03-01'), laid('2026-03-06', null, { as: 'seen' })])).toEqual([]);
    expect(kinds([laid('2026-03-01'), look('2026-03-16', 'wrigglers')])).toEqual([]);
    expect(kinds([laid('2026-03-01'), look('2026-03-17', 'wrigglers')])).toEqual(['stages-contradict']);
    expect(kinds([laid('2026-03-01'), look('2026-03-02', 'wrigglers')])).toEqual(['stages-contradict']);
    expect(kinds([laid('2026-03-01'), look('2026-03-03', 'wrigglers')])).toEqual([]);
  });
  it('that found no eggs bound what is found later', () => {
    const seen = after([noEggs('2026-02-25'), look('2026-03-05', 'wrigglers')]);
    expect(shown(seen.laid)).toBe('02-25 02-27 03-03');
    expect(shown(seen.hatched)).toBe('02-27 03-02 03-05');
  });
});

describe('two windows of one thing', () => {
  const window = (low: number | null, likely: number | null, high: number | null): DayWindow => {
    const on = (at: number | null): DayWindow['low'] =>
      at === null ? null : day(`2026-03-${String(at).padStart(2, '0')}`);
    return { low: on(low), likely: on(likely), high: on(high) };
  };
  it('allow what both allow', () => {
    expect(narrow(null, window(1, 2, 3))).toEqual(window(1, 2, 3));
    expect(narrow(window(1, 4, 10), window(3, 5, 8))).toEqual(window(3, 5, 8));
    expect(narrow(window(3, 5, 8), window(1, 9, 10))).toEqual(window(3, 8, 8));
    expect(narrow(window(1, 4, 5), window(5, null, 8))).toEqual(window(5, 5, 5));
  });
  it('that share no day leave the first as it was', () => {
    expect(narrow(window(1, 2, 3), window(4, 5, 6))).toEqual(window(1, 2, 3));
  });
  it('that are open bound nothing on that side', () => {
    expect(narrow(window(null, 4, 10), window(3, null, null))).toEqual(window(3, 4, 10));
    expect(narrow(window(3, 4, null), window(null, 5, 8))).toEqual(window(3, 5, 8));
    expect(narrow(window(null, null, null), window(null, null, null))).toEqual(window(null, null, null));
  });
  it('of a laying give the days of an age', () => {
    const laidOn = window(1, 2, 4);
    expect(dayAtAge(laidOn, { low: 2.5, likely: 3.4, high: 4.2 })).toEqual(window(3, 5, 9));
    expect(dayAtAge(window(null, null, 4), { low: 2, likely: 3, high: Infinity })).toEqual(window(null, null, null));
  });
});

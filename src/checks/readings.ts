/** Readings that no fresh or brackish fish room has: a slip of the key, or of the unit. */
import type { Interval } from '../core/interval.ts';
import type { Problem } from '../core/problem.ts';
import type { Event, Reading } from '../journal/event.ts';
import type { Check } from './check.ts';

interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly word: string;
  readonly unit: string;
}

/** What a kit or thermometer at a fish tank can show (ours). Nitrogen as N. */
const POSSIBLE: Readonly<Partial<Record<keyof Reading, Bounds>>> = {
  ph: { low: 3, high: 11, word: 'a pH', unit: '' },
  temperature: { low: 2, high: 42, word: 'a temperature', unit: ' C' },
  kh: { low: 0, high: 60, word: 'a KH', unit: ' dH' },
  gh: { low: 0, high: 100, word: 'a GH', unit: ' dH' },
  tan: { low: 0, high: 50, word: 'a total ammonia', unit: ' mg/L as N' },
  no2: { low: 0, high: 50, word: 'a nitrite', unit: ' mg/L as N' },
  no3: { low: 0, high: 300, word: 'a nitrate', unit: ' mg/L as N' },
  oxygen: { low: 0, high: 20, word: 'an oxygen', unit: ' mg/L' },
};

export const oddReadings: Check = ({ events }) => events.flatMap(oddIn);

function oddIn(event: Event): Problem[] {
  if (event.kind !== 'tested') return [];
  const { reading, place } = event;
  return KEYS.flatMap((key) => {
    const bounds = POSSIBLE[key];
    const value: Interval | null = reading[key];
    if (bounds === undefined || value === null || (value.high >= bounds.low && value.low <= bounds.high)) return [];
    const shown = Math.round((value.likely ?? value.low) * 100) / 100;
    return [
      {
        kind: 'odd-reading',
        weight: 'doubt',
        says: `${bounds.word} of ${shown}${bounds.unit} is none that a fish room has`,
        write: 'the number as it was read, with its unit where it is not the usual one',
        at: place,
        also: [],
      },
    ];
  });
}

const KEYS = ['ph', 'temperature', 'kh', 'gh', 'tan', 'no2', 'no3', 'oxygen'] as const;

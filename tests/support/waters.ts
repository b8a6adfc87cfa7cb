/** A small room by hand: one loop with three tanks, one tank alone, and what most water tests need of it. */
import type { Heads, Reading } from '../../src/journal/event.ts';
import { exactly } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { Subject } from '../../src/journal/subject.ts';
import { loop, tank, type Line } from './events.ts';

export const tanksOfLoop = (name: string, except: readonly string[] = []): Subject => ({
  kind: 'tanks',
  of: { loop: name },
  except,
});

export const cm = (value: number) => measure('mm', value * 10);

/** `loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm`, A1 A2 B1 on it, `tank C1: 54 L; alone; sponge filter`. */
export const setUpOn = (on: string): readonly Line[] => [
  [
    on,
    loop('Long'),
    {
      kind: 'loop declared',
      loop: 'Long',
      sump: measure('L', 240),
      returnFlow: measure('L/h', 3200),
      layers: 6,
      spillsAt: measure('mm', 80),
      spare: null,
    },
  ],
  boxed(on, 'A1', [100, 40, 40]),
  boxed(on, 'A2', [100, 40, 40]),
  boxed(on, 'B1', [60, 40, 35]),
  [on, tank('C1'), { ...bareTank('C1'), nominal: measure('L', 54), plumbing: 'alone', filter: 'sponge filter' }],
];

export const SET_UP = setUpOn('2026-01-04');

function boxed(on: string, name: string, [length, width, height]: readonly [number, number, number]): Line {
  return [on, tank(name), { ...bareTank(name), size: [cm(length), cm(width), cm(height)], plumbing: { on: 'Long' } }];
}

export function bareTank(name: string) {
  return {
    kind: 'tank declared',
    tank: name,
    size: null,
    nominal: null,
    live: null,
    plumbing: null,
    filter: null,
    quarantine: null,
    inTank: null,
    heated: null,
    hides: null,
  } as const;
}

export const level = (on: string, mm: number): Line => [
  on,
  loop('Long'),
  { kind: 'level', level: measure('mm', mm), from: 'bottom' },
];

export const cleaned = (on: string, layers: number, of: number | null = 6): Line => [
  on,
  loop('Long'),
  { kind: 'layers cleaned', layers, of },
];

export const begin = (
  on: string,
  about: Subject,
  kind: 'off the loop' | 'air filter' | 'lights off' | 'pump off' | 'rocks out' | 'heat raised',
): Line => [on, about, { kind: 'measure begun', measure: kind, until: null, lasts: null, over: false, to: null }];

export const undo = (
  on: string,
  about: Subject,
  kind: 'off the loop' | 'air filter' | 'lights off' | 'pump off' | 'rocks out' | 'heat raised',
): Line => [on, about, { kind: 'measure undone', measure: kind }];

export const change = (on: string, about: Subject, percent: number): Line => [
  on,
  about,
  { kind: 'water changed', amount: measure('share', percent / 100) },
];

const NO_READING: Reading = {
  ph: null,
  kh: null,
  gh: null,
  tan: null,
  no2: null,
  no3: null,
  temperature: null,
  conductivity: null,
  salinity: null,
  oxygen: null,
  chlorine: null,
};

export const test = (on: string, about: Subject, reading: Partial<Reading>): Line => [
  on,
  about,
  { kind: 'tested', reading: { ...NO_READING, ...reading } },
];

export const heads = (count: number): Heads => ({
  total: exactly(count),
  males: null,
  females: null,
  young: null,
  as: 'counted',
});

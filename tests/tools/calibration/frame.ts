/**
 * Calibration: rooms whose truth is known, their journals written as keepers write, and whether the
 * windows that Tankside gives hold that truth. Each case file exports one `Calibration`.
 */
import { dayFromIso, toDay } from '../../../src/core/day.ts';
import type { Day } from '../../../src/core/day.ts';
import { readJournal } from '../../../src/language/read.ts';
import { foldRoom } from '../../../src/state/fold.ts';
import type { Room } from '../../../src/state/draft.ts';
import { median } from '../../../src/core/stats.ts';

/** A closed range of days or fish. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** One room: the truth, the window from the journal, and the window that the default alone would give. */
export interface Trial {
  readonly truth: number;
  readonly window: Range;
  readonly default: Range;
}

export interface Calibration {
  readonly name: string;
  readonly unit: 'days' | 'fish';
  /** The same seed gives the same room; null where that room has nothing to ask about. */
  trial(seed: number): Trial | null;
}

export interface Outcome {
  readonly name: string;
  readonly unit: Calibration['unit'];
  readonly cases: number;
  /** Share of truths inside the window. */
  readonly held: number;
  /** Median widths, high less low. */
  readonly width: number;
  readonly defaultWidth: number;
  /** Share of truths inside the default's window. */
  readonly defaultHeld: number;
  /** Seeds whose truth fell outside, to look at one by one. */
  readonly missed: readonly number[];
}

/** Shares of truths that an 80 % window may hold. */
export const HELD = { low: 0.7, high: 0.9 };

/** Runs seeds from 1 on until there are so many cases. */
export function calibrate(calibration: Calibration, cases: number): Outcome {
  const trials: { readonly seed: number; readonly trial: Trial }[] = [];
  for (let seed = 1; trials.length < cases && seed <= cases * 5; seed += 1) {
    const trial = calibration.trial(seed);
    if (trial !== null) trials.push({ seed, trial });
  }
  const share = (range: (trial: Trial) => Range): number =>
    trials.filter(({ trial }) => inside(trial.truth, range(trial))).length / Math.max(1, trials.length);
  const width = (range: (trial: Trial) => Range): number =>
    median(trials.map(({ trial }) => range(trial).high - range(trial).low)) ?? 0;
  return {
    name: calibration.name,
    unit: calibration.unit,
    cases: trials.length,
    held: share((trial) => trial.window),
    width: width((trial) => trial.window),
    defaultWidth: width((trial) => trial.default),
    defaultHeld: share((trial) => trial.default),
    missed: trials.filter(({ trial }) => !inside(trial.truth, trial.window)).map(({ seed }) => seed),
  };
}

function inside(truth: number, range: Range): boolean {
  return range.low <= truth && truth <= range.high;
}

/** The room that a journal tells of on a day; throws where a line was not read, since the simulator would be at fault. */
export function roomFrom(journal: string, on: string | Day): Room {
  const reading = readJournal('fishroom.txt', journal, () => ({ ok: false, says: 'no other file' }));
  const stopped = reading.problems.find((problem) => problem.weight === 'stops');
  if (stopped) throw new Error(`${stopped.says} at line ${String(stopped.at.line)}:\n${journal}`);
  return foldRoom(reading.events, typeof on === 'string' ? (dayFromIso(on) ?? toDay(0)) : on);
}

/** The table that `npm run calibrate` prints. */
export function tableOf(outcomes: readonly Outcome[]): string {
  const heads = ['what', 'cases', 'inside', 'width', 'default inside', 'default width'];
  const rows = outcomes.map((one) => [
    one.name,
    String(one.cases),
    percent(one.held),
    `${one.width.toFixed(1)} ${one.unit}`,
    percent(one.defaultHeld),
    `${one.defaultWidth.toFixed(1)} ${one.unit}`,
  ]);
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => (row[i] ?? '').length)));
  return [heads, ...rows]
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function percent(share: number): string {
  return `${(share * 100).toFixed(0)} %`;
}

/** What is wrong with an outcome, in words; nothing where all is well. */
export function faultsOf(one: Outcome, cases: number): string[] {
  return [
    ...(one.cases < cases ? [`${one.name}: ${String(one.cases)} cases, wanted ${String(cases)}`] : []),
    ...(one.held < HELD.low || one.held > HELD.high
      ? [`${one.name}: ${percent(one.held)} inside, wanted 70 to 90 %`]
      : []),
    ...(one.width > one.defaultWidth ? [`${one.name}: wider than the default alone`] : []),
  ];
}

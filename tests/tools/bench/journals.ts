/** Journals that the benchmark asks about. */
import { closeSync, copyFileSync, fsyncSync, openSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { addDays, dayFromIso, dayOf as civilDay, isoDay } from '../../../src/core/day.ts';
import { generateJournal } from '../generate.ts';

export interface Sample {
  readonly path: string;
  /** The day of its last line, which is the day asked about. */
  readonly last: string;
}

/** Long enough ago for a file's times to prove that it has not changed. */
const AN_HOUR = 3_600;

function settle(path: string): void {
  const then = Date.now() / 1000 - AN_HOUR;
  utimesSync(path, then, then);
}

export function generated(folder: string, lines: number): Sample & { readonly later: readonly string[] } {
  const path = join(folder, `${lines}.txt`);
  const all = generateJournal(lines + LATER).split('\n');
  const later = all.splice(lines, LATER);
  writeFileSync(path, `${all.slice(0, lines).join('\n')}\n`);
  settle(path);
  return { path, later, last: dayOf(all[lines - 1]) };
}

/** The same with every date moved, so that its last line is of today: the list of a keeper who writes every day. */
export function endingToday(folder: string, sample: ReturnType<typeof generated>): ReturnType<typeof generated> {
  const path = join(folder, `today-${basename(sample.path)}`);
  const today = new Date();
  const now = civilDay(today.getFullYear(), today.getMonth() + 1, today.getDate()) ?? fail();
  const later = now - (dayFromIso(sample.last) ?? fail());
  const moved = (text: string): string =>
    text.replace(/^\d{4}-\d{2}-\d{2}/gm, (date) => isoDay(addDays(dayFromIso(date) ?? fail(), later)));
  writeFileSync(path, moved(readFileSync(sample.path, 'utf8')));
  settle(path);
  return { path, later: sample.later.map(moved), last: moved(sample.last) };
}

function fail(): never {
  throw new RangeError('no such date');
}

function dayOf(line: string | undefined): string {
  return (line ?? '').slice(0, 10);
}

/** Lines that an edit elsewhere adds. */
const LATER = 1_000;

/** A room of four hundred tanks in which so many ask for new water. */
export function rows(folder: string, count: number): Sample {
  const path = join(folder, `rows-${count}.txt`);
  const tanks = Array.from({ length: 400 }, (_, i) => `2026-01-01 tank T${i}: 60 L; alone`);
  const chores = tanks.slice(0, count).map((_, i) => `2026-01-01 T${i}: water change 30 % every 7 days`);
  writeFileSync(path, `2026-01-01 room: units metric\n${[...tanks, ...chores].join('\n')}\n`);
  settle(path);
  return { path, last: '2026-02-01' };
}

/** Years of lines are on the disk already when one more is written: none of its time is spent on them. */
function lasting(path: string): void {
  const file = openSync(path, 'r+');
  fsyncSync(file);
  closeSync(file);
}

/** A copy that can be put back as it was, or with the lines that come later, as it never was before. */
export function changing(
  folder: string,
  name: string,
  { path, last, later }: ReturnType<typeof generated>,
): Sample & {
  readonly asItWas: () => void;
  readonly longer: () => void;
  /** The same file on the last day of the lines that come later. */
  readonly then: Sample;
} {
  const copy = join(folder, `${name}.txt`);
  let times = 0;
  copyFileSync(path, copy);
  return {
    path: copy,
    last,
    then: { path: copy, last: dayOf(later.at(-1)) },
    asItWas: () => {
      copyFileSync(path, copy);
      lasting(copy);
    },
    longer: () => {
      times += 1;
      const news = `${dayOf(later.at(-1))} room: note seen ${times} times`;
      writeFileSync(copy, `${readFileSync(path, 'utf8')}${[...later, news].join('\n')}\n`);
      lasting(copy);
    },
  };
}

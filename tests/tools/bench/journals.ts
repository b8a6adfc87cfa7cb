/** Journals that the benchmark asks about. */
import { copyFileSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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

export function generated(folder: string, lines: number): Sample {
  const path = join(folder, `${lines}.txt`);
  const text = generateJournal(lines);
  writeFileSync(path, text);
  settle(path);
  return { path, last: text.slice(text.lastIndexOf('\n', text.length - 2) + 1).slice(0, 10) };
}

/** A room of four hundred tanks in which so many ask for new water. */
export function rows(folder: string, count: number): Sample {
  const path = join(folder, `rows-${count}.txt`);
  const tanks = Array.from({ length: 400 }, (_, i) => `2026-01-01 tank T${i}: 60 L; alone`);
  const chores = tanks.slice(0, count).map((_, i) => `2026-01-01 T${i}: water change 30 % every 7 days`);
  writeFileSync(path, `2026-01-01 room: units metric\n${[...tanks, ...chores].join('\n')}\n`);
  settle(path);
  return { path, last: '2026-02-01' };
}

/** A copy that can be put back as it was, or with a thousand lines more that it never had before. */
export function changing(
  folder: string,
  name: string,
  { path, last }: Sample,
): Sample & {
  readonly asItWas: () => void;
  readonly longer: () => void;
} {
  const copy = join(folder, `${name}.txt`);
  let times = 0;
  const more = (): string[] => Array.from({ length: 1_000 }, (_, i) => `${last} room: note seen ${i}, ${times}`);
  copyFileSync(path, copy);
  return {
    path: copy,
    last,
    asItWas: () => copyFileSync(path, copy),
    longer: () => {
      times += 1;
      writeFileSync(copy, `${readFileSync(path, 'utf8')}${more().join('\n')}\n`);
    },
  };
}

/** Reading on from a footing gives what reading the whole journal gives, to the byte, or is not done. */
import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/core/day.ts';
import { contentOfText } from '../../../src/files/content.ts';
import type { Files } from '../../../src/files/port.ts';
import { takeAlong } from '../../../src/cli/footing/worked.ts';
import { readerOf } from '../../../src/cli/reader.ts';
import type { Read } from '../../../src/cli/reader.ts';
import { chestInMemory } from '../../support/chest.ts';
import type { CountingChest } from '../../support/chest.ts';
import { day } from '../../support/events.ts';
import { plain } from '../../support/plain.ts';
import { tankside } from '../../support/run.ts';
import { SAMPLE } from '../../support/sample.ts';
import { generateJournal } from '../../tools/generate.ts';

const EXAMPLE = fs.readFileSync(new URL('../../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const NO_FILES: Files['also'] = () => () => ({ ok: false, says: 'there is no such file' });

function reading(text: string, chest: CountingChest | null, also = NO_FILES): Read {
  const nothing = (): never => {
    throw new Error('only reading is asked for');
  };
  const files: Files = { read: nothing, also, isFile: nothing, create: nothing, append: nothing, replace: nothing };
  return readerOf({ files, chest }, '/room/fishroom.txt').read({
    ok: true,
    content: contentOfText(text),
    problems: [],
    notices: [],
  });
}

/** Keeps a footing of one text, reads another with it and without, and compares. True where it was read on. */
function sameAfter(
  before: string,
  after: string,
  on: string,
  also: { before?: Files['also']; after?: Files['also'] } = {},
): boolean {
  const chest = chestInMemory();
  reading(before, chest, also.before).room(day(on), day(on));
  const kept = reading(after, chest, also.after);
  const truth = reading(after, null, also.after);
  for (const days of [0, 3]) {
    const asked = addDays(day(on), days);
    expect(plain(kept.room(asked, day(on)))).toEqual(truth.room(asked, day(on)));
  }
  const problems = (read: Read): unknown[] => read.latest.problems.map((one) => JSON.stringify(one)).sort();
  expect(problems(kept)).toEqual(problems(truth));
  return kept.latest.behind !== null;
}

/** The text up to the end of so many lines. */
function lines(text: string, count: number): string {
  return `${text.split('\n').slice(0, count).join('\n')}\n`;
}

describe('the room is the same', { timeout: 120_000 }, () => {
  test('for every prefix of the sample, read on from every shorter one of whole lines', () => {
    const count = SAMPLE.trimEnd().split('\n').length;
    let onward = 0;
    for (let from = 1; from <= count; from += 1) {
      for (let to = from; to <= count; to += 1) {
        if (sameAfter(lines(SAMPLE, from), lines(SAMPLE, to), '2026-03-11')) onward += 1;
      }
    }
    expect(onward).toBeGreaterThan(50);
  });

  test('for the example, read on from places all over it', () => {
    const count = EXAMPLE.trimEnd().split('\n').length;
    let onward = 0;
    for (let from = 200; from < count; from += 61) {
      for (const more of [1, 5, 40]) {
        if (sameAfter(lines(EXAMPLE, from), lines(EXAMPLE, from + more), '2026-11-22')) onward += 1;
      }
    }
    expect(onward).toBeGreaterThan(10);
  });

  test('for journals from the generator, with a line changed among the latest', () => {
    const text = generateJournal(700, 5);
    const all = text.trimEnd().split('\n');
    const on = all.at(-1)?.slice(0, 10) ?? '';
    let onward = 0;
    for (const at of [1, 2, 4, 7, 12, 20, 30]) {
      const changed = all.map((line, index) =>
        index === all.length - at ? `${line.slice(0, 10)} N1: all well` : line,
      );
      if (sameAfter(text, `${changed.join('\n')}\n`, on)) onward += 1;
      if (sameAfter(text, text.replace(/\n$/, ''), on)) onward += 1;
    }
    expect(onward).toBeGreaterThan(7);
  });
});

describe('what is written behind a footing', { timeout: 60_000 }, () => {
  const on = '2026-03-20';
  const old = lines(SAMPLE, 100);
  test.each<readonly [string, string, boolean]>([
    ['a look', '2026-03-15 A1: all well', true],
    ['nothing', '# only a remark', true],
    ['a line that is not read', '2026-03-15 A1: hoovered the hippo', true],
    ['a line without a date', 'A1: all well', true],
    ['a brood of the next number', '2026-03-15 A1: spawned brood Rowan-7', true],
    ['a line of long ago', '2026-01-20 A1: all well', false],
    ['a new tank', '2026-03-15 tank Z9: 54 L; alone', false],
    ['a convention', '2026-03-15 room: units US', false],
    ['another file', 'also read "more.txt"', false],
    ['a mark of a merge', '<<<<<<< HEAD', false],
    ['a mistake of these days', '2026-03-11 A1: all well\n2026-03-11 mistake A1: all well', true],
  ])('%s', (_, line, onward) => {
    expect(sameAfter(old, `${old}${line}\n`, on)).toBe(onward);
  });

  test('a name that an earlier brood was given because it was free', () => {
    const unnamed = `${old}2026-01-25 A1: spawned\n2026-03-15 A1: all well\n`;
    const begun = [...reading(unnamed, null).room(day(on), day(on)).stock.broods.keys()].filter(
      (name) => !unnamed.includes(`brood ${name}`),
    );
    expect(begun.length).toBeGreaterThan(0);
    for (const name of begun) sameAfter(unnamed, `${unnamed}2026-03-16 A1: spawned brood ${name}\n`, on);
  });
});

describe('a footing is not believed', () => {
  const on = '2026-03-20';
  const more: Files['also'] = () => () => ({
    ok: true,
    name: 'more.txt',
    text: '2026-01-02 note other\n',
    problems: [],
  });
  const whole = `${SAMPLE}2026-03-18 A1: all well\n`;

  test('where one letter of long ago was changed', () => {
    expect(sameAfter(whole, whole.replace('pinned', 'hiding'), on)).toBe(false);
  });

  test('where a file that is read in has come, or says something else', () => {
    const text = `also read "more.txt"\n${whole}`;
    expect(sameAfter(text, text, on, { before: more, after: more })).toBe(true);
    expect(sameAfter(text, text, on, { after: more })).toBe(false);
    expect(sameAfter(text, text, on, { before: more })).toBe(false);
  });

  test('where the clock went back beyond it', () => {
    const chest = chestInMemory();
    reading(whole, chest).room(day(on), day(on));
    const kept = reading(whole, chest);
    expect(kept.latest.behind).not.toBeNull();
    const early = day('2026-02-01');
    expect(plain(kept.room(early, early))).toEqual(reading(whole, null).room(early, early));
  });
});

test('every question is answered the same with a footing', { timeout: 60_000 }, async () => {
  const today = '2026-11-22';
  const chest = chestInMemory();
  const journal = '/room/fishroom.txt';
  await tankside(['due', '--on', '2026-11-22'], { today, files: { [journal]: EXAMPLE }, chest });
  takeAlong(chest);
  const kinds = [...chest.kept.keys()].map((key) => key.split(' ')[0]);
  expect(new Set(kinds)).toEqual(new Set(['room', 'formulas', 'shapes', 'paces']));
  const files = { [journal]: `${EXAMPLE}2026-11-22 S5: all well\n` };
  const questions = 'due walk pairs broods tanks loops water sale holds promises cultures kin money check'.split(' ');
  for (const words of [
    ...questions.map((one) => [one]),
    ['why', 'long'],
    ['history', 'spawned'],
    ['due', '--days', '30'],
  ]) {
    for (const form of [[], ['--json']]) {
      const argv = [...words, ...form, '--on', '2026-11-22'];
      expect(await tankside(argv, { today, files, chest })).toEqual(await tankside(argv, { today, files }));
    }
  }
  expect(chest.found).toBeGreaterThan(20);
});

describe('a line is jotted the same with a footing', { timeout: 60_000 }, () => {
  const today = '2026-11-22';
  const path = '/room/fishroom.txt';
  /** What the shell is told: 0 saved, 2 refused. */
  test.each<readonly [string, number]>([
    ['S5: all well', 0],
    ['N1: spawned, about 80 eggs', 0],
    ['N2: Birch-4 counted 60', 0],
    ['S3: sold 3 Aspen-3 to "somebody"', 0],
    ['2026-10-01 S5: all well', 0],
    ['tank Z9: 54 L; alone', 0],
    ['room: spent 12 "salt"', 0],
    ['also read "more.txt"', 2],
    ['# a remark', 0],
    ['N1: hoovered the hippo', 2],
    ['C2: all well', 2],
    ['pair Nobody: nothing; in N1', 2],
    ['mistake S5: all well', 2],
  ])('%s', async (line, status) => {
    const chest = chestInMemory();
    const files = { [path]: EXAMPLE };
    await tankside(['due', '--on', today], { today, files, chest });
    for (const form of [[], ['--json'], ['--dry-run']]) {
      const argv = ['jot', ...form, line];
      const told = await tankside(argv, { today, files, chest });
      expect(told).toEqual(await tankside(argv, { today, files }));
      expect(told.status).toBe(status);
    }
    expect(chest.found).toBeGreaterThan(0);
  });

  test('a name that would make an older brood another', async () => {
    const chest = chestInMemory();
    const files = { [path]: `${SAMPLE}2026-03-18 A1: all well\n` };
    await tankside(['due', '--on', '2026-03-20'], { today: '2026-03-20', files, chest });
    const argv = ['jot', 'A1: spawned brood Rowan-1'];
    const told = await tankside(argv, { today: '2026-03-20', files, chest });
    expect(told).toEqual(await tankside(argv, { today: '2026-03-20', files }));
    expect(told.status).toBe(2);
  });
});

describe(
  'lines jotted one after the other are told the same with what the line before left',
  { timeout: 60_000 },
  () => {
    const path = '/room/fishroom.txt';
    type Step = readonly [line: string, today: string];
    const tell = async (steps: readonly Step[], chest: CountingChest | null, more = ''): Promise<unknown[]> => {
      const disk = new Map([
        [path, `also read "more.txt"\n${EXAMPLE}`],
        ['/room/more.txt', ''],
      ]);
      const told: unknown[] = [];
      for (const [index, [line, today]] of steps.entries()) {
        // What is read in changes after the first line, and back.
        disk.set('/room/more.txt', index === 1 ? more : '');
        const files = Object.fromEntries(disk);
        // A footing is laid anew where the old one does not fit any more.
        if (chest !== null) await tankside(['due', '--on', today], { today, files, chest });
        const answer = await tankside(['jot', line], { today, files, ...(chest === null ? {} : { chest }) });
        expect(answer.status).toBe(0);
        told.push(answer);
        disk.set(path, answer.files[path] ?? '');
      }
      return told;
    };
    const steps: readonly Step[] = [
      ['North: level 40 mm', '2026-11-22'],
      ['S5: water change 30 %', '2026-11-22'],
      ['N1: no eggs', '2026-11-22'],
      ['S5: all well', '2026-11-23'],
      ['S5: note looked in', '2026-11-23'],
    ];

    test.each(['', '2026-11-20 S4: sick "white spot", catching\n'])('with %j in a file read in', async (more) => {
      const chest = chestInMemory();
      const files = { [path]: `also read "more.txt"\n${EXAMPLE}`, '/room/more.txt': '' };
      await tankside(['due', '--on', '2026-11-22'], { today: '2026-11-22', files, chest });
      expect(await tell(steps, chest, more)).toEqual(await tell(steps, null, more));
      expect(chest.kept.has(`rows ${path}`)).toBe(true);
    });
  },
);

test('a line jotted to a journal of which nothing is kept leaves a footing', async () => {
  const path = '/room/fishroom.txt';
  const world = { today: '2026-11-22', files: { [path]: EXAMPLE } };
  const chest = chestInMemory();
  const told = await tankside(['jot', 'S5: water change 30 %'], { ...world, chest });
  expect(told).toEqual(await tankside(['jot', 'S5: water change 30 %'], world));
  expect([...chest.kept.keys()]).toContain(`room ${path}`);
  const { files } = told;
  expect(chest.found).toBe(0);
  expect(await tankside(['due'], { today: '2026-11-22', files, chest })).toEqual(
    await tankside(['due'], { today: '2026-11-22', files }),
  );
  expect(chest.found).toBe(1);
});

/** Answers said again are the answers: over the example, journals from a generator, and every prefix of the sample. */
import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Context } from '../../../src/cli/context.ts';
import { recall } from '../../../src/cli/memory/recall.ts';
import { keyOf, localDay } from '../../../src/cli/memory/remembered.ts';
import { watch } from '../../../src/cli/memory/remember.ts';
import { run } from '../../../src/cli/program.ts';
import { toDay } from '../../../src/core/day.ts';
import { shelfIn } from '../../../src/files/cache/shelf.ts';
import { machineFiles } from '../../../src/files/files.ts';
import { folder } from '../../support/folder.ts';
import { SAMPLE } from '../../support/sample.ts';
import { generateJournal } from '../../tools/generate.ts';

interface Said {
  readonly status: number;
  readonly said: readonly (readonly [1 | 2, string])[];
}

interface Place {
  readonly cwd: string;
  readonly cache: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly now?: () => Date;
}

const NOON = new Date(2026, 1, 15, 12);

function context({ cwd, env = {}, now = () => NOON }: Place, said: [1 | 2, string][]): Context {
  const output = (stream: 1 | 2): Context['out'] => ({
    isTTY: false,
    columns: null,
    write: (text) => void said.push([stream, text]),
  });
  return {
    out: output(1),
    err: output(2),
    input: { isTTY: false, text: () => Promise.resolve('') },
    env,
    cwd,
    files: machineFiles,
    chest: null,
    prompt: () => {
      throw new Error('nobody is at the prompt');
    },
    today: () => Promise.resolve(toDay(localDay(now()))),
  };
}

const key = (argv: readonly string[], cwd: string): string =>
  keyOf({ build: 'test', engine: 'test', argv, cwd, columns: null });

async function afresh(argv: readonly string[], place: Place): Promise<Said> {
  const said: [1 | 2, string][] = [];
  return { status: await run(argv, context(place, said)), said };
}

/** As a start does it: what is remembered is said, else the program is run, and watched. */
async function started(argv: readonly string[], place: Place): Promise<Said & { readonly again: boolean }> {
  const { cwd, cache, env = {}, now = () => NOON } = place;
  const shelf = shelfIn(cache);
  const before = await recall(shelf, key(argv, cwd), { env, now });
  if (before !== null) return { status: before.status, said: before.said, again: true };
  const said: [1 | 2, string][] = [];
  const watched = watch(context(place, said), shelf, key(argv, cwd), now);
  const status = await run(argv, watched.context);
  await watched.keep(status);
  return { status, said, again: false };
}

async function sameThrice(argv: readonly string[], place: Place): Promise<void> {
  const truth = await afresh(argv, place);
  expect(await started(argv, place)).toEqual({ ...truth, again: false });
  expect(await started(argv, place)).toEqual({ ...truth, again: true });
}

function placed(text: string): Place & { readonly journal: string } {
  const cwd = folder();
  const journal = path.join(cwd, 'fishroom.txt');
  fs.writeFileSync(journal, text);
  return { cwd, journal, cache: path.join(folder(), 'cache') };
}

describe('an answer said again is the answer', { timeout: 60_000 }, () => {
  test('for every question about the sample, in words and as JSON', async () => {
    const place = placed(SAMPLE);
    const questions = 'due walk pairs broods tanks loops water sale holds promises cultures kin money check'.split(' ');
    const lines = [
      ...questions,
      'why long',
      'history spawned',
      'due --days 30',
      'due --minutes 40',
      'broods Nobody',
      'deu',
    ];
    for (const line of lines) {
      await sameThrice(line.split(' '), place);
      await sameThrice([...line.split(' '), '--json', '--on', '2026-03-11'], place);
    }
  });

  test('for every prefix of the sample, one growing out of the other in place', async () => {
    const place = placed('');
    for (let end = 0; end <= SAMPLE.length; end += 11) {
      fs.writeFileSync(place.journal, SAMPLE.slice(0, end));
      const argv = ['due', '--on', '2026-02-15'];
      expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: false });
      expect((await started(argv, place)).again).toBe(true);
    }
  });

  test('for the example and for journals from the generator', async () => {
    const example = new URL('../../../examples/workshop/fishroom.txt', import.meta.url);
    for (const text of [fs.readFileSync(example, 'utf8'), generateJournal(300, 3), generateJournal(400, 4)]) {
      await sameThrice(['due', '--on', '2026-11-22'], placed(text));
    }
  });
});

describe('what was remembered is not believed', () => {
  const argv = ['due', '--on', '2026-02-15'];

  test.each<readonly [string, (place: Place & { readonly journal: string }) => void]>([
    [
      'a word was changed, in the same length',
      ({ journal }) => fs.writeFileSync(journal, SAMPLE.replace('pinned', 'hiding')),
    ],
    ['a line was added', ({ journal }) => fs.appendFileSync(journal, '2026-02-15 A1: lights on\n')],
    ['the journal has gone', ({ journal }) => fs.rmSync(journal)],
    ['half a line is still to be finished', ({ journal }) => fs.writeFileSync(`${journal}.pending`, 'no record')],
  ])('where %s', async (_, change) => {
    const place = placed(SAMPLE);
    await started(argv, place);
    change(place);
    expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: false });
  });

  test('where a nearer journal has come', async () => {
    const { cwd, cache } = placed(SAMPLE);
    const below = path.join(cwd, 'below');
    fs.mkdirSync(below);
    const place = { cwd: below, cache };
    await started(argv, place);
    expect((await started(argv, place)).again).toBe(true);
    fs.writeFileSync(path.join(below, 'fishroom.txt'), '2026-01-01 tank Z1: 54 L; alone\n');
    expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: false });
  });

  test('where a link to nothing has come into a nearer folder', async () => {
    const { cwd, cache } = placed(SAMPLE);
    const below = path.join(cwd, 'below');
    fs.mkdirSync(below);
    const place = { cwd: below, cache };
    await started(argv, place);
    fs.symlinkSync('gone.txt', path.join(below, 'fishroom.txt'));
    expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: false });
    expect((await started(argv, place)).again).toBe(false);
    fs.unlinkSync(path.join(below, 'fishroom.txt'));
    expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: true });
  });

  test('where a file that is read in was changed, or has come', async () => {
    const place = placed(`${SAMPLE}also read "more.txt"\n`);
    const more = path.join(place.cwd, 'more.txt');
    await started(argv, place);
    for (const text of ['2026-02-14 B1: to do "new air stone" by 2026-02-15\n', '2026-02-14 B1: fault "drips"\n']) {
      fs.writeFileSync(more, text);
      expect(await started(argv, place)).toEqual({ ...(await afresh(argv, place)), again: false });
      expect((await started(argv, place)).again).toBe(true);
    }
  });

  test('on another day', async () => {
    const place = placed(SAMPLE.replace('; zone Europe/Dublin', ''));
    const tomorrow = { ...place, now: () => new Date(2026, 1, 16, 0, 1) };
    await started(['due'], place);
    expect((await started(['due'], { ...place, now: () => new Date(2026, 1, 15, 23, 59) })).again).toBe(true);
    expect(await started(['due'], tomorrow)).toEqual({ ...(await afresh(['due'], tomorrow)), again: false });
  });

  test('under another variable that was asked for', async () => {
    const place = placed(SAMPLE);
    await started(argv, place);
    expect((await started(argv, { ...place, env: { UNASKED: '1' } })).again).toBe(true);
    expect((await started(argv, { ...place, env: { FORCE_COLOR: '1' } })).again).toBe(false);
    expect((await started(argv, { ...place, env: { TANKSIDE_JOURNAL: '/no/such' } })).status).toBe(3);
  });

  test('where it is another text altogether', async () => {
    const place = placed(SAMPLE);
    const shelf = shelfIn(place.cache);
    for (const text of ['', '{}', 'null', '[1]', '{"said":[]}']) {
      shelf.put(key(argv, place.cwd), text);
      expect((await started(argv, place)).again).toBe(false);
    }
  });
});

test('a line that was jotted is never taken for said', async () => {
  const place = placed(SAMPLE);
  const jot = ['jot', '--on', '2026-03-11', 'C1: Rowan-1 died 2'];
  for (const times of [1, 2]) {
    expect((await started(jot, place)).again).toBe(false);
    expect(fs.readFileSync(place.journal, 'utf8').split('Rowan-1 died 2')).toHaveLength(times + 1);
  }
});

/** The sample journal end to end: what a keeper must be told on each day, and that the order of lines does not matter. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SAMPLE } from '../support/sample.ts';
import { tankside } from '../support/run.ts';

const FILE = '/room/fishroom.txt';
const ask = async (text: string, ...argv: string[]) =>
  tankside(argv, { today: '2026-03-10', files: { [FILE]: text }, columns: 80, env: { NO_COLOR: '1' } });

/** Rows of text without line breaks and margins. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');

const without = (text: string, ...parts: string[]): string =>
  text
    .split('\n')
    .filter((line) => !parts.some((part) => line.includes(part)))
    .join('\n');

describe('today’s list', () => {
  test('on the second day of a dispute', async () => {
    const { out, err } = await ask(SAMPLE, 'due', '--on', '2026-02-15');
    const told = flat(out);
    expect(err).toBe('');
    expect(told).toMatch(/A1 today keep both in while she has a refuge and eats; look twice daily/);
    expect(told).toMatch(/day 2 of a dispute with a torn fin, male on female/);
    expect(told).toMatch(/lights off since the 14th/);
    expect(told).toMatch(/clean the prefilter, all 6 layers/);
    expect(told).toMatch(/22 Feb/);
    expect(told).toMatch(/level 54 mm/);
    expect(told).toMatch(/C1 by 17 Feb water change 30 %/);
    expect(told).toMatch(/Rowan-1/);
    expect(told).toMatch(/13 days from laying/);
    expect(told).toMatch(/free-swimming since .*5–10 Feb/);
  });

  test('with a fault and a temporary rig', async () => {
    const told = flat((await ask(SAMPLE, 'due', '--on', '2026-02-19')).out);
    expect(told).toMatch(/mend: valve weeping/);
    expect(told).toMatch(/jot A2: fixed/);
    expect(told).toMatch(/off the loop on an air filter since 18 Feb/);
    expect(told).toMatch(/jot A2: back on the loop, air filter out/);
  });
});

interface BroodsJson {
  readonly broods: readonly {
    readonly name: string;
    readonly tanks: readonly {
      readonly tank: string;
      readonly count: { low: number; likely: number; high: number | null };
    }[];
    readonly spawned: unknown;
    readonly ageDays: unknown;
    readonly swam: unknown;
    readonly stage: string;
    readonly ready: { readonly now: boolean } | Record<string, unknown>;
  }[];
}

function isBroods(value: unknown): value is BroodsJson {
  return typeof value === 'object' && value !== null && 'broods' in value;
}

async function broods(on: string): Promise<BroodsJson> {
  const { out } = await ask(SAMPLE, 'broods', '--on', on, '--json');
  const json: unknown = JSON.parse(out);
  if (!isBroods(json)) throw new Error(out);
  return json;
}

describe('broods', () => {
  test('after a part was moved stand in two tanks, and none is counted twice', async () => {
    const { broods: rows } = await broods('2026-03-10');
    expect(rows.map((row) => row.name)).toEqual(['Rowan-1']);
    const [row] = rows;
    const at = new Map(row?.tanks.map(({ tank, count }) => [tank, count]));
    expect([...at.keys()].sort()).toEqual(['A1', 'C1']);
    expect(at.get('C1')).toEqual({ low: 34, likely: 45, high: 56 });
    expect(at.get('A1')?.low).toBe(1);
    expect(row?.spawned).toBe('2026-02-02');
    expect(row?.ageDays).toBe(36);
    expect(JSON.stringify(row?.ready)).toMatch(/2026-0[5-7]-\d\d/);
  });

  test('know nothing before it was seen', async () => {
    const [row] = (await broods('2026-02-09')).broods;
    expect(row?.stage).not.toMatch(/free-swimming/);
    expect((await broods('2026-02-01')).broods).toEqual([]);
  });
});

interface PairsJson {
  readonly pairs: readonly {
    readonly name: string;
    readonly dispute: unknown;
    readonly disputes: readonly {
      readonly from: string;
      readonly to: string;
      readonly days: number;
      readonly worst: string;
      readonly endedBy: string;
    }[];
  }[];
}

function isPairs(value: unknown): value is PairsJson {
  return typeof value === 'object' && value !== null && 'pairs' in value;
}

async function rowan(text: string): Promise<PairsJson['pairs'][number] | undefined> {
  const json: unknown = JSON.parse((await ask(text, 'pairs', 'Rowan', '--json')).out);
  if (!isPairs(json)) throw new Error('no pairs');
  return json.pairs.find(({ name }) => name === 'Rowan');
}

describe('pairs', () => {
  test('remember the one dispute of February', async () => {
    const row = await rowan(SAMPLE);
    expect(row?.disputes).toHaveLength(1);
    expect(row?.disputes[0]).toMatchObject({
      from: '2026-02-14',
      to: '2026-02-16',
      days: 3,
      worst: 'torn fin',
      endedBy: 'made up',
    });
    expect(row?.dispute).toBeNull();
  });

  test('have none where its lines are gone', async () => {
    const row = await rowan(without(SAMPLE, 'chasing', 'pinned'));
    expect(row?.disputes).toEqual([]);
  });
});

const QUESTIONS = [
  ['due', '--on', '2026-02-15'],
  ['due', '--on', '2026-02-19'],
  ['broods', '--on', '2026-03-10'],
  ['pairs', 'Rowan', '--on', '2026-03-10'],
  ['loops', '--on', '2026-02-15'],
  ['walk', '--on', '2026-02-15'],
  ['tanks', '--on', '2026-03-10'],
  ['sale', '--on', '2026-06-20'],
] as const;

/** Answers without line numbers, which of course move with the lines. */
async function answers(text: string): Promise<string[]> {
  const all = await Promise.all(QUESTIONS.map((argv) => ask(text, ...argv)));
  return all.map(({ out, err, status }) => `${status}${out}${err}`.replace(/line \d+/g, 'line N'));
}

describe('the same journal', () => {
  test('in any order of lines gives the same answers', async () => {
    const lines = SAMPLE.trimEnd().split('\n');
    const expected = await answers(SAMPLE);
    const shuffled = fc.shuffledSubarray(lines, { minLength: lines.length, maxLength: lines.length });
    await fc.assert(
      fc.asyncProperty(shuffled, async (mixed) => {
        expect(await answers(`${mixed.join('\n')}\n`)).toEqual(expected);
      }),
      { numRuns: 12 },
    );
  });

  test.each([
    ['with CRLF', (text: string) => text.replace(/\n/g, '\r\n')],
    ['with a byte order mark', (text: string) => `\ufeff${text}`],
    ['without its last line end', (text: string) => text.trimEnd()],
    ['as a phone sends it', asAPhone],
  ])('%s gives the same answers', async (_name, change) => {
    expect(await answers(change(SAMPLE))).toEqual(await answers(SAMPLE));
  });

  test('tidied gives the same answers', async () => {
    for (const change of [(text: string) => text, asAPhone, (text: string) => text.replace(/\n/g, '\r\n')]) {
      const text = change(SAMPLE);
      const tidied = await ask(text, 'tidy', '--write');
      expect([tidied.status, tidied.err]).toEqual([0, '']);
      const after = tidied.files[FILE] ?? '';
      expect(after).not.toBe(text);
      expect(await answers(after)).toEqual(await answers(text));
    }
  });
});

function asAPhone(text: string): string {
  return text
    .replace(/"([^"\n]*)"/g, '“$1”')
    .replace(/ x /g, ' × ')
    .replace(/: ([a-z])/g, (_, letter: string) => `: ${letter.toUpperCase()}`)
    .replace('chasing, male on female; lights off', 'Chasing – male on female, Lights off')
    .replace(/ mm\b/g, '\u00a0mm');
}

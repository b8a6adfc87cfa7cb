/** The limit of the benchmark is no cheat: what the scanner by hand finds is what the language finds. */
import { describe, expect, test } from 'vitest';
import type { Event } from '../../src/journal/event.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { toDay } from '../../src/core/day.ts';
import { generateJournal } from './generate.ts';
import { scan } from './scanner/scan.ts';

const FILE = 'fishroom.txt';

function read(text: string): readonly Event[] {
  const { events, problems } = readJournal(FILE, text, () => ({ ok: false, says: 'no other file' }));
  expect(problems).toEqual([]);
  return events;
}

const JOURNALS: readonly (readonly [string, string])[] = [
  ['of years, few lines a day', generateJournal(4_000)],
  ['of months, many lines a day', generateJournal(2_500, 9, 20)],
];

describe.each(JOURNALS)('a journal %s', (_, text) => {
  test('gives the same events', async () => {
    const wanted = read(text);
    const found = await scan(FILE, text);
    expect(found).toEqual(wanted);
    // Every key too, those without a value included.
    expect(found.map((event) => Object.keys(event))).toEqual(wanted.map((event) => Object.keys(event)));
  });

  test('gives the same room', async () => {
    const wanted = read(text);
    const last = wanted.at(-1)?.day ?? toDay(0);
    const room = foldRoom(await scan(FILE, text), last);
    expect(room.stock.broods.size).toBeGreaterThan(20);
    expect(room).toEqual(foldRoom(wanted, last));
  });
});

describe('a line that is not generated', () => {
  const text = generateJournal(300);
  const number = text.split('\n').length;
  test.each(['N1: died 2', 'N1: all well indeed', 'Z9: all well', 'N1: level 20 cm', 'N1 all well'])(
    '%s',
    async (line) => {
      await expect(scan(FILE, `${text}2020-01-01 ${line}\n`)).rejects.toThrow(
        `${FILE}:${number}: no form that is generated`,
      );
    },
  );
});

/** Laws of the reader, tried on lines made of a keeper's words, on damaged lines and on any text at all. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Event } from '../../src/journal/event.ts';
import { extended } from '../../src/language/extend.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/read.ts';
import { readOne } from '../../src/language/readone.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';
import { SAMPLE } from '../support/sample.ts';

const WORDS =
  `A1 A2 C1 12 Long Rowan Rowan-1 Fern M1 room tank pair row D all tanks except Q1 and to note also read mistake
spawned eggs seen maybe about 80 40-50 30–20 ~40 40ish 40+ ? a few some loads all the rest half 4 m 2 f 22 young males
chasing male on female hiding pinned torn fin made up lights off on pump off for 1 h until 2026-03-20 yesterday 2-4 days
ago by water change 30 % 40 L every 7 takes 20 min test pH 7.4 KH 6 dH NO3 20 25.5 C 78 F level 58 mm below the lip
cleaned 2 of 6 layers moved 20 Rowan-1 to largest smallest stay with her cave counted size 22-26 sizes died missing sold
at 4.00 each "left cave" “so” " # #x ; ; , , : : . ' - – — x 100 x 40 x 40 cm in 1,500 3,5 ½ ♂ ♀ lost off split hold
fault valve weeping dosed 12 g salt bought krib from a friend species new male back Oak 2026-02-30 07:40 25:99 ; , :`
    .split(/\s+/)
    .filter((word) => word !== '');

const wordLine = fc
  .array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 12 })
  .chain((words) =>
    fc.constantFrom(`2026-03-10 A1: ${words.join(' ')}`, `2026-03-10 ${words.join(' ')}`, words.join(' ')),
  );

/** A line of the sample with a few characters taken out, put in or changed. */
const damaged = fc
  .tuple(
    fc.constantFrom(...SAMPLE.split('\n').filter((line) => line !== '')),
    fc.array(fc.tuple(fc.nat(80), fc.nat(2), fc.string({ unit: 'grapheme', minLength: 0, maxLength: 2 })), {
      maxLength: 4,
    }),
  )
  .map(([line, edits]) =>
    edits.reduce((text, [at, cut, put]) => text.slice(0, at) + put.replaceAll('\n', ' ') + text.slice(at + cut), line),
  );

const anything = fc.string({ unit: 'binary', maxLength: 60 });
const lines = fc.oneof({ weight: 4, arbitrary: wordLine }, { weight: 3, arbitrary: damaged }, anything);

function read(text: string): Reading {
  return readJournal('fishroom.txt', text, NO_FILES);
}

const room = read(ROOM);
const ROOM_LINES = ROOM.split('\n').length - 1;

/** Events without their place in the order, which other lines may change. */
function told(events: readonly Event[]): string[] {
  return events.map(({ seq: _seq, ...rest }) => JSON.stringify(rest));
}

describe('the reader', { timeout: 120_000 }, () => {
  test('never throws, and marks places inside their lines', () => {
    fc.assert(
      fc.property(fc.array(lines, { maxLength: 5 }), (some) => {
        const { entries, problems, events } = read(ROOM + some.join('\n'));
        const texts = new Map(entries.map(({ place, text }) => [place.line, text]));
        for (const { at } of [...problems, ...events.map(({ place }) => ({ at: place }))]) {
          expect(at.from).toBeGreaterThanOrEqual(0);
          expect(at.to).toBeGreaterThanOrEqual(at.from);
          expect(at.to).toBeLessThanOrEqual((texts.get(at.line) ?? '').length);
        }
        expect(events.map(({ seq }) => seq)).toEqual(events.map((_, index) => index));
      }),
      { numRuns: 150 },
    );
  });

  test('offers a line that would be read for every line that is not', () => {
    fc.assert(
      fc.property(fc.oneof(wordLine, damaged), (line) => {
        const oneLine = line.replaceAll(/[\r\n]/g, ' ');
        for (const problem of readOne(oneLine, room, 'fishroom.txt', ROOM_LINES + 1).problems) {
          if (problem.weight === 'doubt' || problem.write.startsWith('#')) continue;
          const again = readOne(problem.write, room, 'fishroom.txt', ROOM_LINES + 1).problems;
          expect(
            again.filter(({ weight }) => weight === 'stops'),
            `${oneLine}\n→ ${problem.write}`,
          ).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('a damaged line changes no other line’s events', () => {
    const whole = SAMPLE.split('\n');
    // Declaring lines are needed by others; a damaged clause line is nobody's business but its own.
    const free = whole.flatMap((line, index) =>
      /^\d{4}-\d\d-\d\d(?: \d\d:\d\d)? [A-Z]\w*:/.test(line) ? [index] : [],
    );
    fc.assert(
      fc.property(fc.constantFrom(...free), lines, (index, line) => {
        const text = line.replaceAll(/[\r\n]/g, ' ');
        fc.pre(
          !/^\s*also\s+read|\b(?:brood|batch|as|named|called|new|mistake|room|tank|pair|row|loop|species|trio|group|\d{1,2}:\d\d)\b/i.test(
            text,
          ),
        );
        const other = [...whole.slice(0, index), text, ...whole.slice(index + 1)].join('\n');
        const keep = ({ place }: Event): boolean => place.line !== index + 1;
        // The one line with a time lends it to those below of its day.
        fc.pre(!/\d:\d/.test(whole[index] ?? ''));
        expect(told(read(other).events.filter(keep))).toEqual(told(read(SAMPLE).events.filter(keep)));
      }),
      { numRuns: 150 },
    );
  });

  test('line ends, a byte order mark and blanks at the end change no event', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(wordLine, damaged), { maxLength: 4 }), (some) => {
        const text = ROOM + some.map((line) => line.replaceAll(/[\r\n]/g, ' ').trimEnd()).join('\n');
        const plain = told(read(text).events);
        expect(told(read(text.replaceAll('\n', '\r\n')).events)).toEqual(plain);
        expect(told(read(`\ufeff${text}`).events)).toEqual(plain);
        expect(told(read(text.replaceAll('\n', ' \t\n')).events).length).toBe(plain.length);
      }),
      { numRuns: 150 },
    );
  });

  test('reading lines one by one comes to the same as reading them together', () => {
    fc.assert(
      fc.property(fc.array(wordLine, { maxLength: 4 }), (some) => {
        const quiet = some.filter(
          (line) =>
            !/\b(?:brood|as|named|called|new|mistake|room|tank|pair|row|loop|species|trio|group|\d{1,2}:\d\d)\b|07:40|25:99/.test(
              line.slice(11),
            ),
        );
        const together = read(ROOM + quiet.join('\n')).events.length - read(ROOM).events.length;
        const apart = quiet.map((line) => read(ROOM + line).events.length - read(ROOM).events.length);
        expect(together).toBe(apart.reduce((sum, each) => sum + each, 0));
      }),
      { numRuns: 100 },
    );
  });

  test('lines added to a reading come to what reading them all together does', () => {
    let added = 0;
    fc.assert(
      fc.property(fc.array(lines, { maxLength: 4 }), fc.array(lines, { minLength: 1, maxLength: 3 }), (some, more) => {
        const flat = (line: string): string => line.replace(/[\r\n]/g, ' ');
        const text = `${ROOM}${some.map((line) => `${flat(line)}\n`).join('')}`;
        const fresh = more.map(flat);
        const first = text.split('\n').length;
        const quick = extended(read(text), fresh, 'fishroom.txt', first);
        if (quick === null) return;
        added += 1;
        const slow = read(`${text}${fresh.join('\n')}\n`);
        expect(quick.events).toEqual(slow.events);
        expect(quick.problems).toEqual(slow.problems);
        expect(quick.entries.map(({ text: own, place }) => [own, place])).toEqual(
          slow.entries.map(({ text: own, place }) => [own, place]),
        );
      }),
      { numRuns: 1500 },
    );
    expect(added).toBeGreaterThan(300);
  });
});

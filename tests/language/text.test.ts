/** Text as it comes: line ends, byte order marks, odd signs, files read in, lines of any length. */
import { describe, expect, test } from 'vitest';
import { foldPunctuation } from '../../src/language/punctuation.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Fetch } from '../../src/language/read.ts';
import { splitLines } from '../../src/language/split.ts';
import { eventsOf, NO_FILES, problemIn, problemsIn, readLines } from '../support/lines.ts';
import { asPhone } from '../support/phone.ts';
import { SAMPLE } from '../support/sample.ts';

function facts(text: string): unknown {
  return readJournal('fishroom.txt', text, NO_FILES).events.map(({ place: _place, ...rest }) => rest);
}

describe('the sample', () => {
  test('is read without a problem', () => {
    const { events, problems, entries } = readJournal('fishroom.txt', SAMPLE, NO_FILES);
    expect(problems).toEqual([]);
    expect(events).toHaveLength(35);
    expect(entries).toHaveLength(25);
  });

  test('reads the same with CRLF, a byte order mark, from a phone, and without its last line end', () => {
    const plain = facts(SAMPLE);
    expect(facts(SAMPLE.replaceAll('\n', '\r\n'))).toEqual(plain);
    expect(facts(`\ufeff${SAMPLE}`)).toEqual(plain);
    expect(facts(asPhone(SAMPLE))).toEqual(plain);
    expect(facts(SAMPLE.trimEnd())).toEqual(plain);
  });

  test('reads the same shuffled, but for the order of lines of one time', () => {
    const shuffled = SAMPLE.split('\n').reverse().join('\n');
    const key = (event: object): string => JSON.stringify({ ...event, seq: 0, minute: 0 });
    const sorted = (text: string): string[] =>
      readJournal('f', text, NO_FILES)
        .events.map(({ place: _place, ...rest }) => key(rest))
        .sort();
    expect(sorted(shuffled)).toEqual(sorted(SAMPLE));
    const declared = (text: string): string[] =>
      readJournal('f', text, NO_FILES)
        .events.filter(({ kind }) => kind.endsWith('declared'))
        .map(({ place: _place, ...rest }) => key(rest));
    expect(declared(shuffled)).toEqual(declared(SAMPLE));
  });
});

describe('lines', () => {
  test('are cut at LF and CRLF, and keep their numbers', () => {
    expect([...splitLines('\ufeffa\r\n\nb\rc\n')]).toEqual([
      { number: 1, text: 'a' },
      { number: 2, text: '' },
      { number: 3, text: 'b\rc' },
    ]);
    expect([...splitLines('')]).toEqual([]);
  });

  test('blank lines and comments are nobody’s entries', () => {
    expect(readLines('\n  \n#\n# x\n   # y\n').problems).toEqual([]);
    expect(problemIn('#x').kind).toBe('no-date');
  });

  test.each(['\0', '\ud800', '\udc00x', '\u0007', '2026-03-10 A1: \0chasing', '2026-03-10 A1: \ud800'])(
    'odd signs are told: %j',
    (line) => {
      expect(problemsIn(line).length).toBeGreaterThan(0);
    },
  );

  const parts = [
    'x',
    'a ',
    ', ',
    '"',
    '; ',
    '- ',
    '1,',
    'A1: ',
    'male on ',
    '# ',
    '–',
    'chasing, ',
    '1 x ',
    'tank 1 ',
    '\0',
  ];

  test.each(parts)('a line of ten million signs is left out like any other: %j', (part) => {
    const long = `2026-03-10 A1: ${part.repeat(Math.ceil(1e7 / part.length))}`;
    const { problems, events } = readLines(`${long}\n2026-03-10 A1: hiding\n`);
    expect(problems).toMatchObject([{ kind: 'line-too-long' }]);
    expect(events.at(-1)).toMatchObject({ kind: 'dispute sign', sign: 'hiding' });
  });

  test.each(parts)('a line of nearly ten thousand signs is tried: %j', (part) => {
    const long = `2026-03-10 A1: ${part.repeat(Math.floor(9900 / part.length))}`;
    const { problems, events } = readLines(`${long}\n2026-03-10 A1: hiding\n`);
    expect(problems.every(({ kind }) => kind !== 'line-too-long')).toBe(true);
    expect(problems.length).toBeLessThanOrEqual(20);
    expect(events.at(-1)).toMatchObject({ kind: 'dispute sign', sign: 'hiding' });
  });

  test('a line that is not understood hides no other', () => {
    const { events, problems } = readLines(
      '2026-03-10 A1: chasign\n2026-03-10 A1: hiding\nnonsense\n2026-03-10 A1: pinned\n',
    );
    expect(events.filter(({ kind }) => kind === 'dispute sign')).toHaveLength(2);
    expect(problems).toHaveLength(2);
  });

  test('a bad clause leaves out its whole line', () => {
    expect(readLines('2026-03-10 A1: lights off; chasign').events.some(({ kind }) => kind === 'measure begun')).toBe(
      false,
    );
  });
});

describe('folding', () => {
  test.each([
    ['“a” „b” «c»', '"a" "b" "c"'],
    ['she’s', "she's"],
    ['100 × 40', '100 x 40'],
    ['25.5 °C', '25.5  C'],
    ['A1\u00a0:', 'A1 :'],
    ['２０％', '20%'],
    ['20–40', '20-40'],
    ['20 – 40', '20 - 40'],
    ['a – b', 'a , b'],
    ['a - b', 'a , b'],
    ['a-b', 'a-b'],
    ['Rowan–1', 'Rowan-1'],
    ['free–swimming', 'free,swimming'],
    ['20 -40', '20 ,40'],
    ['♂\ufe0f', '♂ '],
  ])('%j → %j', (written, folded) => {
    expect(foldPunctuation(written)).toBe(folded);
    expect(foldPunctuation(written)).toHaveLength(written.length);
  });
});

describe('also read', () => {
  const files =
    (texts: Readonly<Record<string, string>>): Fetch =>
    (_from, asked) => {
      const text = texts[asked];
      return text === undefined ? { ok: false, says: 'there is no such file' } : { ok: true, name: asked, text };
    };

  test('stands in place: the lines of the file count as filed there', () => {
    const lines = '2026-03-10 A1: chasing\nalso read "old.txt"\n2026-03-10 A1: made up\n';
    const { events, problems } = readLines(lines, files({ 'old.txt': '2026-03-10 A1: hiding\n' }));
    expect(problems).toEqual([]);
    expect(events.slice(-3).map((event) => ('sign' in event ? event.sign : event.kind))).toEqual([
      'chasing',
      'hiding',
      'made up',
    ]);
    expect(events.at(-2)?.place.file).toBe('old.txt');
  });

  test('names of any file are known in all', () => {
    const { problems } = readLines(
      '2026-03-10 E1: all well\nalso read "old.txt"',
      files({ 'old.txt': '2026-01-02 tank E1: 54 L; alone\n' }),
    );
    expect(problems).toEqual([]);
  });

  test.each([
    ['also read "gone.txt"', 'also-read', 'there is no such file'],
    ['also read gone.txt', 'also-read-form', 'in quotes'],
    ['also read "fishroom.txt"', 'also-read-circle', 'circle'],
    ['also read "a.txt"', 'also-read-circle', 'fishroom.txt → a.txt → b.txt → a.txt'],
  ])('%s', (line, kind, says) => {
    const fetch = files({ 'a.txt': 'also read "b.txt"\n', 'b.txt': 'also read "a.txt"\n', 'fishroom.txt': '' });
    const found = problemsIn(line, fetch);
    expect(found).toMatchObject([{ kind }]);
    expect(found[0]?.says).toContain(says);
  });

  test.each([
    ['also read old room.txt', 'also read "old room.txt"'],
    ['also read: "old.txt', 'also read "old.txt"'],
    ['also read', 'also read "2025.txt"'],
    ['also read old.txt # the year before', 'also read "old.txt"'],
  ])('%s is offered with its name in quotes', (line, write) => {
    const there = { 'old room.txt': '', 'old.txt': '', '2025.txt': '' };
    expect(problemsIn(line, files(there))).toMatchObject([{ kind: 'also-read-form', write }]);
    expect(problemsIn(write, files(there))).toEqual([]);
  });

  test('a file that is read in twice counts once', () => {
    const lines = 'also read "a.txt"\nalso read "a.txt"\n';
    const { events, problems } = readLines(lines, files({ 'a.txt': '2026-03-10 A1: hiding\n' }));
    expect(problems).toMatchObject([{ kind: 'also-read-twice' }]);
    expect(events.filter(({ kind }) => kind === 'dispute sign')).toHaveLength(1);
  });

  test('a line without a time never takes one from another file', () => {
    const { events } = readLines(
      '2026-03-10 21:00 A1: chasing\nalso read "a.txt"\n',
      files({ 'a.txt': '2026-03-10 A1: hiding\n' }),
    );
    expect(events.filter(({ kind }) => kind === 'dispute sign').map(({ minute }) => minute)).toEqual([null, 1260]);
  });
});

test('events of one file carry places that are slices of their lines', () => {
  const line = '2026-03-10 A1: Rowan-1 moved about 45 to C1, rest stay “blue net”; largest 12 mm   # late';
  const slices = eventsOf(line).map(({ place }) => line.slice(place.from, place.to));
  expect(slices).toEqual(['Rowan-1 moved about 45 to C1, rest stay “blue net”', 'largest 12 mm']);
});

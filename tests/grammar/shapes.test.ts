/**
 * A line of a shape that was parsed before gives what parsing it afresh gives, on a hundred thousand lines of
 * which half are changed by a sign or two, as fingers do.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseClauses, parseClausesAfresh, parseHeading, parseHeadingAfresh } from '../../grammar/parse.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import { CLAUSE_KINDS, HEADINGS, phrasesInside } from '../../grammar/phrases.ts';
import { movedClauses } from '../../grammar/moving.ts';
import type { ClauseNode } from '../../grammar/syntax.ts';
import { shapeOf, Shapes } from '../../grammar/shapes.ts';
import { cut } from '../../grammar/cut.ts';
import { Colon } from '../../grammar/tokens.ts';
import { vocabulary } from '../../grammar/vocabulary.ts';
import type { Names } from '../../src/language/names.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldPunctuation } from '../../src/language/punctuation.ts';
import { changed } from '../support/changed.ts';
import { NO_FILES } from '../support/lines.ts';
import { generateJournal, randomFrom } from '../tools/generate.ts';

const EXAMPLE = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const ENOUGH = 100_000;

test('a line of a shape that was parsed before reads as it does afresh', { timeout: 300_000 }, () => {
  const random = randomFrom(5);
  const lines = `${EXAMPLE}${generateJournal(3_000, 7)}`.split('\n').filter((line) => line !== '');
  const known: Names = readJournal('room.txt', lines.join('\n'), NO_FILES).declared.names;
  const differing: string[] = [];
  for (let read = 0; read < ENOUGH;) {
    for (const written of lines) {
      const line = random() < 0.5 ? written : changed(written, random);
      const tokens = cut(foldPunctuation(line));
      const colon = tokens.findIndex(({ tokenType }) => tokenType === Colon);
      const kind: HeadingKind = HEADINGS[Math.floor(random() * HEADINGS.length)] ?? 'tank';
      const shared = [parseHeading(tokens, 1, Math.max(1, colon)), parseClauses(tokens, colon + 1, kind, known)];
      const afresh = [
        parseHeadingAfresh(tokens, 1, Math.max(1, colon)),
        parseClausesAfresh(tokens, colon + 1, kind, known),
      ];
      if (JSON.stringify(shared) !== JSON.stringify(afresh)) differing.push(line);
      read += 1;
    }
  }
  expect(differing.slice(0, 5)).toEqual([]);
});

test('every word of every phrase inside a clause is known as one', () => {
  const known = vocabulary();
  const words = CLAUSE_KINDS.flatMap((kind) =>
    [...phrasesInside(kind).values()].flat().flatMap((phrase) => phrase.words),
  );
  const isWord = (word: string): boolean => /^\p{L}/u.test(word);
  expect([...new Set(words)].filter((word) => isWord(word) && !known.has(word.toLowerCase()))).toEqual([]);
});

test('every word that the rules of tagging name is known as one', () => {
  const files = readdirSync('grammar').filter((name) => name.endsWith('.ts'));
  const compared = files.flatMap((name) => {
    const text = readFileSync(`grammar/${name}`, 'utf8');
    return [...text.matchAll(/[!=]== '([a-z]+)'/g)].map(([, word]) => word ?? '');
  });
  expect(compared.length).toBeGreaterThan(40);
  // What is compared in the rules and is no word of a line: kinds of node, forms, columns of the tables.
  const others = ['rule', 'flag', 'string', 'object', 'function', 'number'];
  expect(compared.filter((word) => !vocabulary().has(word) && !others.includes(word))).toEqual([]);
});

describe('lines of one shape', () => {
  const names = readJournal(
    'room.txt',
    ['tank A1: 54 L', 'tank B12: 54 L', 'species krib: cave spawner', 'pair Fern: krib; in A1']
      .map((line) => `2026-01-01 ${line}\n`)
      .join(''),
    NO_FILES,
  ).declared.names;
  const shape = (line: string): string => {
    const tokens = cut(line);
    return shapeOf(tokens.slice(tokens.findIndex(({ tokenType }) => tokenType === Colon) + 1), names);
  };

  test.each([
    ['other numbers', 'A1: level 28 mm', 'A1: level 135 mm'],
    ['other tanks', 'A1: moved all Fern-1 to A1', 'A1: moved all Fern-12 to B12'],
    ['other names', 'A1: moved all Fern-2 to A1', 'A1: moved all Fern to B12'],
    ['other remarks', 'A1: spawned "left cave"', 'A1: spawned "the roof"'],
    ['other places in their lines', '2026-02-14 07:40 A1: dead 2', '2026-02-14 B12: dead 31'],
  ])('have %s', (_, one, other) => {
    expect(shape(other)).toBe(shape(one));
  });

  test.each([
    ['a number that may be a year', 'A1: until 14 Feb 202', 'A1: until 14 Feb 2026'],
    ['a word that is a name', 'A1: moved 3 to B12', 'A1: moved 3 to B13'],
    ['fish where a tank was', 'A1: lost Fern-1', 'A1: lost B12'],
    ['another reading', 'C1: test NO2 1', 'C1: test NO3 1'],
    ['another unit', 'A1: level 28 mm', 'A1: level 28 cm'],
  ])('differ by %s', (_, one, other) => {
    expect(shape(other)).not.toBe(shape(one));
  });

  test('are few, and whatever they parse to can be moved', () => {
    const shapes = new Shapes<readonly ClauseNode[]>(movedClauses);
    const keys = new Set<string>();
    const stuck: string[] = [];
    const known = readJournal('room.txt', EXAMPLE, NO_FILES).declared.names;
    for (const line of `${EXAMPLE}${generateJournal(4_000, 3)}`.split('\n')) {
      const tokens = cut(foldPunctuation(line));
      const colon = tokens.findIndex(({ tokenType }) => tokenType === Colon);
      const own = tokens.slice(colon + 1);
      const key = shapeOf(own, known);
      const parsed = parseClausesAfresh(tokens, colon + 1, 'tank', known);
      if (colon < 0 || parsed.unread.length > 0 || parsed.faults.length > 0) continue;
      keys.add(key);
      shapes.keep(key, own, parsed.clauses);
      if (shapes.get(key, own) === undefined) stuck.push(line);
    }
    expect(stuck).toEqual([]);
    expect(keys.size).toBeLessThan(700);
  });
});

test('shapes that were taken out and brought back parse as they did, and only own ones are taken out again', () => {
  const first = new Shapes<readonly ClauseNode[]>(movedClauses);
  const cutClauses = (line: string): ReturnType<typeof cut> => {
    const tokens = cut(line);
    return tokens.slice(tokens.findIndex(({ tokenType }) => tokenType === Colon) + 1);
  };
  const nobody = { isName: () => false, isFish: () => false };
  const parsed = (line: string): readonly ClauseNode[] =>
    parseClausesAfresh(cutClauses(line), 0, 'tank', nobody).clauses;
  const lines = ['2026-02-14 A1: dead 2', '2026-02-14 A1: water change 30 %', '2026-02-14 A1: all well'];
  for (const line of lines) first.keep(shapeOf(cutClauses(line)), cutClauses(line), parsed(line));
  const plain: unknown = JSON.parse(JSON.stringify(first.takeOut()));
  expect(plain).toEqual(first.takeOut());

  const second = new Shapes<readonly ClauseNode[]>(movedClauses);
  const [build, ...own] = first.takeOut();
  second.bringBack(build === undefined ? [] : [build], false);
  second.bringBack(own, true);
  const other = '2026-02-14 07:40 Rowan: dead 31';
  expect(second.get(shapeOf(cutClauses(other)), cutClauses(other))).toEqual(parsed(other));
  expect(second.fresh).toBe(0);
  expect(second.takeOut()).toEqual(own);
});

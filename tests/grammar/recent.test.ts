/**
 * What was read before gives what reading afresh gives, on a hundred thousand lines of which half are
 * changed by a sign or two, as fingers do.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  isParseFault,
  parseClauses,
  parseClausesAfresh,
  parseHeading,
  parseHeadingAfresh,
} from '../../grammar/parse.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import { HEADINGS } from '../../grammar/phrases.ts';
import { Colon, cut } from '../../grammar/tokens.ts';
import { Names } from '../../src/language/names.ts';
import { readJournal } from '../../src/language/read.ts';
import { foldPunctuation } from '../../src/language/punctuation.ts';
import { NO_FILES } from '../support/lines.ts';
import { generateJournal, randomFrom } from '../tools/generate.ts';

const EXAMPLE = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const SIGNS = [...' ,;:-"#0123456789abcdefgmnrstx½–“”\u00a0\tÄé♂%()/~?+.'];
const ENOUGH = 100_000;

function changed(line: string, random: () => number): string {
  let text = line;
  for (let times = 1 + Math.floor(random() * 2); times > 0; times -= 1) {
    const at = Math.floor(random() * (text.length + 1));
    const sign = SIGNS[Math.floor(random() * SIGNS.length)] ?? ' ';
    const how = random();
    text = text.slice(0, at) + (how < 2 / 3 ? sign : '') + text.slice(how < 1 / 3 ? at : at + 1);
  }
  return text;
}

test('a line read before reads as it does afresh', { timeout: 300_000 }, () => {
  const random = randomFrom(5);
  const lines = `${EXAMPLE}${generateJournal(3_000, 7)}`.split('\n').filter((line) => line !== '');
  const known: Names = readJournal('room.txt', lines.join('\n'), NO_FILES).declared.names;
  const differing: string[] = [];
  const hold = (line: string, one: unknown, other: unknown): void => {
    if (one !== other && JSON.stringify(one) !== JSON.stringify(other)) differing.push(line);
  };
  let shared = 0;
  for (let read = 0; read < ENOUGH;) {
    for (const written of lines) {
      const line = random() < 0.5 ? written : changed(written, random);
      const tokens = cut(foldPunctuation(line));
      const colon = tokens.findIndex(({ tokenType }) => tokenType === Colon);
      const heading = parseHeading(tokens, 1, Math.max(1, colon));
      if (heading === parseHeading(tokens, 1, Math.max(1, colon)) && !isParseFault(heading)) shared += 1;
      hold(line, heading, parseHeadingAfresh(tokens, 1, Math.max(1, colon)));
      const kind: HeadingKind = HEADINGS[Math.floor(random() * HEADINGS.length)] ?? 'tank';
      hold(line, parseClauses(tokens, colon + 1, kind, known), parseClausesAfresh(tokens, colon + 1, kind, known));
      read += 1;
    }
  }
  expect(differing.slice(0, 5)).toEqual([]);
  expect(shared).toBeGreaterThan(ENOUGH / 3);
});

test('a name that comes later is seen in a line that was read before it', () => {
  const names = new Names();
  const tokens = cut('2026-02-14 A1: Fern spawned');
  const at = tokens.findIndex(({ tokenType }) => tokenType === Colon) + 1;
  const before = parseClauses(tokens, at, 'tank', names);
  expect(parseClauses(tokens, at, 'tank', names)).toEqual(before);
  expect(parseClauses(tokens, at, 'tank', names).clauses).toBe(before.clauses);
  const [group] = readJournal(
    'r',
    '2026-01-01 tank A1: 54 L\n2026-01-01 group Fern: some; in A1\n',
    NO_FILES,
  ).declared.names.all('group');
  if (group !== undefined) names.add(group);
  expect(parseClauses(tokens, at, 'tank', names).clauses).not.toBe(before.clauses);
  expect(parseClauses(tokens, at, 'tank', names)).toEqual(parseClausesAfresh(tokens, at, 'tank', names));
});

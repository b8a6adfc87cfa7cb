/** Lines are cut as the toolkit's own lexer cuts them, first signs or no. */
import { readFileSync } from 'node:fs';
import { Lexer } from 'chevrotain';
import { expect, test } from 'vitest';
import { cut } from '../../grammar/cut.ts';
import { RAW_TOKENS } from '../../grammar/tokens.ts';
import { changed } from '../support/changed.ts';
import { generateJournal, randomFrom } from '../tools/generate.ts';

const EXAMPLE = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const ENOUGH = 100_000;

type Cut = ReturnType<typeof cut>;

function told(tokens: Cut): string {
  return tokens
    .map(({ tokenType, image, startOffset }) => `${String(startOffset)} ${tokenType.name} ${image}`)
    .join('\n');
}

test('as the lexer of the toolkit does, on a hundred thousand lines', { timeout: 300_000 }, () => {
  const random = randomFrom(11);
  const written = `${EXAMPLE}${generateJournal(3_000, 5)}`.split('\n').filter((line) => line !== '');
  const lines: string[] = ['', ' ', '\ud83d', '\u2028', '12 \ud83d\udc1f'];
  while (lines.length < ENOUGH) for (const line of written) lines.push(random() < 0.3 ? line : changed(line, random));
  const ours = lines.map((line) => told(cut(line)));
  // Without what we say of their first signs: one left out of those would show.
  for (const type of RAW_TOKENS) delete type.START_CHARS_HINT;
  const lexer = new Lexer([...RAW_TOKENS], { positionTracking: 'onlyOffset', skipValidations: true });
  const differing = lines.filter((line, index) => told(lexer.tokenize(line).tokens) !== ours[index]);
  expect(differing.slice(0, 5)).toEqual([]);
});

import { expect, test } from 'vitest';
import { printable, printableAnswer } from '../../src/reports/printable.ts';
import { jsonText } from '../../src/reports/json.ts';

const SIGNS = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code)).filter(
  (sign) => !/\p{Cs}/u.test(sign),
);

// Names of the classes: Unicode Standard Annex 44, General_Category and Bidi_Control, as this engine knows them.
test('a control, a separator of lines and a mark of direction is never shown, and nothing else is changed', () => {
  const acting = SIGNS.filter((sign) => printable(sign) !== sign);
  expect(acting).toEqual(SIGNS.filter((sign) => /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/u.test(sign)));
  expect(SIGNS.filter((sign) => printableAnswer(sign, true) !== sign)).toEqual(acting.filter((sign) => sign !== '\n'));
});

test('JSON spells out those that it would let stand', () => {
  const bare = SIGNS.filter((sign) => /[^\P{Cc}\n]|[\p{Zl}\p{Zp}\p{Bidi_Control}]/u.test(jsonText({ sign })));
  expect(bare).toEqual([]);
  expect(jsonText({ sign: 'é – ♂' })).toContain('é – ♂');
});

test('a tab is a blank, all else that acts a question mark; colours stay where they may', () => {
  expect(printable('a\tb\x1b[2Jc\u202ed')).toBe('a b?[2Jc?d');
  expect(printableAnswer('\x1b[31mred\x1b[0m\n\x1b]0;x', true)).toBe('\x1b[31mred\x1b[0m\n?]0;x');
  expect(printableAnswer('\x1b[31mred\x1b[0m\n\x1b]0;x', false)).toBe('red\n?]0;x');
});

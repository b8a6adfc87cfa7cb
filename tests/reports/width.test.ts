import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { loadWidths, needsWidths, widthOf } from '../../src/reports/width.ts';

const RANGES = [
  [0x20, 0x7e],
  [0xa0, 0xac],
  [0xae, 0x2ff],
  [0x370, 0x482],
  [0x48a, 0x52f],
  [0x2010, 0x2027],
  [0x2030, 0x205e],
  [0x20a0, 0x20bf],
  [0x2640, 0x2640],
  [0x2642, 0x2642],
] as const;
const plain = fc
  .oneof(...RANGES.map(([min, max]) => fc.integer({ min, max })))
  .map((code) => String.fromCodePoint(code));

test('plain text is as wide as it has signs, as string-width 8 says', () => {
  fc.assert(
    fc.property(fc.array(plain), (signs) => {
      const text = signs.join('');
      expect(needsWidths(text)).toBe(false);
      expect(widthOf(text)).toBe(stringWidth(text));
    }),
    { numRuns: 500 },
  );
  for (const [from, to] of RANGES) {
    for (let code = from; code <= to; code += 1) {
      const sign = String.fromCodePoint(code);
      expect([sign, widthOf(sign)]).toEqual([sign, stringWidth(sign)]);
    }
  }
});

test('any other text is told to need true widths, and gets them', async () => {
  const others = ['水槽', 'e\u0301', '\u{1f41f}', '\u{1f469}\u200d\u{1f52c}', '\u200d', '\u00ad'];
  expect(others.map(needsWidths)).toEqual(others.map(() => true));
  await loadWidths();
  expect(others.map(widthOf)).toEqual(others.map((text) => stringWidth(text)));
  expect(others.map(needsWidths)).toEqual(others.map(() => false));
});

test('colours of ours take no room', () => {
  expect(widthOf('\u001b[31mlate\u001b[39m')).toBe(4);
  expect(needsWidths('\u001b[31mlate\u001b[39m\n')).toBe(false);
});

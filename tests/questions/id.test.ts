import { expect, test } from 'vitest';
import { rowId } from '../../src/questions/id.ts';

test('letters and digits of any script, the rest as hyphens', () => {
  expect(rowId('A1', 'water change')).toBe('a1-water-change');
  expect(rowId('  The "Nook" ', '30 %')).toBe('the-nook-30');
  expect(rowId('Förde', 'Ärger über N°2')).toBe('förde-ärger-über-n-2');
  expect(rowId('\u0421\u043e\u043c', '\u0661')).toBe('\u0441\u043e\u043c-\u0661');
});

import { expect, test } from 'vitest';
import { between, exactly, NONE, onDay, UNKNOWN_COUNT } from '../../src/core/interval.ts';
import { toDay } from '../../src/core/day.ts';
import { countJson, dayJson, jsonText, linesJson, spreadJson, windowJson } from '../../src/reports/json.ts';

const monday = toDay(20_500);

test('a count is a number where it is sure, else three', () => {
  expect(countJson(exactly(18))).toBe(18);
  expect(countJson(NONE)).toBe(0);
  expect(countJson(between(34, 56, 45))).toEqual({ low: 34, likely: 45, high: 56 });
  expect(countJson(between(1, Infinity, null))).toEqual({ low: 1, likely: null, high: null });
  expect(countJson(UNKNOWN_COUNT)).toEqual({ low: 0, likely: null, high: null });
  expect(countJson(null)).toBeNull();
});

test('a date is ISO where it is sure, else three with null where open', () => {
  expect(windowJson(onDay(monday))).toBe('2026-02-16');
  expect(windowJson({ low: monday, likely: null, high: null })).toEqual({
    low: '2026-02-16',
    likely: null,
    high: null,
  });
  expect(spreadJson(onDay(monday))).toEqual({ low: '2026-02-16', likely: '2026-02-16', high: '2026-02-16' });
  expect([windowJson(null), dayJson(null), dayJson(monday)]).toEqual([null, null, '2026-02-16']);
});

test('lines carry file and line only', () => {
  const place = { file: 'fishroom.txt', line: 3, from: 4, to: 9 };
  expect(linesJson([place])).toEqual([{ file: 'fishroom.txt', line: 3 }]);
});

test('the text ends with a line end', () => {
  expect(jsonText({ a: [1] })).toBe('{\n  "a": [\n    1\n  ]\n}\n');
});

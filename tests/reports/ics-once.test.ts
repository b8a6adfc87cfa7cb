import { expect, test } from 'vitest';
import { calendarText } from '../../src/reports/ics.ts';
import { day } from '../support/events.ts';

test('two rows for one thing are one entry, the first', () => {
  const on = day('2026-11-22');
  const entry = { id: 'east-clean', title: 'clean', says: [], place: null, first: on, last: on };
  const text = calendarText([entry, { ...entry, title: 'clean again' }], on);
  expect(text.match(/^UID:/gm)).toHaveLength(1);
  expect(text).toContain('SUMMARY:clean\r\n');
});

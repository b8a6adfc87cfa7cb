import { expect, it } from 'vitest';
import { oddReadings } from '../../src/checks/readings.ts';
import { measure } from '../../src/core/quantity.ts';
import { day, eventsOf, roomOn, tank } from '../support/events.ts';
import { test } from '../support/waters.ts';

const odd = (reading: Parameters<typeof test>[2]) => {
  const lines = [test('2026-02-10', tank('A1'), reading)];
  return oddReadings({ room: roomOn('2026-02-10', lines), events: eventsOf(lines), today: day('2026-02-10') });
};

it('doubts a reading that no fish room has, and no other', () => {
  expect(odd({ ph: measure('pH', 74) })[0]?.says).toBe('a pH of 74 is none that a fish room has');
  expect(odd({ temperature: measure('C', 78) })).toHaveLength(1);
  expect(odd({ ph: measure('pH', 7.4), temperature: measure('C', 26), no3: measure('mg/L', 5, null, 9) })).toEqual([]);
});

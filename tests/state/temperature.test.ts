/** How warm a tank is taken to be: which reading stands, and which was of water that was heated for a while. */
import { describe, expect, test } from 'vitest';
import { readingsDue } from '../../src/questions/due/readings.ts';
import { temperatureAt } from '../../src/state/temperature.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';

const room = (on: string, lines: readonly string[]) => journalOn(on, `${lines.join('\n')}\n`);

/** `29 of -3`: 29 C by a line of three days ago; `unknown`. */
function warmth(tank: string, on: string, ...lines: readonly string[]): string {
  const then = room(on, lines);
  const found = temperatureAt(then, tank);
  return found === null ? 'unknown' : `${String(found.value.likely)} of ${String(found.day - then.on)}`;
}

describe('a reading of water that was heated', () => {
  const heated = ['2026-02-01 C1: test 25 C', '2026-02-05 C1: heat to 30 C', '2026-02-07 C1: test 29 C'];

  test('stands while it is heated, and no longer once the heat is back to normal', () => {
    expect(warmth('C1', '2026-02-10', ...heated)).toBe('29 of -3');
    expect(warmth('C1', '2026-02-10', ...heated, '2026-02-10 C1: heat normal')).toBe('25 of -9');
    expect(warmth('C1', '2026-02-12', ...heated, '2026-02-10 C1: heat normal')).toBe('25 of -11');
  });

  test('stands for its own days whenever they are asked about', () => {
    const later = room('2026-02-20', [...heated, '2026-02-10 C1: heat normal']);
    const at = (then: string) => temperatureAt(later, 'C1', day(then))?.value.likely;
    expect(['2026-02-01', '2026-02-05', '2026-02-09', '2026-02-10'].map(at)).toEqual([25, 30, 29, 25]);
  });

  test('leaves nothing, or the thermostat, where nothing else was read', () => {
    const only = ['2026-02-05 C1: heat to 30 C', '2026-02-07 C1: test 30 C', '2026-02-10 C1: heat normal'];
    expect(warmth('C1', '2026-02-12', ...only)).toBe('unknown');
    expect(warmth('C1', '2026-02-12', '2026-01-02 tank C1: heated 26 C', ...only)).toBe('26 of -42');
  });

  test('of one day is told by the order of its lines', () => {
    expect(warmth('C1', '2026-02-06', '2026-02-05 C1: test 25 C; heat to 30 C')).toBe('30 of -1');
    expect(warmth('C1', '2026-02-06', '2026-02-05 C1: heat to 30 C; test 26 C')).toBe('26 of -1');
    expect(warmth('C1', '2026-02-12', ...heated, '2026-02-10 C1: test 30 C; heat normal')).toBe('25 of -11');
    expect(warmth('C1', '2026-02-12', ...heated, '2026-02-10 C1: heat normal; test 27 C')).toBe('27 of -2');
  });

  test('that ends by itself says nothing after that either', () => {
    const till = [
      '2026-02-01 C1: test 25 C',
      '2026-02-05 C1: heat to 30 C until 2026-02-09',
      '2026-02-07 C1: test 30 C',
    ];
    expect(warmth('C1', '2026-02-09', ...till)).toBe('30 of -2');
    expect(warmth('C1', '2026-02-10', ...till)).toBe('25 of -9');
  });

  test('says nothing of the other tanks of its loop, a loop that is heated of all of them', () => {
    const one = ['2026-02-01 A2: test 25 C', '2026-02-05 A1: heat to 30 C', '2026-02-07 A1: test 29 C'];
    expect(warmth('A2', '2026-02-08', ...one)).toBe('25 of -7');
    expect(warmth('A1', '2026-02-08', ...one)).toBe('29 of -1');
    const all = ['2026-02-01 A2: test 25 C', '2026-02-05 Long: heat to 30 C'];
    expect(warmth('A2', '2026-02-08', ...all)).toBe('30 of -3');
    expect(warmth('A2', '2026-02-08', ...all, '2026-02-07 A1: test 28 C')).toBe('28 of -1');
    expect(warmth('A2', '2026-02-08', ...all, '2026-02-07 A1: test 28 C', '2026-02-08 Long: heat normal')).toBe(
      '25 of -7',
    );
    expect(warmth('C1', '2026-02-08', ...all)).toBe('unknown');
  });
});

test('a reading of a stuck heater says nothing once it is mended', () => {
  const stuck = ['2026-02-01 C1: test 25 C', '2026-02-05 C1: test 31 C', '2026-02-05 C1: heater stuck 31 C'];
  expect(warmth('C1', '2026-02-06', ...stuck)).toBe('31 of -1');
  expect(warmth('C1', '2026-02-08', ...stuck, '2026-02-06 C1: fixed "new heater"')).toBe('25 of -7');
  expect(warmth('C1', '2026-02-08', ...stuck, '2026-02-06 C1: fixed "new heater"; test 27 C')).toBe('27 of -2');
});

test('a reading of a power cut says nothing once the power is back', () => {
  const cut = ['2026-02-01 C1: test 25 C', '2026-02-05 08:00 room: power off', '2026-02-05 15:00 C1: test 21 C'];
  expect(warmth('C1', '2026-02-05', ...cut)).toBe('21 of 0');
  expect(warmth('C1', '2026-02-06', ...cut, '2026-02-05 16:00 room: power on')).toBe('25 of -5');
  expect(warmth('C1', '2026-02-06', ...cut, '2026-02-05 16:00 room: power on', '2026-02-06 C1: test 24 C')).toBe(
    '24 of 0',
  );
});

test('nobody is asked to cool what was meant to be warm, during it or after it', () => {
  const kept = '2026-01-02 species krib: water 24-27 C';
  const asked = (on: string, ...lines: readonly string[]): string[] =>
    readingsDue(room(on, [kept, ...lines])).map(({ place, what }) => `${place} ${what}`);
  const heated = ['2026-02-05 C1: heat to 30 C', '2026-02-07 C1: test 30 C'];
  expect(asked('2026-02-08', ...heated)).toEqual([]);
  expect(asked('2026-02-12', ...heated, '2026-02-10 C1: heat normal')).toEqual([]);
  expect(asked('2026-02-12', ...heated, '2026-02-10 C1: heat normal', '2026-02-12 C1: test 30 C')).toEqual([
    'C1 cool it slowly and read again',
  ]);
  expect(asked('2026-02-08', '2026-02-05 C1: heat to 30 C', '2026-02-07 C1: test 33 C')).toEqual([
    'C1 cool it slowly and read again',
  ]);
});

import { expect, test } from 'vitest';
import { growthOf } from '../../../src/questions/growing.ts';
import { journalRoom } from '../../support/journal.ts';

/** A room whose one pair had so many broods, each read at the same ages; the latest is young yet. */
function journal(broods: number): string {
  const months = Array.from({ length: broods }, (_, index) => {
    const year = 2010 + Math.floor(index / 4);
    const month = [1, 4, 7, 10][index % 4] ?? 1;
    const on = (later: number, day: number): string => {
      const sum = month - 1 + later;
      return `${year + Math.floor(sum / 12)}-${String((sum % 12) + 1).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
    };
    const name = `Rowan-${index + 1}`;
    // The first ten grew faster than all that came after.
    const size = index < 10 ? 30 : 20;
    return [
      `${on(0, 2)} A1: spawned brood ${name}, about 60 eggs`,
      `${on(0, 10)} A1: ${name} free-swimming`,
      `${on(2, 20)} A1: ${name} size ${size}-${size + 2} mm`,
      `${on(2, 21)} A1: gave away all ${name}`,
    ];
  });
  return [
    '2010-01-01 room: units metric',
    '2010-01-01 tank A1: 100 L; alone',
    '2010-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm',
    '2010-01-01 pair Rowan: krib; in A1',
    ...months.flat(),
    '2030-01-01 A1: spawned brood Rowan-90, about 60 eggs',
    '',
  ].join('\n');
}

test('every earlier brood of the room teaches, however many there were', () => {
  const basis = (broods: number): string | undefined => {
    const room = journalRoom('2030-02-01', journal(broods));
    const body = room.stock.broods.get('Rowan-90');
    return body === undefined ? undefined : growthOf(room, body)?.basis;
  };
  expect(basis(1)).toBe('no reading, 1 brood of this room');
  expect(basis(40)).toBe('no reading, 40 broods of this room');
});

test('the broods of ten years ago still weigh in', () => {
  const meanAt = (from: number): number => {
    const lines = journal(40).split('\n');
    // Without the sizes of the first so many, which were the fast ones.
    const kept = lines.filter((line) => !(/size/.test(line) && Number(/Rowan-(\d+)/.exec(line)?.[1]) <= from));
    const room = journalRoom('2030-02-01', kept.join('\n'));
    const body = room.stock.broods.get('Rowan-90');
    const growth = body === undefined ? null : growthOf(room, body);
    return growth?.line.at(80).mean ?? Number.NaN;
  };
  expect(meanAt(0)).toBeGreaterThan(meanAt(10) + 0.5);
});

/** Fish of which no line says how they breed: one that holds brood in the mouth shows it, and her days are those of such fish. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { due } from '../../src/questions/due.ts';
import { nextOf } from '../../src/questions/stages.ts';
import { clockOf } from '../../src/state/stageclock.ts';
import { journalOn } from '../support/journal.ts';

const HAP = ['2026-01-02 species hap: Haplochromis nubilus', '2026-01-02 group Reed: hap; 2 males, 6 females; in C2'];

function roomOf(on: string, ...lines: readonly string[]) {
  return journalOn(on, `${lines.join('\n')}\n`);
}

/** `mouthbrooder: release 2026-02-21`, of the brood of Reed. */
function told(...lines: readonly string[]): string {
  const room = roomOf('2026-02-12', ...HAP, ...lines);
  const brood = room.stock.broods.get('Reed-1');
  if (brood === undefined) throw new Error('no brood');
  const next = nextOf(room, brood);
  return `${clockOf(room, brood).guild ?? 'unknown'}: ${next?.what ?? 'nothing'}`;
}

describe('fish whose way of breeding nobody declared', () => {
  test('that hold are taken for mouthbrooders, with their days', () => {
    expect(told('2026-02-10 C2: holding')).toBe('mouthbrooder: release');
    expect(told('2026-02-10 Reed: holding')).toBe('mouthbrooder: release');
    expect(told('2026-02-08 C2: spawned', '2026-02-10 C2: holding')).toBe('mouthbrooder: release');
    const released = roomOf('2026-02-12', ...HAP, '2026-02-10 C2: holding');
    const laid = released.stock.broods.get('Reed-1')?.laid;
    // 18 to 24 days from laying to release at 28 C (common practice, no source): held for 24 at the most there, longer where it is cooler
    expect(released.on - (laid?.low ?? released.on)).toBeGreaterThan(24);
  });

  test('that lay are not, nor those declared to breed otherwise', () => {
    expect(told('2026-02-10 C2: spawned')).toBe('unknown: hatch');
    const cave = roomOf('2026-02-12', ...HAP, '2026-02-10 C2: holding', '2026-02-11 species hap: cave spawner');
    expect(cave.stock.species.get('hap')?.traits.guild).toBe('cave spawner');
    expect(cave.stock.species.get('krib')?.traits.guild).toBe('cave spawner');
  });

  test('are asked for by the release alone', () => {
    const rows = due(roomOf('2026-02-25', ...HAP, '2026-02-10 C2: holding'), { days: 7, minutes: null }).rows.filter(
      ({ place, kind }) => place === 'C2' && kind === 'spawn',
    );
    expect(rows.map(({ what }) => what)).toEqual(['ready a tank: she lets the young go, or strip her']);
    // She is likely three days into it when she is first seen to hold, and may be stripped from day 14.
    expect(rows.map(({ due: { low } }) => low && isoDay(low))).toEqual(['2026-02-21']);
  });

  test('leave as it was what was known before they held', () => {
    const lines = [...HAP, '2026-02-10 C2: holding'];
    expect(roomOf('2026-02-09', ...lines).stock.species.get('hap')?.traits.guild).toBe(null);
    expect(roomOf('2026-02-10', ...lines).stock.species.get('hap')?.said.guild?.line).toBeGreaterThan(20);
  });
});

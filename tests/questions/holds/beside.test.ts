/** Tanks that share the water of a sick one: a caution until it is said not to be catching, or a hold speaks for them. */
import { describe, expect, it } from 'vitest';
import { openSick, sickBeside, sickIn } from '../../../src/questions/holds/sickness.ts';
import { sale } from '../../../src/questions/sale.ts';
import type { Room } from '../../../src/state/draft.ts';
import { journalOn } from '../../support/journal.ts';

const YOUNG = `2026-01-02 species krib: sale at 35 mm or 16 weeks
2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-02-01 A1: Rowan-1 moved 20 to A2
`;
const on = (lines: string, day = '2026-06-10'): Room => journalOn(day, YOUNG + lines);
/** What is said of the fish of A2, which shares its water with A1 and B1. */
function told(lines: string): string {
  const { lots } = sale(on(lines), { ahead: 0, auction: null, projected: false });
  const lot = lots.find(({ stock, tank }) => stock === 'Rowan-1' && tank === 'A2');
  return [
    lot?.ready === true ? 'ready' : 'not ready',
    ...(lot?.cautions ?? []).filter((caution) => caution.includes('on the same water')),
  ].join('; ');
}

describe('fish on the same water as a sick tank', () => {
  it('carry a caution while nobody said whether it is catching, and after it was said to be', () => {
    expect(told('2026-06-08 A1: sick "white spot"\n')).toBe(
      'ready; white spot in A1, on the same water: ask whether it is catching before any go',
    );
    const catching = 'ready; white spot in A1, catching, on the same water: put it on hold before any go';
    expect(told('2026-06-08 A1: sick "white spot", catching\n')).toBe(catching);
    expect(told('2026-06-08 A1: sick "white spot"\n2026-06-09 A1: catching\n')).toBe(catching);
  });
  it('carry none where it is not catching, over, on other water, or was off the loop that day', () => {
    expect(told('2026-06-08 A1: sick "white spot", not catching\n')).toBe('ready');
    expect(told('2026-04-08 A1: sick "white spot", catching\n')).toBe('ready');
    expect(told('2026-06-08 C1: sick "white spot"\n')).toBe('ready');
    expect(told('2026-06-07 A1: off the loop\n2026-06-08 A1: sick "white spot"\n')).toBe('ready');
  });
  it('are held by the hold that is written for it', () => {
    const held = '2026-06-08 A1: sick "white spot", catching\n2026-06-09 A1: hold "white spot"\n';
    expect(told(held)).toBe('not ready');
    expect(sickBeside(on(held), 'A2')).toBeNull();
  });
});

describe('a sickness told of several tanks', () => {
  const two = '2026-06-08 A1 C1: sick "white spot", catching\n';
  it('is one of each, held where its tank is', () => {
    const held = (lines: string): boolean[] => openSick(on(two + lines)).map((one) => one.held);
    expect(held('')).toEqual([false, false]);
    expect(held('2026-06-09 C1: hold "white spot"\n')).toEqual([false, true]);
    expect(held('2026-06-09 A1 C1: hold "white spot"\n')).toEqual([true, true]);
  });
  it('is beside the tanks that share that water', () => {
    const room = on(two);
    expect(['A1', 'C1', 'A2'].map((tank) => sickIn(room, tank)?.sick.text ?? null)).toEqual([
      'white spot',
      'white spot',
      null,
    ]);
    expect(openSick(room)[0]?.beside).toEqual(['A2', 'B1']);
  });
});

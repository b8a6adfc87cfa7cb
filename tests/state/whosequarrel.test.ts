/** Whose quarrel it is, where several groups share a tank and the line names none of them. */
import { describe, expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

// Rowan, a pair of krib in A1. Sedge, a trio of krib in A2: a male, Fern and Lark.
const ELM = '2026-01-02 pair Elm: krib; in A1\n2026-01-02 pair Ivy: krib; in A2\n';
const NO_FEMALE = '2026-01-03 A1: Elm female died\n';
const HERD = '2026-01-02 colony Herd: krib; about 20; in A1\n';

/** The groups with a dispute, each with how it stands; where none has one, the problems. */
function quarrels(lines: string): string[] {
  const room = journalOn('2026-02-20', lines);
  const told = [...room.stock.groups.values()].flatMap(({ name, disputes }) =>
    disputes.map(({ ended, calmer }) => `${name} ${ended?.how ?? (calmer.length > 0 ? 'calmer' : 'open')}`),
  );
  return told.length > 0 ? told : room.problems.map(({ kind, write }) => `${kind}: ${write}`);
}

describe('a quarrel of a male and a female', () => {
  it('is that of the one group that has both', () => {
    for (const words of ['male chasing female', 'chasing, female on male', 'torn fin, male on female']) {
      expect(quarrels(`${ELM}${NO_FEMALE}2026-02-10 A1: ${words}\n`)).toEqual(['Rowan open']);
    }
    expect(quarrels(`${ELM}2026-02-10 A2: female chasing female\n`)).toEqual(['Sedge open']);
  });
  it('is that of fish that are known to be both, before those that nobody sexed', () => {
    expect(quarrels(`${HERD}2026-02-10 A1: male chasing female\n`)).toEqual(['Rowan open']);
    expect(quarrels(`${HERD}2026-02-10 A1: pinned\n`)).toEqual(['which-fish: A1: Rowan pinned …']);
  });
  it('is asked about where several groups have both', () => {
    expect(quarrels(`${ELM}2026-02-10 A1: male chasing female\n`)).toEqual(['which-fish: A1: Rowan chasing …']);
  });
  it('is none of a fish that is alone', () => {
    const alone = `${ELM}${NO_FEMALE}2026-02-10 A1: wounded\n`;
    expect(quarrels(alone)).toEqual(['Rowan open']);
  });
});

describe('what is calmer or made up', () => {
  it('is the one quarrel that is open there', () => {
    const open = `${ELM}2026-02-10 A1: Elm chasing\n`;
    expect(quarrels(`${open}2026-02-12 A1: made up\n`)).toEqual(['Elm made up']);
    expect(quarrels(`${open}2026-02-12 A1: calmer\n`)).toEqual(['Elm calmer']);
  });
  it('is asked about where both quarrel, or neither', () => {
    const both = `${ELM}2026-02-10 A1: Elm chasing\n2026-02-10 A1: Rowan chasing\n2026-02-12 A1: made up\n`;
    expect(quarrels(both)).toEqual(['Rowan open', 'Elm open']);
    expect(quarrels(`${ELM}2026-02-12 A1: made up\n`)).toEqual(['which-fish: A1: Rowan made up …']);
  });
});

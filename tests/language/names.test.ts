import { describe, expect, test } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { byName, Names } from '../../src/language/names.ts';
import type { Named } from '../../src/language/names.ts';
import { eventsOf, only, problemIn, problemsIn, readLines } from '../support/lines.ts';

const place = { file: 'a', line: 1, from: 0, to: 1 };

function named(kind: Named['kind'], name: string, day = 0): Named {
  return { kind, name, day: toDay(day), place, rank: 0 };
}

describe('names', () => {
  test('are read without regard to case and shown as declared', () => {
    expect(eventsOf('2026-03-10 a1: moved 3 rowan-1 to c1')[0]).toMatchObject({
      subject: { kind: 'tank', tank: 'A1' },
      fish: { kind: 'brood', brood: 'Rowan-1' },
      to: 'C1',
    });
  });

  test('may be of any script, composed or not', () => {
    const composed = 'Élodie'.normalize('NFC');
    const apart = 'Élodie'.normalize('NFD');
    const lines = `2026-02-01 tank ${composed}: 54 L; alone\n2026-02-01 tank 日本: 54 L; alone\n2026-03-10 ${apart}: all well\n2026-03-10 日本: all well\n`;
    expect(eventsOf(lines).map(({ kind }) => kind)).toEqual(['tank declared', 'tank declared', 'all well', 'all well']);
    expect(eventsOf(lines)[2]?.subject).toEqual({ kind: 'tank', tank: composed });
  });

  test('are unique across kinds: the earlier declaration has it, wherever it is filed', () => {
    expect(problemsIn('2026-03-10 pair A1: krib\n')).toMatchObject([
      { kind: 'name-taken', words: 'A1', write: '2026-03-10 pair A1-a: krib' },
    ]);
    const both = '2026-03-02 tank Oak: 54 L; alone\n2026-03-01 pair Oak: krib; in A2\n';
    expect(problemsIn(both)).toMatchObject([{ kind: 'name-taken', words: 'Oak' }]);
    expect(only('group declared', `2026-03-01 pair Oak: krib; in A2\n`).group).toBe('Oak');
  });

  test('are known from the day of their declaration, also where that line is filed later', () => {
    const lines = '2026-03-10 E1: all well\n2026-03-01 tank E1: 54 L; alone\n';
    expect(eventsOf(lines)).toHaveLength(2);
    expect(problemIn('2025-12-31 A1: all well')).toMatchObject({
      kind: 'not-yet-declared',
      write: '2026-01-01 A1: all well',
    });
  });

  test('the nearest name of the right kind is offered; a swap of two letters is one slip', () => {
    // `3 to 1 C` is a range of degrees and no place: one cause, one problem.
    expect(problemIn('2026-03-10 A1: moved 3 to 1C').kind).toBe('something-missing');
    expect(problemIn('2026-03-10 A1: moved 3 to c-1').write).toBe('2026-03-10 A1: moved 3 to C1');
    // C3 is another tank than C1.
    expect(problemIn('2026-03-10 A1: moved 3 to C3').write).toBe('2026-03-10 tank C3:');
    expect(problemIn('2026-03-10 Rwoan: bonded').write).toBe('2026-03-10 Rowan: bonded');
    expect(problemIn('2026-03-10 A1: Rwoan-2 counted 3').write).toBe('2026-03-10 A1: Rowan-2 counted 3');
  });

  test('where none is near, the line that would declare it is offered', () => {
    expect(problemIn('2026-03-10 A1: moved 3 to Greenhouse').write).toContain('tank Greenhouse:');
    expect(problemIn('2026-03-10 A1: bought 6 festae').write).toContain('species festae:');
  });

  test('fish of a group are known by their own names', () => {
    const lines = '2026-02-01 pair Oak: krib; male Bracken 80 mm; female; in C2\n2026-03-10 C2: Bracken chasing\n';
    expect(only('dispute sign', lines).fish).toEqual({
      kind: 'group',
      group: 'Oak',
      member: { sex: 'male', name: 'Bracken' },
    });
    const mate = '2026-02-01 A1: new male Gorse from Ash\n2026-03-10 A1: Gorse hiding\n';
    expect(only('dispute sign', mate).fish).toEqual({
      kind: 'group',
      group: 'Rowan',
      member: { sex: 'male', name: 'Gorse' },
    });
  });

  test('a bought group may be named in the line, and is then known', () => {
    const lines = '2026-02-01 Q1: bought 6 krib at 4.00 each as Elm\n2026-03-10 Elm: counted 6\n';
    expect(eventsOf(lines)).toMatchObject([
      { kind: 'bought', group: 'Elm', species: 'krib' },
      { subject: { kind: 'group', group: 'Elm' } },
    ]);
  });

  test('a row has the tanks that the day gives it', () => {
    const lines =
      '2026-02-01 row E: A1\n2026-03-01 row E: A1 A2\n2026-02-15 row E: all well\n2026-03-15 row E: all well\n';
    const looks = eventsOf(lines).filter(({ kind }) => kind === 'all well');
    expect(looks.map(({ place: { line }, subject }) => [line, 'tank' in subject ? subject.tank : '']).length).toBe(3);
    expect(problemIn('2025-12-31 row D: all well').kind).toBe('empty-row');
  });

  test('completion knows the names of a day', () => {
    const { names } = readLines('2026-04-01 tank Later: 54 L; alone\n').declared;
    const march = dayFromIso('2026-03-10') ?? toDay(0);
    const known = names.on(march).map(({ name, kind }) => `${kind} ${name}`);
    expect(known).toContain('tank A1');
    expect(known).toContain('fish Fern');
    expect(known).not.toContain('tank Later');
  });
});

describe('the directory', () => {
  test('sorts names as people count', () => {
    expect(['A10', 'a2', 'B1', 'A1', '12', '7'].sort(byName)).toEqual(['7', '12', 'A1', 'a2', 'A10', 'B1']);
  });

  test('a copy leaves the original alone', () => {
    const names = new Names();
    names.add(named('tank', 'A1'));
    const copy = names.copy();
    copy.add(named('tank', 'A2'));
    expect([names.isName('A2'), copy.isName('a2'), copy.isName('A1')]).toEqual([false, true, true]);
    expect(copy.tanksInOrder()).toEqual(['A1', 'A2']);
    expect(names.tanksInOrder()).toEqual(['A1']);
  });

  test('gives the earlier declaration where another kind takes a name', () => {
    const names = new Names();
    expect(names.add(named('tank', 'A1'))).toBeNull();
    expect(names.add(named('group', 'a1'))).toMatchObject({ kind: 'tank', name: 'A1' });
  });
});

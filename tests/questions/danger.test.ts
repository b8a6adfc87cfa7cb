/** Young with others in one tank: from which lengths, how many and of which fish anybody is warned. */
import { describe, expect, it } from 'vitest';
import { dangersIn, wouldEat } from '../../src/questions/danger.ts';
import { moveLine } from '../../src/questions/due/destination.ts';
import type { Room } from '../../src/state/draft.ts';
import { broodNamed, journalOn } from '../support/journal.ts';

const PAIRS = `2026-01-01 species ovul: Ovulus terrae; cave spawner; sibling-safe
2026-01-01 pair Elm: ovul; male; female; in A2
2026-01-01 pair Alder: krib; male; female; in A2
`;
const roomOf = (on: string, lines: readonly string[]): Room => journalOn(on, `${PAIRS}${lines.join('\n')}\n`);
const warned = (on: string, tank: string, ...lines: readonly string[]): string[] =>
  dangersIn(roomOf(on, lines), tank).map(({ weight, text }) => `${weight}: ${text}`);

const brood = (name: string, tank: string, laid: string, swam: string, many = 'about 40'): string[] => [
  `${laid} ${tank}: spawned brood ${name}`,
  `${swam} ${tank}: ${name} free-swimming, ${many}`,
];
const rowan1 = brood('Rowan-1', 'A1', '2026-01-10', '2026-01-20');
const rowan2 = brood('Rowan-2', 'A1', '2026-02-14', '2026-02-24');
/** Laid two weeks after the first, and put to them as soon as they swim. */
const alder = [
  ...brood('Alder-1', 'A2', '2026-01-24', '2026-02-03').map((line) => line.replace('A2: spawned', 'A2: Alder spawned')),
  '2026-02-03 A2: moved all Alder-1 to A1',
];
const told = (...lines: readonly string[]): string[] => warned('2026-02-05', 'A1', ...rowan1, ...alder, ...lines);

describe('older young in a tank with younger ones', () => {
  it('will eat those shorter than 8 mm from four millimetres apart, whatever the ratio', () => {
    expect(told()).toEqual([
      'danger: Rowan-1 in A1, about 11 mm at the longest, will eat Alder-1, about 6 mm, by usual growth',
    ]);
  });
  it('may hurt them from one millimetre apart', () => {
    expect(told('2026-02-05 A1: Rowan-1 counted 4', '2026-02-05 A1: Rowan-1 average 8 mm')).toEqual([
      'watch: Rowan-1 in A1, about 9 mm at the longest, may hurt Alder-1, about 6 mm, by usual growth',
    ]);
  });
  it('scarcely matter where no more than three small ones are left', () => {
    expect(told('2026-02-05 A1: Rowan-1 counted 3', '2026-02-05 A1: Rowan-1 average 8 mm')).toEqual([]);
  });
  it('matter where three large ones are left', () => {
    expect(
      warned(
        '2026-03-10',
        'A1',
        ...rowan1,
        ...rowan2,
        '2026-03-10 A1: Rowan-1 counted 3',
        '2026-03-10 A1: Rowan-1 average 15 mm',
        '2026-03-10 A1: Rowan-2 average 5 mm',
      ),
    ).toEqual(['danger: Rowan-1 in A1, about 16 mm at the longest, will eat Rowan-2, about 7 mm']);
  });
  it('are weighed by the ratio of lengths where the younger are longer than that', () => {
    const sizes = (older: number, younger: number): string[] =>
      warned(
        '2026-03-10',
        'A1',
        ...rowan1,
        ...rowan2,
        `2026-03-10 A1: Rowan-1 average ${String(older)} mm`,
        `2026-03-10 A1: Rowan-2 average ${String(younger)} mm`,
      );
    expect(sizes(24, 10)).toEqual(['danger: Rowan-1 in A1, about 29 mm at the longest, will eat Rowan-2, about 10 mm']);
    expect(sizes(18, 10)).toEqual(['watch: Rowan-1 in A1, about 21 mm at the longest, may hurt Rowan-2, about 9 mm']);
    expect(sizes(6, 12)).toEqual([]);
  });
  it('are told by usual growth where only one of them was measured', () => {
    expect(warned('2026-03-10', 'A1', ...rowan1, ...rowan2, '2026-03-10 A1: Rowan-1 average 24 mm')[0]).toContain(
      'by usual growth',
    );
  });
  it('are taken for as many as the middle of what is known, and for a score where that has no end', () => {
    const of = (many: string): string | undefined =>
      warned('2026-03-10', 'A1', ...brood('Rowan-1', 'A1', '2026-01-10', '2026-01-20', many), ...rowan2)[0];
    expect(of('10 to 300')).toContain('about 20 mm at the longest');
    expect(of('30+')).toContain('about 18 mm at the longest');
    expect(of('2')).toContain('about 16 mm at the longest');
  });
  it('rest on the last line of each', () => {
    const [one] = dangersIn(roomOf('2026-03-10', [...rowan1, ...rowan2]), 'A1');
    expect(one?.lines.map(({ line }) => line)).toEqual([24, 26]);
  });
  it('are no danger by their length to those that do not swim yet: these are told of with their stage', () => {
    const lines = [...rowan1, '2026-03-05 A1: spawned brood Rowan-2', '2026-03-09 A1: Rowan-2 wrigglers'];
    expect(warned('2026-03-10', 'A1', ...lines)).toEqual([]);
  });
});

describe('young laid later that grew longer', () => {
  const lines = [
    ...brood('Alder-1', 'A2', '2026-01-10', '2026-01-20').map((line) =>
      line.replace('A2: spawned', 'A2: Alder spawned'),
    ),
    '2026-01-24 B1: Pebble born 30 brood Pebble-1',
    '2026-02-09 A2: Alder-1 average 7 mm',
    '2026-02-27 B1: Pebble-1 average 22 mm',
    '2026-03-01 A2: Alder-1 average 8 mm',
  ];
  it('eat the older, shorter ones all the same', () => {
    expect(warned('2026-03-10', 'B1', ...lines, '2026-03-01 A2: moved all Alder-1 to B1')[0]).toMatch(
      /^danger: Pebble-1 in B1, about \d\d mm at the longest, will eat Alder-1,/u,
    );
  });
  it('are no place to put those', () => {
    const room = roomOf('2026-03-10', lines);
    expect(wouldEat(room, broodNamed(room, 'Pebble-1'), 'B1', broodNamed(room, 'Alder-1'))).toBe(true);
    expect(wouldEat(room, broodNamed(room, 'Alder-1'), 'A2', broodNamed(room, 'Pebble-1'))).toBe(false);
  });
  it('of one length are told of once, by the older', () => {
    const same = [
      ...brood('Rowan-1', 'A1', '2026-01-20', '2026-01-30'),
      ...brood('Alder-1', 'A2', '2026-01-22', '2026-02-01').map((line) =>
        line.replace('A2: spawned', 'A2: Alder spawned'),
      ),
      '2026-02-09 A1: Rowan-1 average 7 mm',
      '2026-02-09 A2: Alder-1 average 7 mm',
      '2026-02-09 A2: moved all Alder-1 to A1',
    ];
    expect(warned('2026-02-10', 'A1', ...same).map((text) => text.slice(0, 14))).toEqual(['watch: Rowan-1']);
  });
});

describe('fish whose older young leave the younger alone', () => {
  const elm = (second: string): string[] => [
    ...brood('Elm-1', 'A2', '2026-01-10', '2026-01-20').map((line) => line.replace('A2: spawned', 'A2: Elm spawned')),
    ...brood(`${second}-2`, 'A2', '2026-02-14', '2026-02-24').map((line) =>
      line.replace('A2: spawned', `A2: ${second} spawned`),
    ),
  ];
  it('are safe with those of their own species', () => {
    expect(warned('2026-03-10', 'A2', ...elm('Elm'))).toEqual([]);
  });
  it('and with no others', () => {
    expect(warned('2026-03-10', 'A2', ...elm('Alder'))[0]).toMatch(/^watch: Elm-1 in A2, .* may hurt Alder-2/u);
  });
  it('are those that breed on rocks, too, where nothing else is said', () => {
    const rock = (name: string, laid: string, swam: string): string[] =>
      brood(name, '12', laid, swam).map((line) => line.replace(' 12:', ' tank 12:'));
    const lines = [
      '2026-01-01 species julo: Julo saxorum; rock spawner',
      '2026-01-01 pair Oak: julo; male; female; in tank 12',
      ...rock('Oak-1', '2026-01-10', '2026-01-20'),
      ...rock('Oak-2', '2026-02-14', '2026-02-24'),
    ];
    expect(warned('2026-03-10', '12', ...lines)).toEqual([]);
  });
  it.each([
    ['Elm', false],
    ['Alder', true],
  ])('would eat eggs of %s: %s', (other, eats) => {
    const name = `${other}-2`;
    const eggs = `2026-02-14 A2: ${other} spawned brood ${name}`;
    const room = roomOf('2026-02-15', [...elm('Elm').slice(0, 2), eggs]);
    expect(wouldEat(room, broodNamed(room, 'Elm-1'), 'A2', broodNamed(room, name))).toBe(eats);
  });
});

describe('young that have to leave', () => {
  const full = ['2026-01-03 C2: retired', '2026-01-03 tank 12: retired', ...rowan1];
  const goal = (...lines: readonly string[]): string => {
    const room = roomOf('2026-03-10', [...full, ...lines]);
    return moveLine(room, broodNamed(room, 'Rowan-1'), 'A1').close;
  };
  it('go to no group of fish that are so much longer, by their lengths or their age', () => {
    expect(goal('2026-01-05 C1: Ash average 60 mm')).toBe('A1: moved all Rowan-1 to …');
    expect(goal('2026-01-03 group Oak: krib; 6; in C1; age 60 weeks')).toBe('A1: moved all Rowan-1 to …');
  });
  it('go to one of about their length, and never to one of which nobody said how long it is', () => {
    expect(goal('2026-03-09 C1: Ash average 20 mm')).toBe('A1: moved all Rowan-1 to C1');
    expect(goal()).toBe('A1: moved all Rowan-1 to …');
  });
});

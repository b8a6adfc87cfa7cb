import { describe, expect, test } from 'vitest';
import { disputesDue } from '../../../src/questions/due/dispute.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import type { Line } from '../../support/events.ts';
import { roomOn } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { groupSet, rigged, said, sign, tankSet } from '../../support/pairs.ts';

const SET = '2026-01-04';
const ROOM: readonly Line[] = [tankSet(SET, 'A1'), tankSet(SET, 'D2'), groupSet(SET, 'Rowan', 'A1')];

function rows(on: string, lines: readonly Line[]): readonly DueItem[] {
  return disputesDue(roomOn(on, [...ROOM, ...lines]), 7);
}

const TORN = [
  sign('2026-02-14', 'A1', 'chasing', 'male on female'),
  rigged('2026-02-14', 'A1', 'lights off'),
  sign('2026-02-15', 'A1', 'torn fin'),
];

describe('an open dispute on the list', () => {
  test('says what to do, why, and the line that closes it', () => {
    const [row] = rows('2026-02-15', TORN);
    expect(row).toMatchObject({
      id: 'a1-dispute',
      place: 'A1',
      what: 'keep both in while she has a refuge and eats; look twice daily',
      why: 'Rowan: day 2 of a dispute with a torn fin, male on female; lights off since the 14th',
      close: 'A1: made up, lights on',
      weight: 2,
      pressing: false,
    });
    expect(row?.lines.map(({ line }) => line)).toEqual([4, 6]);
    expect(row?.caution).toContain('within 48 hours');
  });

  test('never says safe', () => {
    expect(JSON.stringify(rows('2026-02-15', TORN))).not.toMatch(/\bsafe/i);
  });

  test('a wound comes before everything, and names the empty tank to move the aggressor to', () => {
    const [row] = rows('2026-02-14', [sign('2026-02-14', 'A1', 'wounded', 'male on female')]);
    expect(row).toMatchObject({ weight: 3, pressing: true, close: 'A1: moved the male to D2' });
    const [unknown] = rows('2026-02-14', [sign('2026-02-14', 'A1', 'wounded')]);
    expect(unknown?.close).toBe('A1: divider in');
  });

  // Of the room's tanks 12 and C2 stand empty, Q1 is for quarantine, fish live in the others.
  test('sends nobody to a tank that is held or sick, that stands for the new water, or is none to live in', () => {
    const close = (lines: string): string | undefined =>
      disputesDue(journalOn('2026-02-15', `${lines}2026-02-15 A1: wounded, male on female\n`), 7)[0]?.close;
    expect(close('')).toBe('A1: moved the male to tank 12');
    expect(close('2026-02-14 tank 12: hold "velvet"\n')).toBe('A1: moved the male to C2');
    const none = '2026-02-14 tank 12: hold "velvet"\n2026-02-14 C2: sick "white spot", catching\n';
    expect(close(none)).toBe('A1: divider in');
    expect(close(`2026-01-02 tank Tap: 20 L; alone\n2026-01-02 tray T1: in C1\n${none}`)).toBe('A1: divider in');
  });

  test('asks after three silent days', () => {
    const [row] = rows('2026-02-18', TORN);
    expect(row).toMatchObject({ weight: 1, what: 'say how they stand: made up, calmer, or still at it' });
    expect(row?.why).toContain('no word since the 15th');
  });

  test('a wounded fish of which nobody wrote for three days stays the first thing', () => {
    const [row] = rows('2026-02-20', [sign('2026-02-14', 'A1', 'wounded')]);
    expect(row).toMatchObject({
      weight: 3,
      what: 'look now: a wound on 14 Feb and no word since; say how they stand',
      close: 'A1: calmer',
    });
  });

  test('and after two weeks without a word is asked for like the others', () => {
    const wound = [sign('2026-02-14', 'A1', 'wounded')];
    expect(rows('2026-02-28', wound)[0]).toMatchObject({ weight: 3, pressing: true });
    const [faded] = rows('2026-03-01', wound);
    expect(faded).toMatchObject({
      weight: 1,
      pressing: false,
      what: 'look: a wound on 14 Feb and no word since; say how they stand',
    });
    expect(faded?.caution).not.toContain('part them now');
  });

  test('gasping alone may be the water', () => {
    const why = (...lines: Line[]): string | undefined => rows('2026-02-15', lines)[0]?.why;
    const water = 'it may be the water, test it and give more air';
    const gasping = sign('2026-02-15', 'A1', 'gasping');
    expect(why(gasping)).toContain(water);
    expect(why(sign('2026-02-14', 'A1', 'chasing'), gasping)).not.toContain(water);
    expect(why(sign('2026-02-15', 'A1', 'gasping', 'male on female'))).not.toContain(water);
  });

  test('is gone when it ended, and while a divider parts them', () => {
    expect(rows('2026-02-17', [...TORN, said('2026-02-16', 'A1', 'made up')])).toEqual([]);
    expect(rows('2026-02-17', [...TORN, rigged('2026-02-16', 'A1', 'divider')])).toEqual([]);
  });

  test('two groups in one tank have rows of their own, closed by name', () => {
    const two = [
      groupSet(SET, 'Alder', 'A1', { kind: 'trio', females: ['Fern', 'Lark'] }),
      sign('2026-02-14', 'A1', 'hiding', undefined, 'Fern'),
    ];
    expect(rows('2026-02-15', two).map(({ id, close }) => [id, close])).toEqual([['a1-dispute', 'Alder: made up']]);
  });
});

describe('the line that closes it', () => {
  const told = (on: string, lines: string): readonly DueItem[] => disputesDue(journalOn(on, lines), 7);
  const close = (on: string, lines: string): string | undefined => told(on, lines)[0]?.close;
  const TORN_THREE = ['14', '15', '16'].map((on) => `2026-02-${on} A1: torn fin\n`).join('');

  test('is a divider on the third day of a torn fin, which weighs but puts no life at risk', () => {
    const [row] = told('2026-02-16', TORN_THREE);
    expect(row).toMatchObject({ close: 'A1: divider in', weight: 2, pressing: false });
    expect(row?.because.steps.length).toBeGreaterThan(1);
    expect(close('2026-02-15', TORN_THREE)).toBe('A1: made up');
  });

  test('puts the lights on again only where they are off for it still', () => {
    const chasing = '2026-02-14 A1: chasing\n';
    expect(close('2026-02-15', `${chasing}2026-02-14 A1: lights off\n`)).toBe('A1: made up, lights on');
    expect(close('2026-02-15', `${chasing}2026-02-14 A1: lights off\n2026-02-15 A1: lights on\n`)).toBe('A1: made up');
    expect(close('2026-02-15', `${chasing}2026-02-14 A1: rocks out\n`)).toBe('A1: made up');
    const silent = `${chasing}2026-02-14 A1: lights off\n`;
    expect(told('2026-02-17', silent)[0]).toMatchObject({
      close: 'A1: made up, lights on',
      weight: 1,
      pressing: false,
    });
  });

  test('moves out the one that was last said to do it', () => {
    const known = '2026-02-14 A1: chasing, female on male\n2026-02-15 A1: gasping\n';
    expect(told('2026-02-15', known)[0]).toMatchObject({
      close: 'A1: moved the female to tank 12',
      weight: 3,
      pressing: true,
    });
    expect(close('2026-02-15', `${known}2026-02-15 A1: wounded, male on female\n`)).toBe(
      'A1: moved the male to tank 12',
    );
  });

  test('parts them where it was worse at two looks running, though no sign is dangerous by itself', () => {
    const worse = '2026-02-13 A1: chasing\n2026-02-14 A1: hiding\n2026-02-15 A1: torn fin\n';
    expect(told('2026-02-15', worse)[0]).toMatchObject({ close: 'A1: divider in', weight: 3, pressing: true });
  });

  test('asks for cover and a divider at once where one eats no more', () => {
    const rank = told('2026-02-14', '2026-02-14 A1: not eating\n')[0];
    expect([rank?.close, rank?.weight, rank?.pressing]).toEqual(['A1: divider in', 3, true]);
    expect(close('2026-02-18', '2026-02-14 A1: not eating\n')).toBe('A1: calmer');
  });

  test('parts them where one that was wounded is chased again days later, unless they were calmer since', () => {
    const wound = '2026-02-14 A1: wounded, male on female\n';
    for (const on of ['16', '17', '18']) {
      const [row] = told(`2026-02-${on}`, `${wound}2026-02-${on} A1: chasing\n`);
      expect(row).toMatchObject({ close: 'A1: moved the male to tank 12', weight: 3, pressing: true });
      expect(row?.why).toContain('with a wound');
    }
    const calm = `${wound}2026-02-15 A1: calmer\n2026-02-18 A1: chasing\n`;
    expect(told('2026-02-18', calm)[0]).toMatchObject({ close: 'A1: made up', weight: 2, pressing: false });
  });

  test('begins with the tank, or the name where other breeders live there', () => {
    const chasing = '2026-02-14 A1: Rowan chasing\n';
    expect(close('2026-02-14', `${chasing}2026-02-01 group Fir: krib; 5; in A1\n2026-02-01 A1: spawned\n`)).toBe(
      'A1: made up',
    );
    expect(close('2026-02-14', `${chasing}2026-02-01 pair Fir: krib; male; female; in A1\n`)).toBe('Rowan: made up');
  });
});

describe('several disputes', () => {
  const idsOf = (lines: string): string[] => disputesDue(journalOn('2026-02-14', lines), 7).map(({ id }) => id);
  test('in one tank are told apart by name; in two tanks by the tank', () => {
    const fir = '2026-02-01 pair Fir: krib; male; female; in A1\n';
    const two = `${fir}2026-02-14 A1: Rowan chasing\n2026-02-14 A1: Fir chasing\n`;
    expect(idsOf(two)).toEqual(['a1-rowan-dispute', 'a1-fir-dispute']);
    expect(idsOf('2026-02-14 A1: Rowan chasing\n2026-02-14 A2: chasing\n')).toEqual(['a1-dispute', 'a2-dispute']);
    expect(idsOf('')).toEqual([]);
  });
});

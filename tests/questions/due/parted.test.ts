/** Pairs on a divider: one that was hurt is looked at all the same, and no young are taken from a pair that disputes. */
import { describe, expect, it } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import type { DueRow } from '../../../src/questions/due.ts';
import { pairs } from '../../../src/questions/pairs.ts';
import { journalRoom } from '../../support/journal.ts';

const ROOM = `2026-01-01 tank A1: 54 L; alone
2026-01-01 tank A2: 54 L; alone
2026-01-01 species krib: cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
`;
const rows = (on: string, lines: string): readonly DueRow[] =>
  due(journalRoom(on, ROOM + lines), { days: 7, minutes: null }).rows;
const dispute = (on: string, lines: string): DueRow | undefined =>
  rows(on, lines).find(({ id }) => id === 'a1-dispute');

describe('a wound behind a divider', () => {
  const hurt = '2026-02-01 A1: wounded, male on female; divider in\n';
  it('is looked at every day, and asks nobody to part them anew', () => {
    for (const on of ['2026-02-01', '2026-02-02', '2026-02-09']) {
      const row = dispute(on, hurt);
      expect(row).toMatchObject({
        what: 'look daily how she does; the divider stays in until both show themselves and eat',
        close: 'A1: calmer',
        weight: 2,
      });
      expect(row?.caution).toContain('veterinarian');
      expect(row?.caution).not.toContain('part them now');
    }
    const told = pairs(journalRoom('2026-02-02', ROOM + hurt)).pairs[0]?.dispute?.advice;
    expect(told?.what).toBe(dispute('2026-02-02', hurt)?.what);
  });
  it('is no more once a line says that they are calmer, or where it was only a torn fin', () => {
    expect(dispute('2026-02-03', `${hurt}2026-02-03 A1: calmer\n`)).toBeUndefined();
    expect(dispute('2026-02-02', hurt.replace('wounded', 'torn fin'))).toBeUndefined();
  });
  it('waits its turn once nobody spoke of it for weeks', () => {
    const [fresh, faded] = ['2026-02-15', '2026-02-16'].map((on) => dispute(on, hurt));
    expect([fresh?.weight, faded?.weight]).toEqual([2, 1]);
    expect(fresh?.what).toMatch(/^look daily how she does;/);
    expect(faded?.what).toMatch(/^look how she does;/);
    expect(faded?.caution).toMatch(/^quiet water/);
  });
  it('comes before everything again with a sign after it', () => {
    expect(dispute('2026-02-03', `${hurt}2026-02-03 A1: gasping\n`)).toMatchObject({ weight: 3 });
  });
});

describe('the row of a divider', () => {
  const hurt = '2026-02-01 A1: wounded, male on female; divider in\n';
  const divider = (on: string, lines: string): DueRow | undefined =>
    rows(on, lines).find(({ id }) => id === 'a1-divider');
  it('is silent while the row of the dispute says that it stays in', () => {
    expect(divider('2026-02-02', hurt)).toBeUndefined();
    expect(divider('2026-02-09', hurt)).toBeUndefined();
  });
  it('speaks once they are calmer, and then as the dispute would', () => {
    const calm = divider('2026-02-09', `${hurt}2026-02-03 A1: calmer\n`);
    expect(calm?.what).toBe('take the divider out');
    expect(calm?.why).toContain('not before both show themselves and eat, and then while you watch');
    expect(divider('2026-02-09', `${hurt}2026-02-03 A1: made up\n`)?.why).not.toContain('not before');
  });
  it('waits while a fish behind it is sick', () => {
    const sick = '2026-02-01 A1: divider in\n2026-02-06 A1: sick "white spot"\n';
    const row = divider('2026-02-10', sick);
    expect(row).toMatchObject({ state: 'ahead' });
    expect(row?.why).toContain('leave it in while one there is sick: white spot');
    const answered = `${sick}2026-02-07 A1: not catching\n`;
    expect(divider('2026-03-05', answered)?.why).toContain('leave it in');
    // 28 days from 6 February.
    expect(divider('2026-03-06', answered)?.why).not.toContain('leave it in');
    expect(divider('2026-02-10', sick.replace('A1: sick', 'A2: sick'))?.state).toBe('late');
  });
  it('does not ask for one that is in: it is set anew where one was hurt behind it', () => {
    const behind = '2026-02-01 A1: divider in\n2026-02-09 A1: wounded\n';
    expect(dispute('2026-02-10', behind)).toMatchObject({
      what: 'separate now: set the divider anew, so that nothing gets past it, or take out the aggressor and leave the loser in place',
      close: 'A1: divider out, divider in',
    });
    expect(divider('2026-02-10', behind)).toBeUndefined();
    expect(dispute('2026-02-10', `${behind}2026-02-10 A1: divider out, divider in\n`)?.what).toMatch(/^look daily/);
    const torn = dispute('2026-02-10', behind.replace('09 A1: wounded', '08 A1: torn fin\n2026-02-10 A1: hiding'));
    expect(torn?.what).toMatch(/^set the divider anew/);
    expect(dispute('2026-02-10', '2026-02-09 A1: wounded\n')?.close).toBe('A1: divider in');
    expect(dispute('2026-02-08', behind.replace('09 A1: wounded', '08 A1: torn fin'))?.what).toBe(
      'set the divider anew, so that nothing gets past it; look twice daily',
    );
  });
  it('stays in without a word of a dispute where one only hides behind it, or chases along it', () => {
    const parted = '2026-02-07 A1: torn fin; divider in\n';
    for (const sign of ['hiding', 'chasing', 'male still chasing']) {
      const lines = `${parted}2026-02-08 A1: ${sign}\n`;
      expect(dispute('2026-02-09', lines)).toBeUndefined();
      expect(divider('2026-02-14', lines)?.why).toContain('not before both show themselves and eat');
    }
    expect(dispute('2026-02-09', `${parted}2026-02-08 A1: pinned\n`)?.what).toMatch(/^set the divider anew/);
  });
  it('is told of in words that part no pair twice, and closed by the line that sets it anew', () => {
    const lines = '2026-02-09 A1: torn fin; divider in\n2026-02-10 A1: torn fin\n';
    const row = dispute('2026-02-10', lines);
    expect(row?.what).not.toContain('keep both in');
    expect(row?.caution).toMatch(/^taking the loser out early harms the bond; take out the aggressor at once/);
    expect(row?.caution).not.toContain('divider');
    expect(row?.close).toBe('A1: divider out, divider in');
    expect(dispute('2026-02-10', `${lines}2026-02-10 ${row?.close}\n`)).toBeUndefined();
    const without = dispute('2026-02-10', '2026-02-10 A1: torn fin\n');
    expect(without?.caution).toContain('have the divider ready');
    expect(without?.close).toBe('A1: made up');
  });
});

describe('young that may leave their parents', () => {
  const young = '2026-01-02 A1: spawned brood Rowan-1\n2026-01-12 A1: free-swimming, 40\n';
  const move = (lines: string): string | undefined =>
    rows('2026-02-12', young + lines).find(({ id }) => id === 'a1-rowan-1-move')?.why;
  it('are not to be caught while the pair disputes', () => {
    expect(move('')).toMatch(/; A2 is free$/);
    expect(move('2026-02-12 A1: chasing\n')).toMatch(/; A2 is free; not while the pair disputes$/);
    expect(move('2026-02-08 A1: chasing\n2026-02-09 A1: made up\n')).toMatch(/; A2 is free$/);
  });
});

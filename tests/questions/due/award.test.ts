/** Rows of breeder awards: word of a spawning before its last day, a claim while the young are of age, and nothing else. */
import { describe, expect, it } from 'vitest';
import { awardDue } from '../../../src/questions/due/award.ts';
import { rowOf, rowsOf } from './rows.ts';

const YOUNG = '2026-01-02 A1: spawned\n2026-01-12 A1: free-swimming, 30\n';
const rule = (more = ''): string => `2026-01-02 room: award "club award": 6 young at 60-120 days from hatched${more}\n`;
const ids = (on: string, lines: string): string[] => rowsOf(awardDue, on, lines).map(({ id }) => id);

// Hatched 5 to 12 January by the days of cave spawners: 120 days old on 5 May at the earliest.
describe('a claim', () => {
  it('is asked for in the two weeks before they may be too old, with what is missing of evidence', () => {
    const row = rowOf(awardDue, '2026-04-20', rule() + YOUNG);
    expect(row).toMatchObject({
      id: 'rowan-1-club-award-claim',
      place: 'room',
      what: 'claim Rowan-1: club award',
      due: '2026-04-21..2026-05-05..2026-05-05',
      weight: 0,
      why: 'too old after 5 May; missing: where the parents are from, hatched, counted, photos and water',
      close: 'room: did "claim of Rowan-1 for club award"',
      key: 'claim of Rowan-1 for club award',
      pressing: false,
      lines: [1, 2, 3],
    });
    const seen = `${YOUNG}2026-03-20 A1: Rowan-1 counted 28\n2026-03-20 A1: test pH 7, 25 C\n`;
    expect(rowOf(awardDue, '2026-04-20', rule() + seen).why).toBe(
      'too old after 5 May; missing: where the parents are from, hatched and photos',
    );
  });
  it('is asked for only of young that are of age, enough, not claimed and not too old', () => {
    expect(ids('2026-02-20', rule() + YOUNG)).toEqual([]);
    expect(ids('2026-06-20', rule() + YOUNG)).toEqual([]);
    expect(ids('2026-04-20', `${rule()}${YOUNG}2026-04-01 A1: Rowan-1 counted 3\n`)).toEqual([]);
    const claimed = '2026-04-10 room: did "claim of Rowan-1 for club award"\n';
    expect(ids('2026-04-20', rule() + YOUNG + claimed)).toEqual([]);
  });
  it('without an end, and without notice, presses nobody', () => {
    const open = '2026-01-02 room: award "club award": 6 young at 60 days from hatched\n';
    expect(ids('2026-04-20', open + YOUNG)).toEqual([]);
  });
});

describe('notice', () => {
  const notice = rule(', notice 60 days');
  it('is asked for in the week before its last day, until it is given', () => {
    const row = rowOf(awardDue, '2026-02-25', notice + YOUNG);
    expect(row).toMatchObject({
      id: 'rowan-1-club-award-notice',
      place: 'room',
      what: 'give notice of Rowan-1: club award',
      due: '2026-02-24..2026-03-03..2026-03-03',
      why: 'its rule asks for word by 3 Mar',
      close: 'room: did "notice of Rowan-1 for club award"',
      key: 'notice of Rowan-1 for club award',
    });
    expect(ids('2026-02-26', `${notice}${YOUNG}2026-02-25 ${row.close}\n`)).toEqual([]);
  });
  it('that was not given in time is asked for no more, nor is the claim', () => {
    expect(ids('2026-04-20', notice + YOUNG)).toEqual([]);
    const given = '2026-02-25 room: did "notice of Rowan-1 for club award"\n';
    expect(ids('2026-04-20', notice + YOUNG + given)).toEqual(['rowan-1-club-award-claim']);
  });
  it('of a rule without an end is asked for as well', () => {
    const open = '2026-01-02 room: award "club award": 6 young at 60 days from hatched, notice 60 days\n';
    expect(ids('2026-02-25', open + YOUNG)).toEqual(['rowan-1-club-award-notice']);
  });
});

/** Eggs, wrigglers and young in a mouth are promised to nobody, and what nobody spoke of for months has no day of sale. */
import { describe, expect, it } from 'vitest';
import { broods } from '../../../src/questions/broods.ts';
import { due } from '../../../src/questions/due.ts';
import { sale } from '../../../src/questions/sale.ts';
import { tanks } from '../../../src/questions/tanks.ts';
import { plainLook } from '../../../src/reports/look.ts';
import { broodsJson, broodsText } from '../../../src/reports/broods.ts';
import { lostBroods } from '../../../src/checks/lost-broods.ts';
import type { Room } from '../../../src/state/draft.ts';
import { day } from '../../support/events.ts';
import { journalRoom } from '../../support/journal.ts';

const ROOM = `2026-01-01 tank A1: 54 L; alone
2026-01-01 tank A2: 54 L; alone
2026-01-01 species krib: cave spawner; sale at 16 weeks; price 6
2026-01-01 species peacock: mouthbrooder; sale at 16 weeks
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 pair Ash: peacock; male; female; in A2
`;
const EGGS = '2026-01-05 A1: spawned, about 80 eggs\n';
const on = (date: string, lines: string): Room => journalRoom(date, ROOM + lines);
const lot = (date: string, lines: string, ahead = 0): { ready: boolean; from: unknown; blockers: string[] } => {
  const [first] = sale(on(date, lines), { ahead, auction: null, projected: false }).lots;
  if (first === undefined) throw new Error('no lot');
  return { ready: first.ready, from: first.from, blockers: first.blockers.map(({ why }) => why) };
};

describe('what does not swim yet', () => {
  it('is not for sale by the number of eggs, on no day ahead', () => {
    const none = { ready: false, from: null, blockers: ['not seen to swim yet: count them when they do'] };
    expect(lot('2026-01-08', EGGS)).toEqual(none);
    expect(lot('2026-01-08', EGGS, 200)).toEqual(none);
    expect(lot('2026-01-10', `${EGGS}2026-01-09 A1: wrigglers\n`, 200)).toEqual(none);
    const held = lot('2026-01-08', '2026-01-05 A2: holding\n', 200);
    expect(held.blockers).toEqual(['not seen released yet: count them when they are']);
  });

  it('is as soon as they were seen to swim', () => {
    const swam = `${EGGS}2026-01-15 A1: free-swimming, 40\n`;
    expect(lot('2026-01-16', swam)).toMatchObject({ ready: false, from: day('2026-04-27') });
    expect(lot('2026-01-16', swam, 200)).toMatchObject({ ready: true, blockers: [] });
  });
});

describe('eggs that nobody spoke of again', () => {
  // Laid 5 Jan, they should have swum by 20 Jan; the list asks for 21 days more.
  const row = (date: string): ReturnType<typeof broods>['broods'][number] | undefined =>
    broods(on(date, EGGS)).broods[0];

  it('have a day of sale and a next stage while the list asks for them', () => {
    expect(row('2026-02-10')).toMatchObject({
      noWordSince: null,
      ready: { rule: '16 weeks' },
      next: { what: 'hatch' },
    });
    const asked = due(on('2026-02-10', EGGS), { days: 0, minutes: null }).rows.map(({ id }) => id);
    expect(asked).toContain('a1-rowan-1-swim');
  });

  it('have neither from then on, in no answer', () => {
    expect(row('2026-02-11')).toMatchObject({
      noWordSince: day('2026-01-05'),
      ready: null,
      next: null,
      isReady: false,
    });
    const late = on('2026-06-01', EGGS);
    expect(lot('2026-06-01', EGGS)).toEqual({
      ready: false,
      from: null,
      blockers: ['not seen to swim yet, no word since 5 Jan: count them when they do'],
    });
    expect(broodsText(broods(late), plainLook(late.on))).toContain('no word since 5 Jan');
    expect(JSON.stringify(broodsJson(broods(late)))).toContain('"noWordSince":"2026-01-05","ready":null');
    expect(lostBroods({ room: late, events: [], today: late.on }).map(({ kind }) => kind)).toEqual([
      'brood-without-word',
    ]);
    const moved = `${EGGS}2026-01-06 A1: moved all Rowan-1 to A2\n`;
    expect(tanks(on('2026-06-01', moved), { free: true }).rows.map(({ name }) => name)).not.toContain('A2');
  });
});

describe('a stock of which few may go', () => {
  const SEEN = '2026-01-05 A1: spawned, 80 eggs\n2026-01-16 A1: free-swimming\n';
  const answer = (date: string, lines: string) => sale(on(date, lines), { ahead: 0, auction: null, projected: false });
  it('is a lot where more are surely there, however few are free', () => {
    const kept = `${SEEN}2026-03-01 A1: counted 10-40\n2026-04-01 A1: kept back 9 Rowan-1\n`;
    const { lots, count } = answer('2026-06-01', kept);
    expect(lots.map(({ free, ready }) => [free, ready])).toEqual([[1, true]]);
    expect(count.map(({ sure, unknown }) => [sure, unknown])).toEqual([[1, false]]);
  });
  it('is none where not more than one is surely there', () => {
    const few = `${SEEN}2026-03-01 A1: counted 1-40\n`;
    expect(answer('2026-06-01', few).count.map(({ sure, unknown }) => [sure, unknown])).toEqual([[1, true]]);
  });
  it('was not counted with its eggs', () => {
    const guessed = SEEN.replace('free-swimming', 'free-swimming, about 40');
    expect(answer('2026-06-01', guessed).lots[0]?.cautions.join()).toMatch(/^never counted, /);
    expect(answer('2026-06-01', `${guessed}2026-01-20 A1: counted 44\n`).lots[0]?.cautions.join()).not.toContain(
      '5 Jan',
    );
  });
});

/** Quarantine by the tank that is set up for it: which coming fish count, what ends it on the same day, and the lines it rests on. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { inQuarantine } from '../../../src/questions/holds/quarantines.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const Q1_SET_UP = ROOM.split('\n').findIndex((line) => line.includes('tank Q1')) + 1 - SETUP;
const BOUGHT = '2026-03-20 Q1: bought 6 krib at 4.00 each as Elm';
/** `2026-03-20 to 2026-04-17 by 1, -11, usual`, or `none`. */
const kept = (tank: string, ...lines: readonly string[]): string => {
  const found = inQuarantine(journalOn('2026-04-10', `${lines.join('\n')}\n`), tank);
  if (found === null) return 'none';
  const by = found.lines.map(({ line }) => line - SETUP).join(', ');
  const how = found.usual ? ', usual' : found.anew ? ', anew' : '';
  return `${isoDay(found.since)} to ${isoDay(found.until)} by ${by}${how}`;
};

describe('a quarantine tank', () => {
  const usual = `2026-03-20 to 2026-04-17 by 1, ${String(Q1_SET_UP)}, usual`;
  it('keeps what came for 28 days, by the line that brought them and the one that set it up', () => {
    expect(kept('Q1', BOUGHT)).toBe(usual);
  });
  it.each([
    ['moved', '2026-03-25 C1: moved 2 Ash to C2'],
    ['bought', '2026-03-25 C2: bought 4 krib at 4.00 each as Oak'],
    ['told', '2026-03-25 group Oak: krib; 4; in C2'],
  ])('is not prolonged by fish %s elsewhere', (_, line) => {
    expect(kept('Q1', BOUGHT, line)).toBe(usual);
  });
  it('is begun anew by fish that come to those that are there', () => {
    expect(kept('Q1', BOUGHT, '2026-03-25 C1: moved 2 Ash to Q1')).toBe(
      `2026-03-25 to 2026-04-22 by 2, ${String(Q1_SET_UP)}, usual`,
    );
  });
  it('is begun anew by more of those that were bought before', () => {
    expect(kept('Q1', BOUGHT, '2026-03-28 Q1: bought 4 krib at 4.00 each as Elm')).toBe(
      `2026-03-28 to 2026-04-25 by 2, ${String(Q1_SET_UP)}, usual`,
    );
  });
  it('and no other tank is one', () => {
    expect(kept('C2', '2026-03-25 C2: bought 4 krib at 4.00 each as Oak')).toBe('none');
  });
});

describe('a quarantine that is over', () => {
  const over = 'Q1: quarantine over';
  it('ends for what came before it, on the same day too', () => {
    expect(kept('Q1', BOUGHT, `2026-03-30 ${over}`)).toBe('none');
    expect(kept('Q1', BOUGHT, `2026-03-20 ${over}`)).toBe('none');
    expect(kept('Q1', `${BOUGHT}; quarantine over`)).toBe('none');
  });
  it('does not for what came behind it on that day', () => {
    const first = '2026-03-01 Q1: bought 2 limia at 2.00 each as Oak';
    const again = `2026-03-20 to 2026-04-17 by 3, ${String(Q1_SET_UP)}, usual`;
    expect(kept('Q1', first, `2026-03-20 ${over}`, BOUGHT)).toBe(again);
    expect(kept('Q1', first, `2026-03-20 Q1: quarantine over; bought 6 krib at 4.00 each as Elm`)).toBe(
      again.replace('by 3', 'by 2'),
    );
  });
  it('is told apart from it by the order of their lines, whatever kinds they are of', () => {
    const ended = '2026-03-25 Q1: quarantine over';
    expect(kept('Q1', '2026-03-25 C1: moved 2 Ash to Q1', ended, BOUGHT.replace('03-20', '03-25'))).toContain('by 3');
    expect(kept('Q1', BOUGHT.replace('03-20', '03-25'), ended, '2026-03-25 C1: moved 2 Ash to Q1')).toContain('by 3');
  });
  it('is not over for the young of those that were declared in it and moved on', () => {
    const [pair, young, moved] = [
      '2026-03-20 pair Oak: krib; in Q1',
      '2026-03-25 Q1: Oak spawned',
      '2026-04-05 Q1: moved Oak to C2',
    ];
    expect(kept('Q1', pair, young)).toContain('2026-03-20 to 2026-04-17');
    expect(kept('Q1', pair, young, moved)).toBe(kept('Q1', pair, young));
  });
  it('is known by its day, wherever its line stands', () => {
    expect(kept('Q1', `2026-03-30 ${over}`, BOUGHT)).toBe('none');
    const first = '2026-03-01 Q1: bought 2 limia at 2.00 each as Oak';
    expect(kept('Q1', first, BOUGHT, `2026-03-10 ${over}`)).toBe(
      `2026-03-20 to 2026-04-17 by 2, ${String(Q1_SET_UP)}, usual`,
    );
  });
  it('of another tank ends nothing here', () => {
    expect(kept('Q1', BOUGHT, '2026-03-25 C2: quarantine 3 days', '2026-03-30 C2: quarantine over')).not.toBe('none');
  });
});

describe('a quarantine by its line', () => {
  it('rests on that line, of two on the one that lasts longer, of equals on the first', () => {
    expect(kept('C2', '2026-04-05 C2: quarantine 10 days')).toBe('2026-04-05 to 2026-04-15 by 1');
    expect(kept('C2', '2026-04-05 C2: quarantine 10 days', '2026-04-06 C2: quarantine 20 days')).toBe(
      '2026-04-06 to 2026-04-26 by 2',
    );
    expect(kept('C2', '2026-04-05 C2: quarantine 10 days', '2026-04-06 C2: quarantine 9 days')).toBe(
      '2026-04-05 to 2026-04-15 by 1',
    );
  });
  it('is begun anew by fish out of another quarantine', () => {
    const two = [BOUGHT, '2026-03-21 Q1: quarantine 40 days', '2026-04-01 C2: quarantine 10 days'];
    expect(kept('C2', ...two, '2026-04-05 Q1: moved 2 Elm to C2')).toBe('2026-04-05 to 2026-04-15 by 3, 4, anew');
    expect(kept('C2', ...two)).toBe('2026-04-01 to 2026-04-11 by 3');
  });
  it('goes before what is usual for the tank', () => {
    expect(kept('Q1', BOUGHT, '2026-03-21 Q1: quarantine 40 days')).toBe('2026-03-21 to 2026-04-30 by 2');
  });
});

import { describe, expect, it } from 'vitest';
import { due } from '../../src/questions/due.ts';
import { afterRaising, raisesPh } from '../../src/questions/raised.ts';
import { dueText } from '../../src/reports/due.ts';
import { plainLook } from '../../src/reports/look.ts';
import { journalOn } from '../support/journal.ts';

const CHANGE = '2026-01-02 C1: water change 30 % every 7 days\n';
const TAP = '2026-01-02 tank Tap: 20 L; alone\n';

describe('what a change or dose that can raise pH does to ammonia', () => {
  it('asks for a test first where total ammonia is not known, or not of late', () => {
    const never = afterRaising(journalOn('2026-02-01', CHANGE), 'C1');
    expect(never.toxic).toBeNull();
    expect(never.says).toMatch(/TAN unknown: test first/);
    const old = afterRaising(journalOn('2026-02-01', '2026-01-10 C1: test pH 7, TAN 0.25, 25 C\n'), 'C1');
    expect(old.toxic).toBeNull();
  });

  it('tells the toxic ammonia at the pH of the new water, by the published share', () => {
    const lines = `${TAP}2026-01-20 Tap: test pH 8.0\n2026-01-30 C1: test pH 7.0, TAN 1, 24 C\n`;
    const { toxic, says } = afterRaising(journalOn('2026-02-01', lines), 'C1');
    // Emerson et al. 1975 as UF/IFAS FA-16 prints it: TAN 1.0 at 24 °C, pH 8.0: 0.0502. Kit steps widen it.
    expect(toxic?.low ?? 1).toBeLessThan(0.0502);
    expect(toxic?.high ?? 0).toBeGreaterThanOrEqual(0.0501);
    expect(says).toMatch(/at pH .*8, by TAN 1 mg\/L as N on 30 Jan; may be over the mark of 0.02/);
  });

  it('takes the most that bicarbonate can do where the new water, or a dose, was never tested', () => {
    const lines = '2026-01-30 C1: test pH 7.0, TAN 0.25, 25 C\n';
    const change = afterRaising(journalOn('2026-02-01', lines), 'C1');
    const dose = afterRaising(journalOn('2026-02-01', `${TAP}2026-01-30 Tap: test pH 6.5\n${lines}`), 'C1', 'dose');
    expect(change.says).toMatch(/8\.3, new water not tested/);
    expect(dose.toxic?.high).toBeCloseTo(change.toxic?.high ?? 0, 6);
    const soft = afterRaising(journalOn('2026-02-01', `${TAP}2026-01-30 Tap: test pH 6.5\n${lines}`), 'C1');
    expect(soft.toxic?.high ?? 1).toBeLessThan((change.toxic?.high ?? 0) / 5);
  });

  it('is printed with a routine change, once an answer where it says the same, and never says safe', () => {
    const lines = `${CHANGE}2026-01-02 C2: water change 60 % every 7 days\n`;
    const room = journalOn('2026-02-01', lines);
    const text = dueText({ ...due(room, { days: 3, minutes: null }) }, plainLook(room.on)).replace(/\s+/g, ' ');
    expect(text.match(/TAN unknown: test first/g)).toHaveLength(1);
    expect(text).toMatch(/large changes in daily steps: 37 % on each of 2 days/);
    expect(text).not.toMatch(/\bsafe/i);
  });

  it('knows the products that raise pH', () => {
    expect(['sodium bicarbonate', 'baking soda', 'KH buffer', 'crushed coral'].every(raisesPh)).toBe(true);
    expect(['salt', 'black water extract', 'fish food'].some(raisesPh)).toBe(false);
  });

  it('asks for no word of the new water', () => {
    const rows = due(journalOn('2026-03-01', TAP), { days: 0, minutes: null }).rows;
    expect(rows.filter(({ why, what }) => `${what} ${why}`.includes('Tap'))).toEqual([]);
  });
});

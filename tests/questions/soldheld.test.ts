/** Fish sold out of a tank that kept them: told as a doubt, and no longer once a line let them go. */
import { describe, expect, it } from 'vitest';
import { soldHeld } from '../../src/questions/soldheld.ts';
import { journalOn } from '../support/journal.ts';

const told = (lines: string, on = '2026-06-01'): string[] =>
  soldHeld(journalOn(on, lines)).map(({ says, weight, write }) => `${weight}: ${says.split(':')[0] ?? ''} | ${write}`);
const SOLD = '2026-03-12 C1: sold 2 Ash at 4.00 each\n';

describe('fish sold out of a tank that was kept', () => {
  it('on hold: a doubt with the line that would have let them go', () => {
    const held = '2026-03-10 C1: hold "velvet"\n';
    expect(told(held + SOLD)).toEqual([
      'doubt: 2 Ash went out of C1, on hold that day for velvet | if it was over by then, C1: hold over',
    ]);
    expect(told(SOLD)).toEqual([]);
    expect(told(`${held}2026-03-11 C1: hold over\n${SOLD}`)).toEqual([]);
    expect(told(`${held}2026-03-12 C1: hold over\n${SOLD}`)).toEqual([]);
    expect(told(`${held + SOLD}2026-03-13 C1: hold over\n`)).toHaveLength(1);
    // Sold before anybody knew: those buyers are listed by the hold, and no line was wrong.
    expect(told(`${SOLD}2026-03-13 C1: hold "velvet"\n`)).toEqual([]);
    expect(told(held + SOLD, '2026-03-11')).toEqual([]);
  });

  it('reached by a hold over shared water, and given away as well; a tank let go of alone is free', () => {
    const held = '2026-01-02 group Elm: krib; 9; in A2\n2026-03-10 A1: hold "velvet"\n';
    const gone = '2026-03-12 A2: gave away 2 Elm\n';
    expect(told(held + gone)).toEqual([
      'doubt: 2 Elm went out of A2, reached by the hold of A1 for velvet | if it was over by then, A2: hold over',
    ]);
    expect(told(`${held}2026-03-11 A2: hold over\n${gone}`)).toEqual([]);
    expect(told(held + SOLD)).toEqual([]);
  });

  it('in quarantine, by a line or in a tank kept for it, as long as it ran', () => {
    const line = '2026-03-01 C1: quarantine 14 days\n';
    expect(told(line + SOLD)[0]).toContain('in quarantine since 1 Mar');
    expect(told(line + SOLD.replace('03-12', '03-15'))).toEqual([]);
    expect(told(`${line}2026-03-10 C1: quarantine over\n${SOLD}`)).toEqual([]);
    const kept = '2026-03-01 group Elm: krib; 9; in Q1; from "a friend"\n';
    const from = (on: string): string => `${kept}${on} Q1: sold 2 Elm at 4.00 each\n`;
    expect(told(from('2026-03-28'))).toEqual([
      'doubt: 2 Elm went out of Q1, in quarantine since 1 Mar | if it was over by then, Q1: quarantine over',
    ]);
    expect(told(from('2026-03-29'))).toEqual([]);
    expect(told(from('2026-03-20').replace(kept, `${kept}2026-03-19 Q1: quarantine over\n`))).toEqual([]);
    // Fish that came after the sale begin a quarantine of their own.
    expect(told(`${from('2026-03-29')}2026-04-02 group Fir: krib; 3; in Q1\n`)).toEqual([]);
    // And those that come home on the day of the sale itself, by a later line: the sold ones never met them.
    const home = '2026-03-29 C1: moved 2 Ash to Q1\n';
    expect(told(from('2026-03-29') + home)).toEqual([]);
    expect(told(from('2026-03-29').replace(kept, kept + home))).toHaveLength(1);
  });

  it('sick with what may be catching, for as long as a hold would last', () => {
    const sick = '2026-03-10 C1: sick "white spot"\n';
    expect(told(sick + SOLD)[0]).toContain('2 Ash went out of C1, sick');
    expect(told(`${sick + SOLD}2026-03-13 C1: not catching\n`)).toEqual([]);
    const catching = sick.replace('"\n', '", catching\n');
    expect(told(catching + SOLD.replace('03-12', '04-06'))).toHaveLength(1);
    expect(told(catching + SOLD.replace('03-12', '04-07'))).toEqual([]);
  });

  it('within the wait after the last dose before the sale', () => {
    const dosed = '2026-03-01 C1: treat "salt" 2 g/L, every 24 h, 3 doses, wait 10 days\n';
    // The only dose written is of 1 March: its wait ends on the 11th.
    expect(told(dosed + SOLD.replace('03-12', '03-10'))).toEqual([
      'doubt: 2 Ash went out of C1, 9 days after a dose of salt, of 10 to wait | their own day, if they went on 11 Mar or later',
    ]);
    expect(told(dosed + SOLD)).toEqual([]);
    const again = `${dosed}2026-03-02 C1: dosed 100 g "salt"\n`;
    expect(told(again + SOLD.replace('03-12', '03-11'))).toHaveLength(1);
    expect(told(again + SOLD)).toEqual([]);
  });
});

/** Fish sold out of a tank that kept them: which line let them go, and which came too early, too late or for others. */
import { describe, expect, it } from 'vitest';
import { soldHeld } from '../../src/questions/soldheld.ts';
import { journalOn } from '../support/journal.ts';

const told = (...lines: readonly string[]): string[] =>
  soldHeld(journalOn('2026-06-01', lines.map((line) => `2026-${line}\n`).join(''))).map(({ says }) =>
    says.replace(/: tell whoever.*/u, ''),
  );
const sold = '03-12 C1: sold 2 Ash at 4.00 each';

describe('a tank that was let go', () => {
  const elm = '01-02 group Elm: krib; 9; in A2';
  const gone = '03-12 A2: sold 2 Elm at 4.00 each';
  const older = ['01-10 A1: hold "fin rot"', '01-20 A2: hold over', '02-20 A1: hold over'];
  it('of an older hold is not let go of a later one', () => {
    expect(told(elm, ...older, '03-10 A1: hold "velvet"', gone)).toEqual([
      '2 Elm went out of A2, reached by the hold of A1 for velvet',
    ]);
    expect(told(elm, ...older, '03-10 A1: hold "velvet"', '03-12 A2: hold over', gone)).toEqual([]);
  });
  it('later, or another one, says nothing of the sale', () => {
    expect(told(elm, '03-10 A1: hold "velvet"', gone, '03-13 A2: hold over')).toHaveLength(1);
    expect(told(elm, '03-10 A1: hold "velvet"', '03-11 B1: hold over', gone)).toHaveLength(1);
  });
});

describe('what was told after the sale, on its day', () => {
  it.each([
    ['sickness', '03-12 C1: sick "white spot"'],
    ['a treatment', '03-12 C1: treat "salt" 2 g/L, every 24 h, 3 doses, wait 10 days'],
    ['a hold', '03-12 C1: hold "velvet"'],
  ])('kept nobody: %s', (_, line) => {
    expect(told(sold, line)).toEqual([]);
    expect(told(line, sold)).toHaveLength(1);
  });
});

describe('what another tank was under', () => {
  it.each([
    ['sickness', '03-01 C2: sick "white spot"'],
    ['a treatment', '03-01 C2: treat "salt" 2 g/L, every 24 h, 3 doses, wait 30 days'],
    ['a quarantine', '03-01 C2: quarantine 30 days'],
  ])('keeps nobody of this one: %s', (_, line) => {
    expect(told(line, sold)).toEqual([]);
  });
});

describe('a dose', () => {
  it('given after the sale keeps nobody that went before', () => {
    const treated = '03-10 C1: treat "salt" 2 g/L, every 48 h, 3 doses, wait 1 day';
    expect(told(treated, sold, '03-13 C1: dosed 100 g "salt"')).toEqual([]);
    expect(told(treated, '03-12 C1: dosed 100 g "salt"', sold)).toEqual([
      '2 Ash went out of C1, 0 days after a dose of salt, of 1 to wait',
    ]);
  });
});

describe('sickness', () => {
  it('says whether anybody told that it is catching', () => {
    expect(told('03-10 C1: sick "white spot"', sold)).toEqual([
      '2 Ash went out of C1, sick: white spot, and nobody said whether it is catching',
    ]);
    expect(told('03-10 C1: sick "white spot", catching', sold)).toEqual(['2 Ash went out of C1, sick: white spot']);
    expect(told('03-10 C1: sick "a bent spine", not catching', sold)).toEqual([]);
  });
});

/** When the fish of a pair are waited for, acted on, parted at once or asked for, by plain lines. */
import { describe, expect, it } from 'vitest';
import { pairs } from '../../../src/questions/pairs.ts';
import type { Advice } from '../../../src/questions/pairs/advice.ts';
import { journalOn } from '../../support/journal.ts';

const adviceOf = (group: string, on: string, lines: readonly string[]): Advice => {
  const text = lines.map((line) => `2026-${line}\n`).join('');
  const [row] = pairs(journalOn(`2026-${on}`, text), group).pairs;
  if (!row?.dispute) throw new Error(`${group} has no dispute open`);
  return row.dispute.advice;
};
const rowan = (on: string, ...lines: readonly string[]): Advice =>
  adviceOf(
    'Rowan',
    on,
    lines.map((line) => line.replace(/^(\d\d(?: \d\d:\d\d)?) /u, '02-$1 A1: ')),
  );
const step = (on: string, ...lines: readonly string[]): string => rowan(on, ...lines).step;

describe('a wound', () => {
  it('told after they were calmer is not calmed by that, even on one day', () => {
    expect(rowan('02-16', '15 chasing', '16 08:00 calmer', '16 18:00 wounded')).toMatchObject({
      step: 'separate',
      grave: true,
    });
    expect(step('02-16', '15 chasing', '16 calmer', '16 wounded')).toBe('separate');
    expect(step('02-16', '15 chasing', '16 calmer, wounded')).toBe('separate');
    expect(step('02-20', '14 chasing', '15 calmer', '16 wounded', '20 chasing')).toBe('separate');
  });
  it('is acted on and no longer parted for where they were calmer since', () => {
    const calm = { step: 'act', grave: false };
    expect(rowan('02-16', '15 chasing', '16 wounded', '16 calmer')).toMatchObject(calm);
    expect(rowan('02-16', '15 chasing', '16 08:00 wounded', '16 calmer')).toMatchObject(calm);
    expect(rowan('02-16', '15 chasing', '16 18:00 calmer', '16 08:00 wounded')).toMatchObject(calm);
  });
  it('in a bout that goes on is parted for, though they were calmer for a day', () => {
    expect(step('02-17', '14 chasing', '15 wounded', '16 calmer', '17 chasing')).toBe('separate');
  });
  it('has the cautions of one, and those of a divider where they are parted', () => {
    expect(rowan('02-14', '14 wounded').caution).toMatch(/^part them now, the aggressor out first/u);
    expect(rowan('02-15', '14 wounded', '14 divider in').caution).toMatch(/^quiet water and dim light/u);
    expect(rowan('02-15', '14 chasing', '14 divider in').caution).toMatch(/^taking the loser out early/u);
    expect(rowan('02-14', '14 torn fin').caution).toMatch(/^most disputes pass/u);
  });
});

describe('looks', () => {
  it('of one day count by their times, those of one time as one', () => {
    const worse = ['14 08:00 chasing', '14 12:00 hiding', '14 18:00 torn fin'];
    expect(step('02-14', ...worse)).toBe('separate');
    expect(rowan('02-14', ...worse).steps).toContain('worse at two looks running: part them now');
    expect(step('02-14', '14 08:00 chasing', '14 08:00 hiding', '14 08:00 torn fin')).toBe('wait');
    expect(step('02-14', '14 08:00 chasing, hiding, torn fin')).toBe('wait');
    expect(step('02-14', '14 08:00 chasing', '14 12:00 hiding, chasing', '14 18:00 torn fin')).toBe('separate');
  });
  it('have to be worse each time, and the last three at that', () => {
    expect(step('02-16', '14 chasing', '15 chasing', '16 torn fin')).toBe('act');
    expect(step('02-16', '14 chasing', '15 torn fin', '16 torn fin')).toBe('act');
    expect(step('02-16', '14 hiding', '15 chasing', '16 torn fin')).toBe('act');
    expect(step('02-17', '14 chasing', '15 hiding', '16 torn fin', '17 torn fin')).toBe('act');
    expect(step('02-17', '14 torn fin', '15 chasing', '16 hiding', '17 torn fin')).toBe('separate');
  });
  it('at which they were calmer are the best there are, when they were', () => {
    expect(step('02-16', '16 06:00 chasing', '16 08:00 calmer', '16 12:00 hiding', '16 18:00 torn fin')).toBe(
      'separate',
    );
    expect(step('02-16', '16 06:00 chasing', '16 12:00 hiding', '16 18:00 torn fin', '16 20:00 calmer')).toBe('wait');
    expect(step('02-16', '14 chasing', '15 hiding', '15 calmer', '16 torn fin')).toBe('act');
  });
});

describe('days', () => {
  it('without a word count from the last word, a sign or that they were calmer', () => {
    const calmed = ['14 chasing', '16 calmer'];
    expect([step('02-18', ...calmed), step('02-19', ...calmed)]).toEqual(['wait', 'ask']);
    const again = ['14 chasing', '15 calmer', '16 chasing'];
    expect([step('02-17', ...again), step('02-19', ...again)]).toEqual(['wait', 'ask']);
    expect(rowan('02-19', ...calmed).how).toBe(
      'day 6 of a dispute with chasing; calmer since the 16th; no word since the 16th',
    );
    expect(rowan('02-19', ...calmed).steps).toContain('nobody wrote for 3 days: silence does not end a dispute');
  });
  it('of chasing end the waiting on the fifth, unless they were calmer since', () => {
    const chased = ['14', '15', '16', '17', '18'].map((day) => `${day} chasing`);
    expect(step('02-18', ...chased)).toBe('act');
    expect(step('02-18', ...chased, '18 calmer')).toBe('wait');
  });
  it("are one more than the longest of the pair's own, but for a torn fin", () => {
    const before = [
      ...['02 A1: chasing', '03 A1: chasing', '04 A1: made up'],
      ...['10 A1: chasing', '11 A1: chasing', '13 A1: made up'],
      ...['20 A1: chasing', '22 A1: chasing', '24 A1: made up'],
    ].map((line) => `01-${line}`);
    const chased = ['14', '15', '16', '17', '18', '19'].map((day) => `02-${day} A1: chasing`);
    const at = (day: string, ...more: readonly string[]): Advice =>
      adviceOf('Rowan', `02-${day}`, [...before, ...chased.filter((line) => line.slice(3, 5) <= day), ...more]);
    expect([at('18').step, at('19').step]).toEqual(['wait', 'act']);
    expect(at('18').how).toBe('day 5 of a dispute with chasing; its last 3 took 3–5 days');
    expect(at('18').steps.slice(1, 3)).toEqual([
      'day 5 of this bout; last word 18 Feb',
      "act from day 6 at 1 (this pair's own longest and a day; usual: day 5)",
    ]);
    expect(at('18').steps).toContain('its last 3 took 3–5 days');
    const torn = at('16', '02-14 A1: torn fin');
    expect(torn.step).toBe('act');
    expect(torn.steps).toContain('act from day 3 at 3 (usual)');
    expect(at('16', '02-14 A1: not eating').steps).toContain('act at once at 4 and 5');
  });
});

describe('a divider', () => {
  it('or a lamp of another tank is none of theirs', () => {
    const lines = ['02-14 A1: chasing', '02-14 A2: divider in; lights off'];
    const { step: next, what, how } = adviceOf('Rowan', '02-15', lines);
    expect([next, how]).toEqual(['wait', 'day 2 of a dispute with chasing']);
    expect(what).toMatch(/^lights off, keep both in/u);
  });
  it('parts them, and stays in until one that was wounded eats', () => {
    const chased = rowan('02-15', '14 chasing', '14 divider in; lights off');
    expect(chased.what).toMatch(/^leave the divider in until both show themselves and eat, then take it out/u);
    expect(chased.how).toBe('day 2 of a dispute with chasing; lights off since the 14th; divider in since the 14th');
    const wounded = ['14 wounded, male on female', '15 divider in'];
    expect(rowan('02-16', ...wounded).what).toBe(
      'look daily how she does; the divider stays in until both show themselves and eat',
    );
    expect(rowan('02-16', ...wounded, '16 calmer').what).toMatch(/^leave the divider in/u);
  });
  it('that lets something through is set anew', () => {
    const through = ['14 chasing', '15 divider in'];
    expect(rowan('02-16', ...through, '16 wounded, male on female')).toMatchObject({
      step: 'separate',
      what: 'separate now: set the divider anew, so that nothing gets past it, or take out the male and leave the female in place',
    });
    expect(rowan('02-16', ...through, '16 torn fin').what).toBe(
      'set the divider anew, so that nothing gets past it; if they go on, take out the aggressor, not the loser',
    );
    expect(step('02-16', ...through, '16 chasing')).toBe('parted');
  });
});

describe('who is taken out and who stays', () => {
  it('is told by sex, by name, or by neither', () => {
    expect(rowan('02-14', '14 wounded, female on male').what).toBe(
      'separate now: divider in, or take out the female and leave the male in place',
    );
    expect(rowan('02-14', '14 wounded').what).toBe(
      'separate now: divider in, or take out the aggressor and leave the loser in place',
    );
    expect(rowan('02-14', '14 chasing, female on male').what).toContain('while he has a refuge and eats');
    expect(rowan('02-14', '14 chasing').what).toContain('while the loser has a refuge and eats');
    expect(rowan('02-15', '14 wounded, male on female', '15 chasing').what).toContain(
      'take out the male and leave the female',
    );
  });
  it('of a trio is all that it may be', () => {
    const sedge = (line: string): string => adviceOf('Sedge', '02-14', [`02-14 A2: ${line}`]).what;
    expect(sedge('wounded, Sedge male on female')).toContain('take out the male and leave the females in place');
    expect(sedge('Lark wounded')).toContain('take out the male and leave Lark in place');
    expect(sedge('chasing, Sedge male on female')).toContain('keep them all in while she has a refuge');
  });
});

describe('asking after silence', () => {
  it('looks now where it was bad, and tells what was seen last', () => {
    expect(rowan('02-17', '14 not eating').what).toBe(
      'look now: one not eating on 14 Feb and no word since; say how they stand',
    );
    expect(rowan('02-17', '14 torn fin').what).toBe('say how they stand: made up, calmer, or still at it');
  });
});

describe('gasping', () => {
  const water = 'nobody seen chasing: it may be the water, test it and give more air';
  it('may be the water where nobody quarrelled, until nobody looked for three days', () => {
    expect(rowan('02-15', '14 gasping').how).toContain(water);
    expect(rowan('02-15', '14 gasping').how).toBe(`day 2 of a dispute with one gasping; ${water}`);
    expect(rowan('02-17', '14 gasping').how).not.toContain(water);
  });
  it.each([
    ['one did it', ['14 gasping, male on female']],
    ['one chased as well', ['14 gasping', '15 chasing']],
    ['they were calmer', ['14 gasping', '15 calmer']],
  ])('is a quarrel where %s', (_, lines) => {
    expect(rowan('02-15', ...lines).how).not.toContain(water);
  });
});

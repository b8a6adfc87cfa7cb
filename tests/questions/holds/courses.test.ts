/** Courses of treatment: which doses belong to one, when the next is due, from when its fish may be sold; sickness and quarantine beside them. */
import { describe, expect, test } from 'vitest';
import { isoDay, type Day } from '../../../src/core/day.ts';
import { holds, type HoldsAnswer } from '../../../src/questions/holds.ts';
import { treatmentClear } from '../../../src/questions/holds/courses.ts';
import { journalOn } from '../../support/journal.ts';

const ask = (lines: string, on = '2026-04-10'): HoldsAnswer => holds(journalOn(on, lines));
const date = (day: Day | null | undefined): string => (day === null || day === undefined ? '?' : isoDay(day));
/** `C1 salt 2 of 3, next 2026-04-05 to 2026-04-05, clear 2026-04-24`. */
const courses = (lines: string, on?: string): string[] =>
  ask(lines, on).treatments.map(({ place, product, given, of, next, clear }) => {
    const due = next === null ? 'none' : `${date(next.low)} to ${date(next.high)}`;
    return `${place} ${product} ${String(given)} of ${String(of ?? '?')}, next ${due}, clear ${date(clear)}`;
  });

const THREE = '2026-03-24 C1: treat salt 2 g/L, every 2 days, 3 doses\n';

describe('a dose', () => {
  test('of the same product in the same water carries the course on, whatever its case', () => {
    const given = '2026-03-26 C1: dosed 5 g "Salt"\n2026-03-28 C1: dosed 5 g salt\n';
    expect(courses(THREE + given, '2026-04-01')).toEqual(['C1 salt 3 of 3, next none, clear 2026-04-11']);
  });
  test.each([
    ['of another product', '2026-03-26 C1: dosed 5 g formalin'],
    ['in other water', '2026-03-26 C2: dosed 5 g salt'],
    ['before the course', '2026-03-22 C1: dosed 5 g salt'],
  ])('%s does not', (_, line) => {
    expect(courses(`${THREE}${line}\n`, '2026-03-27')).toEqual([
      'C1 salt 1 of 3, next 2026-03-26 to 2026-03-26, clear 2026-04-12',
    ]);
  });
  test('of the day on which the course began is one of it', () => {
    expect(courses(`${THREE}2026-03-24 C1: dosed 5 g salt\n`, '2026-03-25')[0]).toMatch(/^C1 salt 2 of 3, /);
  });
  test('ten days after the last is one of the course, or twice the days between two; later no more', () => {
    expect(courses(`${THREE}2026-04-03 C1: dosed 5 g salt\n`)).toEqual([
      'C1 salt 2 of 3, next 2026-04-05 to 2026-04-05, clear 2026-04-24',
    ]);
    expect(courses(`${THREE}2026-04-04 C1: dosed 5 g salt\n`, '2026-04-05')).toEqual([
      'C1 salt 1 of 3, next none, clear 2026-04-07',
    ]);
    const six = '2026-03-24 C1: treat salt 2 g/L, every 6 days, 3 doses\n';
    expect(courses(`${six}2026-04-05 C1: dosed 5 g salt\n`)[0]).toMatch(/^C1 salt 2 of 3, next 2026-04-11/);
    expect(courses(`${six}2026-04-06 C1: dosed 5 g salt\n`, '2026-04-06')[0]).toMatch(/^C1 salt 1 of 3/);
  });
  test('filed late counts in order of its day', () => {
    const given = '2026-03-28 C1: dosed 5 g salt\n2026-03-26 C1: dosed 5 g salt\n';
    const [course] = ask(THREE + given, '2026-04-01').treatments;
    expect([course?.given, date(course?.clear)]).toEqual([3, '2026-04-11']);
  });
});

describe('the next dose', () => {
  test('that was put off, or waited for its keeper, is asked for once that is over', () => {
    // Due on 26 March; a week later an unwritten one is taken for the end of the course.
    expect(courses(THREE, '2026-04-02')[0]).toContain('next 2026-03-26');
    expect(courses(THREE, '2026-04-03')[0]).toContain('next none');
    const off = '2026-03-27 C1: put off salt until 2026-04-06\n';
    expect(courses(THREE + off, '2026-04-06')[0]).toContain('next 2026-03-26');
    expect(courses(`${THREE}2026-03-25 room: away until 2026-04-05\n`, '2026-04-05')[0]).toContain('next 2026-03-26');
    expect(courses(`${THREE}${off.replace('C1', 'C2')}`, '2026-04-06')[0]).toContain('next none');
  });
  test('is due after the days between two, or the day after where none are said', () => {
    expect(courses('2026-04-09 C1: treat salt 2 g/L, 3 doses\n')).toEqual([
      'C1 salt 1 of 3, next 2026-04-10 to ?, clear 2026-04-25',
    ]);
    expect(courses('2026-04-09 C1: treat salt 2 g/L, every 2 days\n')).toEqual([
      'C1 salt 1 of ?, next 2026-04-11 to 2026-04-11, clear 2026-04-23',
    ]);
    expect(courses('2026-04-09 C1: treat salt 2 g/L\n')).toEqual(['C1 salt 1 of ?, next none, clear 2026-04-23']);
  });
  test('is asked for seven days, then the course was evidently stopped', () => {
    expect(courses('2026-04-01 C1: treat salt 2 g/L, every 2 days, 3 doses\n')).toEqual([
      'C1 salt 1 of 3, next 2026-04-03 to 2026-04-03, clear 2026-04-26',
    ]);
    expect(courses('2026-03-31 C1: treat salt 2 g/L, every 2 days, 3 doses\n')).toEqual([
      'C1 salt 1 of 3, next none, clear 2026-04-14',
    ]);
  });
});

describe('fish are clear', () => {
  test('fourteen days after the last dose, or as many as its line says, doses to come included', () => {
    expect(courses('2026-04-07 C1: treat salt 2 g/L, every 2 days, 3 doses, wait 20 days\n')).toEqual([
      'C1 salt 1 of 3, next 2026-04-09 to 2026-04-09, clear 2026-05-02',
    ]);
  });
  test('on that very day: the course is told no more', () => {
    const dose = '2026-03-27 C1: treat salt 2 g/L\n';
    expect(courses(dose, '2026-04-09')).toEqual(['C1 salt 1 of ?, next none, clear 2026-04-10']);
    expect(courses(dose, '2026-04-10')).toEqual([]);
  });
  test('of two courses in one tank by the later, whichever began first; other tanks by their own', () => {
    const salt = '2026-04-01 C1: treat salt 2 g/L, wait 20 days\n';
    const formalin = '2026-04-05 C1: treat formalin 2 mL\n';
    const last = (tank: string, lines: string) => treatmentClear(journalOn('2026-04-10', lines), tank);
    expect(last('C1', salt + formalin)?.treatment.product).toBe('salt');
    expect(last('C1', salt.replace('wait 20', 'wait 10') + formalin)?.treatment.product).toBe('formalin');
    expect(last('C2', salt + formalin)).toBeNull();
    expect(last('C2', `${salt}2026-04-08 C2: treat formalin 2 mL\n`)?.treatment.product).toBe('formalin');
  });
  test('in every tank on the treated water, and in no tank valved off before', () => {
    const treated = '2026-04-09 A1: treat salt 2 g/L\n';
    expect(ask(treated).treatments.map(({ tanks }) => tanks)).toEqual([['A1', 'A2', 'B1']]);
    const off = `2026-04-01 A1: off the loop\n${treated}`;
    expect(ask(off).treatments.map(({ tanks }) => tanks)).toEqual([['A1']]);
  });
});

describe('quarantine', () => {
  const kept = (lines: string, on?: string): string[] =>
    ask(lines, on).quarantines.map(
      ({ place, since, until, usual }) => `${place} ${date(since)} to ${date(until)}${usual ? ', usual' : ''}`,
    );
  test('in a quarantine tank lasts 28 days from the last fish that came in, by any line', () => {
    const bought = '2026-03-20 Q1: bought 6 krib at 4.00 each\n';
    expect(kept(bought)).toEqual(['Q1 2026-03-20 to 2026-04-17, usual']);
    expect(kept(`${bought}2026-03-25 C1: Ash moved 2 to Q1\n`)).toEqual(['Q1 2026-03-25 to 2026-04-22, usual']);
    expect(kept(`2026-03-25 C1: Ash moved 2 to Q1\n${bought}`)).toEqual(['Q1 2026-03-25 to 2026-04-22, usual']);
    expect(kept('2026-03-22 group Elm: krib; 6; in Q1\n')).toEqual(['Q1 2026-03-22 to 2026-04-19, usual']);
    expect(kept('')).toEqual([]);
  });
  test('ends where no fish are left, or by its line until more come', () => {
    const bought = '2026-03-20 Q1: bought 6 krib at 4.00 each as Elm\n';
    expect(kept(`${bought}2026-03-25 Q1: Elm moved all to C2\n`)).toEqual([]);
    const over = `${bought}2026-03-30 Q1: quarantine over\n`;
    expect(kept(over)).toEqual([]);
    expect(kept(`${bought}2026-03-25 C2: quarantine 3 days\n2026-03-30 C2: quarantine over\n`)).toEqual([
      'Q1 2026-03-20 to 2026-04-17, usual',
    ]);
    expect(kept(`${over}2026-04-02 C1: Ash moved 2 to Q1\n`)).toEqual(['Q1 2026-04-02 to 2026-04-30, usual']);
    expect(kept(`2026-03-10 C1: Ash moved 2 to Q1\n2026-03-15 Q1: quarantine over\n${bought}`)).toEqual([
      'Q1 2026-03-20 to 2026-04-17, usual',
    ]);
  });
  test('by a line lasts its days; of two lines the later end counts', () => {
    const ten = '2026-04-05 C2: quarantine 10 days\n';
    expect(kept(ten)).toEqual(['C2 2026-04-05 to 2026-04-15']);
    expect(kept(`${ten}2026-04-06 C2: quarantine 20 days\n`)).toEqual(['C2 2026-04-06 to 2026-04-26']);
    expect(kept(`2026-04-01 C2: quarantine 30 days\n${ten}`)).toEqual(['C2 2026-04-01 to 2026-05-01']);
    expect(kept(`${ten}2026-04-07 C2: quarantine over\n`)).toEqual([]);
  });
});

describe('a sickness', () => {
  const sick = (lines: string, on?: string): string[] =>
    ask(lines, on).sick.map(
      ({ place, text, catching, until, beside }) =>
        `${place} ${text}, ${String(catching)}, until ${date(until)}, beside ${beside.join(' ')}`,
    );
  test('is open until a line says whether it is catching, beside the tanks of its water that day', () => {
    expect(sick('2026-04-01 A1: sick "white spot"\n')).toEqual(['A1 white spot, null, until ?, beside A2 B1']);
    expect(sick('2026-04-01 A2: off the loop\n2026-04-02 A1: sick "white spot"\n')).toEqual([
      'A1 white spot, null, until ?, beside B1',
    ]);
    expect(sick('2026-04-01 A1: sick "white spot"\n2026-04-02 A1: not catching\n')).toEqual([]);
  });
  test('that is catching lasts 28 days; a hold over its tanks takes its place', () => {
    const catching = '2026-04-01 C1: sick "white spot", catching\n';
    expect(sick(catching, '2026-04-28')).toEqual(['C1 white spot, true, until 2026-04-29, beside ']);
    expect(sick(catching, '2026-04-29')).toEqual([]);
    expect(sick(`${catching}2026-04-02 C1: hold "white spot"\n`)).toEqual([]);
    expect(sick(`${catching}2026-04-02 C2: hold "white spot"\n`)).toHaveLength(1);
    expect(sick(`${catching}2026-04-02 C1: hold "white spot"\n2026-04-03 C1: hold over\n`)).toEqual([]);
  });
});

/** Lines near to others that are read: neither they nor what is offered for them state a number, a day or a deed that nobody told. */
import { describe, expect, test } from 'vitest';
import { factsOf, problemsIn } from '../support/lines.ts';

const DAY = '2026-03-10 ';
const offered = (line: string): string => problemsIn(DAY + line)[0]?.write.replace(DAY, '') ?? 'read';

describe('a `+` behind a number and a blank leaves the number open', () => {
  test.each([
    ['counted 40 +', 'counted 40+'],
    ['spawned, 40 + eggs', 'spawned, 40+ eggs'],
    ['moved 20 + to C2', 'moved 20+ to C2'],
    ['counted 40 +; wc 30%', 'counted 40+; wc 30%'],
  ])('%s', (clauses, meant) => {
    expect(factsOf(clauses)).toEqual(factsOf(meant));
  });
});

describe('fish that jumped and fish that were found dead', () => {
  test.each([
    ['2 jumped, dead 1', '2 jumped; 1 dead'],
    ['missing 2, died 1', '2 missing; 1 dead'],
    ['2 missing, 1 dead', '2 missing; 1 dead'],
  ])('are counted apart where both are: %s', (clauses, meant) => {
    expect(factsOf(clauses, 'C1')).toEqual(factsOf(meant, 'C1'));
  });
});

test.each(['female laying on her side', 'laying on the bottom', 'male laying'])(
  'a fish that lies laid nothing: %s',
  (clauses) => {
    expect(offered(`A1: ${clauses}`)).toBe(`A1: note ${clauses}`);
  },
);

test.each(['Rowan of 1 Mar died 1', 'moved 2 Rowan of 1 Mar to C1'])(
  'a pair is called by no day: its young, or what happened then? %s',
  (clauses) => {
    expect(problemsIn(`${DAY}A1: ${clauses}`)).toMatchObject([{ kind: 'two-readings', words: 'Rowan of 1 Mar' }]);
  },
);

describe('how long it was', () => {
  test.each([
    ['power cut 11-1pm', 'power cut 120 min "11-1pm"'],
    ['power cut 10-2am', 'power cut 240 min "10-2am"'],
    ['power cut 2-4pm', 'power cut 120 min "2-4pm"'],
    ['power cut 11am-1am', 'power cut 840 min "11am-1am"'],
    ['away 5-12', 'note away 5-12'],
  ])('%s', (clauses, write) => {
    expect(offered(`room: ${clauses}`)).toBe(`room: ${write}`);
  });
});

describe('clauses without the sign between them', () => {
  test.each([
    ['A1: spawned, about 60 looks ok', 'A1: spawned, about 60; looks ok'],
    ['A1: Wren spawned, about 60 eggs', 'group Wren: some'],
    ['A1: jumped, dead', 'A1: some jumped, dead'],
    ['A1: bulkhead dripping Fern died', 'A1: bulkhead dripping; Fern died'],
    ['A1: no eggs laid', 'A1: note no eggs laid'],
    ['C1: sold 20 + 5 to Bob', 'C1: note sold 20 + 5 to Bob'],
  ])('«%s»', (line, write) => {
    expect(offered(line)).toBe(write);
  });
});

describe('money that is not said to have gone is none that was spent', () => {
  test.each(['earned 12.50', 'got £20', 'refund 12.50', 'Sam paid 12.50', 'deposit 5.00', 'divider out at 4.00'])(
    '%s',
    (words) => {
      expect(offered(`room: ${words}`)).toBe(`room: note ${words}`);
    },
  );
  test('and a number behind a group is none', () => {
    expect(offered('C1: Ash 4.00')).not.toContain('spent');
    expect(offered('room: bags 4.50')).toBe('room: spent 4.50 "bags"');
  });
});

describe('a deed that is denied, put off or half done is none', () => {
  test.each([
    'glass not cleaned',
    'glass to be cleaned',
    'glass half cleaned',
    'nothing done',
    'wc done',
    'everything cleaned',
  ])('%s', (words) => {
    expect(offered(`A1: ${words}`)).toBe(`A1: note ${words}`);
  });
  test.each([
    ['glass cleaned', 'did "glass cleaned"'],
    ['shopping done', 'did "shopping"'],
  ])('%s', (words, write) => {
    expect(offered(`A1: ${words}`)).toBe(`A1: ${write}`);
  });
});

describe('numbers keep their worth', () => {
  test.each([
    ['C1: largest 1 1/2 in', 'C1: largest 1½ in'],
    ['C1: counted thirty - forty', 'C1: counted thirty to forty'],
    ['C1: released about 25 forty', 'C1: note released about 25 forty'],
    ['Long: 3/4', 'Long: note 3/4'],
    ['Long: 2/6 rinsed', 'Long: cleaned 2 of 6 layers'],
  ])('«%s»', (line, write) => {
    expect(offered(line)).toBe(write);
  });
  test('and nothing is called read that is not', () => {
    expect(problemsIn(`${DAY}C1: counted a hundred and twenty`)[0]?.says).not.toContain('is read as');
  });
});

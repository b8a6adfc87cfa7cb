/** Reading rules 9 to 15, as far as they are the reader's: headings, order, stages, lists, `by` and `at`. */
import { describe, expect, test } from 'vitest';
import { dayFromIso, isoDay } from '../../../src/core/day.ts';
import type { Day } from '../../../src/core/day.ts';
import { eventsOf, fact, factsOf, only, problemIn, problemsIn, readLines } from '../../support/lines.ts';

function day(iso: string): Day {
  const read = dayFromIso(iso);
  if (read === null) throw new Error(iso);
  return read;
}

function about(heading: string, clause = 'all well'): readonly unknown[] {
  return eventsOf(`2026-03-10 ${heading}: ${clause}`).map(({ subject }) => subject);
}

const tank = (name: string): object => ({ kind: 'tank', tank: name });

describe('rule 9: headings', () => {
  test('the kind of the subject decides which clauses exist', () => {
    expect(problemIn('2026-03-10 A1: level 58 mm')).toMatchObject({
      kind: 'clause-elsewhere',
      words: 'level',
      write: '2026-03-10 Long: level 58 mm',
    });
    expect(problemIn('2026-03-10 M1: chasing').kind).toBe('clause-elsewhere');
    expect(problemIn('2026-03-10 A1: harvested').says).toContain('a culture');
  });

  test('a missing colon shows the line mended', () => {
    expect(problemIn('2026-03-10 A1 chasing, male on female')).toMatchObject({
      kind: 'missing-colon',
      write: '2026-03-10 A1: chasing, male on female',
    });
    expect(problemIn('2026-03-10 07:40 A1, A2 and C1 all well').write).toBe('2026-03-10 07:40 A1, A2 and C1: all well');
    expect(problemIn('2026-03-10 Fern spawned').write).toBe('2026-03-10 Fern: spawned');
    expect(problemIn('2026-03-10 all well').write).toBe('2026-03-10 room: all well');
  });

  test('several subjects: lists, ranges in walking order, rows, loops, all but some', () => {
    const three = ['A1', 'A2', 'C1'].map(tank);
    expect(about('A1 A2 and C1')).toEqual(three);
    expect(about('A1, A2, C1')).toEqual(three);
    expect(about('a1 & a2 & c1')).toEqual(three);
    // Tanks of one day stand in order of their names, as people count.
    expect(about('A2 to C1')).toEqual(['A2', 'B1', 'C1'].map(tank));
    expect(about('row D')).toEqual(['C1', 'C2'].map(tank));
    expect(about('Long tanks')).toEqual([{ kind: 'tanks', of: { loop: 'Long' }, except: [] }]);
    expect(about('all tanks except Q1 and C2')).toEqual([{ kind: 'tanks', of: 'all', except: ['Q1', 'C2'] }]);
  });

  test('ranges follow the walking order that is set', () => {
    const lines = '2026-02-01 room: walk Q1 C1 A1\n2026-03-10 Q1 to A1: all well\n';
    expect(
      eventsOf(lines)
        .slice(1)
        .map(({ subject }) => subject),
    ).toEqual(['Q1', 'C1', 'A1'].map(tank));
    expect(problemIn('2026-03-10 C1 to A1: all well')).toMatchObject({
      kind: 'range-order',
      write: '2026-03-10 A1 to C1: all well',
    });
  });

  test('tanks may be numbers', () => {
    expect(about('12')).toEqual([tank('12')]);
    expect(about('tank 12')).toEqual([tank('12')]);
    expect(about('A1 12')).toEqual([tank('A1'), tank('12')]);
    expect(problemIn('2026-03-10 pair 7: krib').kind).toBe('name-is-number');
  });

  test('events of a list share the clause’s place', () => {
    const places = eventsOf('2026-03-10 A1 A2: lights off').map(({ place }) => place);
    expect(places[0]).toEqual(places[1]);
  });

  test('declaring again amends, and one line declares one fact', () => {
    const [first, second] = eventsOf(
      '2026-03-01 tank E1: 60 x 30 x 30 cm; alone\n2026-03-10 tank E1: on Long; lights off\n',
    );
    expect(first).toMatchObject({ kind: 'tank declared', plumbing: 'alone' });
    expect(second).toMatchObject({ kind: 'tank declared', plumbing: { on: 'Long' }, size: null });
    expect(eventsOf('2026-03-10 tank A1: lights off')).toMatchObject([{ kind: 'measure begun' }]);
  });

  test.each([
    'counted 40',
    'died 2',
    'sold 3 for 30.00',
    'moved 4 to C1',
    'spawned, about 80 eggs',
    'spent 24.00 "salt"',
  ])('numbers of fish and money are refused for several tanks: %s', (clause) => {
    expect(problemIn(`2026-03-10 A1 A2: ${clause}`).kind).toBe('count-for-several');
    expect(problemIn(`2026-03-10 Long tanks: ${clause}`).kind).toBe('count-for-several');
  });

  test('subjects of one line are of one kind', () => {
    expect(problemIn('2026-03-10 A1 and Rowan: all well').kind).toBe('mixed-heading');
  });
});

describe('rule 10: order in a day', () => {
  test('by day, then time, then as filed; declarations first; clauses from left to right', () => {
    const lines = `2026-03-11 A1: made up
2026-03-10 09:00 A1: chasing; hiding
2026-03-10 08:00 A1: pinned
2026-03-10 tank E1: 54 L; alone
`;
    expect(eventsOf(lines).map((event) => ('sign' in event ? event.sign : event.kind))).toEqual([
      'tank declared',
      'pinned',
      'chasing',
      'hiding',
      'made up',
    ]);
    expect(eventsOf(lines).map(({ seq }) => seq)).toEqual(
      [...eventsOf(lines)].map((_, index) => (eventsOf(lines)[0]?.seq ?? 0) + index),
    );
  });

  test('a line without a time takes that of the nearest timed line above in that file and date', () => {
    const lines = `2026-03-10 A1: chasing
2026-03-10 21:00 A1: pinned
2026-03-11 07:00 A1: hiding
2026-03-10 A1: torn fin
2026-03-10 08:00 A1: gasping
2026-03-10 A1: made up
`;
    expect(eventsOf(lines).map((event) => ['sign' in event ? event.sign : event.kind, event.minute])).toEqual([
      ['chasing', null],
      ['gasping', 480],
      ['made up', 480],
      ['pinned', 1260],
      ['torn fin', 1260],
      ['hiding', 420],
    ]);
  });

  test('what an ordinary line amends stands between the declarations and what happened', () => {
    const lines = ['A9: live volume 40 L', 'tank B9: 54 L', 'A9: all well', 'tank A9: 54 L'].map(
      (line) => `2026-02-01 ${line}`,
    );
    const order = (some: readonly string[]): unknown =>
      eventsOf(some.join('\n')).map((event) => [event.kind, 'live' in event && event.live !== null]);
    const expected = [
      ['tank declared', false],
      ['tank declared', false],
      ['tank declared', true],
      ['all well', false],
    ];
    expect(order(lines)).toEqual(expected);
    expect(order(lines.toReversed())).toEqual(expected);
  });

  test('what rests on something comes after it, however the lines of a day are filed', () => {
    const lines = `2026-02-01 pair Oak: angel; in E1
2026-02-01 tank E1: 54 L; on Short
2026-02-01 species angel: Pterophyllum scalare
2026-02-01 loop Short: sump 90 L
2026-02-01 row E: E1
`;
    const kinds = ['loop declared', 'tank declared', 'row declared', 'species declared', 'group declared'];
    expect(eventsOf(lines).map(({ kind }) => kind)).toEqual(kinds);
    expect(eventsOf(lines.trim().split('\n').reverse().join('\n')).map(({ kind }) => kind)).toEqual(kinds);
  });
});

describe('rule 11: stages and names of broods', () => {
  test.each(['some', 'loads of', 'a few'])('«spawned, %s eggs» is one spawning, not a second one seen', (count) => {
    expect(eventsOf(`2026-03-10 A1: spawned, ${count} eggs\n`)).toMatchObject([{ kind: 'spawned', as: 'laid' }]);
  });

  test('a brood may be given a name of its own, and is then known by it', () => {
    const lines = '2026-03-01 A1: spawned brood R7\n2026-03-04 A1: r7 wrigglers\n2026-03-05 R7: counted 40\n';
    expect(eventsOf(lines)).toMatchObject([
      { kind: 'spawned', brood: 'R7' },
      { kind: 'stage seen', fish: { kind: 'brood', brood: 'R7' } },
      { subject: { kind: 'brood', brood: 'R7' } },
    ]);
  });

  test('names of the form GROUP-number are kept for broods', () => {
    expect(fact('spawned', 'spawned brood Rowan-3').brood).toBe('Rowan-3');
    expect(problemIn('2026-03-10 tank Rowan-3: 54 L')).toMatchObject({ kind: 'name-is-brood', words: 'Rowan-3' });
    // Ash-1 is a brood of Ash; Oak-1 is no brood, since there is no Oak.
    expect(fact('counted', 'Ash-1 counted 3').fish).toEqual({ kind: 'brood', brood: 'Ash-1' });
    expect(eventsOf('2026-03-10 tank Oak-1: 54 L')).toHaveLength(1);
  });

  test('a brood cannot take the name of something else', () => {
    expect(problemIn('2026-03-10 A1: spawned brood C1')).toMatchObject({ kind: 'name-taken', words: 'C1' });
  });
});

describe('rule 13: numbers of fish stay intervals', () => {
  test('`rest stay` is kept as said', () => {
    expect(fact('moved', 'moved about 45 Rowan-1 to C1, rest stay')).toMatchObject({
      restStay: true,
      count: { total: { low: 34, likely: 45, high: 56 }, as: 'about' },
    });
  });
});

describe('rule 15: by, at, for, to, spans', () => {
  test('`by` is a deadline in `to do` and `wanted`, elsewhere `seen by`', () => {
    expect(fact('to do', 'to do "new air stone" by 2026-06-10').by).toBe(day('2026-06-10'));
    expect(fact('wanted', 'wanted 20 krib at 30 mm by 2026-06-01', 'room').by).toBe(day('2026-06-01'));
    expect(fact('stage seen', 'wrigglers by 2026-03-08').when).toEqual({
      low: null,
      likely: null,
      high: day('2026-03-08'),
    });
  });

  test('`at` is each, `for` with money the total, `to` the buyer', () => {
    expect(fact('sold', 'sold 12 Rowan-1 at 4.00')).toMatchObject({ price: { amount: 4, per: 'each' } });
    expect(fact('sold', 'sold 12 Rowan-1 at 4.00 each to "a neighbour"')).toMatchObject({
      price: { amount: 4, per: 'each' },
      to: 'a neighbour',
    });
    expect(fact('sold', 'sold 12 Rowan-1 for 30.00')).toMatchObject({ price: { amount: 30, per: 'all' } });
    expect(fact('sold', 'sold 12 Rowan-1 for 30.00 at Autumn')).toMatchObject({ auction: 'Autumn' });
  });

  test('`22-26` spans the bulk of the fish, `largest 28-30` is doubt about one', () => {
    expect(fact('sized', 'size 22-26 mm').sizes).toMatchObject({ of: 'bulk', values: [{ low: 22, high: 26 }] });
    expect(fact('sized', 'largest 28-30 mm').sizes).toMatchObject({ of: 'largest', values: [{ low: 28, high: 30 }] });
    expect(fact('sized', 'sizes 18 19 20 mm').sizes).toMatchObject({
      of: 'sample',
      values: [{ low: 18 }, { low: 19 }, { low: 20 }],
    });
  });

  test('`level` rises from the floor; `below the lip` is told apart', () => {
    expect(fact('level', 'level 58 mm', 'Long')).toMatchObject({ from: 'bottom', level: { low: 58 } });
    expect(fact('level', 'level 22 mm below the lip', 'Long')).toMatchObject({ from: 'lip', level: { low: 22 } });
  });
});

describe('taking back', () => {
  const moved = '2026-03-10 A1: moved 20 Rowan-1 to C1 "in the blue net"\n';

  test('`mistake` cancels the one such clause of that subject and day, remarks aside', () => {
    expect(eventsOf(`${moved}2026-03-10 A1: mistake moved 20 Rowan-1 to C1; lights off\n`)).toMatchObject([
      { kind: 'measure begun' },
    ]);
    expect(eventsOf(`2026-03-10 A1: mistake moved 20 rowan-1 to c1\n${moved}`)).toEqual([]);
  });

  test('another subject, day or number is another clause', () => {
    for (const line of [
      '2026-03-10 A2: mistake moved 20 Rowan-1 to C1',
      '2026-03-11 A1: mistake moved 20 Rowan-1 to C1',
      '2026-03-10 A1: mistake moved 21 Rowan-1 to C1',
    ]) {
      expect(problemsIn(moved + line)).toMatchObject([{ kind: 'mistake-of-none' }]);
    }
  });

  test('of a clause of that kind which says more, that one is shown: the whole of it is to be written', () => {
    const sold = '2026-03-10 C1: sold 3 Ash at 5.00 each to "a friend"\n';
    const [less] = readLines(`${sold}2026-03-10 C1: mistake sold 3 Ash\n`).problems;
    expect([less?.kind, less?.also.map(({ from }) => from)]).toEqual(['mistake-of-none', [15]]);
    expect(less?.says).toMatch(/: write the whole of it behind `mistake`$/);
    const [other] = readLines(`${sold}2026-03-10 A1: mistake sold 3 Ash\n`).problems;
    expect([other?.kind, other?.also]).toEqual(['mistake-of-none', []]);
  });

  test('several are an error that names them all', () => {
    expect(problemsIn(`${moved}${moved}2026-03-10 A1: mistake moved 20 Rowan-1 to C1`)).toMatchObject([
      { kind: 'mistake-of-several' },
    ]);
    // Two mistakes take back two.
    expect(problemsIn(`${moved}2026-03-10 A1: mistake moved 20 Rowan-1 to C1`)).toEqual([]);
  });
});

describe('dates inside a line', () => {
  test.each([
    ['spawned yesterday', '2026-03-09', '2026-03-09'],
    ['spawned 3 days ago', '2026-03-07', '2026-03-07'],
    ['spawned 2-4 days ago', '2026-03-06', '2026-03-08'],
    ['spawned 2 weeks ago', '2026-02-24', '2026-02-24'],
    ['spawned 2026-03-02', '2026-03-02', '2026-03-02'],
    ['spawned on 2 Mar', '2026-03-02', '2026-03-02'],
    ['spawned 14 Feb', '2026-02-14', '2026-02-14'],
    ['spawned 14 Nov', '2025-11-14', '2025-11-14'],
    ['spawned friday', '2026-03-06', '2026-03-06'],
    ['spawned on the 20th', '2026-02-20', '2026-02-20'],
  ])('%s', (clause, low, high) => {
    // 2026-03-10 is a Tuesday.
    const { when } = only('spawned', `2026-03-10 A1: ${clause}, about 80 eggs`);
    expect([when?.low, when?.high].map((each) => (each ? isoDay(each) : each))).toEqual([low, high]);
  });

  test.each([
    ['lights off until 2026-03-12', '2026-03-12'],
    ['lights off until friday', '2026-03-13'],
    ['lights off until 14 Feb', '2027-02-14'],
    ['lights off until the 20th', '2026-03-20'],
    ['lights off until tomorrow', '2026-03-11'],
  ])('%s', (clause, until) => {
    const event = fact('measure begun', clause);
    expect(event.until === null ? null : isoDay(event.until)).toBe(until);
  });

  test('what has happened cannot lie ahead, and a date must exist', () => {
    expect(problemIn('2026-03-10 A1: spawned 2026-03-12').kind).toBe('date-ahead');
    expect(problemIn('2026-03-10 A1: spawned 30 Feb').kind).toBe('no-such-date');
    expect(problemIn('2026-02-30 A1: spawned')).toMatchObject({
      kind: 'no-such-date',
      write: '2026-02-28 A1: spawned',
    });
  });

  test('`pump off 1 h` is over, `for 1 h` and `until` are open till then', () => {
    expect(factsOf('pump off 1 h; pump off for 1 h; pump off')).toMatchObject([
      { over: true, lasts: { low: 60 } },
      { over: false, lasts: { low: 60 } },
      { over: false, lasts: null },
    ]);
  });
});

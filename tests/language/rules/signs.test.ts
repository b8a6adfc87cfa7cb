/** Reading rules 5 to 8: quotes, notes, dashes, numbers. */
import { describe, expect, test } from 'vitest';
import { eventsOf, fact, factsOf, problemIn, problemsIn } from '../../support/lines.ts';

describe('rule 5: quotes', () => {
  test('a quote that a clause calls for is its text, the next its remark', () => {
    expect(fact('fault', 'fault "valve weeping" "again"')).toMatchObject({ text: 'valve weeping', remark: 'again' });
    expect(fact('spawned', 'spawned "left cave"').remark).toBe('left cave');
  });

  test('straight and curly double quotes are the same, single ones are not quotes', () => {
    expect(fact('spawned', 'spawned “left cave”').remark).toBe('left cave');
    expect(fact('note', "note she's at 'her' cave").text).toBe("she's at 'her' cave");
  });

  test('bare words up to a separator will do for a text', () => {
    expect(factsOf('fault valve weeping, lights off')).toMatchObject([
      { text: 'valve weeping' },
      { measure: 'lights off' },
    ]);
    expect(factsOf('fault valve weeping; fixed new seal')).toMatchObject([
      { text: 'valve weeping' },
      { text: 'new seal' },
    ]);
    expect(fact('to do', 'to do new air stone by 2026-06-10')).toMatchObject({ text: 'new air stone', by: 20614 });
    expect(fact('dosed', 'dosed 12 g sodium bicarbonate')).toMatchObject({ product: 'sodium bicarbonate' });
    expect(fact('sick', 'sick white spot not catching')).toMatchObject({ text: 'white spot', catching: false });
  });

  test('separators inside quotes are text, and stay as written', () => {
    expect(fact('fault', 'fault "valve; weeping, a bit # more – ‘so’"').text).toBe(
      'valve; weeping, a bit # more – ‘so’',
    );
  });

  test('a quote straight after a digit offers `in`', () => {
    expect(problemIn('2026-03-10 A1: largest 2" long')).toMatchObject({ kind: 'inch-mark', words: '"' });
    expect(problemIn('2026-03-10 A1: largest 2"').write).toBe('2026-03-10 A1: largest 2 in');
  });

  test('a quote never closed offers the closing quote', () => {
    expect(problemIn('2026-03-10 A1: fault "valve weeping')).toMatchObject({
      kind: 'open-quote',
      write: '2026-03-10 A1: fault "valve weeping"',
    });
  });

  test('`#` without a blank after it offers quotes', () => {
    expect(problemIn('2026-03-10 A1: photo lot#5')).toMatchObject({
      kind: 'hash',
      words: 'lot#5',
      write: '2026-03-10 A1: photo "lot#5"',
    });
  });

  test('a comment begins at the start or after a blank', () => {
    expect(
      eventsOf('# a comment\n  # another\n2026-03-10 A1: chasing # a third\n2026-03-10 A1: hiding #'),
    ).toHaveLength(2);
  });

  test('a second remark is asked about', () => {
    expect(problemIn('2026-03-10 A1: spawned "left cave" "again"').kind).toBe('two-remarks');
  });
});

describe('rule 6: note', () => {
  test('runs to the end of the line, `;` and `#` included', () => {
    expect(fact('note', 'pinned; note she likes it; left # of "the cave').text).toBe(
      'she likes it; left # of "the cave',
    );
  });

  test('may stand without a subject, with a colon, or straight after a clause', () => {
    expect(eventsOf('2026-03-10 note the heron again')).toMatchObject([
      { subject: { kind: 'room' }, text: 'the heron again' },
    ]);
    expect(fact('note', 'note: she likes it').text).toBe('she likes it');
    expect(factsOf('pinned note she looks bad')).toMatchObject([{ kind: 'dispute sign' }, { text: 'she looks bad' }]);
  });

  test('a clause after a `;` in it is doubted, and stays text', () => {
    const line = '2026-03-10 A1: note looks well; lights off';
    expect(problemsIn(line)).toMatchObject([{ kind: 'clause-in-note', words: ';' }]);
    expect(problemsIn('2026-03-10 A1: note looks well; likes flake')).toEqual([]);
  });
});

describe('rule 7: dashes', () => {
  test.each([
    'counted 20-40',
    'counted 20–40',
    'counted 20 – 40',
    'counted 20 — 40',
    'counted 20 - 40',
    'counted 20−40',
  ])('between numbers, evenly spaced, a range: %s', (clause) => {
    expect(fact('counted', clause).heads.total).toMatchObject({ low: 20, high: 40 });
  });

  test('high before low is an error that turns it round', () => {
    expect(problemIn('2026-03-10 A1: counted 40-20')).toMatchObject({
      kind: 'high-before-low',
      write: '2026-03-10 A1: counted 20-40',
    });
    expect(problemIn('2026-03-10 A1: size 26-22 mm').write).toBe('2026-03-10 A1: size 22-26 mm');
  });

  test('unspaced between letter and digit a hyphen', () => {
    expect(fact('counted', 'Rowan–1 counted 43').fish).toEqual({ kind: 'brood', brood: 'Rowan-1' });
  });

  test('any other long dash, or a hyphen between blanks, is a comma', () => {
    expect(factsOf('Chasing – male on female, Lights off')).toEqual(factsOf('chasing, male on female; lights off'));
    expect(factsOf('chasing—male on female - lights off')).toEqual(factsOf('chasing, male on female, lights off'));
  });

  test.each(['counted -3', 'counted −3', 'died -2 young', 'size -5 mm'])(
    'a minus before a number is refused: %s',
    (clause) => {
      expect(problemIn(`2026-03-10 A1: ${clause}`)).toMatchObject({
        kind: 'below-none',
        write: `2026-03-10 A1: ${clause.replace(/[-−]/, '')}`,
      });
    },
  );

  test('a closing full stop is nothing', () => {
    expect(factsOf('chasing, male on female.')).toEqual(factsOf('chasing, male on female'));
    expect(factsOf('level 58 mm.', 'Long')).toEqual(factsOf('level 58 mm', 'Long'));
  });

  test('a dash in a heading is asked about, since it may mean two tanks or a row of them', () => {
    expect(problemIn('2026-03-10 A1 – B1: all well')).toMatchObject({
      kind: 'dash-in-heading',
      write: '2026-03-10 A1 to B1: all well',
    });
  });

  test('folding keeps positions', () => {
    const event = fact('spawned', '♀ chasing – “so – so” ; spawned “x”');
    expect('2026-03-10 A1: ♀ chasing – “so – so” ; spawned “x”'.slice(event.place.from, event.place.to)).toBe(
      'spawned “x”',
    );
  });
});

describe('rule 8: numbers', () => {
  test('one or two digits after a comma are a decimal, three have two readings', () => {
    expect(fact('sized', 'size 2,5 cm').sizes.values[0]?.low).toBe(25);
    expect(fact('tested', 'test pH 7,25').reading.ph?.low).toBe(7.25);
    const problem = problemIn('2026-03-10 A1: counted 1,500');
    expect(problem.kind).toBe('number-comma');
    expect(problem.says).toContain('1500');
    expect(problem.says).toContain('1.500');
  });

  test('fractions of a phone', () => {
    expect(fact('sized', 'largest 1½ in').sizes.values[0]?.low).toBeCloseTo(38.1, 9);
    expect(fact('fed', 'fed ½ g crumb').grams?.low).toBe(0.5);
  });

  test('a unit counts only after a number', () => {
    expect(fact('moved', 'moved 4 m to C1').count).toMatchObject({ males: { low: 4 } });
    expect(fact('sized', 'largest 0.03 m').sizes.values[0]?.low).toBe(30);
    expect(fact('counted', 'counted 4 f').heads.females).toMatchObject({ low: 4 });
    expect(fact('tested', 'test 78 F').reading.temperature?.low).toBeCloseTo(25.5556, 4);
  });

  test('`in` before a word is a place, else inches', () => {
    expect(fact('sized', 'largest 2 in').sizes.values[0]?.low).toBeCloseTo(50.8, 9);
    expect(eventsOf('2026-03-10 group Oak: krib; 6 in C2')[0]).toMatchObject({
      tank: 'C2',
      heads: { total: { low: 6 } },
    });
  });

  test('`to` before a number is a range, before a name a place', () => {
    expect(fact('moved', 'moved 20 to 30 to C1')).toMatchObject({ to: 'C1', count: { total: { low: 20, high: 30 } } });
    expect(fact('moved', 'moved 20 to tank 12').to).toBe('12');
  });

  test('`x` multiplies between numbers', () => {
    for (const size of ['100 x 40 x 40 cm', '100x40x40', '100×40×40 cm']) {
      expect(eventsOf(`2026-03-10 tank E1: ${size}`)[0]).toMatchObject({
        size: [{ low: 1000 }, { low: 400 }, { low: 400 }],
      });
    }
  });

  test('bare lengths: a tank’s are cm, a level’s and a fish’s mm', () => {
    expect(eventsOf('2026-03-10 tank E1: 60 x 30 x 30')[0]).toMatchObject({
      size: [{ low: 600 }, { low: 300 }, { low: 300 }],
    });
    expect(fact('level', 'level 58', 'Long').level.low).toBe(58);
    expect(fact('sized', 'largest 30').sizes.values[0]?.low).toBe(30);
  });
});

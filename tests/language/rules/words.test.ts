/** Reading rules 1 to 4: commas, words and names, which fish, doer and sufferer. */
import { describe, expect, test } from 'vitest';
import { eventsOf, fact, factsOf, problemIn, problemsIn, readLines } from '../../support/lines.ts';

function kinds(clauses: string, heading = 'A1'): readonly string[] {
  return eventsOf(`2026-03-10 ${heading}: ${clauses}`).map(({ kind }) => kind);
}

const MALE_ON_FEMALE = { doer: { sex: 'male', name: null }, sufferer: { sex: 'female', name: null } };

describe('rule 1: a comma parts clauses exactly when what follows opens one', () => {
  test('a clause phrase after a comma is a clause', () => {
    expect(kinds('free-swimming, about 70, fed microworm')).toEqual(['stage seen', 'fed']);
    expect(kinds('pinned, torn fin, lights off')).toEqual(['dispute sign', 'dispute sign', 'measure begun']);
  });

  test('so is one word and then a clause phrase', () => {
    expect(kinds('lights off, Rowan-1 counted 43')).toEqual(['measure begun', 'counted']);
    expect(kinds('chasing, female hiding')).toEqual(['dispute sign', 'dispute sign']);
  });

  test('so is a number and then died, missing, eaten or culled', () => {
    expect(kinds('moved 20 Rowan-1 to C1, 2 died, 1 missing, 3 eaten, 4 culled')).toEqual([
      'moved',
      'lost',
      'lost',
      'lost',
      'lost',
    ]);
  });

  test('any other comma joins details', () => {
    expect(kinds('spawned, about 80 eggs')).toEqual(['spawned']);
    expect(kinds('counted 4 males, 2 females, 22 young')).toEqual(['counted']);
  });

  test('a dispute keeps its doer', () => {
    expect(fact('dispute sign', 'chasing, male on female')).toMatchObject(MALE_ON_FEMALE);
  });

  test('a treatment keeps `every` and `wait`, a move `rest stay` and the next place', () => {
    expect(kinds('treat "salt" 2 g/L, every 24 h, 3 doses, wait 14 days')).toEqual(['treated']);
    const moves = factsOf('moved 40 Rowan-1 to C1, 15 to C2, rest stay');
    expect(moves).toMatchObject([
      { to: 'C1', restStay: false, count: { total: { low: 40 } } },
      { to: 'C2', restStay: true, count: { total: { low: 15 } }, fish: { brood: 'Rowan-1' } },
    ]);
  });

  test('a test keeps its readings, a species its water', () => {
    expect(kinds('test pH 7.4, KH 6 dH, 25.5 C')).toEqual(['tested']);
    const [krib] = readLines('2026-01-02 species krib: water 24-27 C, pH 6-7.5').events.filter(
      (event) => event.kind === 'species declared' && event.traits.ph !== null,
    );
    expect(krib).toMatchObject({ traits: { temperature: { low: 24, high: 27 }, ph: { low: 6, high: 7.5 } } });
  });

  test('the longest phrase wins: `largest` after a move opens a clause, `largest` before its number does not', () => {
    expect(kinds('moved 20 to C1, largest 12 mm')).toEqual(['moved', 'sized']);
    expect(fact('moved', 'moved 20 largest Rowan-1 to C1').which).toBe('largest');
  });

  test('on a tie the clause is carried on', () => {
    expect(kinds('pH 7.2, KH 5')).toEqual(['tested']);
    expect(kinds('sick "white spot", not catching')).toEqual(['sick']);
  });

  test('`X on Y` alone names the doer of that line’s dispute, else it means chasing', () => {
    expect(factsOf('pinned; male on female')).toMatchObject([{ sign: 'pinned', ...MALE_ON_FEMALE }]);
    expect(factsOf('female on male')).toMatchObject([
      { sign: 'chasing', doer: { sex: 'female' }, sufferer: { sex: 'male' } },
    ]);
  });
});

describe('rule 2: words and names', () => {
  test('one word before a clause phrase is the fish', () => {
    expect(fact('counted', 'Rowan-1 counted 43').fish).toEqual({ kind: 'brood', brood: 'Rowan-1' });
    expect(problemIn('2026-03-10 A1: Rowna-1 counted 43')).toMatchObject({
      kind: 'unknown-fish',
      write: '2026-03-10 A1: Rowan-1 counted 43',
    });
  });

  test.each([
    ['first words of clause phrases', 'lights'],
    ['declaring words', 'colony'],
    ['joining words', 'some'],
    ['units', 'gal'],
    ['words for fish', 'female'],
  ])('refused as names: %s', (_, name) => {
    expect(problemIn(`2026-03-10 tank ${name}: 54 L`)).toMatchObject({
      kind: 'name-is-word',
      words: name,
      write: `2026-03-10 tank ${name}1: 54 L`,
    });
  });

  test('an abbreviation that keepers also use as a name gives way to the declared name', () => {
    const lines = '2026-03-10 tank QT: 40 L; alone\n2026-03-10 QT: wc 30 %\n2026-03-10 A1: moved 2 Rowan-1 to QT\n';
    expect(eventsOf(lines).map(({ kind }) => kind)).toEqual(['tank declared', 'water changed', 'moved']);
    // Without such a tank it is the abbreviation.
    expect(kinds('QT 28 days', 'Q1')).toEqual(['quarantine begun']);
    expect(problemsIn('2026-03-10 tank QT: 40 L; alone\n2026-03-10 Q1: QT 28 days')).toHaveLength(1);
  });
});

describe('rule 3: which fish', () => {
  test('a clause without a name leaves the fish to be found', () => {
    expect(fact('counted', 'counted 43').fish).toEqual({ kind: 'implied' });
  });

  test('a heading about fish names them for every clause', () => {
    expect(fact('dispute sign', 'chasing', 'Rowan').fish).toEqual({ kind: 'group', group: 'Rowan', member: null });
    expect(fact('counted', 'counted 43', 'Rowan-1').fish).toEqual({ kind: 'brood', brood: 'Rowan-1' });
    expect(fact('spawned', 'spawned', 'Fern').fish).toEqual({
      kind: 'group',
      group: 'Sedge',
      member: { sex: 'female', name: 'Fern' },
    });
    expect(fact('counted', 'counted 43', 'A1 Rowan-1')).toMatchObject({
      subject: { kind: 'tank', tank: 'A1' },
      fish: { kind: 'brood', brood: 'Rowan-1' },
    });
  });

  test('a pair needs no name', () => {
    expect(fact('bonded', 'bonded', 'A1 pair')).toMatchObject({
      subject: { kind: 'tank', tank: 'A1' },
      fish: { kind: 'group', group: null, member: null, groupKind: 'pair' },
    });
  });

  test('a species is no fish: behind a number it means those of it that live there, else which of it must be said', () => {
    expect(fact('sold', 'sold 12 krib at 4.00', 'C1')).toMatchObject({ fish: { kind: 'implied', species: 'krib' } });
    expect(problemIn('2026-03-10 C1: mixed krib and Ash')).toMatchObject({ kind: 'which-fish', words: 'krib' });
  });
});

describe('rule 4: doer and sufferer', () => {
  test('before `chasing` the named fish does it', () => {
    expect(fact('dispute sign', 'male chasing')).toMatchObject({ fish: { member: { sex: 'male' } }, sufferer: null });
    expect(fact('dispute sign', 'male chasing female')).toMatchObject(MALE_ON_FEMALE);
  });

  test.each(['pinned', 'hiding', 'gasping', 'torn fin', 'not eating', 'wounded'])(
    'before `%s` it suffers it',
    (sign) => {
      expect(fact('dispute sign', `Fern ${sign}`, 'A2')).toMatchObject({
        sign,
        fish: { kind: 'group', group: 'Sedge', member: { sex: 'female', name: 'Fern' } },
      });
    },
  );

  test('behind it «both» are the two of them, and none of them alone', () => {
    for (const sign of ['hiding', 'torn fin', 'not eating']) {
      expect(fact('dispute sign', `Rowan ${sign} both`)).toMatchObject({
        sign,
        fish: { kind: 'group', group: 'Rowan', member: null },
        doer: null,
        sufferer: null,
      });
    }
  });

  test('fish may be told apart by name', () => {
    expect(fact('dispute sign', 'Fern on Lark', 'A2')).toMatchObject({
      sign: 'chasing',
      doer: { sex: 'female', name: 'Fern' },
      sufferer: { sex: 'female', name: 'Lark' },
      fish: { member: { name: 'Fern' } },
    });
  });

  test('`male back` says who is back; `back` alone asks', () => {
    expect(fact('member back', 'male back').fish).toMatchObject({ kind: 'group', member: { sex: 'male', name: null } });
    expect(problemIn('2026-03-10 A1: back')).toMatchObject({ kind: 'which-fish', write: '2026-03-10 A1: note back' });
  });
});

/**
 * Clashes that a parser generator does not report, since the words are told apart before it runs: two
 * clauses that open alike, and a detail that would also open a clause.
 */
import { Lexer } from 'chevrotain';
import { describe, expect, test } from 'vitest';
import {
  allPhrases,
  canonicalPhrases,
  CLAUSE_KINDS,
  CLAUSES,
  clausesUnder,
  detailsOf,
  openersUnder,
  phrasesContinuing,
  phrasesInside,
} from '../../grammar/phrases.ts';
import { isRefusedName } from '../../grammar/reserved.ts';
import type { ClauseKind, HeadingKind, Phrase, Phrases } from '../../grammar/phrases.ts';
import { JournalParser } from '../../grammar/parser.ts';
import { cut } from '../../grammar/cut.ts';
import { RAW_TOKENS } from '../../grammar/tokens.ts';
import { tagClauses } from '../../grammar/tagging.ts';

const HEADINGS: readonly HeadingKind[] = [
  'room',
  'loop',
  'tank',
  'group',
  'brood',
  'culture',
  'auction',
  'species',
  'row',
  'new loop',
  'new tank',
  'new group',
  'new culture',
  'new auction',
  'new species',
];

function list(phrases: Phrases): Phrase[] {
  return [...phrases.values()].flat();
}

function written(kind: ClauseKind): string[] {
  const { says, also = {} } = CLAUSES[kind];
  return [...Object.values(says), ...Object.values(also)]
    .flatMap((says) => says.split('|'))
    .filter((says) => says !== '');
}

describe('openings', () => {
  test.each(HEADINGS.filter((heading) => !heading.startsWith('new ')))(
    'under %s no two clauses open alike',
    (heading) => {
      const seen = new Map<string, ClauseKind>();
      for (const kind of clausesUnder(heading)) {
        for (const phrase of written(kind)) {
          expect(seen.get(phrase), `${phrase}: ${kind}`).toBeUndefined();
          seen.set(phrase, kind);
        }
      }
    },
  );

  test('a declaring line’s own clauses stand before the ordinary ones that open alike', () => {
    const shadowed = HEADINGS.filter((heading) => heading.startsWith('new ')).flatMap((heading) => {
      const opens = new Map(list(openersUnder(heading)).map((phrase) => [phrase.words.join(' '), phrase.kind]));
      return [...clausesUnder(heading)].flatMap((kind) =>
        written(kind)
          .filter((phrase) => opens.get(phrase) !== kind)
          .map((phrase) => `${heading}: ${phrase} of ${kind}`),
      );
    });
    // In a declaration `hides` are caves, and `in` is a place.
    const heating = ['heated to', 'heater to', 'heater at', 'heater set to', 'heater set', 'set heater to'];
    const expected = [
      'new tank: hides of sign',
      'new tank: in of two readings',
      // Of a tank that stands, for good or for a while?
      ...heating.map((phrase) => `new tank: ${phrase} of two readings`),
      'new group: in of two readings',
    ];
    expect(shadowed).toEqual(expected);
  });
});

describe('details', () => {
  /** Details that would also open a clause where they stand, and are not said to carry the clause on. */
  function clashes(): string[] {
    const found = new Set<string>();
    for (const heading of HEADINGS.filter((each) => !each.startsWith('new '))) {
      const opens = new Map(list(openersUnder(heading)).map((phrase) => [phrase.words.join(' '), phrase]));
      for (const kind of clausesUnder(heading)) {
        const carries = new Set(list(phrasesContinuing(kind)).map(({ words }) => words.join(' ')));
        for (const { words } of list(phrasesInside(kind))) {
          const opener = opens.get(words.join(' '));
          if (opener && !opener.shy && !carries.has(words.join(' '))) found.add(`${words.join(' ')} in ${kind}`);
        }
      }
    }
    return [...found].sort();
  }

  test('what also opens a clause does so after a comma, and each such word is known', () => {
    const things = /^.* in (?:did|put off|stop chore)$/;
    // `lights off` is what `keep`, `stop` and `did` are about; after a comma it happened.
    const others = clashes().filter((clash) => !things.test(clash));
    const which = ['biggest', 'largest', 'smallest', 'the biggest', 'the largest', 'the smallest'];
    const lots = ['gave away', 'kept back', 'lost', 'moved', 'reserved', 'sold'];
    const expected = [
      // `moved 20 largest to C1`, but `moved 20 to C1, largest 12 mm`.
      ...which.flatMap((word) => lots.map((kind) => `${word} in ${kind}`)),
      // `about 80 eggs`, but `spawned, eggs white 30`.
      ...['eggs white', 'spawned', 'stage'].map((kind) => `eggs in ${kind}`),
      'wrigglers in stage',
      // `moved eggs to C1`, but `moved 12 to C1, eggs`.
      ...['eggs', 'wrigglers', 'larvae'].map((word) => `${word} in moved`),
      // `gave 10 away`, but `room: …, away until 2026-03-02`.
      'away in gave away',
      'dose in treat',
    ];
    expect(others).toEqual(expected.sort());
  });

  test('inside one clause no word means two things', () => {
    for (const kind of CLAUSE_KINDS) {
      const seen = new Map<string, string>();
      for (const { words, sense, link } of list(phrasesInside(kind))) {
        const phrase = words.join(' ');
        expect(seen.get(phrase), `${kind}: ${phrase}`).toBeUndefined();
        seen.set(phrase, link ?? sense);
      }
    }
  });

  test('what carries a clause on is among its details', () => {
    for (const kind of CLAUSE_KINDS) {
      for (const detail of CLAUSES[kind].continues ?? [])
        expect(detailsOf(kind).has(detail), `${kind}: ${detail}`).toBe(true);
    }
  });
});

test('the lexer passes every check of the toolkit and knows first signs', () => {
  const options = { positionTracking: 'onlyOffset', ensureOptimizations: true } as const;
  expect(new Lexer([...RAW_TOKENS], options).lexerDefinitionErrors).toEqual([]);
});

describe('the parser', () => {
  test('is built with every check of the toolkit on, one token of lookahead', () => {
    const parser = new JournalParser();
    expect(Object.keys(parser.getGAstProductions()).length).toBeGreaterThan(CLAUSE_KINDS.length);
  });

  test('opens every phrase of every heading as its own kind of clause', () => {
    for (const heading of HEADINGS) {
      for (const phrase of allPhrases(heading)) {
        const context = { heading, isName: () => false, isFish: () => false };
        const { tokens, faults } = tagClauses(cut(phrase), 0, context);
        expect(faults, `${heading}: ${phrase}`).toEqual([]);
        expect(tokens[0]?.tokenType.name.startsWith('Open'), `${heading}: ${phrase}`).toBe(true);
      }
    }
  });

  test('a canonical phrase stands for each meaning', () => {
    for (const kind of CLAUSE_KINDS) {
      if (kind === 'two readings') continue;
      for (const says of Object.values(CLAUSES[kind].says)) {
        const [canonical = ''] = says.split('|');
        const heading = CLAUSES[kind].under[0];
        if (canonical !== '' && heading !== undefined) expect(canonicalPhrases(heading)).toContain(canonical);
      }
    }
  });
});

test('the first words of what opens a clause are refused, but for those that give way', () => {
  const opening = HEADINGS.flatMap((heading) => [...openersUnder(heading).values()].flat());
  const refused = opening.filter(({ yields }) => !yields).map(({ words }) => words[0] ?? '');
  expect(new Set(refused).size).toBeGreaterThan(200);
  expect(refused.filter((word) => !isRefusedName(word, 'tank'))).toEqual([]);
});

test('names that would be read as words are refused, for a row or loop but not its one letter', () => {
  for (const word of ['chasing', 'Lights', 'tank', 'all', 'mm', 'c', 'and', 'room', 'female'])
    expect(isRefusedName(word, 'tank')).toBe(true);
  expect(['A1', 'Rowan', 'Moss', 'QT', 'FS'].map((word) => isRefusedName(word, 'tank'))).toEqual([
    false,
    false,
    false,
    false,
    false,
  ]);
  expect([isRefusedName('C', 'row'), isRefusedName('C', 'tank')]).toEqual([false, true]);
});

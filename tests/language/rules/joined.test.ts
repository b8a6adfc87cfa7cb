/** `and`, `&` and `then` between two clauses: they part them exactly where a comma would and what follows says itself what it is. */
import { describe, expect, test } from 'vitest';
import { tagClauses } from '../../../grammar/tagging.ts';
import { cut } from '../../../grammar/cut.ts';
import { eventsOf, problemsIn } from '../../support/lines.ts';

const DAY = '2026-03-10 ';
const facts = (line: string): unknown => eventsOf(`${DAY}${line}\n`).map(({ place: _, seq: __, ...says }) => says);
const offered = (line: string): string | undefined => problemsIn(`${DAY}${line}`)[0]?.write.replace(DAY, '');

describe('an and between two clauses', () => {
  test.each([
    ['C1: wc 30% and rinsed sponge', 'C1: wc 30 %; rinsed sponge'],
    ['C1: wc 30% & lights off', 'C1: wc 30 %; lights off'],
    ['C1: wc 30%, and lights off', 'C1: wc 30 %; lights off'],
    ['C1: wc 30%; and 2 dead', 'C1: wc 30 %; 2 dead'],
    ['C1: wc 30%, then fed bbs', 'C1: wc 30 %; fed bbs'],
    ['C1: wc 30% and pH 7.2', 'C1: wc 30 %; pH 7.2'],
    ['C1: 2 dead and 1 missing', 'C1: died 2; missing 1'],
    ['C1: counted 10 and 2 dead', 'C1: counted 10; died 2'],
    ['C1: sold 2 and moved 4 to C2', 'C1: sold 2; moved 4 to C2'],
    ['A1: chasing and not eating, male on female', 'A1: chasing; not eating, male on female'],
    ['A2: Fern spawned and Lark hiding', 'A2: Fern spawned; Lark hiding'],
    ['C1: wc 30% yesterday and rinsed sponge', 'C1: wc 30 % yesterday; rinsed sponge'],
    ['pair Yew: krib, male and female', 'pair Yew: krib; male; female'],
    // The name of a thing ends where a clause begins
    ['A1: fed bbs and wc 30%', 'A1: fed bbs; wc 30%'],
    ['A1: fed bbs and lights off', 'A1: fed bbs; lights off'],
    ['C1: dosed 5 ml prime & wc 30%', 'C1: dosed 5 ml prime; wc 30%'],
    ['M1: harvested and fed', 'M1: harvested; fed'],
    ['M1: fed and harvested', 'M1: fed; harvested'],
    ['M1: fed oats & harvested', 'M1: fed oats; harvested'],
    // A number behind a stage is of it
    ['A1: spawned and about 80 eggs', 'A1: spawned, about 80 eggs'],
    ['A1: free swimming and about 60', 'A1: free-swimming, about 60'],
  ])('parts them: %s', (line, meant) => {
    expect(facts(line)).toEqual(facts(meant));
  });

  test.each([
    ['C1: moved 2 to C2 and 3 to Q1', 2],
    ['C1: pH 7 and KH 4 and GH 8', 1],
    ['A1: fed flake and bbs', 1],
    ['C1: dosed prime and salt', 1],
    ['C1: to do wc 30% and rinse sponge', 1],
    ['C1: fed am and pm', 1],
    ['Long: cleaned 2 layers and rinsed', 1],
    ['C1: 2 males and 1 female dead', 1],
  ])('joins what is one: %s', (line, events) => {
    expect(new Set(eventsOf(`${DAY}${line}\n`).map(({ kind }) => kind)).size).toBe(1);
    expect(eventsOf(`${DAY}${line}\n`)).toHaveLength(events);
  });

  test.each([
    'C1: wc 30% and rinsed sponge yesterday',
    'C1: lights off and heater off until friday',
    'C1: wc 30% and rinse sponge every 2 weeks',
    'C1: put off wc and test until friday',
  ])('that may share a day or a period is asked back: %s', (line) => {
    expect(problemsIn(`${DAY}${line}`)[0]?.kind).toBe('two-readings');
  });

  test('in words of one’s own is a word, and a clause behind it that shares a day is offered as one', () => {
    expect(offered('A1: fed bbs and lights off yesterday')).toBe('A1: fed bbs; lights off yesterday');
  });

  test('is one token of the grammar: a separator', () => {
    const tagged = (text: string): string[] =>
      tagClauses(cut(text), 0, { heading: 'tank', isName: () => false, isFish: () => false }).tokens.map(
        ({ tokenType }) => tokenType.name,
      );
    expect(tagged('wc 30 % and lights off')).toEqual(tagged('wc 30 %; lights off'));
  });
});

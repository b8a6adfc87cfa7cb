/** The sets of first tokens decide as the toolkit's own search does, in every rule and on every token. */
import { EmbeddedActionsParser, LLkLookaheadStrategy } from 'chevrotain';
import type { ILookaheadStrategy } from 'chevrotain';
import { expect, test } from 'vitest';
import { FirstTokens } from '../../grammar/lookahead.ts';
import { JournalParser } from '../../grammar/parser.ts';

/** Every number that a token type of this process may have. */
const NUMBERS = 2_000;

class Both extends FirstTokens {
  compared = 0;
  readonly differing: string[] = [];
  private ahead = 0;

  constructor() {
    let ahead = (): number => 0;
    super(() => ahead());
    ahead = () => this.ahead;
  }

  override buildLookaheadForAlternation(
    options: Parameters<ILookaheadStrategy['buildLookaheadForAlternation']>[0],
  ): ReturnType<ILookaheadStrategy['buildLookaheadForAlternation']> {
    const ours = super.buildLookaheadForAlternation(options);
    this.hold(
      `${options.rule.name} or ${options.prodOccurrence}`,
      ours,
      this.theirs.buildLookaheadForAlternation(options),
    );
    return ours;
  }

  override buildLookaheadForOptional(
    options: Parameters<ILookaheadStrategy['buildLookaheadForOptional']>[0],
  ): ReturnType<ILookaheadStrategy['buildLookaheadForOptional']> {
    const ours = super.buildLookaheadForOptional(options);
    this.hold(
      `${options.rule.name} ${options.prodType} ${options.prodOccurrence}`,
      ours,
      this.theirs.buildLookaheadForOptional(options),
    );
    return ours;
  }

  private readonly theirs = new LLkLookaheadStrategy({ maxLookahead: 1 });

  /** Asks both with every token ahead; theirs asks a parser, of which it needs the token alone. */
  private hold(place: string, ours: () => unknown, theirs: () => unknown): void {
    for (let number = 0; number < NUMBERS; number += 1) {
      this.ahead = number;
      const parser = { LA_FAST: () => ({ tokenTypeIdx: number }), LA: () => ({ tokenTypeIdx: number }) };
      this.compared += 1;
      if (ours() !== theirs.call(parser)) this.differing.push(`${place} at ${number}`);
    }
  }
}

test('one token decides the same by both ways, everywhere in the grammar', () => {
  const both = new Both();
  const parser = new JournalParser(true, both);
  expect(parser).toBeInstanceOf(EmbeddedActionsParser);
  expect(both.differing.slice(0, 5)).toEqual([]);
  expect(both.compared).toBeGreaterThan(100 * NUMBERS);
});

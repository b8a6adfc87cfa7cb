/**
 * Which tokens may begin what: one token decides everything in this grammar, so the toolkit's search for
 * paths of any length is replaced by sets of first tokens, each worked out once. What one token
 * cannot decide is left to the toolkit. Tests hold both against each other for every rule.
 */
import {
  Alternation,
  Alternative,
  LLkLookaheadStrategy,
  NonTerminal,
  Option,
  Repetition,
  RepetitionMandatory,
  RepetitionMandatoryWithSeparator,
  RepetitionWithSeparator,
  Terminal,
} from 'chevrotain';
import type { ILookaheadStrategy, IProduction, Rule, TokenType } from 'chevrotain';

/** The tokens that a production may begin with; `empty` where it may be nothing at all. */
interface First {
  readonly tokens: ReadonlySet<TokenType>;
  readonly empty: boolean;
}

type Choosing = Parameters<ILookaheadStrategy['buildLookaheadForAlternation']>[0];
type Entering = Parameters<ILookaheadStrategy['buildLookaheadForOptional']>[0];

type Kind<P> = new (...args: never) => P;

const OPTIONAL = {
  Option,
  Repetition,
  RepetitionWithSeparator,
  RepetitionMandatory,
  RepetitionMandatoryWithSeparator,
} as const;

export class FirstTokens extends LLkLookaheadStrategy {
  private readonly known = new Map<Rule, First>();
  private readonly parts = new Map<Rule, readonly IProduction[]>();
  private readonly next: () => number;

  /** `next` gives the type number of the token ahead. */
  constructor(next: () => number) {
    super({ maxLookahead: 1 });
    this.next = next;
  }

  override buildLookaheadForAlternation(
    options: Choosing,
  ): ReturnType<ILookaheadStrategy['buildLookaheadForAlternation']> {
    const found =
      options.hasPredicates || options.maxLookahead !== 1
        ? null
        : this.part(options.rule, Alternation, options.prodOccurrence);
    const firsts = found?.definition.map((alternative) => this.first(alternative)) ?? null;
    if (firsts === null || firsts.some(({ empty }) => empty)) return super.buildLookaheadForAlternation(options);
    const choices: (number | undefined)[] = [];
    firsts.forEach(({ tokens }, index) => {
      for (const number of numbersOf(tokens)) choices[number] ??= index;
    });
    return () => choices[this.next()];
  }

  override buildLookaheadForOptional(options: Entering): ReturnType<ILookaheadStrategy['buildLookaheadForOptional']> {
    const found =
      options.maxLookahead === 1 ? this.part(options.rule, OPTIONAL[options.prodType], options.prodOccurrence) : null;
    const first = found === null ? null : this.sequence(found.definition);
    if (first === null || first.empty) return super.buildLookaheadForOptional(options);
    const enters: true[] = [];
    for (const number of numbersOf(first.tokens)) enters[number] = true;
    return () => enters[this.next()] === true;
  }

  /** The one production of that kind and number within a rule. */
  private part<P extends IProduction>(rule: Rule, kind: Kind<P>, number: number): P | null {
    const parts = this.parts.get(rule) ?? partsOf(rule.definition);
    this.parts.set(rule, parts);
    for (const one of parts) if (one instanceof kind && 'idx' in one && one.idx === number) return one;
    return null;
  }

  private first(production: IProduction): First {
    if (production instanceof Terminal) return { tokens: new Set([production.terminalType]), empty: false };
    if (production instanceof NonTerminal) return this.ofRule(production.referencedRule);
    if (production instanceof Alternation) return union(production.definition.map((one) => this.first(one)));
    const inside = this.sequence(definitionOf(production));
    return mayBeNothing(production) ? { ...inside, empty: true } : inside;
  }

  private ofRule(rule: Rule): First {
    const before = this.known.get(rule);
    if (before !== undefined) return before;
    const first = this.sequence(rule.definition);
    this.known.set(rule, first);
    return first;
  }

  private sequence(parts: readonly IProduction[]): First {
    const tokens = new Set<TokenType>();
    for (const part of parts) {
      const first = this.first(part);
      for (const token of first.tokens) tokens.add(token);
      if (!first.empty) return { tokens, empty: false };
    }
    return { tokens, empty: true };
  }
}

function union(firsts: readonly First[]): First {
  const tokens = new Set(firsts.flatMap((first) => [...first.tokens]));
  return { tokens, empty: firsts.some(({ empty }) => empty) };
}

/** A token's own number, and those of the tokens that count as it. */
function numbersOf(tokens: Iterable<TokenType>): readonly number[] {
  return [...tokens].flatMap(({ tokenTypeIdx, categoryMatches }) => [tokenTypeIdx ?? -1, ...(categoryMatches ?? [])]);
}

/** Every production within others, those of rules that they name left out. */
function partsOf(productions: readonly IProduction[]): readonly IProduction[] {
  return productions.flatMap((one) => [one, ...(one instanceof NonTerminal ? [] : partsOf(definitionOf(one)))]);
}

function definitionOf(production: IProduction): readonly IProduction[] {
  const around = [Alternative, Alternation, ...Object.values(OPTIONAL)].find((kind) => production instanceof kind);
  return around !== undefined && production instanceof around ? production.definition : [];
}

function mayBeNothing(production: IProduction): boolean {
  return (
    production instanceof Option || production instanceof Repetition || production instanceof RepetitionWithSeparator
  );
}

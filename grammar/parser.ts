/**
 * The grammar. A clause is what may stand before its phrase, the phrase, and details in any order; every
 * kind of clause is one rule, made from its row in the vocabulary. Tagging has told the words apart, so
 * one token of lookahead decides everything, and rules do nothing but assemble nodes.
 *
 * Recovery is off: a parser that mends a line would invent facts.
 */
import type { ILookaheadStrategy, ParserMethod, TokenType } from 'chevrotain';
import { FirstTokens } from './lookahead.ts';
import { last, piece, word } from './nodes.ts';
import * as p from './phrases.ts';
import type { ClauseKind, DetailName, LinkName } from './phrases.ts';
import { HeadingRules } from './rules-headings.ts';
import type * as s from './syntax.ts';
import * as tag from './tags.ts';
import * as t from './tokens.ts';

/** Every token that a rule may meet. */
const VOCABULARY: TokenType[] = [
  ...t.RAW_TOKENS.filter((type) => type !== t.Blank && type !== t.Comment),
  ...p.HEADS.values(),
  ...p.LINK_TOKENS.values(),
  ...tag.TAGS,
];

type Alternative<T> = { readonly ALT: () => T };

export class JournalParser extends HeadingRules {
  private readonly clauseRules = new Map<ClauseKind, ParserMethod<[], s.ClauseNode>>();
  private readonly linkRules = new Map<LinkName, ParserMethod<[], s.LinkNode>>();

  /** `lookahead` is another way to decide, for tests that hold one against the other. */
  constructor(skipValidations = false, lookahead?: ILookaheadStrategy) {
    // The toolkit asks for the token ahead only when it parses, and the parser is there by then.
    const lookaheadStrategy = lookahead ?? new FirstTokens(() => this.LA(1).tokenTypeIdx);
    super(VOCABULARY, { recoveryEnabled: false, maxLookahead: 1, skipValidations, lookaheadStrategy });
    for (const [name, token] of p.LINK_TOKENS) this.linkRules.set(name, this.linkRule(name, token));
    for (const [kind, token] of p.HEADS) this.clauseRules.set(kind, this.clauseRule(kind, token));
    this.performSelfAnalysis();
  }

  public readonly clauses = this.RULE('clauses', (): s.ClauseNode[] => {
    const found = [this.SUBRULE(this.clause)];
    this.MANY(() => {
      this.CONSUME(tag.Separator);
      found.push(this.SUBRULE2(this.clause));
    });
    return found;
  });

  private readonly clause = this.RULE('clause', (): s.ClauseNode => {
    const mistake = this.OPTION(() => piece(this.CONSUME(tag.Mistake)));
    const before: s.DetailNode[] = [];
    this.MANY(() => before.push(this.SUBRULE(this.before)));
    const node = this.OR(this.clauseAlternatives());
    const from = mistake?.from ?? before[0]?.from ?? node.from;
    return { ...node, before, mistake: mistake !== undefined, from };
  });

  private readonly before = this.RULE('before', (): s.DetailNode =>
    this.OR<s.DetailNode>([
      { ALT: () => this.SUBRULE(this.quantity) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.sex) },
      // `krib of 2 May died 1`: the day on which they were bought is part of what they are called.
      { ALT: () => this.SUBRULE(this.date) },
    ]),
  );

  private alternatives: Alternative<s.ClauseNode>[] | null = null;

  /** Every kind of clause, told apart by the token of its phrase. Made once: the parser is asked for each clause. */
  private clauseAlternatives(): Alternative<s.ClauseNode>[] {
    this.alternatives ??= [...this.clauseRules.values()].map((rule) => ({ ALT: () => this.subrule(0, rule, {}) }));
    return this.alternatives;
  }

  private clauseRule(kind: ClauseKind, token: TokenType): ParserMethod<[], s.ClauseNode> {
    const alternatives = [...p.detailsOf(kind)].map((detail) => ({
      ALT: () => this.subrule(0, this.detailRule(detail), {}),
    }));
    return this.RULE(ruleName(kind), (): s.ClauseNode => {
      const head = word(this.CONSUME(token));
      const details: s.DetailNode[] = [];
      this.MANY(() => {
        this.OPTION(() => this.CONSUME(t.Comma));
        details.push(this.OR(alternatives));
      });
      const to = Math.max(head.to, last(details));
      return { kind, head, before: [], details, mistake: false, from: head.from, to };
    });
  }

  private detailRule(detail: DetailName): ParserMethod<[], s.DetailNode> {
    switch (detail) {
      case 'quantity':
        return this.quantity;
      case 'name':
        return this.name;
      case 'sex':
        return this.sex;
      case 'quote':
        return this.quote;
      case 'text':
        return this.text;
      case 'date':
        return this.date;
      case 'versus':
        return this.versus;
      case 'every':
        return this.every;
      case 'action':
        return this.action;
      case 'measure':
        return this.measure;
      default:
        return this.linkRules.get(detail) ?? this.quote;
    }
  }
}

/** The rule of a kind of clause, as diagrams and the serialised grammar name it. */
function ruleName(kind: ClauseKind): string {
  return `${kind.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase())}Clause`;
}

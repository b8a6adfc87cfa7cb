/**
 * The grammar. A clause is what may stand before its phrase, the phrase, and details in any order; every
 * kind of clause is one rule, made from its row in the vocabulary. Tagging has told the words apart, so
 * one token of lookahead decides everything, and rules do nothing but assemble nodes.
 *
 * Recovery is off: a parser that mends a line would invent facts.
 */
import { EmbeddedActionsParser } from 'chevrotain';
import type { IToken, ParserMethod, TokenType } from 'chevrotain';
import * as p from './phrases.ts';
import type { ClauseKind, DetailName, LinkName } from './phrases.ts';
import type * as s from './syntax.ts';
import * as t from './tokens.ts';
import { LINKS } from './vocabulary/details.ts';

const NO_QUANTITY = {
  word: null,
  fuzz: null,
  numbers: [],
  high: null,
  plus: false,
  unit: null,
  units: [],
  scoop: null,
  noun: null,
  ago: false,
};

/** Every token that a rule may meet. */
const VOCABULARY: TokenType[] = [
  ...t.RAW_TOKENS.filter((type) => type !== t.Blank && type !== t.Comment && type !== t.Word),
  ...p.HEADS.values(),
  ...p.LINK_TOKENS.values(),
  p.Fuzz,
  p.CountWord,
  p.NumberWord,
  p.RangeTo,
  p.Ago,
  p.Noun,
  p.Scoop,
  p.Sex,
  p.The,
  p.Name,
  p.TankWord,
  p.Doer,
  p.OnWhom,
  p.Sufferer,
  p.DayWords,
  p.Every,
  p.Period,
  p.Often,
  p.Action,
  p.Rig,
  p.Text,
  p.Separator,
  p.Mistake,
  p.Room,
  p.Declaring,
  p.AllTanks,
  p.Tanks,
  p.Except,
  p.GroupWord,
  p.And,
  t.Word,
];

function sense(token: IToken): string {
  return typeof token.payload === 'string' ? token.payload : token.image;
}

function word(token: IToken): s.WordNode {
  return { text: token.image, sense: sense(token), from: token.startOffset, to: t.endOf(token) };
}

function piece(token: IToken): s.Piece {
  return { from: token.startOffset, to: t.endOf(token) };
}

function last<T extends s.Piece>(nodes: readonly T[]): number {
  return nodes.at(-1)?.to ?? 0;
}

type Alternative<T> = { readonly ALT: () => T };

export class JournalParser extends EmbeddedActionsParser {
  private readonly clauseRules = new Map<ClauseKind, ParserMethod<[], s.ClauseNode>>();
  private readonly linkRules = new Map<LinkName, ParserMethod<[], s.LinkNode>>();

  constructor(skipValidations = false) {
    super(VOCABULARY, { recoveryEnabled: false, maxLookahead: 1, skipValidations });
    for (const [name, token] of p.LINK_TOKENS) this.linkRules.set(name, this.linkRule(name, token));
    for (const [kind, token] of p.HEADS) this.clauseRules.set(kind, this.clauseRule(kind, token));
    this.performSelfAnalysis();
  }

  // Headings

  public readonly heading = this.RULE('heading', (): s.HeadingNode =>
    this.OR([
      { ALT: () => ({ type: 'room', ...piece(this.CONSUME(p.Room)) }) },
      { ALT: () => this.SUBRULE(this.declaration) },
      { ALT: () => this.SUBRULE(this.allTanks) },
      { ALT: () => this.SUBRULE(this.names) },
    ]),
  );

  private readonly declaration = this.RULE('declaration', (): s.HeadingNode => {
    const declares = word(this.CONSUME(p.Declaring));
    const names: s.NameNode[] = [];
    this.AT_LEAST_ONE(() => {
      this.OPTION(() => this.SUBRULE(this.joint));
      names.push(this.SUBRULE(this.headingName));
    });
    return { type: 'declare', word: declares, names, from: declares.from, to: last(names) };
  });

  private readonly allTanks = this.RULE('allTanks', (): s.HeadingNode => {
    const all = this.CONSUME(p.AllTanks);
    const but = this.OPTION(() => this.SUBRULE(this.exceptions));
    return { type: 'all tanks', except: but?.names ?? [], from: all.startOffset, to: but?.to ?? t.endOf(all) };
  });

  private readonly exceptions = this.RULE('exceptions', () => {
    const names: s.NameNode[] = [];
    this.CONSUME(p.Except);
    this.AT_LEAST_ONE(() => {
      this.OPTION(() => this.SUBRULE(this.joint));
      names.push(this.SUBRULE(this.headingName));
    });
    return { names, to: last(names) };
  });

  private readonly names = this.RULE('names', (): s.HeadingNode => {
    const ranges = [this.SUBRULE(this.range)];
    this.MANY(() => {
      const joint = this.OPTION(() => this.SUBRULE(this.joint));
      ranges.push({ ...this.SUBRULE2(this.range), joined: joint !== undefined });
    });
    const tanks = this.OPTION2(() => this.CONSUME(p.Tanks));
    const but = this.OPTION3(() => this.SUBRULE(this.exceptions));
    const group = this.OPTION4(() => word(this.CONSUME(p.GroupWord))) ?? null;
    const sex = this.OPTION5(() => word(this.CONSUME(p.Sex))) ?? null;
    const ends = [last(ranges), but?.to ?? 0, group?.to ?? 0, sex?.to ?? 0];
    const place = { from: ranges[0]?.from ?? 0, to: Math.max(...ends) };
    return { type: 'names', ranges, tanks: tanks !== undefined, except: but?.names ?? [], group, sex, ...place };
  });

  private readonly range = this.RULE('range', (): s.RangeNode => {
    const first = this.SUBRULE(this.headingName);
    const end = this.OPTION(() => {
      this.CONSUME(p.RangeTo);
      return this.SUBRULE2(this.headingName);
    });
    return { first, last: end ?? null, joined: false, from: first.from, to: (end ?? first).to };
  });

  private readonly headingName = this.RULE('headingName', (): s.NameNode =>
    this.OR([{ ALT: () => name(this.CONSUME(p.Name), false) }, { ALT: () => name(this.CONSUME(t.Num), true) }]),
  );

  private readonly joint = this.RULE('joint', (): s.Piece =>
    this.OR([{ ALT: () => piece(this.CONSUME(p.And)) }, { ALT: () => piece(this.CONSUME(t.Comma)) }]),
  );

  // Clauses

  public readonly clauses = this.RULE('clauses', (): s.ClauseNode[] => {
    const found = [this.SUBRULE(this.clause)];
    this.MANY(() => {
      this.CONSUME(p.Separator);
      found.push(this.SUBRULE2(this.clause));
    });
    return found;
  });

  private readonly clause = this.RULE('clause', (): s.ClauseNode => {
    const mistake = this.OPTION(() => piece(this.CONSUME(p.Mistake)));
    const before: s.DetailNode[] = [];
    this.MANY(() => before.push(this.SUBRULE(this.before)));
    const node = this.OR(this.clauseAlternatives());
    const from = mistake?.from ?? before[0]?.from ?? node.from;
    return { ...node, before, mistake: mistake !== undefined, from };
  });

  private readonly before = this.RULE('before', (): s.DetailNode =>
    this.OR([
      { ALT: () => this.SUBRULE(this.quantity) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.sex) },
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

  // Details

  private readonly quantity = this.RULE('quantity', (): s.QuantityNode =>
    this.OR([{ ALT: () => this.SUBRULE(this.countWord) }, { ALT: () => this.SUBRULE(this.number) }]),
  );

  private readonly countWord = this.RULE('countWord', (): s.QuantityNode => {
    const said = word(this.CONSUME(p.CountWord));
    const noun = this.OPTION(() => word(this.CONSUME(p.Noun))) ?? null;
    return { type: 'quantity', ...NO_QUANTITY, word: said, noun, from: said.from, to: (noun ?? said).to };
  });

  private readonly number = this.RULE('number', (): s.QuantityNode => {
    const fuzz = this.OPTION(() =>
      this.OR([{ ALT: () => word(this.CONSUME(p.Fuzz)) }, { ALT: () => word(this.CONSUME(t.Tilde)) }]),
    );
    this.OPTION2(() => this.CONSUME(t.Currency));
    const numbers = [this.SUBRULE(this.figure)];
    // `22 mm to 26 mm`, `36 in x 18 in`: a unit may stand after each number; the last one counts for all.
    const units: s.WordNode[] = [];
    this.OPTION3(() => units.push(word(this.CONSUME(t.Unit))));
    const end = this.OPTION4(() => {
      this.OR2([{ ALT: () => this.CONSUME(t.Dash) }, { ALT: () => this.CONSUME(p.RangeTo) }]);
      const figure = this.SUBRULE2(this.figure);
      this.OPTION5(() => units.push(word(this.CONSUME2(t.Unit))));
      return figure;
    });
    this.MANY(() => {
      this.CONSUME(t.Times);
      numbers.push(this.SUBRULE3(this.figure));
      this.OPTION6(() => units.push(word(this.CONSUME3(t.Unit))));
    });
    const more = this.OPTION7(() => piece(this.CONSUME(t.Plus)));
    const vague = this.OPTION8(() => piece(this.CONSUME(t.Ish)));
    // And after `40+` or `40ish`.
    this.OPTION9(() => units.push(word(this.CONSUME4(t.Unit))));
    const ending = this.SUBRULE(this.numberEnd);
    const reached = [last(numbers), end?.to ?? 0, last(units), more?.to ?? 0, vague?.to ?? 0, ending.to];
    return {
      type: 'quantity',
      word: null,
      fuzz: fuzzOf(fuzz, vague !== undefined),
      numbers,
      high: end ?? null,
      plus: more !== undefined,
      unit: units.at(-1) ?? null,
      units,
      scoop: ending.scoop,
      noun: ending.noun,
      ago: ending.ago,
      from: fuzz?.from ?? numbers[0]?.from ?? 0,
      to: Math.max(...reached),
    };
  });

  private readonly figure = this.RULE('figure', (): s.WordNode =>
    this.OR([{ ALT: () => word(this.CONSUME(t.Num)) }, { ALT: () => word(this.CONSUME(p.NumberWord)) }]),
  );

  private readonly numberEnd = this.RULE('numberEnd', () => {
    const scoop = this.OPTION(() => word(this.CONSUME(p.Scoop))) ?? null;
    const noun = this.OPTION2(() => word(this.CONSUME(p.Noun))) ?? null;
    const ago = this.OPTION3(() => piece(this.CONSUME(p.Ago)));
    return { scoop, noun, ago: ago !== undefined, to: Math.max(scoop?.to ?? 0, noun?.to ?? 0, ago?.to ?? 0) };
  });

  private readonly name = this.RULE('name', (): s.NameNode =>
    this.OR([
      { ALT: () => name(this.CONSUME(p.Name), false) },
      {
        ALT: () => {
          const tank = this.CONSUME(p.TankWord);
          return { ...name(this.CONSUME(t.Num), true), from: tank.startOffset };
        },
      },
    ]),
  );

  private readonly sex = this.RULE('sex', (): s.SexNode => {
    const the = this.OPTION(() => piece(this.CONSUME(p.The)));
    const sex = word(this.CONSUME(p.Sex));
    return { type: 'sex', sex: sex.sense, from: the?.from ?? sex.from, to: sex.to };
  });

  private readonly quote = this.RULE('quote', (): s.QuoteNode => ({ type: 'quote', ...piece(this.CONSUME(t.Quote)) }));

  private readonly text = this.RULE('text', (): s.TextNode => ({ type: 'text', ...piece(this.CONSUME(p.Text)) }));

  private readonly date = this.RULE('date', (): s.DateNode =>
    this.OR([{ ALT: () => date(this.CONSUME(t.DateToken)) }, { ALT: () => date(this.CONSUME(p.DayWords)) }]),
  );

  private readonly versus = this.RULE('versus', (): s.VersusNode => {
    const doer = word(this.CONSUME(p.Doer));
    this.CONSUME(p.OnWhom);
    const sufferer = word(this.CONSUME(p.Sufferer));
    return { type: 'versus', doer, sufferer, from: doer.from, to: sufferer.to };
  });

  private readonly every = this.RULE('every', (): s.EveryNode =>
    this.OR([
      {
        ALT: () => {
          const every = this.CONSUME(p.Every);
          const quantity = this.SUBRULE(this.quantity);
          return { type: 'every', period: null, quantity, from: every.startOffset, to: quantity.to };
        },
      },
      {
        ALT: () => {
          const often = this.CONSUME(p.Often);
          return { type: 'every', period: sense(often), quantity: null, ...piece(often) };
        },
      },
    ]),
  );

  private readonly action = this.RULE('action', (): s.ThingNode => {
    const token = this.CONSUME(p.Action);
    return { type: 'action', sense: sense(token), ...piece(token) };
  });

  private readonly measure = this.RULE('measure', (): s.ThingNode => {
    const token = this.CONSUME(p.Rig);
    return { type: 'measure', sense: sense(token), ...piece(token) };
  });

  // What a word inside a clause leads to

  private readonly place = this.RULE('place', (): s.LinkValue => this.SUBRULE(this.name));

  private readonly source = this.RULE('source', (): s.LinkValue =>
    this.OR([
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
      { ALT: () => this.SUBRULE(this.text) },
    ]),
  );

  private readonly day = this.RULE('day', (): s.LinkValue =>
    this.OR([{ ALT: () => this.SUBRULE(this.date) }, { ALT: () => this.SUBRULE(this.quantity) }]),
  );

  private readonly dayOrPlace = this.RULE('dayOrPlace', (): s.LinkValue =>
    this.OR([{ ALT: () => this.SUBRULE(this.date) }, { ALT: () => this.SUBRULE(this.name) }]),
  );

  private readonly amount = this.RULE('amount', (): s.LinkValue =>
    this.OR([
      { ALT: () => this.SUBRULE(this.quantity) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
    ]),
  );

  private readonly words = this.RULE('words', (): s.LinkValue =>
    this.OR([
      { ALT: () => this.SUBRULE(this.text) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
    ]),
  );

  private linkRule(link: LinkName, token: TokenType): ParserMethod<[], s.LinkNode> {
    const { form } = LINKS[link];
    return this.RULE(`${link}Detail`, (): s.LinkNode => {
      const opened = this.CONSUME(token);
      if (form === 'flag') return { type: 'link', link, values: [], ...piece(opened) };
      const value = this.SUBRULE(this[form]);
      return { type: 'link', link, values: [value], from: opened.startOffset, to: value.to };
    });
  }
}

function name(token: IToken, numbered: boolean): s.NameNode {
  return { type: 'name', text: token.image, numbered, ...piece(token) };
}

function date(token: IToken): s.DateNode {
  return { type: 'date', text: token.image, ...piece(token) };
}

function fuzzOf(fuzz: s.WordNode | undefined, ish: boolean): s.QuantityNode['fuzz'] {
  const said = fuzz?.sense;
  if (said === 'over' || said === 'under') return said;
  return fuzz !== undefined || ish ? 'about' : null;
}

/** The rule of a kind of clause, as diagrams and the serialised grammar name it. */
export function ruleName(kind: ClauseKind): string {
  return `${kind.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase())}Clause`;
}

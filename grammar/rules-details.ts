/** Rules for what stands inside a clause: numbers, names, dates, texts, and words with what they lead to. */
import { EmbeddedActionsParser } from 'chevrotain';
import type { ParserMethod, TokenType } from 'chevrotain';
import { date, last, name, piece, sense, word } from './nodes.ts';
import type { LinkName } from './phrases.ts';
import type * as s from './syntax.ts';
import * as tag from './tags.ts';
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

export abstract class DetailRules extends EmbeddedActionsParser {
  protected readonly quantity = this.RULE('quantity', (): s.QuantityNode =>
    this.OR([{ ALT: () => this.SUBRULE(this.countWord) }, { ALT: () => this.SUBRULE(this.number) }]),
  );

  protected readonly countWord = this.RULE('countWord', (): s.QuantityNode => {
    const said = word(this.CONSUME(tag.CountWord));
    const noun = this.OPTION(() => word(this.CONSUME(tag.Noun))) ?? null;
    return { type: 'quantity', ...NO_QUANTITY, word: said, noun, from: said.from, to: (noun ?? said).to };
  });

  protected readonly number = this.RULE('number', (): s.QuantityNode => {
    const fuzz = this.OPTION(() =>
      this.OR([{ ALT: () => word(this.CONSUME(tag.Fuzz)) }, { ALT: () => word(this.CONSUME(t.Tilde)) }]),
    );
    this.OPTION2(() => this.CONSUME(t.Currency));
    const numbers = [this.SUBRULE(this.figure)];
    // `22 mm to 26 mm`, `36 in x 18 in`: a unit may stand after each number; the last one counts for all.
    const units: s.WordNode[] = [];
    this.OPTION3(() => units.push(word(this.CONSUME(t.Unit))));
    const end = this.OPTION4(() => {
      this.OR2([{ ALT: () => this.CONSUME(t.Dash) }, { ALT: () => this.CONSUME(tag.RangeTo) }]);
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

  protected readonly figure = this.RULE('figure', (): s.WordNode =>
    this.OR([{ ALT: () => word(this.CONSUME(t.Num)) }, { ALT: () => word(this.CONSUME(tag.NumberWord)) }]),
  );

  protected readonly numberEnd = this.RULE('numberEnd', () => {
    const scoop = this.OPTION(() => word(this.CONSUME(tag.Scoop))) ?? null;
    const noun = this.OPTION2(() => word(this.CONSUME(tag.Noun))) ?? null;
    const ago = this.OPTION3(() => piece(this.CONSUME(tag.Ago)));
    // `30 €`
    this.OPTION4(() => this.CONSUME(t.Currency));
    return { scoop, noun, ago: ago !== undefined, to: Math.max(scoop?.to ?? 0, noun?.to ?? 0, ago?.to ?? 0) };
  });

  protected readonly name = this.RULE('name', (): s.NameNode =>
    this.OR([
      { ALT: () => name(this.CONSUME(tag.Name), false) },
      {
        ALT: () => {
          const tank = this.CONSUME(tag.TankWord);
          return { ...name(this.CONSUME(t.Num), true), from: tank.startOffset };
        },
      },
    ]),
  );

  protected readonly sex = this.RULE('sex', (): s.SexNode => {
    const the = this.OPTION(() => piece(this.CONSUME(tag.The)));
    const sex = word(this.CONSUME(tag.Sex));
    return { type: 'sex', sex: sex.sense, from: the?.from ?? sex.from, to: sex.to };
  });

  protected readonly quote = this.RULE('quote', (): s.QuoteNode => ({
    type: 'quote',
    ...piece(this.CONSUME(t.Quote)),
  }));

  protected readonly text = this.RULE('text', (): s.TextNode => ({ type: 'text', ...piece(this.CONSUME(tag.Text)) }));

  protected readonly date = this.RULE('date', (): s.DateNode =>
    this.OR([{ ALT: () => date(this.CONSUME(t.DateToken)) }, { ALT: () => date(this.CONSUME(tag.DayWords)) }]),
  );

  protected readonly versus = this.RULE('versus', (): s.VersusNode => {
    const doer = word(this.CONSUME(tag.Doer));
    this.CONSUME(tag.OnWhom);
    const sufferer = word(this.CONSUME(tag.Sufferer));
    return { type: 'versus', doer, sufferer, from: doer.from, to: sufferer.to };
  });

  protected readonly every = this.RULE('every', (): s.EveryNode =>
    this.OR<s.EveryNode>([
      {
        ALT: () => {
          const every = this.CONSUME(tag.Every);
          const quantity = this.SUBRULE(this.quantity);
          return { type: 'every', period: null, quantity, from: every.startOffset, to: quantity.to };
        },
      },
      {
        ALT: () => {
          const often = this.CONSUME(tag.Often);
          return { type: 'every', period: sense(often), quantity: null, ...piece(often) };
        },
      },
    ]),
  );

  protected readonly action = this.RULE('action', (): s.ThingNode => {
    const token = this.CONSUME(tag.Action);
    return { type: 'action', sense: sense(token), ...piece(token) };
  });

  protected readonly measure = this.RULE('measure', (): s.ThingNode => {
    const token = this.CONSUME(tag.Rig);
    return { type: 'measure', sense: sense(token), ...piece(token) };
  });

  // What a word inside a clause leads to

  protected readonly place = this.RULE('place', (): s.LinkValue => this.SUBRULE(this.name));

  protected readonly source = this.RULE('source', (): s.LinkValue =>
    this.OR<s.LinkValue>([
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
      { ALT: () => this.SUBRULE(this.text) },
    ]),
  );

  protected readonly day = this.RULE('day', (): s.LinkValue =>
    this.OR<s.LinkValue>([{ ALT: () => this.SUBRULE(this.date) }, { ALT: () => this.SUBRULE(this.quantity) }]),
  );

  protected readonly amount = this.RULE('amount', (): s.LinkValue =>
    this.OR<s.LinkValue>([
      { ALT: () => this.SUBRULE(this.quantity) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
    ]),
  );

  protected readonly words = this.RULE('words', (): s.LinkValue =>
    this.OR<s.LinkValue>([
      { ALT: () => this.SUBRULE(this.text) },
      { ALT: () => this.SUBRULE(this.name) },
      { ALT: () => this.SUBRULE(this.quote) },
    ]),
  );

  protected linkRule(link: LinkName, token: TokenType): ParserMethod<[], s.LinkNode> {
    const { form } = LINKS[link];
    return this.RULE(`${link}Detail`, (): s.LinkNode => {
      const opened = this.CONSUME(token);
      if (form === 'flag') return { type: 'link', link, values: [], ...piece(opened) };
      const value = this.SUBRULE(this[form]);
      return { type: 'link', link, values: [value], from: opened.startOffset, to: value.to };
    });
  }
}

function fuzzOf(fuzz: s.WordNode | undefined, ish: boolean): s.QuantityNode['fuzz'] {
  const said = fuzz?.sense;
  if (said === 'over' || said === 'under') return said;
  return fuzz !== undefined || ish ? 'about' : null;
}

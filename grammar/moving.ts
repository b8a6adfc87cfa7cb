/** Nodes as they are in another row of tokens of the same shape: made for nearly every line, so without a spread. */
import type { Moved } from './shapes.ts';
import type * as s from './syntax.ts';

export function movedClauses(clauses: readonly s.ClauseNode[], moved: Moved): s.ClauseNode[] {
  return clauses.map((clause) => ({
    kind: clause.kind,
    head: word(clause.head, moved),
    before: clause.before.map((detail) => movedDetail(detail, moved)),
    details: clause.details.map((detail) => movedDetail(detail, moved)),
    mistake: clause.mistake,
    from: moved.offset(clause.from),
    to: moved.offset(clause.to),
  }));
}

export function movedHeading(node: s.HeadingNode, moved: Moved): s.HeadingNode {
  switch (node.type) {
    case 'room':
      return { type: 'room', from: moved.offset(node.from), to: moved.offset(node.to) };
    case 'declare':
      return {
        type: 'declare',
        word: word(node.word, moved),
        names: names(node.names, moved),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
    case 'all tanks':
      return {
        type: 'all tanks',
        except: names(node.except, moved),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
    case 'names':
      return {
        type: 'names',
        ranges: node.ranges.map((range) => ({
          first: name(range.first, moved),
          last: range.last && name(range.last, moved),
          joined: range.joined,
          from: moved.offset(range.from),
          to: moved.offset(range.to),
        })),
        tanks: node.tanks,
        except: names(node.except, moved),
        group: node.group && word(node.group, moved),
        sex: node.sex && word(node.sex, moved),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
  }
}

function movedDetail(node: s.DetailNode, moved: Moved): s.DetailNode {
  switch (node.type) {
    case 'versus':
      return {
        type: 'versus',
        doer: word(node.doer, moved),
        sufferer: word(node.sufferer, moved),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
    case 'every':
      return {
        type: 'every',
        period: node.period,
        quantity: node.quantity && quantity(node.quantity, moved),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
    case 'action':
    case 'measure':
      return { type: node.type, sense: node.sense, from: moved.offset(node.from), to: moved.offset(node.to) };
    case 'link':
      return {
        type: 'link',
        link: node.link,
        values: node.values.map((value) => movedValue(value, moved)),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
    default:
      return movedValue(node, moved);
  }
}

function movedValue(node: s.LinkValue, moved: Moved): s.LinkValue {
  switch (node.type) {
    case 'name':
      return name(node, moved);
    case 'quantity':
      return quantity(node, moved);
    case 'sex':
      return { type: 'sex', sex: node.sex, from: moved.offset(node.from), to: moved.offset(node.to) };
    case 'quote':
    case 'text':
      return { type: node.type, from: moved.offset(node.from), to: moved.offset(node.to) };
    case 'date':
      return {
        type: 'date',
        text: moved.text(node.from, node.to, node.text),
        from: moved.offset(node.from),
        to: moved.offset(node.to),
      };
  }
}

function quantity(node: s.QuantityNode, moved: Moved): s.QuantityNode {
  return {
    type: 'quantity',
    word: node.word && word(node.word, moved),
    fuzz: node.fuzz,
    numbers: words(node.numbers, moved),
    high: node.high && word(node.high, moved),
    plus: node.plus,
    unit: node.unit && word(node.unit, moved),
    units: words(node.units, moved),
    scoop: node.scoop && word(node.scoop, moved),
    noun: node.noun && word(node.noun, moved),
    ago: node.ago,
    from: moved.offset(node.from),
    to: moved.offset(node.to),
  };
}

function words(nodes: readonly s.WordNode[], moved: Moved): s.WordNode[] {
  return nodes.map((node) => word(node, moved));
}

function word({ text, sense, from, to }: s.WordNode, moved: Moved): s.WordNode {
  return {
    text: moved.text(from, to, text),
    sense: moved.sense(to, sense),
    from: moved.offset(from),
    to: moved.offset(to),
  };
}

function names(nodes: readonly s.NameNode[], moved: Moved): s.NameNode[] {
  return nodes.map((node) => name(node, moved));
}

function name({ numbered, from, to }: s.NameNode, moved: Moved): s.NameNode {
  return { type: 'name', text: moved.lastWord(to), numbered, from: moved.offset(from), to: moved.offset(to) };
}

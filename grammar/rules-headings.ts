/** Rules for what stands before the colon: who or what a line is about. */
import { last, name, piece, word } from './nodes.ts';
import { DetailRules } from './rules-details.ts';
import type * as s from './syntax.ts';
import * as tag from './tags.ts';
import * as t from './tokens.ts';

export abstract class HeadingRules extends DetailRules {
  public readonly heading = this.RULE('heading', (): s.HeadingNode =>
    this.OR([
      { ALT: () => ({ type: 'room', ...piece(this.CONSUME(tag.Room)) }) },
      { ALT: () => this.SUBRULE(this.declaration) },
      { ALT: () => this.SUBRULE(this.allTanks) },
      { ALT: () => this.SUBRULE(this.names) },
    ]),
  );

  protected readonly declaration = this.RULE('declaration', (): s.HeadingNode => {
    const declares = word(this.CONSUME(tag.Declaring));
    const names: s.NameNode[] = [];
    this.AT_LEAST_ONE(() => {
      this.OPTION(() => this.SUBRULE(this.joint));
      names.push(this.SUBRULE(this.headingName));
    });
    return { type: 'declare', word: declares, names, from: declares.from, to: last(names) };
  });

  protected readonly allTanks = this.RULE('allTanks', (): s.HeadingNode => {
    const all = this.CONSUME(tag.AllTanks);
    const but = this.OPTION(() => this.SUBRULE(this.exceptions));
    return { type: 'all tanks', except: but?.names ?? [], from: all.startOffset, to: but?.to ?? t.endOf(all) };
  });

  protected readonly exceptions = this.RULE('exceptions', () => {
    const names: s.NameNode[] = [];
    this.CONSUME(tag.Except);
    this.AT_LEAST_ONE(() => {
      this.OPTION(() => this.SUBRULE(this.joint));
      names.push(this.SUBRULE(this.headingName));
    });
    return { names, to: last(names) };
  });

  protected readonly names = this.RULE('names', (): s.HeadingNode => {
    const ranges = [this.SUBRULE(this.range)];
    this.MANY(() => {
      const joint = this.OPTION(() => this.SUBRULE(this.joint));
      ranges.push({ ...this.SUBRULE2(this.range), joined: joint !== undefined });
    });
    const tanks = this.OPTION2(() => this.CONSUME(tag.Tanks));
    const but = this.OPTION3(() => this.SUBRULE(this.exceptions));
    const group = this.OPTION4(() => word(this.CONSUME(tag.GroupWord))) ?? null;
    const sex = this.OPTION5(() => word(this.CONSUME(tag.Sex))) ?? null;
    const ends = [last(ranges), but?.to ?? 0, group?.to ?? 0, sex?.to ?? 0];
    const place = { from: ranges[0]?.from ?? 0, to: Math.max(...ends) };
    return { type: 'names', ranges, tanks: tanks !== undefined, except: but?.names ?? [], group, sex, ...place };
  });

  protected readonly range = this.RULE('range', (): s.RangeNode => {
    const first = this.SUBRULE(this.headingName);
    const end = this.OPTION(() => {
      this.CONSUME(tag.RangeTo);
      return this.SUBRULE2(this.headingName);
    });
    return { first, last: end ?? null, joined: false, from: first.from, to: (end ?? first).to };
  });

  protected readonly headingName = this.RULE('headingName', (): s.NameNode =>
    this.OR([{ ALT: () => name(this.CONSUME(tag.Name), false) }, { ALT: () => name(this.CONSUME(t.Num), true) }]),
  );

  protected readonly joint = this.RULE('joint', (): s.Piece =>
    this.OR([{ ALT: () => piece(this.CONSUME(tag.And)) }, { ALT: () => piece(this.CONSUME(t.Comma)) }]),
  );
}

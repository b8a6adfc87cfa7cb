/**
 * The details of one clause, taken one by one by whoever builds a fact of it. What nobody takes is
 * reported, so that no word of a line is ever dropped in silence.
 */
import { canonicalOf } from '../../grammar/phrases.ts';
import type { LinkName } from '../../grammar/phrases.ts';
import type {
  ClauseNode,
  DetailNode,
  EveryNode,
  LinkNode,
  LinkValue,
  NameNode,
  Piece,
  QuantityNode,
  ThingNode,
  VersusNode,
} from '../../grammar/syntax.ts';
import type { Day } from '../core/day.ts';
import type { ProblemKind } from '../core/problem-kinds.ts';
import { fault } from './faults.ts';
import type { LineContext } from './line.ts';

export class Details {
  readonly line: LineContext;
  readonly node: ClauseNode;
  protected readonly unread: DetailNode[];

  constructor(line: LineContext, node: ClauseNode) {
    this.line = line;
    this.node = node;
    this.unread = [...node.before, ...node.details];
  }

  get sense(): string {
    return this.node.head.sense;
  }

  get day(): Day {
    return this.line.day;
  }

  /** What nobody has asked for yet, in the order of writing. */
  get rest(): readonly DetailNode[] {
    return this.unread;
  }

  fault(kind: ProblemKind, at: Piece, says: string, replacement: string | null = null): void {
    this.line.faults.push(fault(kind, at, says, replacement));
  }

  written(at: Piece): string {
    return this.line.text.slice(at.from, at.to);
  }

  /** The words that name this clause in a message. */
  phrase(): string {
    return this.node.head.to > this.node.head.from
      ? this.written(this.node.head)
      : (canonicalOf(this.node.kind) ?? this.node.kind);
  }

  // Taking details

  /** Takes the first detail that fits. */
  take<T extends DetailNode>(fits: (detail: DetailNode) => detail is T): T | null {
    const at = this.unread.findIndex(fits);
    if (at < 0) return null;
    const found = this.unread.splice(at, 1).find(fits);
    return found ?? null;
  }

  takeAll<T extends DetailNode>(fits: (detail: DetailNode) => detail is T): T[] {
    const found: T[] = [];
    for (let next = this.take(fits); next !== null; next = this.take(fits)) found.push(next);
    return found;
  }

  /** Takes details by their place among those not asked for yet. */
  takeAt(index: number): DetailNode | null {
    return this.unread.splice(index, 1)[0] ?? null;
  }

  /** Details that turned out to belong to a later part of the clause. */
  putBack(details: readonly DetailNode[]): void {
    this.unread.push(...details);
    this.unread.sort((a, b) => a.from - b.from);
  }

  link(link: LinkName): LinkNode | null {
    return this.take((detail): detail is LinkNode => detail.type === 'link' && detail.link === link);
  }

  /** True where a word without an object stands: `rest stay`, `each`. */
  flag(link: LinkName): boolean {
    return this.link(link) !== null;
  }

  linked(link: LinkName): { at: LinkNode; value: LinkValue } | null {
    const at = this.link(link);
    const value = at?.values[0];
    return at === null || value === undefined ? null : { at, value };
  }

  name(): NameNode | null {
    return this.take((detail): detail is NameNode => detail.type === 'name');
  }

  names(): NameNode[] {
    while (this.flag('and'));
    return this.takeAll((detail): detail is NameNode => detail.type === 'name');
  }

  versus(): VersusNode | null {
    return this.take((detail): detail is VersusNode => detail.type === 'versus');
  }

  every(): EveryNode | null {
    return this.take((detail): detail is EveryNode => detail.type === 'every');
  }

  thing(type: 'action' | 'measure'): ThingNode | null {
    return this.take((detail): detail is ThingNode => detail.type === type);
  }

  quantity(fits: (node: QuantityNode) => boolean = () => true): QuantityNode | null {
    return this.take((detail): detail is QuantityNode => detail.type === 'quantity' && !detail.ago && fits(detail));
  }
}

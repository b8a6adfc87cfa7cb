/** Lists of tanks: `A1 A2 and B1`, `D1 to D6` in walking order, rows by name. */
import type { NameNode } from '../../../grammar/syntax.ts';
import type { Clause } from '../clause.ts';
import { lookUp, TANK } from '../line.ts';
import type { LineContext, Lookup } from '../line.ts';

const TANK_OR_ROW: Lookup = { ...TANK, kinds: ['tank', 'row'] };

/** The tanks that a clause lists. */
export function placesOf(clause: Clause): string[] {
  const tanks: string[] = [];
  for (let detail = clause.takeAt(0); detail !== null; detail = clause.takeAt(0)) {
    if (detail.type === 'name') tanks.push(...named(clause.line, detail));
    else if (detail.type === 'quantity' && detail.numbers.length === 1 && detail.high === null) {
      tanks.push(...named(clause.line, { ...detail, type: 'name', text: clause.written(detail), numbered: true }));
    } else if (detail.type === 'link' && detail.link === 'to' && detail.values[0] !== undefined) {
      const last = clause.named(detail.values[0], TANK);
      tanks.push(...walkBetween(clause.line, tanks.at(-1) ?? last, last).slice(1));
    } else if (!(detail.type === 'link' && detail.link === 'and')) {
      clause.fault('no-tank', detail, `«${clause.written(detail)}» is no tank`);
    }
  }
  if (tanks.length === 0) clause.missing('tanks', 'A1 A2');
  return tanks;
}

/** The tank that `in` leads to in a declaration, where nothing but a tank can stand: `in A1`, `in 12`. */
export function tankName(clause: Clause): NameNode | null {
  const name = clause.name();
  if (name !== null) return name;
  const node = clause.quantity((each) => each.unit === null && each.numbers.length === 1 && each.high === null);
  return node === null
    ? null
    : { type: 'name', text: clause.written(node), numbered: true, from: node.from, to: node.to };
}

function named(line: LineContext, node: NameNode): readonly string[] {
  const found = lookUp(line, node.text, node, TANK_OR_ROW);
  if (found === null) return [];
  return found.kind === 'row' ? (found.tanks ?? []) : [found.name];
}

/** The walking order on the day of a line: as set, then the other tanks as they were declared. */
export function walkOrder(line: LineContext): readonly string[] {
  return [...new Set([...(line.conventions.walk.on(line.day) ?? []), ...line.names.tanksInOrder()])];
}

/** The tanks from one to another as one walks past them; none where the first stands after the last. */
export function walkBetween(line: LineContext, first: string, last: string): readonly string[] {
  const order = walkOrder(line).filter((tank) => (line.names.find(tank, line.day)?.day ?? Infinity) <= line.day);
  const [from, to] = [order.indexOf(first), order.indexOf(last)];
  return from < 0 || to < from ? [] : order.slice(from, to + 1);
}

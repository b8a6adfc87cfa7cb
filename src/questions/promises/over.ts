/** More promised of a stock than are surely there: as rows of an answer, and as what a new line would do. */
import type { Because } from '../../core/because.ts';
import type { Problem } from '../../core/problem.ts';
import type { LineRef } from '../../core/span.ts';
import { countWords, plural } from '../../core/words.ts';
import type { Event } from '../../journal/event.ts';
import type { SeenBody } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { stockName, stockNamed, sureOf } from '../../state/promised.ts';
import { rowId } from '../id.ts';

export interface OverRow {
  readonly id: string;
  readonly stock: string;
  readonly sure: number;
  readonly promised: number;
  /** The line that would settle it. */
  readonly write: string;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** Every stock of which any is reserved or kept back, once, by the name that it has now. */
export function promisedStocks(room: Room): readonly string[] {
  const named = [...room.sale.reservations, ...room.sale.keptBack].map(
    ({ stock }) => stockNamed(room, stock)?.name ?? stock,
  );
  return [...new Set(named)];
}

/** Stocks of which more are promised than there surely are. */
export function overRows(room: Room): readonly OverRow[] {
  return promisedStocks(room).flatMap((stock) => {
    const body = stockNamed(room, stock);
    return body === null ? [] : overRow(room, stock, body);
  });
}

function overRow(room: Room, stock: string, body: SeenBody): OverRow[] {
  const { sure, kept, reserved, lines } = sureOf(room, body, room.on);
  if (reserved === 0 || kept + reserved <= sure) return [];
  const name = stockName(body);
  return [
    {
      id: rowId(stock, 'promised too often'),
      stock: name,
      sure,
      promised: kept + reserved,
      write: countLine(body),
      because: {
        rule: 'no more may be promised than are surely alive: the low number',
        source: 'the journal',
        steps: [
          `${countWords(body.total)} ${name}: ${plural(sure, 'fish', 'fish')} surely`,
          `${String(kept)} kept back and ${String(reserved)} reserved: ${String(kept + reserved)}`,
        ],
        lines,
      },
      lines,
    },
  ];
}

/** New lines that promise fish which are not surely there. `after`: the room with them. */
export function promisedTooMany(after: Room, events: readonly Event[]): readonly Problem[] {
  return events.flatMap((event): Problem[] => {
    const found = event.kind === 'reserved' ? after.resolved.get(event.seq) : undefined;
    if (found === undefined) return [];
    const body = stockNamed(after, found.kind === 'group' ? found.group : found.brood);
    const { sure, kept, reserved } = body === null ? NOTHING : sureOf(after, body, after.on);
    if (body === null || kept + reserved <= sure) return [];
    const spoken = [`${String(reserved)} reserved`, ...(kept > 0 ? [`${String(kept)} kept back`] : [])].join(' and ');
    return [
      {
        kind: 'over-promised',
        weight: 'stops',
        says: `with this line ${spoken} of ${stockName(body)}, but surely only ${String(sure)} are alive`,
        write: `a count first, or fewer: ${countLine(body)}`,
        at: event.place,
        also: [],
      },
    ];
  });
}

/** A count of them in the first of their tanks, by a name that a line takes: of a mix that of its first part. */
function countLine(body: SeenBody): string {
  const [tank = 'A1'] = body.parts.keys();
  return `${tank}: ${stockName(body).split(' or ')[0] ?? body.name} counted …`;
}

const NOTHING = { sure: 0, kept: 0, reserved: 0 };

/** More of a stock kept back and reserved than are surely alive. */
import type { Problem } from '../core/problem.ts';
import { promisedOf, stockName, stockNamed, sureOf } from '../state/promised.ts';
import type { Check } from './check.ts';

export const overPromised: Check = ({ room }) => {
  const bodies = new Set(room.sale.reservations.map(({ stock }) => stockNamed(room, stock)));
  return [...bodies].flatMap((body): Problem[] => {
    const last = body === null ? undefined : promisedOf(room, body, room.on).reserved.at(-1);
    if (body === null || last === undefined) return [];
    const { sure, kept, reserved } = sureOf(room, body, room.on);
    if (kept + reserved <= sure) return [];
    const name = stockName(body);
    const { kept: keptLines, reserved: lines } = promisedOf(room, body, room.on);
    return [
      {
        kind: 'over-promised',
        weight: 'doubt',
        says: `${String(kept)} ${name} are kept back and ${String(reserved)} reserved, but surely only ${String(sure)} are alive`,
        write: `what was counted since: ${last.tank ?? 'A1'}: ${body.name} counted ${String(kept + reserved)}`,
        at: last.place,
        also: [...keptLines, ...lines].map(({ place }) => place).filter((place) => place !== last.place),
      },
    ];
  });
};

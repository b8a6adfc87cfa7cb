/** What settling an auction wrote, or what does not add up; and the blank sheet to fill in at the table. No buyer's name is in it. */
import { sumWords } from '../core/words.ts';
import type { SalePlan } from '../questions/plan/plan.ts';
import type { Wrong } from '../questions/settle/result.ts';
import type { Takings } from '../questions/settle/takings.ts';
import type { Home } from '../questions/settle.ts';
import { csvText } from './csv.ts';
import type { JotAnswer } from './jot.ts';
import { jotJson, jotText } from './jot.ts';
import { countJson, dayJson } from './json.ts';
import type { Look } from './look.ts';
import { countWords, dayText, plural, printable } from './words.ts';
import { paragraph } from './wrap.ts';

/** Columns of the sheet. `fetched` is what the whole lot fetched, before the auction's part. */
export const SHEET_HEADS = ['lot', 'stock', 'species', 'tank', 'fish', 'minimum', 'fetched', 'back to'] as const;

/** Problems told at once; more are counted. */
const MOST_WRONG = 12;

/** A row for each lot of the plan, its result left empty. */
export function sheetCsv(plan: SalePlan): string {
  const rows = plan.lots.flatMap((lot) =>
    lot.bags.map((bag) => ({
      number: bag.number,
      cells: [bag.number, lot.name, lot.species, lot.tank, bag.count, lot.minimum, null, null],
    })),
  );
  const sorted = rows.toSorted((a, b) => a.number - b.number);
  return csvText(
    SHEET_HEADS,
    sorted.map(({ cells }) => cells),
  );
}

/** What was settled: what came in, who came home, and the lines with what they change. */
export interface SettleAnswer {
  readonly taken: Takings;
  readonly home: Home;
  readonly jotted: JotAnswer;
}

export function settleText({ taken, home, jotted }: SettleAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(matters(taken, jotted.saved, look), look.width, 2).split('\n');
  const back = home.back.map(
    ({ tank, fish, until }) =>
      `${plural(fish, 'fish', 'fish')} back in ${tank}${until === null ? '' : `, quarantine until ${dayText(until, look)}`}`,
  );
  const rows = [...back, ...home.cautions.map((caution) => `take care: ${caution}`)];
  const lines = [
    [look.paint.strong(first), ...more].join('\n'),
    ...rows.map((row) => `  ${paragraph(printable(row), look.width - 2, 4)}`),
    '',
    jotText(jotted, look).trimEnd(),
  ];
  return `${lines.join('\n')}\n`;
}

function matters({ auction, on, sold, fetched, net, currency }: Takings, saved: boolean, look: Look): string {
  const unit = currency === null ? '' : ` ${currency}`;
  const head = `${auction} of ${dayText(on, look)} ${saved ? 'is settled' : 'would be settled'}`;
  if (sold.high === 0) return `${head}: nothing sold`;
  const yours = net.low === fetched.low && net.high === fetched.high ? '' : `, ${sumWords(net)} after its part`;
  return `${head}: ${countWords(sold)} fish sold for ${sumWords(fetched)}${unit}${yours}`;
}

/** `source` is the sheet as it was named. */
export function wrongText(
  wrong: readonly Wrong[],
  { source, auction, width }: { readonly source: string; readonly auction: string; readonly width: number },
): string {
  const rows = wrong.slice(0, MOST_WRONG).flatMap(({ line, says, write }) => {
    const where = line === null ? source : `${source} line ${String(line)}`;
    return [
      paragraph(printable(`${where}: ${says}`), width, 2),
      ...(write === null ? [] : [`  ${paragraph(printable(`write: ${write}`), width - 2, 4)}`]),
    ];
  });
  const more = wrong.length - MOST_WRONG;
  const also = more > 0 ? [`and ${plural(more, 'more row')} like these`] : [];
  return `${[...rows, ...also, `nothing of ${auction} was written`].join('\n')}\n`;
}

export function settleJson({ taken, home, jotted }: SettleAnswer): object {
  return {
    ...jotJson(jotted),
    auction: taken.auction,
    on: dayJson(taken.on),
    sold: countJson(taken.sold),
    fetched: countJson(taken.fetched),
    net: countJson(taken.net),
    currency: taken.currency,
    back: home.back.map(({ tank, fish, until }) => ({ tank, fish, until: dayJson(until) })),
    cautions: home.cautions,
  };
}

export function wrongJson(wrong: readonly Wrong[], auction: string): object {
  return { version: 1, saved: false, auction, wrong };
}

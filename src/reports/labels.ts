/** A label for each bag: read at arm's length, two to a row of the sheet, none cut by its end. */
import type { PaperLot, Papers } from '../questions/papers.ts';
import type { PlanBag } from '../questions/plan/plan.ts';
import { addDays } from '../core/day.ts';
import { dayWords } from '../core/words.ts';
import { markup, unbroken, type Markup } from './markup.ts';

const A_ROW = 2;

/** A label for each pack, several to a sheet, none cut by the edge of a page. */
export function labelsSheet(papers: Papers): Markup {
  const labels = papers.lots.flatMap((lot) =>
    lot.bags.flatMap((bag) => packsOf(bag).map((pack) => label(papers, lot, bag, pack))),
  );
  const rows: Markup[] = [];
  for (let i = 0; i < labels.length; i += A_ROW) {
    rows.push(markup`<div class="row">
${labels.slice(i, i + A_ROW)}</div>
`);
  }
  return markup`<section class="sheet" aria-label="labels">
<h1 class="slim">Labels, one for each bag</h1>
${rows}</section>`;
}

/** Fish that travel alone need a label each: 1 of 2, 2 of 2. */
function packsOf({ packs }: PlanBag): readonly number[] {
  return Array.from({ length: Math.max(1, packs) }, (_, i) => i + 1);
}

function label({ plan }: Papers, paper: PaperLot, bag: PlanBag, pack: number): Markup {
  const { lot, size, origin, laid, parents, water } = paper;
  return markup`<article class="label" data-lot="${bag.number}" data-pack="${pack}">
<div class="top"><span class="lot">${bag.number}</span><span class="many">${manyWords(paper, bag, pack)}</span></div>
<div class="kind">${kindOf(lot.latin, lot.species)}</div>
<dl>${line('size', size)}${line('of', unbroken(laid === null ? origin : `${origin}, ${laid}`))}${line('parents', parents ?? 'not on record')}${waterLine(water)}${line('bagged', `${dayWords(plan.on, addDays(plan.on, 2 * 366))}, unpack within ${String(plan.rules.hours)} h`)}</dl>
<div class="foot"><span>never release fish, plants or water</span><span class="ask">${askWords(plan.currency, paper, bag)}</span></div>
</article>
`;
}

function line(name: string, says: string | Markup | null): Markup {
  return says === null ? markup`` : markup`<dt>${name}</dt><dd>${says}</dd>`;
}

/** Where nobody tested lately there is room to write what a test finds. */
function waterLine(water: PaperLot['water']): Markup {
  if (water === null) return markup`<dt>water</dt><dd><span class="write"></span></dd>`;
  return line('water', `${water.says}; read ${water.read}`);
}

/** `6 fish`, `bonded pair`, `1 of 2 bags`. */
function manyWords({ lot }: PaperLot, { count, packs }: PlanBag, pack: number): string {
  const many = lot.bondedPair && count === 2 ? 'bonded pair' : `${String(count)} fish`;
  return packs > 1 ? `${many}, bag ${String(pack)} of ${String(packs)}` : many;
}

/** The Latin name, with the name of the trade after it. */
export function kindOf(latin: string | null, species: string | null): Markup {
  if (latin === null) return markup`${species ?? 'species not on record'}`;
  return markup`<span class="latin">${latin}</span>${species === null ? '' : markup` <span class="trade">${species}</span>`}`;
}

/** `minimum 12.00`; where the auction sets none, what the fish of the bag are asked at. */
function askWords(currency: string | null, { lot }: PaperLot, { count }: PlanBag): string {
  const money = currency === null ? '' : `${currency} `;
  if (lot.minimum !== null) return `minimum ${money}${lot.minimum.toFixed(2)}`;
  return lot.price === null ? '' : `${money}${(lot.price * count).toFixed(2)}`;
}

/** Paper for an auction: the seller's sheet for the table, a label for each bag, and the packing list. */
import { addDays, type Day } from '../core/day.ts';
import { dayWords } from '../core/words.ts';
import type { PaperLot, Papers } from '../questions/papers.ts';
import type { PlanBag, PlanBox } from '../questions/plan/plan.ts';
import { pageHtml } from './html.ts';
import { kindOf, labelsSheet } from './labels.ts';
import { markup, unbroken, type Markup } from './markup.ts';
import { plural, rangeWords } from './words.ts';

export function saleHtml(papers: Papers): string {
  return pageHtml(nameOf(papers), [tableSheet(papers), labelsSheet(papers), packingSheet(papers)]);
}

/** With its year: paper outlives it. */
function dated(day: Day): string {
  return dayWords(day, addDays(day, 2 * 366));
}

function nameOf({ plan }: Papers): string {
  return `${plan.auction ?? 'Sale'}, ${dated(plan.on)}`;
}

interface Sold {
  readonly paper: PaperLot;
  readonly bag: PlanBag;
}

function soldOf({ lots }: Papers): readonly Sold[] {
  return lots
    .flatMap((paper) => paper.bags.map((bag) => ({ paper, bag })))
    .toSorted((a, b) => a.bag.number - b.bag.number);
}

/** One line a bag, with room for what it fetched. */
function tableSheet(papers: Papers): Markup {
  const { plan, handOver } = papers;
  const sold = soldOf(papers);
  const fish = sold.reduce((sum, { bag }) => sum + bag.count, 0);
  const money = plan.currency === null ? '' : `, ${plan.currency}`;
  const floor = sold.some(({ paper }) => paper.lot.minimum !== null) ? 'minimum' : 'price';
  return markup`<section class="sheet" aria-label="seller's sheet">
<h1>${nameOf(papers)}</h1>
<p>${plural(sold.length, 'lot')}, ${plural(fish, 'fish', 'fish')}; ${shareWords(papers)}</p>
<table class="sold">
<thead><tr><th class="lots">lot</th><th class="heads">fish</th><th>kind</th><th class="origin">of</th><th class="asks">${floor}${money}</th><th class="blank">fetched</th><th class="blank">back to</th></tr></thead>
<tbody>
${sold.map((one) => tableRow(one))}<tr class="sum"><td></td><td>${fish}</td><td colspan="3">${plural(sold.length, 'lot')}</td><td class="blank"></td><td class="blank"></td></tr>
</tbody>
</table>
${
  handOver.length === 0
    ? markup``
    : markup`<div class="whole"><h2>Promised and wanted</h2>
<table class="close"><tbody>
${handOver.map(
  ({ says }) => markup`<tr><td class="tick"><span class="box"></span></td><td>${says}</td></tr>
`,
)}</tbody></table></div>
`
}${notes(papers)}</section>`;
}

function tableRow({ paper, bag }: Sold): Markup {
  const { lot, size, origin, parents } = paper;
  const ask = lot.minimum ?? (lot.price === null ? null : lot.price * bag.count);
  const many = lot.bondedPair && bag.count === 2 ? 'pair' : String(bag.count);
  return markup`<tr><td class="lot">${bag.number}</td><td>${many}</td><td>${kindOf(lot.latin, lot.species)}${
    size === null ? '' : markup`<br><span class="small">${size}</span>`
  }</td><td>${unbroken(origin)}<br><span class="small">${parents ?? 'parents not on record'}</span></td><td class="number">${
    ask === null ? '' : ask.toFixed(2)
  }</td><td class="blank"></td><td class="blank"></td></tr>
`;
}

function shareWords({ plan }: Papers): string {
  const { sellerShare } = plan.rules;
  const percent = { low: sellerShare.low * 100, likely: null, high: sellerShare.high * 100 };
  return sellerShare.low >= 1 ? 'all of the price is the seller’s' : `seller gets ${rangeWords(percent)} %`;
}

/** What a buyer or helper at the table must know. */
function notes({ plan, lots }: Papers): Markup {
  const cautions = [...new Set([...plan.warnings, ...lots.flatMap((one) => cautionsOf(one))])];
  return markup`<div class="whole">${cautions.map(
    (says) => markup`<p class="small">Take care: ${says}.</p>
`,
  )}<p class="small">Permits and the transport of fish are a matter of local law. Never release fish, plants or water.</p></div>
`;
}

/** Each says which lots it is about. */
function cautionsOf({ lot, bags }: PaperLot): readonly string[] {
  const numbers = bags.map(({ number }) => number);
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)];
  return lot.cautions.map(
    (says) => `${low === high ? 'lot' : 'lots'} ${rangeWords({ low, likely: null, high })}, ${says}`,
  );
}

function packingSheet(papers: Papers): Markup {
  const { plan, days } = papers;
  const bags = new Map(soldOf(papers).map((one) => [one.bag.number, one]));
  const hours = `${String(plan.rules.hours)} h from bagging to unpacking, ${plan.rules.oxygen ? 'oxygen' : 'air'} above the water`;
  return markup`<section class="sheet" aria-label="packing list">
<h1>Packing list</h1>
<p>${nameOf(papers)}; ${hours}. A litre of water weighs a kilogram.</p>
${plan.boxes.map((box) => boxTable(box, plan.rules.boxLitres, bags))}${
    days.length === 0
      ? markup``
      : markup`<div class="whole"><h2>Day by day</h2>
<table class="close"><tbody>
${days.map(
  ({
    day,
    what,
    done,
  }) => markup`<tr><td class="tick"><span class="box${done ? ' done' : ''}"></span></td><td class="day">${dated(day)}</td><td>${what}</td></tr>
`,
)}</tbody></table></div>
`
  }</section>`;
}

function boxTable({ number, litres, packs }: PlanBox, boxLitres: number, bags: ReadonlyMap<number, Sold>): Markup {
  const rows = packs.flatMap(({ bag, packs: many }) => {
    const found = bags.get(bag);
    return found === undefined ? [] : [packRow(found, many)];
  });
  const water = packs.reduce((sum, { bag, packs: many }) => sum + many * (bags.get(bag)?.bag.water ?? 0), 0);
  return markup`<h2>Box ${number}</h2>
<p>${litres.toFixed(0)} of ${String(boxLitres)} L filled; ${water.toFixed(1)} L of it water, so about ${Math.ceil(water).toFixed(0)} kg</p>
<table class="close">
<thead><tr><th class="tick"></th><th>lot</th><th>kind</th><th>out of</th><th>fish</th><th class="number">bags</th><th class="number">water and air, L each</th></tr></thead>
<tbody>
${rows}</tbody>
</table>
`;
}

function packRow({ paper: { lot }, bag }: Sold, many: number): Markup {
  const fish = bag.alone ? `${String(bag.count)}, each alone` : String(bag.count);
  return markup`<tr><td class="tick"><span class="box"></span></td><td class="lot">${bag.number}</td><td>${lot.species ?? lot.name}</td><td>${lot.tank}</td><td>${fish}</td><td class="number">${many}</td><td class="number">${bag.water.toFixed(2)} + ${bag.air.toFixed(2)}</td></tr>
`;
}

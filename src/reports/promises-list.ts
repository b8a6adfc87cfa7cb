/** The price list as plain lines to paste into a message, and as JSON: no tank, no buyer, nothing of the room. */
import { civil } from '../core/day.ts';
import type { Offered, PriceList } from '../questions/promises/pricelist.ts';
import { countJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { dayText, listWords, plural, printable, rangeWords } from './words.ts';

/** Lines are never broken: whatever shows the message does that. */
export function priceListText(list: PriceList, look: Look): string {
  const day = look.machine ? dayText(look.on, look) : `${dayText(look.on, look)} ${civil(look.on).year}`;
  if (list.offered.length === 0) return `nothing is ready for sale on ${day}\n`;
  const rows = toldOnce(list).map((one) => printable(offerWords(one, list.currency)));
  const cautions = [...new Set(list.offered.flatMap((one) => one.cautions))];
  const warned = cautions.map((caution) => {
    const of = list.offered.filter((one) => one.cautions.includes(caution)).map(({ stock }) => stock);
    return `(before you send it: ${printable(`${listWords([...new Set(of)])}, ${caution}`)})`;
  });
  return `${[`For sale on ${day}`, '', ...rows, ...(warned.length === 0 ? [] : ['', ...warned])].join('\n')}\n`;
}

/** In which tank they swim is nothing to a buyer: fish of one stock, length and price are one offer. */
function toldOnce({ offered, currency }: PriceList): readonly Offered[] {
  const told = new Map<string, Offered>();
  for (const one of offered) {
    const apart = one.price?.per === 'all' ? one.id : '';
    const key = `${apart} ${offerWords({ ...one, count: 0 }, currency)}`;
    told.set(key, { ...one, count: one.count + (told.get(key)?.count ?? 0) });
  }
  return [...told.values()];
}

function offerWords({ stock, species, latin, count, size, price }: Offered, currency: string | null): string {
  const name = latin ?? species ?? stock;
  const millimetres = size === null ? '' : `, ${rangeWords(size)} mm`;
  const unit = currency === null ? '' : ` ${currency}`;
  const asked =
    price === null
      ? 'price to be agreed'
      : `${price.amount.toFixed(2)}${unit} ${price.per === 'each' ? 'each' : 'for all'}`;
  return `${name}${millimetres}: ${asked}, ${plural(count, 'fish', 'fish')} (${stock})`;
}

export function priceListJson({ currency, offered }: PriceList): object {
  return {
    currency,
    offered: offered.map(({ id, stock, species, latin, count, size, price, cautions, lines }) => ({
      id,
      stock,
      species,
      latin,
      count,
      size: countJson(size),
      price,
      caution: cautions.length === 0 ? null : cautions.join('; '),
      lines: linesJson(lines),
    })),
  };
}

/** The options of a plan for an auction, and the plan that they ask for. */
import { addDays } from '../core/day.ts';
import { nearest } from '../core/suggest.ts';
import type { SalePlan } from '../questions/plan/plan.ts';
import { salePlan } from '../questions/plan/make.ts';
import { BOX_LITRES } from '../questions/plan/rules.ts';
import type { Room } from '../state/draft.ts';
import { auctionOf } from './auction.ts';
import { misuse } from './exit.ts';
import { flag, textFlag, wholeFlag, type Flag, type Get } from './flags.ts';

const BOXES = wholeFlag('--boxes COUNT', 'no more boxes than so many; else as many as are needed', null);
const LITRES = wholeFlag('--box-litres LITRES', 'what a box holds; 40 L unless told', null);
const HOURS = wholeFlag('--hours HOURS', 'from bagging to unpacking; 24 unless told', null);
const OXYGEN = flag('--oxygen', 'bags are closed on oxygen, not on air');
const TANK_WEEK = textFlag('--tank-week AMOUNT', 'worth of a week of one tank; else what one earned in this room');
const OFFER = textFlag('--offer NAMES', 'breeding pairs that are for sale too: "Rowan, Ash"');

/** What `--plan` takes besides. */
export const PLAN_FLAGS: readonly Flag<unknown>[] = [BOXES, LITRES, HOURS, OXYGEN, TANK_WEEK, OFFER];

/** The plan for an auction, or for the day so many days ahead. Throws a `Stop` for an option that cannot be. */
export function planFor(
  room: Room,
  get: Get,
  asked: { readonly auction: string | null; readonly ahead: number; readonly projected: boolean },
): SalePlan {
  const auction = auctionOf(room, asked.auction);
  const [boxes, litres, hours] = [get(BOXES), get(LITRES), get(HOURS)];
  if (litres !== null && (litres < BOX_LITRES.least || litres > BOX_LITRES.most))
    throw misuse('a box holds 5 to 500 L', '--box-litres 40');
  if (hours !== null && (hours < 1 || hours > 96)) throw misuse('fish are bagged for 1 to 96 h', '--hours 30');
  const tankWeek = amountOf(get(TANK_WEEK));
  return salePlan(room, {
    auction,
    on: auction?.on ?? addDays(room.on, asked.ahead),
    projected: asked.projected,
    oxygen: get(OXYGEN),
    offer: pairsOf(room, get(OFFER)),
    ...(boxes === null ? {} : { boxes }),
    ...(litres === null ? {} : { boxLitres: litres }),
    ...(hours === null ? {} : { hours }),
    ...(tankWeek === null ? {} : { tankWeek }),
  });
}

function amountOf(text: string | null): number | null {
  if (text === null) return null;
  if (/^\d{1,6}(?:[.,]\d{1,2})?$/.test(text)) return Number(text.replace(',', '.'));
  throw misuse(`--tank-week takes an amount of money, not «${text}»`, '--tank-week 1.50');
}

function pairsOf(room: Room, text: string | null): readonly string[] {
  const names = (text ?? '').split(/[\s,]+/).filter((name) => name !== '');
  const known = [...room.stock.groups.keys()];
  for (const name of names) {
    if (known.some((one) => one.toLowerCase() === name.toLowerCase())) continue;
    const [near] = [...nearest(name, known), ...known];
    throw misuse(`no pair is called «${name}»`, `--offer ${near ?? 'Rowan'}`);
  }
  return names;
}

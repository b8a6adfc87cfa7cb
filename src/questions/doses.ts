/** What a dose that was logged by weight added to a water, where its product is one that can be reckoned. */
import type { Interval } from '../core/interval.ts';
import { degreesFrom, type CompoundName } from '../science/chemistry.ts';
import type { Dose } from '../journal/event.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { raisesPh } from './raised.ts';

/** Degrees (German) of KH or GH. */
export interface Added {
  readonly of: 'kh' | 'gh';
  readonly degrees: Interval;
}

/** Names that keepers give them; bare calcium chloride may hold water or none, so it is not reckoned. */
const PRODUCTS: readonly (readonly [named: RegExp, compound: CompoundName, of: Added['of']])[] = [
  [/baking soda|bicarb|nahco3/iu, 'NaHCO3', 'kh'],
  [/soda ash|washing soda|na2co3/iu, 'Na2CO3', 'kh'],
  [/calcium chloride dihydrate|cacl2[.·]2h2o/iu, 'CaCl2.2H2O', 'gh'],
  [/epsom|magnesium sul(ph|f)ate heptahydrate|mgso4[.·]7h2o/iu, 'MgSO4.7H2O', 'gh'],
  [/gypsum|caso4[.·]2h2o/iu, 'CaSO4.2H2O', 'gh'],
];

/** What else hardens a water, by what labels and keepers call it, though nobody can say by how much. */
const HARDENS = /calcium|cacl2|magnesium|mgso4|\blime\b|coral|aragonite|crushed shell|mineral|\bgh ?(\+|up|plus)/iu;

/** True for what adds to KH or GH, reckoned or not. */
export function mayAdd(product: string, to: Added['of']): boolean {
  const known = PRODUCTS.find(([named]) => named.test(product));
  return known?.[2] === to || (to === 'kh' ? raisesPh(product) : HARDENS.test(product));
}

/** What a dose in grams, or grams a litre, added; null for anything else, and where litres are not known. */
export function addedBy(
  product: string,
  dose: DeepReadonly<Dose> | null,
  litres: DeepReadonly<Interval> | null,
): Added | null {
  const known = PRODUCTS.find(([named]) => named.test(product));
  if (known === undefined || dose === null || (dose.unit !== 'g' && dose.unit !== 'g/L')) return null;
  const [, compound, of] = known;
  const at = (grams: number, held: number): number => degreesFrom(compound, of, grams, held);
  if (dose.unit === 'g/L') return { of, degrees: { low: at(dose.low, 1), likely: null, high: at(dose.high, 1) } };
  if (litres === null || litres.low <= 0) return null;
  return { of, degrees: { low: at(dose.low, litres.high), likely: null, high: at(dose.high, litres.low) } };
}

/** Conditioners, plant food and bottled bacteria, by what labels and keepers call them: they are meant for the water, whoever shares it. */
const FOR_WATER = /condition|dechlor|fertili|plant food|bacteria|starter/iu;

/** True for what is dosed to change the water and treats no fish: hardness, pH, conditioner. */
export function changesWaterAlone(product: string): boolean {
  return FOR_WATER.test(product) || raisesPh(product) || PRODUCTS.some(([named]) => named.test(product));
}

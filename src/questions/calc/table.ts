/** Every calculator, in the order in which `tankside calc` lists them. */
import type { Calculator } from './calc.ts';
import { change, nitrogenFromFeed } from './changes.ts';
import { bag, clock, convert, mass, volume } from './things.ts';
import { ammonia, dose, oxygen } from './water.ts';

export const CALCULATORS: readonly Calculator[] = [
  ammonia,
  oxygen,
  convert,
  dose,
  volume,
  change,
  nitrogenFromFeed,
  mass,
  bag,
  clock,
];

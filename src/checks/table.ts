/** Every check, by the name of its file. The order is of no consequence: problems are shown by line. */
import type { Check } from './check.ts';
import { datedAhead } from './dated-ahead.ts';
import { forgottenUndo } from './forgotten-undo.ts';
import { overPromised } from './over-promised.ts';
import { lostBroods } from './lost-broods.ts';
import { newPair } from './new-pair.ts';
import { oddReadings } from './readings.ts';
import { shrinking } from './shrinking.ts';
import { twice } from './twice.ts';
import { twoCounts } from './two-counts.ts';

export const CHECKS: readonly Check[] = [
  forgottenUndo,
  datedAhead,
  lostBroods,
  newPair,
  oddReadings,
  overPromised,
  shrinking,
  twice,
  twoCounts,
];

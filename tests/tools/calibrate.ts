/** `npm run calibrate [CASES]`: runs every calibration, prints the table, fails where a window does not hold what it says. */
import { calibrate, faultsOf, tableOf } from './calibration/frame.ts';
import { CALIBRATIONS } from './calibration/cases.ts';

const cases = Number(process.argv[2] ?? 400);
const outcomes = CALIBRATIONS.map((calibration) => calibrate(calibration, cases));
console.log(`80 % windows against known truths, ${String(cases)} rooms each\n`);
console.log(tableOf(outcomes));
const faults = outcomes.flatMap((outcome) => faultsOf(outcome, Math.min(200, cases)));
for (const fault of faults) console.log(`\n${fault}`);
process.exitCode = faults.length === 0 ? 0 : 1;

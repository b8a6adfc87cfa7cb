/**
 * What the property tests draw. The same journals on every run, so that a failure is the change's own and never the
 * day's luck; `DRAW_SEED=7 DRAW_RUNS=5000 npm test -- tests/state` draws others, to go looking for faults.
 */
import fc from 'fast-check';
import process from 'node:process';

fc.configureGlobal({
  seed: Number(process.env['DRAW_SEED'] ?? '20260301'),
  ...(process.env['DRAW_RUNS'] === undefined ? {} : { numRuns: Number(process.env['DRAW_RUNS']) }),
});

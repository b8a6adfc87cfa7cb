/** What a cache must not believe: a file cut short anywhere, or with any one byte changed. */
import fs from 'node:fs';
import fc from 'fast-check';
import { expect } from 'vitest';

/** Damages the file in many ways and asks each time; leaves it whole. */
export function expectNotBelievedTorn(file: string, get: () => unknown): void {
  const whole = fs.readFileSync(file);
  fc.assert(
    fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), fc.boolean(), (at, change, cut) => {
      const torn = cut ? whole.subarray(0, at) : Buffer.from(whole);
      if (!cut) torn[at] = (torn[at] ?? 0) ^ change;
      fs.writeFileSync(file, torn);
      expect(get()).toBeNull();
    }),
  );
  fs.writeFileSync(file, whole);
}

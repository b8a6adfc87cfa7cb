/** Every call on the file system made to fail in turn, under every command that writes: all of it, or nothing. */
import { describe, expect, test, vi } from 'vitest';
import { faultsAfter, leftBehind, tryOnce } from '../support/trials.ts';
import { WRITING } from '../support/writing.ts';

vi.setConfig({ testTimeout: 120_000 });

/** The codes and ways that differ most; `npm run faults` takes all of them. */
const CASES = [
  { how: 'before', code: 'EIO', later: false },
  { how: 'after', code: 'EIO', later: false },
  { how: 'half', code: 'ENOSPC', later: true },
  { how: 'after', code: 'EIO', later: true },
] as const;

describe.each(WRITING.map((command) => [command.name, command] as const))('%s', (_, command) => {
  const before = Object.fromEntries(
    Object.entries(command.world.files ?? {}).map(([name, text]) => [name, String(text)]),
  );

  test('writes where nothing fails, and leaves nothing behind', async () => {
    const whole = await tryOnce(command);
    expect(whole.status).toBe(0);
    expect(whole.files).not.toEqual(before);
    expect(leftBehind(whole)).toEqual([]);
    expect(whole.calls).toBeGreaterThan(8);
  });

  test.each(CASES)('$code $how it took effect, later calls failing too: $later', async (failure) => {
    const whole = await tryOnce(command);
    let refused = 0;
    for (let at = 0; at <= whole.calls; at += 1) {
      const tried = await tryOnce(command, { ...failure, at });
      expect(faultsAfter(before, whole, tried), `call ${String(at)}: ${tried.err}`).toEqual([]);
      if (tried.status !== whole.status) refused += 1;
    }
    expect(refused).toBeGreaterThan(0);
  });
});

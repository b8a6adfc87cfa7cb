import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { settingsFor } from '../../src/cli/shortrun.ts';

/** What `process.versions.v8` says in Node 20, 22, 24 and 25: read off each. */
const ENGINES = {
  node20: '11.3.244.8-node.33',
  node22: '12.4.254.21-node.57',
  node24: '13.6.233.17-node.63',
  node25: '14.1.146.11-node.25',
};

describe('what the engine is told', () => {
  test('a setting that was taken away in a later engine is told to the earlier one alone', () => {
    expect(settingsFor(ENGINES.node20, 'short')).toContain('--interrupt-budget=2000000');
    for (const engine of [ENGINES.node22, ENGINES.node24, ENGINES.node25]) {
      expect(settingsFor(engine, 'short')).toEqual([
        '--invocation-count-for-turbofan=30000',
        '--no-incremental-marking',
      ]);
    }
  });

  test('nothing to an engine that nobody has tried', () => {
    for (const engine of ['10.2.154.26', '15.0.1', '110.0.0', '']) {
      expect(settingsFor(engine, 'short')).toEqual([]);
      expect(settingsFor(engine, 'long')).toEqual([]);
    }
  });

  test('for a long run each setting is put back', () => {
    const nameOf = (setting: string): string => setting.replace(/^--(?:no-)?/, '').replace(/=.*/, '');
    for (const engine of Object.values(ENGINES)) {
      const [short, long] = [settingsFor(engine, 'short'), settingsFor(engine, 'long')];
      expect(short.length).toBeGreaterThan(0);
      expect(long.map(nameOf)).toEqual(short.map(nameOf));
      expect(long).not.toEqual(short);
    }
  });

  test('this engine knows all that it is told, and goes back to what it was', () => {
    const engine = process.versions.v8;
    const run = (...told: string[]): string => execFileSync(process.execPath, told, { encoding: 'utf8' });
    expect(run(...settingsFor(engine, 'short'), '-e', '')).toBe('');
    const usual = run('--v8-options');
    for (const setting of settingsFor(engine, 'long')) expect(usual).toMatch(new RegExp(`default: ${setting}$`, 'm'));
  });
});

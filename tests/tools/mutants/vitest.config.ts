import process from 'node:process';
import { defineConfig } from 'vitest/config';

/** The tests that are to notice: those of the part whose files are broken. */
export default defineConfig({
  test: {
    include: (process.env['MUTANTS_TESTS'] ?? 'tests/state/**/*.test.ts').split(','),
    environment: 'node',
    isolate: false,
    setupFiles: ['tests/support/draws.ts'],
  },
});

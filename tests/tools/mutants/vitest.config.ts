import process from 'node:process';
import { defineConfig } from 'vitest/config';
import type { Reporter, Vitest } from 'vitest/node';

/** A file of tests that cannot be loaded would be left out without a word, and what only it notices would live. */
function loaded(): Reporter {
  let vitest: Vitest | null = null;
  return {
    onInit(started) {
      vitest = started;
    },
    onTestModuleEnd(module) {
      const [error] = module.errors();
      if (error === undefined) return;
      vitest?.state.catchError(new Error(`${module.moduleId} cannot be loaded: ${error.message}`), 'Unhandled Error');
    },
  };
}

/** The tests that are to notice: those of the part whose files are broken. */
export default defineConfig({
  test: {
    include: (process.env['MUTANTS_TESTS'] ?? 'tests/state/**/*.test.ts').split(','),
    environment: 'node',
    isolate: false,
    reporters: ['default', loaded()],
    setupFiles: ['tests/support/draws.ts'],
  },
});

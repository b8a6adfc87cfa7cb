// Builds what users run. Bundling matters: the parser library alone, unbundled, costs several times
// Node's own start; parts that a command does not need are evaluated on demand. Beside the starter lie
// the program and the form of it that the engine compiled while it answered once.
import { execFileSync } from 'node:child_process';
import { build } from 'esbuild';
import { chmod, readFile, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

const { version } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8'));
const outfile = process.argv[2] ?? 'dist/tankside.cjs';
const code = join(dirname(outfile), 'tankside-code.cjs');
const cache = join(dirname(outfile), 'tankside-code.cache');

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  minify: true,
  keepNames: false,
  legalComments: 'none',
  logLevel: 'warning',
};

await rm(cache, { force: true });
await build({ ...common, entryPoints: ['src/cli/launch.ts'], outfile, banner: { js: '#!/usr/bin/env node' } });
await build({
  ...common,
  entryPoints: ['src/cli/main.ts'],
  outfile: code,
  // One function of `require`: what the starter runs, and no module of its own.
  banner: { js: '(function (require) { const module = {}, exports = {};' },
  footer: { js: '})' },
  supported: { 'dynamic-import': false },
  define: { TANKSIDE_VERSION: JSON.stringify(version) },
  // The commands library loads Node's module for child processes and never uses it here.
  plugins: [{ name: 'no-children', setup: withoutChildren }],
});
await chmod(outfile, 0o755);
compile();

function withoutChildren({ onResolve, onLoad }) {
  onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
    /[\\/]commander[\\/]/.test(importer) ? { path: 'none', namespace: 'none' } : undefined,
  );
  onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'module.exports = {}' }));
}

/** Answers once, so that what an answer needs is compiled, and keeps that. Without it all works, only later. */
function compile() {
  const journal = 'examples/workshop/fishroom.txt';
  const run = `
    const { setFlagsFromString } = require('node:v8');
    const { readFileSync, writeFileSync } = require('node:fs');
    setFlagsFromString('--interrupt-budget=2000000');
    const script = new (require('node:vm').Script)(readFileSync(${JSON.stringify(code)}, 'utf8'));
    process.argv = [process.execPath, '', 'due', '--on', '2026-11-22', '--journal', ${JSON.stringify(journal)}];
    process.on('exit', () => writeFileSync(${JSON.stringify(cache)}, script.createCachedData()));
    script.runInThisContext()(require);`;
  try {
    execFileSync(process.execPath, ['-e', run], { stdio: ['ignore', 'ignore', 'ignore'] });
  } catch {
    console.warn('not compiled ahead: every start will compile anew');
  }
}

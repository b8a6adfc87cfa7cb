// Builds the one file that users run. Bundling matters: the parser library alone, unbundled, costs
// several times Node's own start; parts that a command does not need are evaluated on demand. Takes
// another file to write than the usual one.
import { build } from 'esbuild';
import { chmod, readFile } from 'node:fs/promises';

const { version } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8'));

const outfile = process.argv[2] ?? 'dist/tankside.cjs';

await build({
  entryPoints: ['src/cli/main.ts'],
  outfile,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  minify: true,
  keepNames: false,
  legalComments: 'none',
  banner: { js: '#!/usr/bin/env node' },
  define: { TANKSIDE_VERSION: JSON.stringify(version) },
  logLevel: 'warning',
});
await chmod(outfile, 0o755);

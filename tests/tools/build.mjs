// Builds what users run. Bundling matters: the parser library alone, unbundled, costs several times
// Node's own start; parts that a command does not need are evaluated on demand. Beside the starter lie
// the program, the form of it that the engine compiled while it answered once, and what it says when
// asked for help.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { build } from 'esbuild';
import { chmod, cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const { version } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8'));
const outfile = process.argv[2] ?? 'dist/tankside.cjs';
const beside = (name) => join(dirname(outfile), name);
const code = beside('tankside-code.cjs');
const cache = beside('tankside-code.cache');
const help = beside('tankside-help.json');
const shapes = beside('tankside-shapes.json');

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

// Stands in the program's text until that is known; then for its mark.
const MARK = 'mark-of-this-build';

await Promise.all([cache, help, shapes].map((file) => rm(file, { force: true })));
const program = await build({
  ...common,
  entryPoints: ['src/cli/main.ts'],
  write: false,
  outfile: code,
  // One function of `require`: what the starter runs, and no module of its own.
  banner: { js: '(function (require, __dirname) { const module = {}, exports = {};' },
  footer: { js: '})' },
  supported: { 'dynamic-import': false },
  define: { TANKSIDE_VERSION: JSON.stringify(version), TANKSIDE_BUILD: JSON.stringify(MARK) },
  // The commands library loads Node's module for child processes and never uses it here.
  plugins: [{ name: 'no-children', setup: withoutChildren }],
});
// In signs of one byte each it is read in a third of the time, and takes half the room.
const text = program.outputFiles[0].text.replace(
  /[^\0-\x7f]/g,
  (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
);
const mark = createHash('sha256').update(text).digest('hex').slice(0, 24);
await mkdir(dirname(code), { recursive: true });
await writeFile(code, text.replaceAll(MARK, mark));
await build({
  ...common,
  entryPoints: ['src/cli/launch.ts'],
  outfile,
  banner: { js: '#!/usr/bin/env node' },
  supported: { 'dynamic-import': false },
  define: { TANKSIDE_BUILD: JSON.stringify(mark) },
  plugins: [{ name: 'as-they-are', setup: asTheyAre }],
});
await chmod(outfile, 0o755);
await compile();
await writeFile(help, JSON.stringify(helpTexts()));
await writeShapes();

/**
 * Node's modules handed on as they are: the usual wrapping copies every member, the costly ones too. The
 * starter imports their defaults alone.
 */
function asTheyAre({ onResolve, onLoad }) {
  onResolve({ filter: /^node:/ }, ({ path, namespace }) =>
    namespace === 'node' ? { path, external: true } : { path, namespace: 'node' },
  );
  onLoad({ filter: /.*/, namespace: 'node' }, ({ path }) => ({ contents: `export default require('${path}')` }));
}

function withoutChildren({ onResolve, onLoad }) {
  onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
    /[\\/]commander[\\/]/.test(importer) ? { path: 'none', namespace: 'none' } : undefined,
  );
  onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'module.exports = {}' }));
}

/**
 * Answers, and takes lines on a copy of the example, so that what both need is compiled, and keeps that.
 * Without it all works, only later.
 */
async function compile() {
  const settings = await build({ ...common, entryPoints: ['src/cli/shortrun.ts'], write: false });
  const folder = await mkdtemp(join(tmpdir(), 'tankside-'));
  await cp('examples/workshop', folder, { recursive: true });
  const where = ['--on', '2026-11-22', '--journal', join(folder, 'fishroom.txt')];
  // The second line is told against what was remembered of the first, as most lines are.
  const runs = [
    ['due', ...where],
    ['jot', ...where, 'room: all well'],
    ['jot', ...where, 'room: fed flake'],
  ];
  const run = `
    const settings = {};
    (function (module) {${settings.outputFiles[0].text}})(settings);
    settings.exports.tuneForShortRun();
    const { readFileSync, writeFileSync } = require('node:fs');
    const script = new (require('node:vm').Script)(readFileSync(${JSON.stringify(code)}, 'utf8'));
    process.env.TANKSIDE_CACHE = ${JSON.stringify(join(folder, 'cache'))};
    (async () => {
      for (const words of ${JSON.stringify(runs)}) {
        process.argv = [process.execPath, '', ...words];
        process.exitCode = undefined;
        // In no folder that holds the shapes of lines, so that the parser is compiled too.
        script.runInThisContext()(require, '');
        while (process.exitCode === undefined) await new Promise((done) => setTimeout(done, 1));
        if (process.exitCode !== 0) throw new Error(words.join(' '));
      }
      writeFileSync(${JSON.stringify(cache)}, script.createCachedData());
    })();`;
  try {
    execFileSync(process.execPath, ['-e', run], { stdio: ['ignore', 'ignore', 'ignore'] });
  } catch {
    console.warn('not compiled ahead: every start will compile anew');
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The shapes of lines that journals have, parsed ahead. Without them all works, only later. */
async function writeShapes() {
  const { outputFiles } = await build({ ...common, entryPoints: ['tests/tools/shapes.ts'], write: false });
  const run = spawnSync(process.execPath, ['-'], { input: outputFiles[0].text, encoding: 'utf8', maxBuffer: 1 << 26 });
  if (run.status === 0) await writeFile(shapes, JSON.stringify({ build: mark, shapes: JSON.parse(run.stdout) }));
  else console.warn('no lines parsed ahead: every start will make the parser');
}

/** What the program says of itself: of all, of each command, and its version. Without it all works, only later. */
function helpTexts() {
  const env = { ...process.env, TANKSIDE_CACHE: 'off' };
  const ask = (...words) => execFileSync(process.execPath, [outfile, ...words], { env, encoding: 'utf8' });
  try {
    const all = ask('--help');
    const names = [...all.matchAll(/^ {2}([a-z]+) {2,}/gm)].map(([, name]) => name);
    const each = names.map((name) => [name, ask(name, '--help')]);
    return { ...Object.fromEntries(each), '': all, '--version': ask('--version') };
  } catch {
    console.warn('no help written ahead: the program will tell it itself');
    return {};
  }
}

/**
 * Makes what is made from the language: `grammar/grammar.json`, `grammar/diagrams/*.svg`, and the word lists
 * of `grammar/README.md`. With `--check` it writes nothing, and fails where any of them is out of date.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { grammarFiles } from './grammarfiles.ts';
import { JournalParser } from '../../grammar/parser.ts';
import { withWords } from './reference.ts';

const FOLDER = fileURLToPath(new URL('../../grammar/', import.meta.url));

/** Everything that is made, by path within `grammar/`. */
export function madeFiles(): ReadonlyMap<string, string> {
  const reference = readFileSync(`${FOLDER}README.md`, 'utf8');
  return new Map([
    ...grammarFiles(new JournalParser().getSerializedGastProductions()),
    ['README.md', withWords(reference)],
  ]);
}

/** Paths whose text is not what would be made, or that nothing makes any more. */
export function drifted(made: ReadonlyMap<string, string>): readonly string[] {
  const changed = [...made].filter(([path, text]) => readOrNull(path) !== text).map(([path]) => path);
  return [...changed, ...drawings().filter((path) => !made.has(path))];
}

function drawings(): readonly string[] {
  return readdirSync(`${FOLDER}diagrams`).map((name) => `diagrams/${name}`);
}

function readOrNull(path: string): string | null {
  try {
    return readFileSync(FOLDER + path, 'utf8');
  } catch {
    return null;
  }
}

function main(check: boolean): void {
  mkdirSync(`${FOLDER}diagrams`, { recursive: true });
  const made = madeFiles();
  const stale = drifted(made);
  if (stale.length === 0) return;
  if (check) {
    console.error(`out of date: ${stale.join(', ')}\nnpm run grammar makes them anew`);
    process.exitCode = 1;
    return;
  }
  for (const path of stale) {
    const text = made.get(path);
    if (text === undefined) rmSync(FOLDER + path);
    else writeFileSync(FOLDER + path, text);
  }
  console.log(`made ${stale.length} files anew`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.includes('--check'));

/**
 * `npm run mutants`: breaks the fold, the checks and the questions in one place after another, and tells which
 * breaks no test notices. `mutants PART …` or `mutants FILE …`, with the tests of the part or those that are named
 * (`tests/…`); `FILE:60-90` are lines of it. The words of messages are left as they are.
 */
import { Stryker } from '@stryker-mutator/core';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { PARTS, type Part } from './parts.ts';

type Mutant = Awaited<ReturnType<Stryker['runMutationTest']>>[number];

/** Broken and noticed, or so broken that it never ended. */
const NOTICED: ReadonlySet<string> = new Set(['Killed', 'Timeout']);
const LIVES: ReadonlySet<string> = new Set(['Survived', 'NoCoverage']);

function tell(text: string): void {
  process.stdout.write(`${text}\n`);
}

function holds(pattern: string, file: string): boolean {
  return pattern === file || (pattern.endsWith('/*.ts') && path.dirname(pattern) === path.dirname(file));
}

/** The parts asked for; of a file only that file is broken. Tests that are named take the place of the part's own. */
function chosen(words: readonly string[]): Part[] {
  const tests = words.filter((word) => word.startsWith('tests/'));
  const asked = words.filter((word) => !tests.includes(word));
  const parts = asked.length === 0 ? [...PARTS] : partsOf(asked);
  return tests.length === 0 ? parts : parts.map((part) => ({ ...part, tests }));
}

function partsOf(asked: readonly string[]): Part[] {
  return asked.map((word) => {
    const [wanted = word] = word.split(':');
    const part = PARTS.find(({ name, files }) => name === word || files.some((file) => holds(file, wanted)));
    if (!part) throw new Error(`no part of ${PARTS.map(({ name }) => name).join(', ')} has ${word}`);
    return part.name === word ? part : { ...part, files: [word] };
  });
}

async function broken({ name, files, tests }: Part): Promise<Mutant[]> {
  process.env['MUTANTS_TESTS'] = tests.join(',');
  return new Stryker({
    configFile: 'tests/tools/mutants/stryker.json',
    mutate: [...files],
    jsonReporter: { fileName: `reports/mutation/${name}.json` },
  }).runMutationTest();
}

/** `src/state/stock.ts:12  a < b → a <= b`. */
function broke({ fileName, location: { start, end }, replacement, status }: Mutant): string {
  const lines = readFileSync(fileName, 'utf8').split('\n');
  const text = lines.slice(start.line - 1, end.line);
  const last = text.length - 1;
  const cut = text.map((line, at) =>
    line.slice(at === 0 ? start.column - 1 : 0, at === last ? end.column - 1 : undefined),
  );
  const flat = (words: string): string => words.replaceAll(/\s+/g, ' ').slice(0, 70);
  const place = `${path.relative('', fileName)}:${String(start.line)}`;
  return `${place}  ${flat(cut.join(' '))} → ${flat(replacement)}${status === 'NoCoverage' ? ' (no test goes there)' : ''}`;
}

for (const part of chosen(process.argv.slice(2))) {
  const all = await broken(part);
  tell(`${part.name}:`);
  for (const file of new Set(all.map(({ fileName }) => path.relative('', fileName)))) {
    const of = all.filter(({ fileName }) => path.relative('', fileName) === file);
    const noticed = of.filter(({ status }) => NOTICED.has(status)).length;
    const lives = of.filter(({ status }) => LIVES.has(status)).length;
    if (noticed + lives > 0)
      tell(`  ${file.padEnd(40)} ${String(noticed).padStart(5)} of ${String(noticed + lives).padStart(5)} noticed`);
  }
  for (const mutant of all) if (LIVES.has(mutant.status)) tell(`  lives: ${broke(mutant)}`);
}

/** Prints the shapes of lines, with what they parse to, of journals that use the whole language: for the build. */
import { readdirSync, readFileSync } from 'node:fs';
import { takeOutShapes } from '../../grammar/parse.ts';
import { readJournal } from '../../src/language/read.ts';
import { generateJournal } from './generate.ts';

const read = (path: string): string => readFileSync(path, 'utf8');
const corpus = readdirSync('tests/corpus').filter((name) => name.endsWith('.txt'));

/** Every example of the reference, in the room that it is read in there. */
function reference(): string {
  const page = read('grammar/README.md');
  const examples = [...page.matchAll(/^```journal(?: room)?\n([^]*?)^```/gmu)];
  return examples.map(([, lines = '']) => lines).join('');
}

/** Lines as keepers send them, in their own room and on a day of it. */
function jotted(): string {
  const lines = read('tests/corpus/jotted/lines.txt').split('\n');
  const dated = lines.map((line) => (/^(?:#|$|\d{4}-)/.test(line) ? line : `2026-08-01 ${line}`));
  return `${read('tests/corpus/jotted/room.txt')}${dated.join('\n')}`;
}

const texts = [
  ...corpus.map((name) => read(`tests/corpus/${name}`)),
  reference(),
  jotted(),
  read('examples/workshop/fishroom.txt'),
  read('examples/first/fishroom.txt'),
  generateJournal(20_000),
];
for (const text of texts) readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no other file is read' }));
process.stdout.write(JSON.stringify(takeOutShapes()));

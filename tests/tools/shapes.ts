/** Prints the shapes of lines, with what they parse to, of journals that use the whole language: for the build. */
import { readdirSync, readFileSync } from 'node:fs';
import { takeOutShapes } from '../../grammar/parse.ts';
import { readJournal } from '../../src/language/read.ts';
import { generateJournal } from './generate.ts';

const corpus = readdirSync('tests/corpus').filter((name) => name.endsWith('.txt'));
const texts = [
  ...corpus.map((name) => readFileSync(`tests/corpus/${name}`, 'utf8')),
  readFileSync('examples/workshop/fishroom.txt', 'utf8'),
  readFileSync('examples/first/fishroom.txt', 'utf8'),
  generateJournal(20_000),
];
for (const text of texts) readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no other file is read' }));
process.stdout.write(JSON.stringify(takeOutShapes()));

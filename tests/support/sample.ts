/** The sample journal of the corpus, as text. */
import { readFileSync } from 'node:fs';

export const SAMPLE = readFileSync(new URL('../corpus/sample.txt', import.meta.url), 'utf8');

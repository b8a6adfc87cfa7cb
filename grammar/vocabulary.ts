/** Every word at which the grammar may look: all others are names, texts, or not understood. */
import { CLAUSES } from './phrases.ts';
import * as reserved from './reserved.ts';
import * as details from './vocabulary/details.ts';
import * as words from './words.ts';

/** Words that the rules of tagging name themselves. */
const OWN =
  'a all and biggest box boxes but daily every except from into largest mistake monthly name no of on out plus pulled ' +
  'room smallest takes tank tanks the to today tomorrow weekly without yday yest yesterday young →';

let all: ReadonlySet<string> | null = null;

/** Those words in small letters, and more: whatever stands in the tables, the names of their columns too. */
export function vocabulary(): ReadonlySet<string> {
  all ??= new Set(textsOf([OWN, CLAUSES, { ...reserved }, { ...details }, { ...words }]).flatMap(wordsOf));
  return all;
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().split(/[|\s]+/);
}

function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (value instanceof Map || value instanceof Set || Array.isArray(value)) return [...value].flatMap(textsOf);
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(textsOf) : [];
}

/** Every word at which the grammar may look: all others are names, texts, or not understood. */
import { CLAUSES } from './phrases.ts';
import * as reserved from './reserved.ts';
import * as details from './vocabulary/details.ts';
import * as words from './words.ts';

/** Words that the rules of tagging name themselves. */
const OWN =
  'a afternoon ago all and biggest both box boxes but daily evening every except found from into largest last mistake monthly morning name night no of on or out plus pulled saw split ' +
  'room smallest takes tank tanks the them this to today tomorrow tonight weekly without yday yest yesterday young →';

let all: ReadonlySet<string> | null = null;

/** Those words in small letters, and more: whatever stands in the tables, the names of their columns too. */
export function vocabulary(): ReadonlySet<string> {
  if (all !== null) return all;
  const tables = [OWN, CLAUSES, { ...reserved }, { ...details }, { ...words }];
  // As one text: to look into every table takes as long as to read a page of a journal.
  const text = JSON.stringify(tables, (_, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...value] : value,
  );
  all = new Set(text.toLowerCase().match(/[^\s|"\\,:[\]{}]+/gu));
  return all;
}

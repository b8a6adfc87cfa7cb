/** What is wrong with a thing, what was done to it and what it cost, in words that no clause has: offered as the clause that holds them. */
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { AMISS, FILTERED, LIVE, PART, TEST, WORKED } from './rephrased.ts';
import type { Said } from './said.ts';

/** Made when first asked for, as most runs refuse nothing. */
let made: ReturnType<typeof patterns> | null = null;

function patterns(): Readonly<Record<'wrong' | 'done' | 'noThing' | 'undone' | 'cost' | 'noCost', RegExp>> {
  return {
    wrong: new RegExp(
      `^(?:${PART})\\s+(?:not|making|won't|wont|isn't|isnt|keeps|(?:is\\s+)?(?:${AMISS}))(?!\\p{L})[^,;\\d]*$`,
      'iu',
    ),
    done: new RegExp(`^(\\p{L}[\\p{L} ]*?)\\s+(${WORKED}|fitted|installed|done)$`, 'iu'),
    // Fish, and what has a clause of its own where it is cleaned.
    noThing: new RegExp(`(?<!\\p{L})(?:${LIVE}|${FILTERED})$`, 'iu'),
    undone: new RegExp(`(?<!\\p{L})(?:${UNDONE})(?!\\p{L})`, 'iu'),
    cost: /^(\p{L}{3,}[\p{L} ]*?)\s+([£€$]\s?\d+(?:[.,]\d{1,2})?|\d+[.,]\d{2})$/iu,
    noCost: new RegExp(`(?<!\\p{L})(?:${LIVE}|${TEST}|${NO_COST})(?!\\p{L})`, 'iu'),
  };
}

/** Words that make a deed of the future, of a part, or of none. */
const UNDONE =
  'all|everything|not|never|no|none|nothing|nobody|half|part|partly|almost|nearly|be|must|needs?|wants?|should|could|would|will|if|when|fed|feed|treat';

/** Readings, and money that came or is not said to have gone. */
const NO_COST =
  'am|ammonia|nitrite|nitrate|earned|refund(?:ed)?|got|received|took|taken|paid|deposit|price|worth|sold|sales?|income|credit|fetched|made|profit|ow(?:e|es|ed)|won|prize|bid|at|for|each|is|was';

/** `heater keeps tripping` */
export function amiss(said: Said): Fault | null {
  const { wrong } = (made ??= patterns());
  return wrong.test(said.text) ? told(said, `fault "${said.text}"`) : null;
}

/** `glass cleaned`, `shopping done`; what reads as a clause by itself, as `wc` does, is done by that clause. */
export function thingDone(said: Said): Fault | null {
  const { done, noThing, undone } = (made ??= patterns());
  const [, what, verb] = done.exec(said.text) ?? [];
  if (what === undefined || noThing.test(what) || undone.test(what) || said.reads(what)) return null;
  return told(said, `did "${/^done$/iu.test(verb ?? '') ? what : said.text}"`);
}

/** `food 12.50`: of nothing but money two figures stand behind the point. */
export function cost(said: Said): Fault | null {
  const { cost: pattern, noCost } = (made ??= patterns());
  const [, what, money] = pattern.exec(said.text) ?? [];
  if (what === undefined || money === undefined || noCost.test(what)) return null;
  const words = what.split(/\s+/u);
  if (words.length > LONGEST || words.some((word) => said.line.names.isName(word)) || said.reads(what)) return null;
  return told(said, `spent ${money} "${what}"`);
}

/** Words by which anything that is bought is called. */
const LONGEST = 4;

function told({ at, text, reads }: Said, words: string): Fault | null {
  return reads(words) ? fault('unknown-clause', at, `«${text}» is read as \`${words}\``, words) : null;
}

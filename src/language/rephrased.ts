/**
 * Words that are not read as they stand, beside those that would be: `$1` is the first part that a pattern keeps. What
 * comes of it is offered where it is read, and never taken.
 */
import { SEX_WORDS } from '../../grammar/words.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { Piece } from '../../grammar/syntax.ts';

type Rephrasing = readonly [pattern: RegExp, words: string];

const SEXES = [...SEX_WORDS.keys()].filter((word) => word.length > 1).join('|');
const TEST = 'ph|kh|gh|tan|amm|temp|ec|tds|no2|no3';
const PART = 'heater|filter|pump|return|light|lights|timer|valve|air pump';
/** What is done to things that no clause knows, as a task and as done. */
const WORK = 'clean|trim|scrape|wipe|scrub|check|replace|service|move|tidy|prune';
const WORKED = 'cleaned|trimmed|scraped|wiped|scrubbed|checked|replaced|serviced|tidied|pruned|changed';
/** What is wrong with a thing; `heater is fixed`, `filter is clean` tell no fault. */
const AMISS =
  'not|leaking|dripping|weeping|noisy|loud|rattling|humming|stuck|broken|dead|blocked|clogged|cracked|slow|tripping|failing|faulty';
/** Fish and what becomes of them: no thing that was worked on, nor one that money was spent for. */
const LIVE = `dead|eggs?|fish|${SEXES}`;
const MONEY = '(?:for\\s+)?[£€$]?\\s?(\\d+(?:[.,]\\d{1,2})?)';

const REPHRASED: readonly Rephrasing[] = [
  // Water
  [new RegExp(`(?<!\\p{L})(${TEST})(?=\\d)`, 'giu'), '$1 '],
  [/^(\d+(?:\.\d+)?)\s*(?:degrees|deg|°)$/iu, 'temp $1'],
  [new RegExp(`^(${TEST})\\s+was\\s+(\\d\\S*)$`, 'iu'), '$1 $2'],
  [/^heat\s+(\d\S*(?:\s*[cf])?)$/iu, 'heat to $1'],
  [/^((?:every\s+(?:\d+\s+)?[a-z]+)|daily|weekly|monthly)\s+(\S.*)$/iu, '$2 $1'],
  // Fish
  [/^([\p{L}][\p{L}\p{N}'_-]*):\s+(\S.*)$/iu, '$1 $2'],
  [/^((?:no|no more|less)\s+(?:chasing|fighting)(?:\s+\p{L}+)*)$/iu, 'calmer "$1"'],
  [/^((?:chasing|fighting)\s+(?:has\s+)?(?:stopped|over|ended))$/iu, 'calmer "$1"'],
  [/^(?:they|it|it's|they've|have|has)\s+(?:have\s+|has\s+)?(\S.*)$/iu, '$1'],
  [new RegExp(`^((?:the\\s+)?(?:${SEXES}))\\s+(?:has|got|have|with|has got)\\s+(?:an?\\s+)?(\\S.*)$`, 'iu'), '$1 $2'],
  [/^found\s+(\S+)\s+dead$/iu, '$1 dead'],
  [/^(?:a|an)\s+dead\s+(?:one|fish)$/iu, '1 dead'],
  [/^(?:a|an)\s+dead\s+(fry|baby|juvenile|young)$/iu, '1 dead fry'],
  // The day of what lasts; `spawned day 2` was not today.
  [/^(?!.*(?:spawn|laid|hatch|born))(.*\S)\s+day\s+(\d+)$/iu, '$1 "day $2"'],
  [/^((?:largest|biggest)\s+\S+(?:\s*[mc]m)?)\s+(?:and\s+)?(smallest\s+\S.*)$/iu, '$1; $2'],
  [/^((?:smallest)\s+\S+(?:\s*[mc]m)?)\s+(?:and\s+)?((?:largest|biggest)\s+\S.*)$/iu, '$1; $2'],
  // Trade
  [/^(.*?)half\s+a\s+dozen(.*)$/iu, '$16$2'],
  [/^keeping\s+(\d\S*.*)$/iu, 'kept back $1'],
  [
    new RegExp(`^(?:bought|got)\\s+(?!.*(?<!\\p{L})(?:${LIVE})(?!\\p{L}))(\\p{L}[\\p{L} ]*?)\\s+${MONEY}$`, 'iu'),
    'spent $2 "$1"',
  ],
  // Things
  [/^(?:the\s+)?((?:air\s+)?pump|return|heater|lights?)\s+(?:is|are)\s+(?:back\s+)?(on|off)$/iu, '$1 $2'],
  [
    new RegExp(`^((?:${PART})\\s+(?:not|making|won't|wont|isn't|isnt|keeps|is\\s+(?:${AMISS}))(?!\\p{L}).*)$`, 'iu'),
    'fault "$1"',
  ],
  [
    new RegExp(
      `^(?!.*(?:[\\d%]|(?<!\\p{L})(?:layers?|out|${LIVE}|of|water)(?!\\p{L})))((?:${WORKED})\\s+(?:the\\s+)?\\p{L}.*)$`,
      'iu',
    ),
    'did "$1"',
  ],
  [new RegExp(`^(?!.*[\\d%])((?:${WORK})\\s+(?:the\\s+)?\\p{L}.*)$`, 'iu'), 'to do "$1"'],
];

/** One offer for words that are read once they are put otherwise; null where no pattern knows them. `tries`: whether words make clauses. */
export function rephrased(at: Piece, text: string, tries: (words: string) => boolean): Fault | null {
  for (const [pattern, words] of REPHRASED) {
    if (text.search(pattern) < 0) continue;
    const instead = text
      .replace(pattern, words)
      .replaceAll(/\s{2,}/gu, ' ')
      .trim();
    if (instead !== text && tries(instead))
      return fault('unknown-clause', at, `«${text}» is read as \`${instead}\``, instead);
  }
  return null;
}

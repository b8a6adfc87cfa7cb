/**
 * Words that are not read as they stand, beside those that would be: `$1` is the first part that a pattern keeps. What
 * comes of it is offered where it is read, and never taken.
 */
import { NUMBER_WORDS, SEX_WORDS } from '../../grammar/words.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { Piece } from '../../grammar/syntax.ts';

type Rephrasing = readonly [pattern: RegExp, words: string];

const SEXES = [...SEX_WORDS.keys()].filter((word) => word.length > 1).join('|');
/** One fish, or the young, as whoever does or suffers something. */
const ONE = `(?:the\\s+)?(?:${SEXES}|m|f)`;
const WORDS = [...NUMBER_WORDS.keys()].join('|');
const NUMBER = `(?:(?:about|abt|around|~)\\s*)?(?:\\d+(?:\\s?-\\s?\\d+)?|a few|a couple|${WORDS})`;
const LENGTH = '(?:about\\s+|~\\s*)?\\d+(?:[.,]\\d+)?(?:\\s?-\\s?\\d+(?:[.,]\\d+)?)?\\s*(?:mm|cm)';
const LOST = 'dead|died|missing|jumped|culled|eaten';
export const TEST = 'ph|kh|gh|tan|amm|temp|ec|tds|no2|no3';
const KIT = 'ph|kh|gh|tan|amm|ammonia|no2|nitrite|no3|nitrate';
const FIGURE = '\\d+(?:[.,]\\d+)?';
export const PART =
  'heater|filter|pump|return|light|lights|timer|valve|air pump|drain|weir|overflow|standpipe|bulkhead|siphon|syphon|air line|airline|air stone|airstone';
/** What is done to things that no clause knows, as a task and as done. */
const WORK = 'clean|trim|scrape|wipe|scrub|check|replace|service|move|tidy|prune|call|ring|phone|email|ask|collect';
export const WORKED = 'cleaned|trimmed|scraped|wiped|scrubbed|checked|replaced|serviced|tidied|pruned|changed';
/** What is wrong with a thing; `heater is fixed`, `filter is clean` tell no fault. */
export const AMISS =
  'not|leaking|dripping|weeping|noisy|loud|rattling|humming|gurgling|stuck|jammed|seized|broken|dead|blocked|clogged|kinked|cracked|slow|tripping|failing|faulty';
/** Fish and what becomes of them: no thing that was worked on, nor one that money was spent for. */
export const LIVE = `dead|eggs?|fish|${SEXES}`;
/** Whatever has a clause of its own where it is cleaned or changed. */
export const FILTERED = 'layers?|sponges?|media|prefilter|filter|water';
const MONEY = '(?:for\\s+)?[£€$]?\\s?(\\d+(?:[.,]\\d{1,2})?)';

/** Made when it is first asked for: most runs refuse nothing, and so many patterns take their time. */
let made: readonly Rephrasing[] | null = null;

const patterns = (): readonly Rephrasing[] => [
  // Water
  [new RegExp(`(?<!\\p{L})(${TEST})(?=\\d)`, 'giu'), '$1 '],
  [/^(\d+(?:\.\d+)?)\s*(?:degrees|deg|°)$/iu, 'temp $1'],
  [new RegExp(`^(${TEST})\\s+was\\s+(\\d\\S*)$`, 'iu'), '$1 $2'],
  [/^heat\s+(\d\S*(?:\s*[cf])?)$/iu, 'heat to $1'],
  [new RegExp(`^(${KIT})\\s+between\\s+(${FIGURE})\\s+and\\s+(${FIGURE})$`, 'iu'), '$1 $2-$3'],
  [
    new RegExp(
      `^(${KIT})\\s+(?:(?:went\\s+)?(?:up|down)|rose|fell|dropped)\\s+from\\s+(${FIGURE})\\s+to\\s+(${FIGURE})$`,
      'iu',
    ),
    '$1 $3, was $2',
  ],
  [
    new RegExp(
      `^(?:drained|took\\s+out|removed)\\s+(${FIGURE}\\s*(?:%|l|litres?|liters?|gal|buckets?))\\s*(?:,|and|&)?\\s*(?:refilled|filled(?:\\s+up)?)$`,
      'iu',
    ),
    'water change $1',
  ],
  // Loops
  [new RegExp(`^(?:at\\s+)?(${LENGTH})$`, 'iu'), 'level $1'],
  [
    // `2/6` alone may be a share of the water, or a date.
    /^(?=.*(?:prefilter|layer|sponge|rinsed|cleaned|squeezed|washed))(?:prefilter\s+)?(\d+)\s*(?:of|\/)\s*(\d+)\s*(?:layers?|sponges?)?\s*(?:rinsed|cleaned|squeezed|washed|out|done)?$/iu,
    'cleaned $1 of $2 layers',
  ],
  [/^((?:every\s+(?:\d+\s+)?[a-z]+)|daily|weekly|monthly)\s+(\S.*)$/iu, '$2 $1'],
  // Numbers and lengths in words
  [/(?:(?<=\d)\s+|(?<![\d/]\s*))1\/2\s*in(?:ch(?:es)?)?(?!\p{L})/iu, '½ in'],
  [/(?:(?<=\d)\s+|(?<![\d/]\s*))1\/4\s*in(?:ch(?:es)?)?(?!\p{L})/iu, '¼ in'],
  [/(?:(?<=\d)\s+|(?<![\d/]\s*))3\/4\s*in(?:ch(?:es)?)?(?!\p{L})/iu, '¾ in'],
  [new RegExp(`^(?:there\\s+are|now)\\s+(${NUMBER})$`, 'iu'), 'counted $1'],
  [new RegExp(`^(${NUMBER})\\s+(?:of\\s+them|there|in\\s+there|now)$`, 'iu'), 'counted $1'],
  [
    /(?<!\p{L})(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)\s+(one|two|three|four|five|six|seven|eight|nine)(?!\p{L})/iu,
    '$1-$2',
  ],
  [new RegExp(`(?<!\\p{L})(${WORDS})\\s+[-–—]\\s+(${WORDS})(?!\\p{L})`, 'iu'), '$1 to $2'],
  [/(?<!\p{L})a\s+hundred(?!\p{L}|\s+and\s)/iu, '100'],
  [/(?<![\p{L}\d]\s*)(?:a\s+)?half(?:\s+an?)?\s+inch(?!\p{L})/iu, '½ in'],
  [/(?<!\p{L})three[\s-]quarters?(?:\s+of)?(?:\s+an)?\s+inch(?!\p{L})/iu, '¾ in'],
  [/(?<!\p{L})an\s+inch(?!\p{L})/iu, '1 in'],
  [/^(\S.*\sfor\s+)an?\s+(hour|day|week|month)$/iu, '$11 $2'],
  [new RegExp(`^(${LENGTH})\\s+(avg|average|mean|largest|biggest|smallest)$`, 'iu'), '$2 $1'],
  [new RegExp(`^(\\S.*?),\\s*(${LENGTH})\\s+(avg|average|mean|largest|biggest|smallest)$`, 'iu'), '$1; $3 $2'],
  [/^(\d+\s*(?:days?|weeks?|wks?|d|w))\s+(qt|quarantine)$/iu, '$2 $1'],
  [/^min\s+(\d\S*(?:\s*[mc]m)?),?\s+max\s+(\d.*)$/iu, 'smallest $1; largest $2'],
  [/^max\s+(\d.*)$/iu, 'largest $1'],
  [/^(\S.*\d(?:\s*[mc]m)?),?\s+max\s+(\d.*)$/iu, '$1; largest $2'],
  // Fish
  [/^(?!in:)([\p{L}][\p{L}\p{N}'_-]*):\s+(\S.*)$/iu, '$1 $2'],
  [/^((?:no|no more|less)\s+(?:chasing|fighting)(?:\s+\p{L}+)*)$/iu, 'calmer "$1"'],
  [/^((?:chasing|fighting)\s+(?:has\s+)?(?:stopped|over|ended))$/iu, 'calmer "$1"'],
  [/^(?:they|it|it's|they've|have|has)\s+(?:have\s+|has\s+)?(\S.*)$/iu, '$1'],
  [new RegExp(`^(${ONE})\\s+(?:has|got|have|with|has got|is|are)\\s+(?:an?\\s+)?(\\S.*)$`, 'iu'), '$1 $2'],
  [/^(?:one|1)\s+of\s+the\s+((?:fe)?male)s?\s+(?:is\s+)?(\S.*)$/iu, '$1 $2'],
  [/^(?:i|we)(?:['’]ve|\s+have)?\s+(\S.*)$/iu, '$1'],
  [
    /^(?:the\s+)?(?:male|m|cock|he)\s+(?:has\s+)?killed\s+(?:the\s+|his\s+)?(?:female|f|hen|her)$/iu,
    'female died "killed by the male"',
  ],
  [
    /^(?:the\s+)?(?:female|f|hen|she)\s+(?:has\s+)?killed\s+(?:the\s+|her\s+)?(?:male|m|cock|him)$/iu,
    'male died "killed by the female"',
  ],
  [
    new RegExp(`^(${ONE})\\s+(bloated|skinny|thin|swollen|lethargic|cloudy\\s+eye|fungus|fungused)$`, 'iu'),
    '$1 sick "$2"',
  ],
  [/^((?:chasing|fighting|chased)\s+(?:less|a\s+bit\s+less|much\s+less))$/iu, 'calmer "$1"'],
  [/^found\s+(\S+)\s+dead$/iu, '$1 dead'],
  [/^(?:a|an)\s+dead\s+(?:one|fish)$/iu, '1 dead'],
  [/^(?:a|an)\s+dead\s+(fry|baby|juvenile|young)$/iu, '1 dead fry'],
  [/^dead\s+fish$/iu, 'some dead'],
  [new RegExp(`^(\\S.*(?<!\\p{L})(?:${LOST}))\\s+((?:from|of|by)\\s+\\p{L}[\\p{L} ]*)$`, 'iu'), '$1 "$2"'],
  [new RegExp(`^(\\d+)\\s?x\\s+(${LOST})$`, 'iu'), '$1 $2'],
  [new RegExp(`^x\\s?(\\d+)\\s+(${LOST})$`, 'iu'), '$1 $2'],
  [new RegExp(`^(${LOST})\\s*(fry|young|juvies)?\\s*x\\s?(\\d+)$`, 'iu'), '$3 $1 $2'],
  [new RegExp(`^(${NUMBER})\\s+(?:wrigglers|wigglers|larvae|wrigs)\\s+(${LOST})$`, 'iu'), '$1 young $2'],
  [
    new RegExp(`^(${NUMBER})\\s+(?:found\\s+)?(on\\s+the\\s+(?:floor|carpet)|dried\\s+(?:up|out))$`, 'iu'),
    '$1 dead "$2"',
  ],
  [
    new RegExp(`^(${NUMBER})\\s+(biggest|largest|smallest)\\s+(moved|sold|culled|kept\\s+back)(?:\\s+(\\S.*))?$`, 'iu'),
    '$3 $1 $2 $4',
  ],
  [new RegExp(`^found\\s+(${NUMBER}\\s+eggs.*)$`, 'iu'), '$1'],
  [/^(?:a\s+)?((?:new|fresh|another)\s+spawn)$/iu, 'eggs seen "$1"'],
  [/^(lots|loads|heaps|a\s+few|some)(?:\s+of)?\s+(?:fry|babies)(?:\s+(?:everywhere|there))?!*$/iu, 'fry seen $1'],
  [/^(?:can\s+see\s+|see\s+|there\s+are\s+)?(?:fry|babies)(?:\s+(?:everywhere|there))?!*$/iu, 'fry seen'],
  [
    /^(?:(?:moved|put|took)\s+)?(?:the\s+)?(\p{L}[\p{L}\p{N}'_-]*)\s+(?:and|&)\s+(?:the\s+)?(\p{L}[\p{L}\p{N}'_-]*)\s+(?:in)?to\s+(\S+)$/iu,
    'moved $1 to $3; moved $2 to $3',
  ],
  [/^(\S.*\S|\S)\s+back\s+from\s+(\S+)$/iu, '$1 back "from $2"'],
  [/^(\S.*\S|\S)\s+went\s+(to\s+\S+)$/iu, '$1 $2'],
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
  [
    /^((?:(?:the\s+)?(?:rcd|breaker|fuse)\s+tripped)|(?:tripped\s+(?:the\s+)?(?:rcd|breaker|fuse)))$/iu,
    'power off "$1"',
  ],
  [/^((?:low|reduced|slow|weak|no)\s+flow|flow\s+(?:is\s+)?(?:low|down|reduced|slow|weak))$/iu, 'fault "$1"'],
  [new RegExp(`^((?:slow|blocked|clogged|noisy|leaking|leaky|broken|dead)\\s+(?:${PART}))$`, 'iu'), 'fault "$1"'],
  [new RegExp(`^(${PART})\\s+(?:is\\s+)?(?:fixed|repaired|mended)(?:\\s+now)?$`, 'iu'), 'fixed "$1"'],
  [/^(?:the\s+)?((?:air\s+)?pump|return|heater|lights?)\s+(?:is|are)\s+(?:back\s+)?(on|off)$/iu, '$1 $2'],
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
  made ??= patterns();
  for (const [pattern, words] of made) {
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

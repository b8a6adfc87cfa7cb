/**
 * Closed classes of words: sexes, months, weekdays, numbers in letters, words for a vague number, units.
 * All in lower case; every spelling that a keeper's thumb may send, beside the word that it stands for.
 */

/** Words before a noun that say nothing. */
export const ARTICLES: ReadonlySet<string> = new Set(['the', 'a', 'an', 'her', 'his']);

/** `pair` is one of each. */
export type SexWord = 'male' | 'female' | 'young' | 'adult' | 'pair';

const sexes: Readonly<Record<SexWord, string>> = {
  male: "male males m ♂ cock cocks he he's him",
  female: "female females f ♀ hen hens she she's her",
  adult: 'adult adults grown parents breeders',
  pair: 'pair pairs pr prs both',
  young: 'young fry juvenile juveniles juvie juvies juvs juv babies',
};

/** The two of a pair. */
export const BOTH_FISH = 'both parents|both adults|both fish|both of them|both of the pair';

/** Words for fish that are read since: a declared name stands before them, and none is refused for them. */
export const LATER_SEX_WORDS: ReadonlySet<string> = new Set([
  "he's",
  'him',
  "she's",
  'her',
  'parents',
  'breeders',
  'both',
]);

export type CountWord = 'a few' | 'some' | 'loads' | '?' | 'all' | 'rest' | 'half' | 'none' | 'couple' | 'dozen';

/** Phrases, the words of one in an array. */
export const COUNT_WORDS: readonly (readonly [phrase: string, means: CountWord])[] = [
  ['a few', 'a few'],
  ['few', 'a few'],
  ['a handful', 'a few'],
  ['a handful of', 'a few'],
  ['some', 'some'],
  ['several', 'some'],
  ['many', 'some'],
  ['loads', 'loads'],
  ['loads of', 'loads'],
  ['heaps', 'loads'],
  ['heaps of', 'loads'],
  ['lots', 'loads'],
  ['lots of', 'loads'],
  ['a lot of', 'loads'],
  ['?', '?'],
  ['all of', 'all'],
  ['all the', 'all'],
  ['all', 'all'],
  ['everyone', 'all'],
  ['everything', 'all'],
  ['the lot', 'all'],
  ['the rest of', 'rest'],
  ['the rest', 'rest'],
  ['rest', 'rest'],
  ['half', 'half'],
  ['half of', 'half'],
  ['half the', 'half'],
  ['none', 'none'],
  ['no', 'none'],
  ['a couple', 'couple'],
  ['a couple of', 'couple'],
  ['couple', 'couple'],
  ['a dozen', 'dozen'],
];

const ABOUT_WORDS =
  'about around roughly approx approximately ca circa nearly say abt appx maybe perhaps probably possibly';

/** Words before a number that make it a guess. */
export const FUZZ_WORDS: readonly (readonly [phrase: string, means: 'about' | 'over' | 'under'])[] = [
  ...ABOUT_WORDS.split(' ').map((word) => [word, 'about'] as const),
  ...['over', 'more than', 'at least', 'upwards of'].map((word) => [word, 'over'] as const),
  ...['under', 'less than', 'fewer than', 'up to', 'at most'].map((word) => [word, 'under'] as const),
];

const numbers =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const tens = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const months = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const longMonths = 'january february march april may june july august september october november december'.split(' ');
const weekdays = 'mon tue wed thu fri sat sun'.split(' ');
const longWeekdays = 'monday tuesday wednesday thursday friday saturday sunday'.split(' ');

function table<T>(entries: readonly (readonly [string, T])[]): ReadonlyMap<string, T> {
  return new Map(entries);
}

/** Which sex or age a word names. */
export const SEX_WORDS: ReadonlyMap<string, SexWord> = table(
  (['male', 'female', 'young', 'adult', 'pair'] as const).flatMap((sex) =>
    sexes[sex].split(' ').map((word) => [word, sex] as const),
  ),
);

/** `one` to `ninety-nine`, and `zero`. */
export const NUMBER_WORDS: ReadonlyMap<string, number> = table([
  ...numbers.map((word, index) => [word, index + 1] as const),
  ...tens.flatMap((ten, index) =>
    ['', ...numbers.slice(0, 9).map((one) => `-${one}`)].map(
      (one, ones) => [ten + one, (index + 2) * 10 + ones] as const,
    ),
  ),
  ['zero', 0] as const,
  ['nil', 0] as const,
]);

/** Month names to 1–12. */
export const MONTHS: ReadonlyMap<string, number> = table([
  ...months.map((word, index) => [word, index + 1] as const),
  ...longMonths.map((word, index) => [word, index + 1] as const),
  ['sept', 9] as const,
]);

/** Weekday names to 1 (Monday) – 7. */
export const WEEKDAYS: ReadonlyMap<string, number> = table([
  ...weekdays.map((word, index) => [word, index + 1] as const),
  ...longWeekdays.map((word, index) => [word, index + 1] as const),
  ['tues', 2] as const,
  ['weds', 3] as const,
  ['thur', 4] as const,
  ['thurs', 4] as const,
]);

/** The unit that a spelling stands for. `gal` and `gph` are left to the room's convention. */
export type UnitWord =
  | 'mm'
  | 'cm'
  | 'm'
  | 'in'
  | 'ft'
  | 'L'
  | 'mL'
  | 'gal'
  | 'US gal'
  | 'imp gal'
  | 'L/h'
  | 'gph'
  | 'US gph'
  | 'imp gph'
  | 'C'
  | 'F'
  | 'mg/L'
  | 'ppm'
  | 'g/L'
  | 'mL/L'
  | 'ppt'
  | 'dH'
  | 'degrees'
  | 'mg/L CaCO3'
  | 'meq/L'
  | 'uS/cm'
  | 'mS/cm'
  | 'mg'
  | 'g'
  | 'kg'
  | 'oz'
  | 'lb'
  | '%'
  | 'minutes'
  | 'hours'
  | 'days'
  | 'weeks'
  | 'months';

/** Spellings that differ in more than case from their unit. `/` may have blanks round it. */
const spellings: Readonly<Record<UnitWord, string>> = {
  mm: 'mm|millimetres|millimeters',
  cm: 'cm|centimetres|centimeters',
  m: 'm|metres|meters',
  in: 'in|ins|inch|inches',
  ft: 'ft|foot|feet',
  L: 'l|ltr|ltrs|litre|litres|liter|liters',
  mL: 'ml|mls|millilitres|milliliters',
  gal: 'gal|gals|gallon|gallons',
  'US gal': 'us gal|us gallon|us gallons',
  'imp gal': 'imp gal|imp gallon|imp gallons|imperial gal|imperial gallon|imperial gallons|uk gal|uk gallons',
  'L/h': 'l/h|l/hr|lph|l/hour|litres/h|l per hour',
  gph: 'gph|gal/h|gallons per hour',
  'US gph': 'us gph',
  'imp gph': 'imp gph',
  C: 'c|deg c|degrees c|celsius',
  F: 'f|deg f|degrees f|fahrenheit',
  'mg/L': 'mg/l',
  ppm: 'ppm',
  'g/L': 'g/l',
  'mL/L': 'ml/l',
  ppt: 'ppt|psu',
  dH: 'dh|dkh|dgh',
  degrees: 'deg|degree|degrees',
  'mg/L CaCO3': 'mg/l caco3|ppm caco3|mg/l as caco3|ppm as caco3',
  'meq/L': 'meq/l|meq',
  'uS/cm': 'µs/cm|μs/cm|us/cm|µs|μs|us',
  'mS/cm': 'ms/cm',
  mg: 'mg',
  g: 'g|gr|gram|grams|grammes',
  kg: 'kg|kilo|kilos',
  oz: 'oz|ounce|ounces',
  lb: 'lb|lbs|pound|pounds',
  '%': '%|percent|per cent|pct',
  minutes: 'min|mins|minute|minutes',
  hours: 'h|hr|hrs|hour|hours',
  days: 'd|day|days',
  weeks: 'w|wk|wks|week|weeks',
  months: 'mo|mos|month|months',
};

/** Every spelling of a unit, in lower case with single blanks, to the unit. */
export const UNIT_WORDS: ReadonlyMap<string, UnitWord> = new Map(unitEntries());

function unitEntries(): (readonly [string, UnitWord])[] {
  const entries: (readonly [string, UnitWord])[] = [];
  for (const unit of unitNames()) for (const word of spellings[unit].split('|')) entries.push([word, unit]);
  return entries;
}

function unitNames(): UnitWord[] {
  const known = (name: string): name is UnitWord => Object.hasOwn(spellings, name);
  return Object.keys(spellings).filter(known);
}

/** Live foods by the short names that keepers write, and the name that is kept. */
export const FOODS: ReadonlyMap<string, string> = table([
  ...['bbs', 'nauplii', 'baby brine shrimp', 'baby brine', 'brine', 'artemia'].map(
    (word) => [word, 'brine shrimp'] as const,
  ),
  ...['micros', 'microworms', 'micro worm', 'micro worms', 'micro', 'mw'].map((word) => [word, 'microworm'] as const),
  ['vinegar eels', 'vinegar eel'] as const,
  ...'flake flakes pellets powder daphnia bloodworm bloodworms mysis cyclops infusoria krill tubifex'
    .split(' ')
    .map((word) => [word, word] as const),
  ['grindals', 'grindal worm'] as const,
  ['grindal worms', 'grindal worm'] as const,
]);

/** Measures of one's own: what they hold is said once, `room: bucket 12 L`. */
export const SCOOPS: ReadonlyMap<string, string> = new Map(
  'bucket spoon net scoop cup jug cap capful tsp teaspoon tbsp tablespoon drop pinch tablet'
    .split(' ')
    .flatMap((name) => [[name, name] as const, [`${name}s`, name] as const]),
);

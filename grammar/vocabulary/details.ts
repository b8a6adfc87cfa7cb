/**
 * Words inside a clause. Each detail has the form that follows its word and the spellings that are
 * read; a clause's row in the vocabulary names the details that it takes.
 */

/**
 * What follows the word: `flag` nothing, `place` a tank or other name, `source` names, a quote or bare
 * words, `amount` a number, `day` a date, `words` words up to the next detail.
 */
export type DetailForm = 'flag' | 'place' | 'source' | 'amount' | 'day' | 'words';

interface DetailRule {
  readonly form: DetailForm;
  readonly says: string;
}

const SITES = 'slate glass rock stone leaf wood root cave pot shell heater filter pipe'.split(' ');

/** Words that state no fact of their own: they are kept as the clause's remark, without quotes. */
const ASIDES = [
  'again',
  'at last',
  'this time',
  'to catch',
  'for catching',
  'to feed',
  'for feeding',
  'for fry feed',
  'for the fry',
  'bloated',
  'swollen',
  'wasted',
  'skinny',
  'orange bellies',
  'full bellies',
  'dunno when laid',
  'sand',
  'gravel',
  'bare bottom',
  ...SITES.flatMap((site) => ['on', 'on the', 'in', 'in the'].map((where) => `${where} ${site}`)),
].join('|');

/** Details that a word introduces. */
export const LINKS = {
  to: { form: 'source', says: 'to|into|→|out to|back to' },
  in: { form: 'place', says: 'in' },
  on: { form: 'day', says: 'on' },
  from: { form: 'source', says: 'from|out of' },
  with: { form: 'words', says: 'with|w /|w' },
  at: { form: 'amount', says: 'at|@' },
  for: { form: 'amount', says: 'for' },
  wait: { form: 'amount', says: 'wait|then wait' },
  takes: { form: 'amount', says: 'takes' },
  above: { form: 'amount', says: 'level above|or level above|level over|or level over|or above|or over' },
  notice: { form: 'amount', says: 'notice' },
  deposit: { form: 'amount', says: 'deposit' },
  of: { form: 'amount', says: 'of|/' },
  ofWhat: { form: 'words', says: 'of' },
  onWhat: { form: 'words', says: 'on|for' },
  by: { form: 'day', says: 'by|before' },
  until: { form: 'day', says: 'until|till|til' },
  brood: { form: 'place', says: 'brood|batch|as brood' },
  as: { form: 'place', says: 'as|named|called' },
  each: { form: 'flag', says: 'each|a piece|apiece|per fish' },
  and: { form: 'flag', says: 'and|&|plus' },
  or: { form: 'flag', says: 'or' },
  colon: { form: 'flag', says: ':' },
  restStay: { form: 'flag', says: 'rest stay|the rest stay|rest stays|the rest stays|rest stayed|leaving the rest' },
  largest: { form: 'flag', says: 'largest|biggest|the largest|the biggest' },
  smallest: { form: 'flag', says: 'smallest|the smallest' },
  live: { form: 'flag', says: 'real|live|net' },
  stays: { form: 'flag', says: 'stays|stays in|for good' },
  belowLip: { form: 'flag', says: 'below the lip|below lip|under the lip|to the lip|below rim|below the rim' },
  catching: { form: 'flag', says: 'catching|contagious' },
  notCatching: { form: 'flag', says: 'not catching|not contagious' },
  alone: { form: 'flag', says: 'alone|standalone|stands alone' },
  rinsed: { form: 'flag', says: 'rinsed|and rinsed|cleaned|squeezed' },
  water: { form: 'flag', says: 'water' },
  jumped: { form: 'flag', says: 'jumped|? jumped|maybe jumped|probably jumped' },
  away: { form: 'flag', says: 'away' },
  fedTo: { form: 'flag', says: 'all fry|all the fry|all young|the fry|fry' },
  aside: { form: 'flag', says: ASIDES },
  layers: { form: 'flag', says: 'layers|layer|sponges' },
  asN: { form: 'flag', says: 'as n' },
  asIon: { form: 'flag', says: 'as ion|as the ion' },
  hatched: { form: 'flag', says: 'from hatched|from hatch|from hatching' },
  released: { form: 'flag', says: 'from released|from release' },
  perSpecies: { form: 'flag', says: 'per species|a species|per kind|a kind' },
  pH: { form: 'amount', says: 'ph' },
  KH: { form: 'amount', says: 'kh|alkalinity' },
  GH: { form: 'amount', says: 'gh|hardness' },
  TAN: { form: 'amount', says: 'tan|ammonia|amm|nh3|nh4' },
  NO2: { form: 'amount', says: 'no2|nitrite' },
  NO3: { form: 'amount', says: 'no3|nitrate' },
  temperature: { form: 'amount', says: 'temp|temperature' },
  conductivity: { form: 'amount', says: 'conductivity|ec' },
  salinity: { form: 'amount', says: 'salinity|sal' },
  oxygen: { form: 'amount', says: 'oxygen|o2' },
  chlorine: { form: 'amount', says: 'chlorine|cl2' },
} as const satisfies Readonly<Record<string, DetailRule>>;

export type LinkName = keyof typeof LINKS;

/** Details that no word introduces, each with a rule of its own in the parser. */
export type BareDetail =
  'quantity' | 'name' | 'sex' | 'quote' | 'text' | 'date' | 'versus' | 'every' | 'action' | 'measure';

export type DetailName = LinkName | BareDetail;

/** What every clause takes: a number, when it happened, and a remark. */
export const EVERY_CLAUSE: readonly DetailName[] = ['quantity', 'date', 'by', 'quote', 'aside'];

/** What a keeper reads in a message. */
export const FORM_WORDS: Readonly<Record<Exclude<DetailForm, 'flag'>, string>> = {
  place: 'a name',
  source: 'a name, or words in quotes',
  amount: 'a number',
  day: 'a date',
  words: 'words',
};

/** What `every`, `stop`, `did`, `put off` name: things to be done again and again. */
export const ACTIONS = {
  'clean prefilter': 'clean prefilter|clean the prefilter|prefilter|prefilter clean',
  'clean media': 'clean media|clean the media|media clean',
  'rinse sponge': 'rinse sponge|rinse the sponge|squeeze sponge|sponge rinse',
  'water change': 'water change|wc|change water',
  'top up': 'top up|topping up',
  test: 'test|water test',
  feed: 'feed|feeding',
  harvest: 'harvest',
  restart: 'restart',
} as const satisfies Readonly<Record<string, string>>;

/** Temporary measures as `keep` and `put off` name them: to put off their undoing is to keep them. */
export const MEASURES = {
  'off the loop': 'off the loop|off loop|back on the loop|back on loop',
  'air filter': 'air filter in|air filter|air filter out',
  'lights off': 'lights off|light off|lights out|lights on|light on',
  'rocks out': 'rocks out|rocks|rocks in|rocks back',
  divider: 'divider in|divider|divider out',
  'pump off': 'pump off|pump on',
  'heater off': 'heater off|heater on',
  'heat raised': 'heat raised|heat|heat up|heat normal',
  'breeder net': 'breeder net in|breeder net|breeder box|breeder net out',
} as const satisfies Readonly<Record<string, string>>;

export const PERIODS: Readonly<Record<'day' | 'other day' | 'week' | 'month' | 'hour', string>> = {
  day: 'day',
  'other day': 'other day|second day',
  week: 'week',
  month: 'month',
  hour: 'hour',
};

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
  'now',
  'to catch',
  'for catching',
  'to feed',
  'for feeding',
  'for fry feed',
  'for the fry',
  'overnight',
  'on floor',
  'on the floor',
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
  'hard',
  'badly',
  'a bit',
  'a little',
  'slightly',
  'cash',
  'in cash',
  ...SITES.flatMap((site) =>
    ['on', 'on the', 'in', 'in the', 'under', 'under the', 'behind', 'behind the'].map((where) => `${where} ${site}`),
  ),
].join('|');

const REST_STAY = [
  'rest stay',
  'the rest stay',
  'rest stays',
  'the rest stays',
  'rest stayed',
  'leaving the rest',
  'rest stay here',
  'rest stays here',
  'rest stayed here',
  'rest stay put',
  'rest left',
  'rest left here',
  'rest remain',
  'left the rest',
].join('|');

/** Fish that are culled for what they are. */
const RUNTS =
  'runts|runt|the runts|weak ones|the weak ones|small ones|bent|bent ones|deformed|deformed ones|crooked|bellysliders|belly sliders|belly-sliders';

/** Where the water of a change came from. */
const NEW_WATER = ['ro', 'rain', 'rain water', 'rainwater', 'tap', 'tap water', 'ro water', 'aged water', 'well water']
  .flatMap((water) => [water, `with ${water}`, `w ${water}`, `w / ${water}`])
  .join('|');

const OFTEN = [
  'twice',
  'once',
  'x2',
  'x3',
  'x4',
  'am',
  'pm',
  'am and pm',
  'am & pm',
  'am / pm',
  'morning and evening',
  'lightly',
  'light',
  'heavily',
  'well',
].join('|');

/** Who is fed: `all fry`, `to the adults`. */
const EATERS = [
  'all fry',
  'all the fry',
  'all young',
  'everything',
  'all tanks',
  'the pair',
  'for fry',
  ...['all', 'everyone'].flatMap((who) => [who, `to ${who}`]),
  ...['fry', 'parents', 'adults', 'juvies', 'young', 'babies', 'breeders'].flatMap((who) =>
    ['', 'the ', 'to ', 'to the '].map((before) => before + who),
  ),
].join('|');

/** What a test found, under each of its names: `pH 6.8`, `pH down to 6.8`. */
function reading(names: string): string {
  const moves = ['down to', 'dropped to', 'fell to', 'fallen to', 'rose to', 'is', 'at', 'now', 'still'];
  return [...names.split('|'), ...names.split('|').flatMap((name) => moves.map((move) => `${name} ${move}`))].join('|');
}

/** Parts of the water in a tank, in words. */
const PARTS = 'a third|one third|third|two thirds|a quarter|one quarter|quarter|three quarters';

/** Details that a word introduces. */
export const LINKS = {
  to: { form: 'source', says: 'to|into|→|out to|back to' },
  in: { form: 'place', says: 'in' },
  on: { form: 'day', says: 'on' },
  from: { form: 'source', says: 'from|out of|ex' },
  with: { form: 'words', says: 'with|w /|w' },
  at: { form: 'amount', says: 'at|@' },
  for: { form: 'amount', says: 'for' },
  wait: { form: 'amount', says: 'wait|then wait' },
  takes: { form: 'amount', says: 'takes' },
  above: { form: 'amount', says: 'level above|or level above|level over|or level over|or above|or over' },
  notice: { form: 'amount', says: 'notice' },
  deposit: { form: 'amount', says: 'deposit' },
  of: { form: 'amount', says: 'of|/|out of' },
  ofWhat: { form: 'words', says: 'of' },
  onWhat: { form: 'words', says: 'on|for' },
  by: { form: 'day', says: 'by|before' },
  until: { form: 'day', says: 'until|till|til' },
  brood: { form: 'place', says: 'brood|batch|as brood' },
  as: { form: 'place', says: 'as|named|called' },
  each: { form: 'flag', says: 'each|ea|a piece|apiece|per fish|a fish' },
  and: { form: 'flag', says: 'and|&|plus|+' },
  or: { form: 'flag', says: 'or' },
  colon: { form: 'flag', says: ':' },
  restStay: { form: 'flag', says: REST_STAY },
  largest: { form: 'flag', says: 'largest|biggest|the largest|the biggest' },
  smallest: { form: 'flag', says: 'smallest|the smallest' },
  live: { form: 'flag', says: 'real|live|net' },
  stays: { form: 'flag', says: 'stays|stays in|for good' },
  belowLip: {
    form: 'flag',
    says: 'below the lip|below lip|under the lip|to the lip|to lip|from the lip|from lip|below rim|below the rim',
  },
  catching: { form: 'flag', says: 'catching|contagious' },
  notCatching: { form: 'flag', says: 'not catching|not contagious' },
  alone: { form: 'flag', says: 'alone|standalone|stands alone' },
  rinsed: { form: 'flag', says: 'rinsed|and rinsed|cleaned|squeezed' },
  water: { form: 'flag', says: 'water|the water|of water|of the water|of tank|of the tank|of it' },
  jumped: { form: 'flag', says: 'jumped|? jumped|maybe jumped|probably jumped' },
  foundDead: { form: 'flag', says: 'dead|found dead|and dead|died' },
  away: { form: 'flag', says: 'away' },
  fedTo: { form: 'flag', says: EATERS },
  aside: { form: 'flag', says: ASIDES },
  where: { form: 'words', says: 'at|from|in|behind|inside|near' },
  newWater: { form: 'flag', says: NEW_WATER },
  whichLayers: { form: 'flag', says: 'top|the top|bottom|the bottom|upper|lower|first|last' },
  heatTo: { form: 'amount', says: 'to|at|set to|set at|set' },
  inAll: { form: 'flag', says: 'left|remaining|alive|in all|in total|total' },
  totalLength: { form: 'flag', says: 'tl|total length|long' },
  standardLength: { form: 'flag', says: 'sl|standard length' },
  ofThem: { form: 'flag', says: 'of|of the|of them|of these' },
  ofStock: { form: 'flag', says: 'of|of the|of them|from|from the|out of' },
  them: { form: 'flag', says: 'them|them all|all of them|em' },
  runts: { form: 'flag', says: RUNTS },
  trioOf: { form: 'flag', says: 'a trio of|a trio|trio of|trio' },
  last: { form: 'flag', says: 'last|the last' },
  sort: {
    form: 'flag',
    says: 'wild|wild caught|wild-caught|tank bred|tank-bred|f0|f1|f2|f3|unsexed|mixed sex|mixed sexes|subadult',
  },
  free: { form: 'flag', says: 'free|for free|as a gift|gift' },
  bagOf: { form: 'amount', says: 'bag of|a bag of|bags of' },
  often: { form: 'flag', says: OFTEN },
  layers: { form: 'flag', says: 'layers|layer|sponges' },
  asN: { form: 'flag', says: 'as n' },
  asIon: { form: 'flag', says: 'as ion|as the ion' },
  hatched: { form: 'flag', says: 'from hatched|from hatch|from hatching' },
  released: { form: 'flag', says: 'from released|from release' },
  perSpecies: { form: 'flag', says: 'per species|a species|per kind|a kind' },
  pH: { form: 'amount', says: reading('ph') },
  KH: { form: 'amount', says: reading('kh|alkalinity') },
  GH: { form: 'amount', says: reading('gh|hardness') },
  TAN: { form: 'amount', says: reading('tan|ammonia|amm|nh3|nh4') },
  NO2: { form: 'amount', says: reading('no2|nitrite|nitrites') },
  NO3: { form: 'amount', says: reading('no3|nitrate|nitrates') },
  temperature: { form: 'amount', says: reading('temp|temperature') },
  conductivity: { form: 'amount', says: reading('conductivity|ec|cond') },
  salinity: { form: 'amount', says: reading('salinity|sal') },
  oxygen: { form: 'amount', says: reading('oxygen|o2') },
  chlorine: { form: 'amount', says: reading('chlorine|cl2') },
  solids: { form: 'amount', says: reading('tds') },
  was: { form: 'amount', says: 'was|were|from|previously' },
  became: { form: 'amount', says: '→' },
  part: { form: 'flag', says: PARTS },
  clutch: { form: 'flag', says: 'eggs|the eggs|wrigglers|the wrigglers|larvae' },
} as const satisfies Readonly<Record<string, DetailRule>>;

export type LinkName = keyof typeof LINKS;

/** Details that no word introduces, each with a rule of its own in the parser. */
export type BareDetail =
  'quantity' | 'name' | 'sex' | 'quote' | 'text' | 'date' | 'versus' | 'every' | 'action' | 'measure';

export type DetailName = LinkName | BareDetail;

/** What every clause takes: a number, when it happened, and a remark. */
export const EVERY_CLAUSE: readonly DetailName[] = ['quantity', 'date', 'on', 'by', 'quote', 'aside'];

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

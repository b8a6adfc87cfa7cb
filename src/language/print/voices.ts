/** Which units a clause was written in, so that printing it anew keeps them. */
import type { EventOf } from '../../journal/event.ts';
import type { Day } from '../../core/day.ts';
import type { Voice } from './words.ts';

/** Finds the first unit of one system or the other after a number; `in` before a name is a place. */
const UNITS =
  /\d\s*(?:(?<metric>mm|cm|m|ml|l|c|l\/h|lph|litres?)|(?<imperial>imp\w*\s+(?:gal\w*|gph))|(?<US>(?:us\s+)?(?:gal\w*|gph)|f|ft|foot|feet|inch\w*|in(?!\s+[\p{L}\d])))(?![\p{L}\d/])/iu;
/** A measure of the keeper's own, which no printed unit could bring back. */
const OWN =
  /(?:^|[\s\d])(?:bucket|spoon|net|scoop|cup|jug|cap|capful|tsp|teaspoon|tbsp|tablespoon|drop|pinch|tablet)s?(?!\p{L})/iu;
const ABOUT =
  /(?:^|\s)(?:about|abt|around|roughly|approx|approximately|appx|ca|circa|nearly|say|maybe|perhaps|probably|possibly|~|≈)(?=[\s\d])|~|≈|(?:ish|or\s+so|odd)(?!\p{L})/iu;

const WEEKS = /\d\s*w(?:ks?|eeks?)?(?!\p{L})/iu;
const DAYS = /\d\s*d(?:ays?)?(?!\p{L})/iu;

/** What the room has said about its units, oldest first. */
export interface Said {
  readonly units: readonly EventOf<'units set'>[];
  readonly nitrogen: readonly EventOf<'nitrogen set'>[];
}

/** The voice of a clause as written on a day: its own units where it shows some, else those of the room. */
export function voiceOf(written: string, day: Day, said: Said): Voice {
  const shown = UNITS.exec(written)?.groups ?? {};
  const room = onDay(said.units, day)?.units ?? 'metric';
  const own = (['metric', 'imperial', 'US'] as const).find((system) => shown[system] !== undefined);
  const bare = /(?:us|imp\w*)\s+g/iu.test(written);
  const units = own === 'US' && !bare && room === 'imperial' ? 'imperial' : (own ?? room);
  const prefix = { metric: '', US: 'US ', imperial: 'imp ' } as const;
  return {
    units,
    nitrogen: onDay(said.nitrogen, day)?.as ?? 'N',
    about: ABOUT.test(written),
    weeks: WEEKS.test(written) ? true : DAYS.test(written) ? false : null,
    gallon: units === room ? '' : prefix[units],
  };
}

/** What held on a day; before the first word of it that one held too. */
function onDay<T extends { readonly day: Day }>(said: readonly T[], day: Day): T | undefined {
  return said.findLast((each) => each.day <= day) ?? said[0];
}

/** True for a clause whose numbers no printing brings back as they were written. */
export function inOwnMeasures(written: string): boolean {
  return OWN.test(written);
}

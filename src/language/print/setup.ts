/** Clauses that set the room up: units, rows, loops, tanks, species, groups, cultures, auctions. */
import { isoDay } from '../../core/day.ts';
import type { Measure } from '../../core/quantity.ts';
import type { EventOf, SpeciesTraits } from '../../journal/event.ts';
import type { Prints } from './table.ts';
import * as w from './words.ts';
import type { Voice } from './words.ts';

export const SETUP_PRINTS: Prints<
  | 'units set'
  | 'currency set'
  | 'zone set'
  | 'walk set'
  | 'nitrogen set'
  | 'scoop set'
  | 'award rule set'
  | 'row declared'
  | 'loop declared'
  | 'tank declared'
  | 'tank retired'
  | 'species declared'
  | 'group declared'
  | 'culture declared'
  | 'auction declared'
> = {
  'units set': (event) => `units ${event.units}`,
  'currency set': (event) => `currency ${event.currency}`,
  'zone set': (event) => `zone ${event.zone}`,
  'walk set': (event) => w.words('walk', ...event.tanks),
  'nitrogen set': (event) => (event.as === 'N' ? 'nitrogen as N' : 'nitrogen as ion'),
  'scoop set': (event, voice) =>
    w.words(event.name, event.volume && w.litres(event.volume, voice), event.mass && `${w.span(event.mass, voice)} g`),
  'award rule set': (event, voice) =>
    w.details(
      `award ${w.quoted(event.name)} ${w.num(event.young)} young at ${w.days(event.age, voice)} from ${event.from}`,
      event.notice && `notice ${w.days(event.notice, voice)}`,
    ),
  'row declared': (event) => event.tanks.join(' '),
  'loop declared': (event, voice) =>
    clauses(
      event.sump && `sump ${w.litres(event.sump, voice)}`,
      event.returnFlow && `return ${w.flow(event.returnFlow, voice)}`,
      event.layers !== null && `prefilter ${w.num(event.layers)} ${event.layers === 1 ? 'layer' : 'layers'}`,
      event.spillsAt && `spills at ${w.length(event.spillsAt, voice)}`,
      event.spare && `spare ${w.litres(event.spare, voice)}`,
    ),
  'tank declared': tank,
  'tank retired': () => 'retired',
  'species declared': (event, voice) => traits(event.traits, voice),
  'group declared': group,
  'culture declared': (event) => event.of,
  'auction declared': (event, voice) =>
    clauses(
      event.on !== null && `on ${isoDay(event.on)}`,
      event.lots !== null && `${w.num(event.lots)} lots`,
      event.bagOf !== null && `bags of ${w.num(event.bagOf)}`,
      event.bagsPerSpecies !== null && `${w.num(event.bagsPerSpecies)} bags per species`,
      event.sellerShare && `seller gets ${w.percent(event.sellerShare, voice)}`,
      event.fast && `fast ${w.days(event.fast, voice)}`,
      event.minimum !== null && `minimum ${w.money(event.minimum)}`,
      event.hours && `travel ${w.minutes(event.hours, voice)}`,
      event.boxes !== null &&
        `${w.num(event.boxes)} ${event.boxes === 1 ? 'box' : 'boxes'}${of(event.boxLitres, voice)}`,
    ),
};

/** ` of 40 L`, where the line says what one holds. */
function of(litres: Measure<'L'> | null, voice: Voice): string {
  return litres === null ? '' : ` of ${w.litres(litres, voice)}`;
}

/** Clauses of one line. */
function clauses(...parts: readonly (string | null | false)[]): string {
  return parts.filter((part) => part !== null && part !== false && part !== '').join('; ');
}

function tank(event: EventOf<'tank declared'>, voice: Voice): string {
  const { plumbing } = event;
  return clauses(
    event.size && w.box(event.size, voice),
    event.nominal && w.litres(event.nominal, voice),
    event.live && `live volume ${w.litres(event.live, voice)}`,
    plumbing === 'alone' ? 'alone' : plumbing && `on ${plumbing.on}`,
    event.inTank !== null && `in ${w.tank(event.inTank)}`,
    event.filter !== null && filter(event.filter),
    event.quarantine === true && 'quarantine',
    event.heated && `heated ${w.degrees(event.heated, voice)}`,
    event.hides !== null && `hides ${w.quoted(event.hides)}`,
  );
}

function filter(text: string): string {
  return /\bfilters?$/u.test(text) ? text : `filter ${w.quoted(text)}`;
}

function traits(value: SpeciesTraits, voice: Voice): string {
  const { saleAt } = value;
  const sale = saleAt && [saleAt.size && w.length(saleAt.size, voice), saleAt.age && w.days(saleAt.age, voice)];
  return clauses(
    value.latin,
    value.guild,
    sale && `sale at ${sale.filter((part) => part !== null).join(saleAt.both ? ' and ' : ' or ')}`,
    value.price && priceOf(value.price),
    trait(value.siblingSafe, 'sibling-safe'),
    trait(value.hardToCatch, 'hard to catch'),
    trait(value.spiny, 'spiny'),
    value.adult && `adult ${w.length(value.adult, voice)}`,
    water(value, voice),
    trait(value.regulated, 'regulated'),
  );
}

function trait(holds: boolean | null, words: string): string {
  return holds === null ? '' : holds ? words : `not ${words}`;
}

function priceOf(price: { readonly amount: number }): string {
  return `price ${w.money(price.amount)}`;
}

function water(value: SpeciesTraits, voice: Voice): string {
  const parts = w.details(
    value.temperature && w.degrees(value.temperature, voice),
    value.ph && `pH ${w.span(value.ph, voice)}`,
    value.gh && `GH ${w.span(value.gh, voice)} dH`,
  );
  return parts === '' ? '' : `water ${parts}`;
}

function group(event: EventOf<'group declared'>, voice: Voice): string {
  const from = event.parentsFrom.length > 0 ? event.parentsFrom.join(' and ') : event.from && w.quoted(event.from);
  // `at` is the price of a pair, and of each fish of a larger group.
  const pair = event.groupKind === 'pair' && event.price?.per === 'all';
  const paid = event.price && (pair ? `at ${w.money(event.price.amount)}` : w.price(event.price));
  return clauses(
    event.species,
    event.heads && w.heads(event.heads),
    ...members(event, voice),
    event.tank !== null && `in ${w.tank(event.tank)}`,
    event.age && `age ${w.days(event.age, voice)}`,
    event.size && w.sizes(event.size, voice),
    event.line !== null && `line ${w.quoted(event.line)}`,
    w.words(from && `from ${from}`, paid),
  );
}

/**
 * `male 80 mm`, `male Reed 80 mm`; neighbours of one sex with names and without a size together: `females
 * Fern and Lark`. In the order of the line. (`3 females` would be a number, not three fish that can be told apart.)
 */
function members(event: EventOf<'group declared'>, voice: Voice): readonly string[] {
  const runs: Seen[][] = [];
  for (const each of event.members) {
    const last = runs.at(-1);
    if (last?.[0] !== undefined && together(last[0], each)) last.push(each);
    else runs.push([each]);
  }
  return runs.map((run) => memberWords(run, voice));
}

type Seen = EventOf<'group declared'>['members'][number];

function together(a: Seen, b: Seen): boolean {
  const named = a.member.name !== null && b.member.name !== null;
  return named && a.size === null && b.size === null && a.member.sex === b.member.sex;
}

function memberWords(run: readonly Seen[], voice: Voice): string {
  const [first] = run;
  if (first === undefined) return '';
  const { sex, name } = first.member;
  if (run.length === 1) return w.words(sex ?? 'fish', name, first.size && w.length(first.size, voice));
  return w.words(sex === null ? 'fish' : `${sex}s`, run.map(({ member }) => member.name).join(' and '));
}

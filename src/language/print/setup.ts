/** Clauses that set the room up: units, rows, loops, tanks, species, groups, cultures, auctions. */
import { isoDay } from '../../core/day.ts';
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
    ),
};

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
  return /\bfilter$/u.test(text) ? text : `filter ${w.quoted(text)}`;
}

function traits(value: SpeciesTraits, voice: Voice): string {
  const { saleAt } = value;
  const sale = saleAt && [saleAt.size && w.length(saleAt.size, voice), saleAt.age && w.days(saleAt.age, voice)];
  return clauses(
    value.latin,
    value.guild,
    sale && `sale at ${sale.filter((part) => part !== null).join(saleAt.both ? ' and ' : ' or ')}`,
    value.price && priceOf(value.price),
    value.siblingSafe === true && 'sibling-safe',
    value.hardToCatch === true && 'hard to catch',
    value.spiny === true && 'spiny',
    value.adult && `adult ${w.length(value.adult, voice)}`,
    water(value, voice),
    value.regulated === true && 'regulated',
  );
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
  const paid = event.price && (event.price.per === 'each' ? w.price(event.price) : `at ${w.money(event.price.amount)}`);
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

/** `male 80 mm`, `male Reed 80 mm`; named fish of one sex and no size together: `females Fern and Lark`. */
function members(event: EventOf<'group declared'>, voice: Voice): readonly string[] {
  const written: string[] = [];
  for (const sex of ['male', 'female', null] as const) {
    const those = event.members.filter(({ member }) => member.sex === sex);
    const bare = those.filter(({ member, size }) => size === null && member.name !== null);
    const together = bare.length > 1 ? bare : [];
    for (const each of those) {
      if (together.includes(each)) continue;
      written.push(w.words(sex, each.member.name, each.size && w.length(each.size, voice)));
    }
    if (together.length > 0) {
      const names = together.map(({ member }) => member.name).filter((name) => name !== null);
      written.push(w.words(sex && `${sex}s`, list(names)));
    }
  }
  return written;
}

/** `Fern`, `Fern and Lark`, `Fern, Lark and Sorrel` without the commas that would part clauses. */
function list(names: readonly string[]): string {
  return names.join(' and ');
}

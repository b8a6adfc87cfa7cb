/** What the stock does with its kinds of event. */
import type { Homes } from './home.ts';
import { counted } from './counting.ts';
import { lost } from './losses.ts';
import { mixed, moved } from './moves.ts';
import { sized } from './sizing.ts';
import type { Place } from '../core/span.ts';
import type { EventOf, SpeciesTraits } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { TraitLines } from './stock.ts';

export const STOCK_HOMES: Homes<'species declared' | 'counted' | 'sized' | 'moved' | 'mixed' | 'lost'> = {
  'species declared': speciesDeclared,
  counted,
  sized,
  moved,
  mixed,
  lost,
};

/** Declaring a species again amends what the line says and leaves the rest. */
function speciesDeclared(draft: Draft, event: EventOf<'species declared'>): void {
  const before = draft.stock.species.get(event.species);
  draft.stock.species.set(event.species, {
    name: event.species,
    traits: before ? amended(before.traits, event.traits) : event.traits,
    day: before?.day ?? event.day,
    place: before?.place ?? event.place,
    said: saidNow(event, before?.said),
  });
}

/** Each trait that this line says is said here from now on, the others where they were. */
function saidNow({ traits, place }: EventOf<'species declared'>, before: TraitLines | undefined): TraitLines {
  const said = (trait: keyof SpeciesTraits): Place | null =>
    traits[trait] === null ? (before?.[trait] ?? null) : place;
  return {
    latin: said('latin'),
    guild: said('guild'),
    saleAt: said('saleAt'),
    price: said('price'),
    siblingSafe: said('siblingSafe'),
    hardToCatch: said('hardToCatch'),
    spiny: said('spiny'),
    adult: said('adult'),
    temperature: said('temperature'),
    ph: said('ph'),
    gh: said('gh'),
    regulated: said('regulated'),
  };
}

function amended(old: SpeciesTraits, next: SpeciesTraits): SpeciesTraits {
  return {
    latin: next.latin ?? old.latin,
    guild: next.guild ?? old.guild,
    saleAt: next.saleAt ?? old.saleAt,
    price: next.price ?? old.price,
    siblingSafe: next.siblingSafe ?? old.siblingSafe,
    hardToCatch: next.hardToCatch ?? old.hardToCatch,
    spiny: next.spiny ?? old.spiny,
    adult: next.adult ?? old.adult,
    temperature: next.temperature ?? old.temperature,
    ph: next.ph ?? old.ph,
    gh: next.gh ?? old.gh,
    regulated: next.regulated ?? old.regulated,
  };
}

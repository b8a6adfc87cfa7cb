/** What the stock does with its kinds of event. */
import type { Homes } from './home.ts';
import { counted } from './counting.ts';
import { lost } from './losses.ts';
import { mixed, moved } from './moves.ts';
import { sized } from './sizing.ts';
import type { SpeciesTraits } from '../journal/event.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';

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
    saleFrom: event.traits.saleAt === null ? (before?.saleFrom ?? null) : event.place,
  });
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

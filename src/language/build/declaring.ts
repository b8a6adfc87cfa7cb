/** A declaring line in the making: one fact that its clauses fill, each with what it says. */
import type { Declares } from '../heading.ts';
import type { GroupKind } from '../../journal/subject.ts';
import type { BodyOf } from './table.ts';

type Mutable<T> = { -readonly [P in keyof T]: T[P] };

export type TankDraft = Mutable<BodyOf<'tank declared'>>;
export type LoopDraft = Mutable<BodyOf<'loop declared'>>;
export type RowDraft = Mutable<BodyOf<'row declared'>>;
export type GroupDraft = Mutable<BodyOf<'group declared'>>;
export type CultureDraft = Mutable<BodyOf<'culture declared'>>;
export type AuctionDraft = Mutable<BodyOf<'auction declared'>>;
export type SpeciesDraft = Omit<BodyOf<'species declared'>, 'traits'> & {
  traits: Mutable<BodyOf<'species declared'>['traits']>;
};

export type Draft = TankDraft | LoopDraft | RowDraft | GroupDraft | CultureDraft | AuctionDraft | SpeciesDraft;

/** A declaration that says nothing yet. */
export function blankDraft(declares: Declares, name: string, groupKind: GroupKind): Draft {
  switch (declares) {
    case 'tank':
      return blankTank(name);
    case 'loop':
      return {
        kind: 'loop declared',
        loop: name,
        sump: null,
        returnFlow: null,
        layers: null,
        spillsAt: null,
        spare: null,
      };
    case 'row':
      return { kind: 'row declared', row: name, tanks: [] };
    case 'species':
      return blankSpecies(name);
    case 'group':
      return blankGroup(name, groupKind);
    case 'culture':
      return { kind: 'culture declared', culture: name, of: '' };
    case 'auction':
      return blankAuction(name);
    default:
      return blankTank(name);
  }
}

export function blankTank(tank: string): TankDraft {
  return {
    kind: 'tank declared',
    tank,
    size: null,
    nominal: null,
    live: null,
    plumbing: null,
    filter: null,
    quarantine: null,
    inTank: null,
    heated: null,
    hides: null,
  };
}

function blankSpecies(species: string): SpeciesDraft {
  const traits = {
    latin: null,
    guild: null,
    saleAt: null,
    price: null,
    siblingSafe: null,
    hardToCatch: null,
    spiny: null,
    adult: null,
    temperature: null,
    ph: null,
    gh: null,
    regulated: null,
  };
  return { kind: 'species declared', species, traits };
}

function blankGroup(group: string, groupKind: GroupKind): GroupDraft {
  return {
    kind: 'group declared',
    group,
    groupKind,
    species: null,
    heads: null,
    members: [],
    tank: null,
    age: null,
    size: null,
    line: null,
    from: null,
    price: null,
    parentsFrom: [],
  };
}

function blankAuction(auction: string): AuctionDraft {
  return {
    kind: 'auction declared',
    auction,
    on: null,
    lots: null,
    bagOf: null,
    bagsPerSpecies: null,
    sellerShare: null,
    fast: null,
    minimum: null,
    hours: null,
    boxes: null,
    boxLitres: null,
  };
}

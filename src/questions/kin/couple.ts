/** What two fish have in common: the inbreeding of their would-be young, whom they share, and how far the journal knows. */
import { ancestry, kinshipBounds, type Bounds, type Possible } from '../../science/pedigree.ts';
import { listWords, plural } from '../../core/words.ts';
import { foundersOf, unknownFounders, type Animal, type Pedigree } from './pedigree.ts';

export interface Kin {
  /** Inbreeding of their young: at least `low`; `high` where the journal leaves open who the parents were, null if not worked out. */
  readonly f: Bounds;
  /** The same if fish of one purchase, colony or line are full sibs; null where none are. */
  readonly ifSibs: number | null;
  /** Ancestors of which the parents are unknown. */
  readonly founders: number;
  /** The nearest ancestors, by name, that both may have. */
  readonly shared: readonly string[];
  /** What they may be sibs by: `one purchase, Elm`. */
  readonly stems: readonly string[];
  /** In a few words. */
  readonly says: string;
}

export function kinOf(pedigree: Pedigree, one: Animal, other: Animal): Kin {
  const { animals } = pedigree;
  const f = kinshipBounds(animals, one.id, other.id);
  const may = sharedStems(pedigree, one, other);
  const worse = may.length === 0 ? null : asSibs(pedigree, one, other);
  // Founders that only one of the two can come of may be sibs as they please.
  const ifSibs = worse === null || worse <= f.low ? null : worse;
  const stems = ifSibs === null ? [] : may;
  const shared = [...new Set(nearest(animals, one.id, other.id).flatMap((id) => animals.get(id)?.name ?? []))];
  const founders = unknownFounders(pedigree, [one.id, other.id]);
  return { f, ifSibs, founders, shared, stems, says: wordsOf(f, shared, stems, ifSibs) };
}

/** `0.25`, `0.0625`. */
export function coefficient(value: number): string {
  return String(Math.round(value * 1e4) / 1e4);
}

/** `F ≥ 0.125, 2 unknown founders`; where the journal leaves it open, the most as well. */
export function boundWords({ f, ifSibs, founders }: Kin): string {
  const most = Math.max(f.high ?? 0, ifSibs ?? 0);
  const open = f.high === null ? ', the most not worked out' : most > f.low ? `, perhaps ${coefficient(most)}` : '';
  return `F ≥ ${coefficient(f.low)}${open}; ${plural(founders, 'unknown founder')}`;
}

function wordsOf(f: Bounds, shared: readonly string[], stems: readonly string[], ifSibs: number | null): string {
  const sibs = stems.length === 0 ? '' : `; they may be sibs (${listWords(stems)}), then F ${coefficient(ifSibs ?? 0)}`;
  if (f.low > 0) return `${shared.length > 0 ? `share ${listWords(shared)}` : 'share parents'}${sibs}`;
  if (f.high === null || f.high > 0) return `may share ${listWords(shared)}: the journal leaves it open${sibs}`;
  return `no shared parents on record${sibs}`;
}

/** Common ancestors (themselves included) that have no common ancestor below them. */
function nearest(animals: ReadonlyMap<string, Possible>, one: string, other: string): readonly string[] {
  const mine = ancestry(animals, [one]);
  const common = [...ancestry(animals, [other])].filter((id) => mine.has(id));
  return common.filter((id) => !common.some((lower) => lower !== id && ancestry(animals, [lower]).has(id)));
}

function sharedStems(pedigree: Pedigree, one: Animal, other: Animal): readonly string[] {
  const mine = foundersOf(pedigree, [one.id]);
  const theirs = foundersOf(pedigree, [other.id]);
  const common = mine.filter(
    ({ id, stem }) => stem !== null && theirs.some((founder) => founder.id !== id && founder.stem?.key === stem.key),
  );
  return [...new Set(common.flatMap(({ stem }) => stem?.says ?? []))];
}

/** Kinship where the founders of one stem have one father and one mother. */
function asSibs({ animals }: Pedigree, one: Animal, other: Animal): number {
  const withStems = new Map<string, Possible>(animals);
  for (const id of ancestry(animals, [one.id, other.id])) {
    const stem = animals.get(id)?.stem ?? null;
    if (stem === null) continue;
    const sire = `father of ${stem.key}`;
    const dam = `mother of ${stem.key}`;
    for (const parent of [sire, dam]) withStems.set(parent, { id: parent, choice: parent, couples: [] });
    withStems.set(id, { id, choice: `stem ${id}`, couples: [{ sire, dam }] });
  }
  const bounds = kinshipBounds(withStems, one.id, other.id);
  return bounds.high ?? bounds.low;
}

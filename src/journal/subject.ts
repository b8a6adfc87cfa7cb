/** Who or what a line is about, after names were looked up. Names are written as they were declared. */

/** A group of grown fish kept for breeding, or bought in: what `pair`, `trio`, `harem`, `colony`, `group` declare. */
export type GroupKind = 'pair' | 'trio' | 'harem' | 'colony' | 'group';

export type Sex = 'male' | 'female';

/** One fish of a group: by its own name, or by its sex where no name was given. */
export interface Member {
  readonly sex: Sex | null;
  /** The fish's own name (`Fern`), or null: "the male", "one of the females". */
  readonly name: string | null;
}

/**
 * The fish that a clause is about. `implied` is a clause that names none: the fold finds the one
 * candidate in that tank, or reports which there are.
 */
export type FishRef =
  | {
      readonly kind: 'implied';
      /** `fry`: whatever young there are. */
      readonly young?: true;
      /** `2 krib`: those of that species. */
      readonly species?: string;
    }
  /** The grown fish of a group: `Rowan`, or `A1 pair`, which names no group (null) but its kind. */
  | {
      readonly kind: 'group';
      readonly group: string | null;
      readonly member: Member | null;
      readonly groupKind?: GroupKind;
    }
  /** A brood by name (`Rowan-1`, `R7`), or a mixed stock by any of its names. */
  | { readonly kind: 'brood'; readonly brood: string };

export type Subject =
  | { readonly kind: 'room' }
  | { readonly kind: 'loop'; readonly loop: string }
  | { readonly kind: 'tank'; readonly tank: string }
  /** Several tanks that only the plumbing of that day can list: `Long tanks`, `all tanks except Q1`. */
  | { readonly kind: 'tanks'; readonly of: { readonly loop: string } | 'all'; readonly except: readonly string[] }
  | { readonly kind: 'group'; readonly group: string; readonly member: Member | null }
  | { readonly kind: 'brood'; readonly brood: string }
  | { readonly kind: 'culture'; readonly culture: string }
  | { readonly kind: 'auction'; readonly auction: string }
  | { readonly kind: 'species'; readonly species: string };

/**
 * Everything that has a name, and the day from which it has it. Names are unique across all kinds, read
 * without regard to case, and shown as they were declared. Broods called GROUP-number need no declaring.
 */
import { toDay } from '../core/day.ts';
import type { Day } from '../core/day.ts';
import type { Place } from '../core/span.ts';
import type { GroupKind, Sex } from '../journal/subject.ts';

export type NameKind = 'tank' | 'loop' | 'row' | 'species' | 'group' | 'fish' | 'brood' | 'culture' | 'auction';

export interface Named {
  readonly kind: NameKind;
  readonly name: string;
  /** From this day on the name is known. */
  readonly day: Day;
  readonly place: Place;
  /** Place in the order of declaring, for names declared on one day. */
  readonly rank: number;
  readonly groupKind?: GroupKind;
  /** Of a fish: its group, and its sex where the line says so. */
  readonly group?: string;
  readonly sex?: Sex | null;
  /** Of a row. */
  readonly tanks?: readonly string[];
}

/** A name compared: composed characters, without case. */
export function nameKey(name: string): string {
  return name.normalize('NFC').toLowerCase();
}

const NOTHING: readonly Named[] = [];
const BROOD = /^(.+)-([1-9]\d{0,3})$/;

export class Names {
  /** By key, in order of day; the first is the declaration, the others amend it. */
  private readonly known = new Map<string, Named[]>();
  private order: readonly string[] | null = null;
  /** The same by the word as it is written, broods by number too; a name that comes makes all of it old. */
  private readonly written = new Map<string, readonly Named[]>();

  /** Notes a declaration; gives the earlier one of another kind whose name it takes, else null. */
  add(named: Named): Named | null {
    const key = nameKey(named.name);
    const there = this.known.get(key);
    if (there === undefined) this.known.set(key, [named]);
    else {
      const clash = there[0];
      if (clash !== undefined && clash.kind !== named.kind) return clash;
      there.push(named);
      there.sort((a, b) => a.day - b.day || a.rank - b.rank);
    }
    this.order = null;
    this.written.clear();
    return null;
  }

  /** All that is known of a word, oldest first: a journal writes the same few thousands of times. */
  private there(word: string): readonly Named[] {
    const before = this.written.get(word);
    if (before !== undefined) return before;
    const brood = (): readonly Named[] => {
      const found = this.brood(word);
      return found === null ? NOTHING : [found];
    };
    const there = this.known.get(nameKey(word)) ?? brood();
    this.written.set(word, there);
    return there;
  }

  /** What a word names, on any day; the latest word about it by `day`. Null where nothing has that name. */
  find(word: string, day: Day): Named | null {
    const there = this.there(word);
    const [first] = there;
    if (first === undefined) return this.possessor(word, day);
    let latest = first;
    // `row D: all well` speaks of the row and does not say anew which tanks are in it.
    for (const named of there) if (named.day <= day && (named.kind !== 'row' || named.tanks)) latest = named;
    // The name is shown as it was declared, and known since then.
    return latest === first ? first : { ...latest, name: first.name, day: first.day };
  }

  /** How many lines declare a name. */
  timesDeclared(word: string): number {
    return this.known.get(nameKey(word))?.length ?? 0;
  }

  /** Whether a word names anything, on any day. */
  readonly isName = (word: string): boolean => this.there(word).length > 0 || this.possessor(word, toDay(0)) !== null;

  /** Whether a word names fish. */
  readonly isFish = (word: string): boolean => {
    const kind = this.there(word)[0]?.kind ?? this.possessor(word, toDay(0))?.kind;
    return kind === 'group' || kind === 'fish' || kind === 'brood';
  };

  /** `Rowan's`. */
  private possessor(word: string, day: Day): Named | null {
    return word.endsWith("'s") ? this.find(word.slice(0, -2), day) : null;
  }

  /** `Rowan-3`, where Rowan is a group. */
  private brood(word: string): Named | null {
    const match = BROOD.exec(word);
    const [base, number] = [match?.[1], match?.[2]];
    const group = base === undefined ? undefined : this.known.get(nameKey(base))?.[0];
    if (group?.kind !== 'group' || number === undefined) return null;
    return { group: group.name, ...group, kind: 'brood', name: `${group.name}-${number}` };
  }

  /** The earliest declaration of each name, with its kind; those of `kind` only where it is given. */
  *all(kind: NameKind | null = null): Generator<Named> {
    for (const [first] of this.known.values()) {
      if (first !== undefined && (kind === null || first.kind === kind)) yield first;
    }
  }

  /** Names known on a day, for completion. */
  on(day: Day): readonly Named[] {
    return [...this.all()].filter((named) => named.day <= day);
  }

  /** Tanks in order of declaration: by day, then by name as people count (`A2` before `A10`). */
  tanksInOrder(): readonly string[] {
    this.order ??= [...this.all('tank')]
      .sort((a, b) => a.day - b.day || byName(a.name, b.name))
      .map(({ name }) => name);
    return this.order;
  }

  /** Everything declared, name by name, as plain data that `restored` takes. */
  declarations(): readonly (readonly Named[])[] {
    return [...this.known.values()];
  }

  /** The directory that gave these declarations. */
  static restored(declarations: ReturnType<Names['declarations']>): Names {
    const names = new Names();
    for (const there of declarations) {
      const [first] = there;
      if (first !== undefined) names.known.set(nameKey(first.name), [...there]);
    }
    return names;
  }

  /** A directory that starts with everything in this one and leaves it alone. */
  copy(): Names {
    const copy = new Names();
    for (const [key, there] of this.known) copy.known.set(key, [...there]);
    return copy;
  }
}

/** Order of names as people count: runs of digits by their number, the rest by letter without case. */
export function byName(a: string, b: string): number {
  const [left, right] = [runs(a), runs(b)];
  for (let i = 0; i < Math.min(left.length, right.length); i += 1) {
    const [x, y] = [left[i] ?? '', right[i] ?? ''];
    const numeric = /^\d/.test(x) && /^\d/.test(y) ? Number(x) - Number(y) : 0;
    if (numeric !== 0) return numeric;
    if (x !== y) return x < y ? -1 : 1;
  }
  return left.length - right.length || (a < b ? -1 : a > b ? 1 : 0);
}

function runs(name: string): readonly string[] {
  return nameKey(name).match(/\d+|\D+/g) ?? [];
}

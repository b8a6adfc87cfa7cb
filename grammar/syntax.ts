/**
 * What the parser makes of a line: plain nodes with their places in it, words still as written. Whether
 * a name is known, a date exists or a number fits its unit is decided later, in `src/language`.
 */
import type { ClauseKind, LinkName } from './phrases.ts';

/** Offsets in the line, end exclusive. */
export interface Piece {
  readonly from: number;
  readonly to: number;
}

/** One word or phrase; `sense` is what it stands for: `female` for `f`, `torn fin` for `fin split`. */
export interface WordNode extends Piece {
  readonly text: string;
  readonly sense: string;
}

/** A name: of a tank, a fish, anything. `numbered` where it was written as a number. */
export interface NameNode extends Piece {
  readonly type: 'name';
  readonly text: string;
  readonly numbered: boolean;
}

/** `18`, `about 40`, `30-50 mm`, `100 x 40 x 40 cm`, `a few`, `2-4 days ago`. */
export interface QuantityNode extends Piece {
  readonly type: 'quantity';
  /** A word that says it all: `all`, `a few`; then nothing else but perhaps `ago` is set. */
  readonly word: WordNode | null;
  readonly fuzz: 'about' | 'over' | 'under' | null;
  /** One number, or the edges of a box. */
  readonly numbers: readonly WordNode[];
  /** The other end of a range. */
  readonly high: WordNode | null;
  readonly plus: boolean;
  /** The unit that counts for all its numbers: the last one written. */
  readonly unit: WordNode | null;
  /** Every unit written: they should all be the same. */
  readonly units: readonly WordNode[];
  /** A measure of one's own: `2 buckets`. */
  readonly scoop: WordNode | null;
  readonly noun: WordNode | null;
  readonly ago: boolean;
}

export interface SexNode extends Piece {
  readonly type: 'sex';
  readonly sex: string;
}

/** Words in quotes; the text lies between `from + 1` and the closing quote. */
export interface QuoteNode extends Piece {
  readonly type: 'quote';
}

/** Bare words where a clause calls for a text. */
export interface TextNode extends Piece {
  readonly type: 'text';
}

/** An ISO date, `yesterday`, `14 Feb`, `friday`, `20th`. */
export interface DateNode extends Piece {
  readonly type: 'date';
  readonly text: string;
}

/** `male on female`. */
export interface VersusNode extends Piece {
  readonly type: 'versus';
  readonly doer: WordNode;
  readonly sufferer: WordNode;
}

/** `every 6 weeks`, `every month`, `daily`. */
export interface EveryNode extends Piece {
  readonly type: 'every';
  readonly period: string | null;
  readonly quantity: QuantityNode | null;
}

/** A chore or a temporary measure that the clause is about: `stop water change`, `keep lights off`. */
export interface ThingNode extends Piece {
  readonly type: 'action' | 'measure';
  readonly sense: string;
}

export type LinkValue = NameNode | QuantityNode | QuoteNode | TextNode | DateNode | SexNode;

/** A word and what it leads to: `to C1`, `at 4.00`, `until 2026-02-18`, `rest stay`. */
export interface LinkNode extends Piece {
  readonly type: 'link';
  readonly link: LinkName;
  readonly values: readonly LinkValue[];
}

export type DetailNode =
  NameNode | QuantityNode | SexNode | QuoteNode | TextNode | DateNode | VersusNode | EveryNode | ThingNode | LinkNode;

/** One clause: the phrase that opened it, what stood before that phrase, and its details as written. */
export interface ClauseNode extends Piece {
  readonly kind: ClauseKind;
  readonly head: WordNode;
  readonly before: readonly DetailNode[];
  readonly details: readonly DetailNode[];
  /** After `mistake`: it takes back such a clause. */
  readonly mistake: boolean;
}

/** `A1`, or `D1 to D6`. */
export interface RangeNode extends Piece {
  readonly first: NameNode;
  readonly last: NameNode | null;
  /** A comma or `and` stands before it. */
  readonly joined: boolean;
}

export type HeadingNode = Piece &
  (
    | { readonly type: 'room' }
    | { readonly type: 'declare'; readonly word: WordNode; readonly names: readonly NameNode[] }
    | { readonly type: 'all tanks'; readonly except: readonly NameNode[] }
    | {
        readonly type: 'names';
        readonly ranges: readonly RangeNode[];
        /** `Long tanks`, perhaps `except` some. */
        readonly tanks: boolean;
        readonly except: readonly NameNode[];
        /** `A1 pair`. */
        readonly group: WordNode | null;
        /** `Rowan male`. */
        readonly sex: WordNode | null;
      }
  );

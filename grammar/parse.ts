/** From a folded line to nodes: cuts it, tags it and runs the one parser over it. */
import type { IToken } from 'chevrotain';
import { tagHeading } from './headings.ts';
import { JournalParser } from './parser.ts';
import { movedClauses, movedHeading } from './moving.ts';
import type { HeadingKind } from './phrases.ts';
import { shapeOf, Shapes } from './shapes.ts';
import type { Saved } from './shapes.ts';
import { Separator } from './tags.ts';
import type { ClauseNode, HeadingNode, Piece } from './syntax.ts';
import { tagClauses } from './tagging.ts';
import type { TagContext } from './openings.ts';
import type { TagFault } from './tagging.ts';
import { endOf } from './tokens.ts';

let made: JournalParser | null = null;

/** The parser, made when first needed and used for every line after that. */
function parser(): JournalParser {
  // The tests build one with every check of the toolkit on; here they would only cost time.
  made ??= new JournalParser(true);
  return made;
}

/** A clause that could not be parsed: the token at which it stopped making sense, or its end. */
export interface ParseFault {
  readonly clause: Piece;
  /** Where the words are that do not belong; equal ends where something is missing there. */
  readonly at: Piece;
  /** The rule that was being read: `byDetail`, `sparedClause`. */
  readonly rule: string;
  /** The first token of the clause's phrase, as tagged. */
  readonly tokens: readonly IToken[];
}

export interface ParsedClauses {
  readonly clauses: readonly ClauseNode[];
  readonly unread: readonly ParseFault[];
  readonly faults: readonly TagFault[];
}

/** Headings and clauses parsed before, by the shape of their tokens. */
const headings = new Shapes<HeadingNode>(movedHeading);
const clauses = new Shapes<readonly ClauseNode[]>(movedClauses);

/** Shapes with what they parse to, as plain data. */
interface SavedShapes {
  readonly headings: readonly Saved[];
  readonly clauses: readonly Saved[];
}

/** Every shape that was parsed so far, here or where it was taken out before; null where none is new. */
export function takeOutShapes(): SavedShapes | null {
  if (headings.fresh + clauses.fresh === 0) return null;
  return { headings: headings.takeOut(), clauses: clauses.takeOut() };
}

/**
 * Shapes that this very grammar took out, so that lines of them need no parser. What is none is not taken. `own`: to
 * be taken out again, as the build’s are not.
 */
export function bringBackShapes(saved: unknown, own: boolean): void {
  if (!isSavedShapes(saved)) return;
  headings.bringBack(saved.headings, own);
  clauses.bringBack(saved.clauses, own);
}

function isSavedShapes(value: unknown): value is SavedShapes {
  return typeof value === 'object' && value !== null && 'headings' in value && 'clauses' in value;
}

/** The heading that the tokens from `from` to before `to` make, or the place where they stop making one. */
export function parseHeading(tokens: readonly IToken[], from: number, to: number): HeadingNode | ParseFault {
  const own = tokens.slice(from, to);
  const key = shapeOf(own);
  const before = headings.get(key, own);
  if (before !== undefined) return before;
  const node = parseHeadingAfresh(tokens, from, to);
  if (!isParseFault(node)) headings.keep(key, own, node);
  return node;
}

/** The same without looking at what was read before: what tests hold it against. */
export function parseHeadingAfresh(tokens: readonly IToken[], from: number, to: number): HeadingNode | ParseFault {
  const tagged = tagHeading(tokens, from, to);
  const parse = parser();
  parse.input = tagged;
  const node = parse.heading();
  return parse.errors.length === 0 && node !== undefined ? node : parseFault(tagged);
}

export function isParseFault(node: HeadingNode | ParseFault): node is ParseFault {
  return 'rule' in node;
}

/** What names there are. */
export type Known = Pick<TagContext, 'isName' | 'isFish'>;

/** The clauses of a line from token `start` on. One that makes no sense does not hide the others. */
export function parseClauses(
  tokens: readonly IToken[],
  start: number,
  heading: HeadingKind,
  known: Known,
): ParsedClauses {
  const own = tokens.slice(start);
  const key = `${heading}\n${shapeOf(own, known)}`;
  const before = clauses.get(key, own);
  if (before !== undefined) return { clauses: before, unread: [], faults: [] };
  const parsed = parseClausesAfresh(tokens, start, heading, known);
  if (parsed.unread.length === 0 && parsed.faults.length === 0) clauses.keep(key, own, parsed.clauses);
  return parsed;
}

/** The same without looking at what was read before. */
export function parseClausesAfresh(
  tokens: readonly IToken[],
  start: number,
  heading: HeadingKind,
  known: Known,
): ParsedClauses {
  const { isName, isFish } = known;
  const tagged = tagClauses(tokens, start, { heading, isName, isFish });
  if (tagged.tokens.length === 0) return { clauses: [], unread: [], faults: tagged.faults };
  const parse = parser();
  parse.input = [...tagged.tokens];
  const found = parse.clauses();
  if (parse.errors.length === 0 && found !== undefined) return { clauses: found, unread: [], faults: tagged.faults };
  return { ...oneByOne(tagged.tokens), faults: tagged.faults };
}

/** Parses each clause by itself, so that every one that is wrong is found. */
function oneByOne(tokens: readonly IToken[]): { clauses: ClauseNode[]; unread: ParseFault[] } {
  const parse = parser();
  const read: ClauseNode[] = [];
  const unread: ParseFault[] = [];
  let from = 0;
  for (let at = 0; at <= tokens.length; at += 1) {
    if (at < tokens.length && tokens[at]?.tokenType !== Separator) continue;
    const own = tokens.slice(from, at);
    from = at + 1;
    parse.input = own;
    const found = parse.clauses();
    if (parse.errors.length === 0 && found !== undefined) read.push(...found);
    else unread.push(parseFault(own));
  }
  return { clauses: read, unread };
}

function parseFault(tokens: readonly IToken[]): ParseFault {
  const [error] = parser().errors;
  const [first, last] = [tokens[0], tokens.at(-1)];
  const clause = { from: first?.startOffset ?? 0, to: last ? endOf(last) : 0 };
  const token = error?.token;
  const real = token !== undefined && token.startOffset >= 0;
  const at = real ? { from: token.startOffset, to: endOf(token) } : { from: clause.to, to: clause.to };
  return { clause, at, rule: error?.context.ruleStack.at(-1) ?? '', tokens };
}

/** Names and clause words for the Tab key: what the words before the cursor may be the beginning of. */
import type { HeadingKind } from '../../../grammar/phrases.ts';
import { canonicalPhrases } from '../../../grammar/phrases.ts';
import type { Room } from '../../state/draft.ts';

/** The words that fit, and the part of the line that they take the place of. */
type Completion = readonly [fitting: readonly string[], part: string];

/** Before the colon names alone; behind it names, and the words that open a clause of that kind of line. */
export function complete(room: Room, line: string): Completion {
  const names = namesIn(room);
  const word = /\S*$/.exec(line)?.[0] ?? '';
  const colon = line.indexOf(':');
  if (colon < 0) return [fitting([...names.keys()], word).map((name) => `${name}: `), word];
  const clause = /[:;,]\s*([^:;,]*)$/.exec(line)?.[1] ?? '';
  const head = line.slice(0, colon).trim().split(/\s+/).at(-1) ?? '';
  const phrases = canonicalPhrases(names.get(head) ?? 'tank').filter((phrase) => phrase !== '');
  const opened = fitting(phrases, clause).map((phrase) => `${phrase} `);
  if (clause !== word) return opened.length > 0 ? [opened, clause] : [named(names, word), word];
  return [[...named(names, word), ...opened], word];
}

function named(names: ReadonlyMap<string, unknown>, part: string): readonly string[] {
  return fitting([...names.keys()], part).map((name) => `${name} `);
}

function fitting(words: readonly string[], part: string): readonly string[] {
  const low = part.toLowerCase();
  return words.filter((word) => word.toLowerCase().startsWith(low)).sort();
}

/** Every name of the room, and what kind of heading it makes. */
function namesIn({ plumbing, stock, cultures, settings, sale }: Room): ReadonlyMap<string, HeadingKind> {
  return new Map<string, HeadingKind>([
    ['room', 'room'],
    ...of(stock.species, 'species'),
    ...of(plumbing.tanks, 'tank'),
    ...of(settings.rows, 'tank'),
    ...of(plumbing.loops, 'loop'),
    ...of(stock.groups, 'group'),
    ...of(stock.broods, 'brood'),
    ...of(cultures.jars, 'culture'),
    ...of(sale.auctions, 'auction'),
  ]);
}

function of(table: ReadonlyMap<string, unknown>, kind: HeadingKind): readonly [string, HeadingKind][] {
  return [...table.keys()].map((name) => [name, kind]);
}

/** `tank A1-A6: 54 L`: several tanks declared in one line, which would make one tank of that name, or none. */
import { endOf } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

const TANKS = /^tanks?$/iu;
/** One word that counts from one tank to another: `A1-A6`. `A1-6` may be shelf, row and place. */
const COUNTING = /^(?<row>\p{L}+)(?<first>\d+)[-–](?<again>\p{L}+)(?<last>\d+)$/u;
/** What stands between names that are listed or counted along. */
const BETWEEN = /^(?:to|till|through|thru|until|and|,|&|\.+|-|–)$/iu;

/** Said of a heading that declares several; null where it declares one, or is about tanks that are there already. */
export function severalTanks(line: LineContext, tokens: readonly Token[], start: number, colon: number): Fault | null {
  const [word, first] = tokens.slice(start, colon);
  const last = tokens[colon - 1];
  if (word === undefined || first === undefined || last === undefined || !TANKS.test(word.image)) return null;
  const one = countedFrom(first.image);
  const listed = colon > start + 2 && tokens.slice(start + 2, colon).some(({ image }) => BETWEEN.test(image));
  if (one === null && !listed) return null;
  const name = one ?? first.image;
  if (line.names.isName(name) || line.names.isName(first.image)) return null;
  const at = { from: word.startOffset, to: endOf(last) };
  return fault('declare-one', at, 'one line declares one tank: write a line for each', `tank ${name}`);
}

/** `A1` of `A1-A6`. */
function countedFrom(name: string): string | null {
  const { row = '', first = '', again = '', last = '' } = COUNTING.exec(name)?.groups ?? {};
  return row !== '' && row.toLowerCase() === again.toLowerCase() && Number(first) < Number(last) ? row + first : null;
}

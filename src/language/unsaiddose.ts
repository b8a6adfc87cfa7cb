/** An amount of something without its verb: `10 g salt`, `salt 2 g/L`. It is offered and never taken. */
import { clausesUnder } from '../../grammar/phrases.ts';
import type { HeadingKind } from '../../grammar/phrases.ts';
import { endOf, Num, Unit, Word } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { FOODS, UNIT_WORDS } from '../../grammar/words.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

const AMOUNTS: ReadonlySet<string> = new Set(['g', 'mg', 'kg', 'oz', 'mL', 'g/L', 'mL/L', 'mg/L']);
/** What fish eat, rather than what goes into their water. */
const FOOD = /^(?:flakes?|pellets?|powder|crumbs?|granules?|\w*worms?|daphnia|\w*shrimps?|krill|\w*food|yolk)$/iu;

/** The words as a dose or a feed, where they are an amount and what there was of it; null for all else. */
export function unsaidDose(line: LineContext, tokens: readonly Token[], heading: HeadingKind): Fault | null {
  const [first, last] = [tokens[0], tokens.at(-1)];
  const words = tokens.filter(({ tokenType }) => tokenType === Word);
  const units = tokens.filter(({ tokenType }) => tokenType === Unit);
  const numbers = tokens.filter(({ tokenType }) => tokenType === Num);
  if (first === undefined || last === undefined || !clausesUnder(heading).has('dosed')) return null;
  if (words.length === 0 || units.length !== 1 || numbers.length !== 1 || tokens.length > words.length + 2) return null;
  const unit = UNIT_WORDS.get(units[0]?.image.toLowerCase() ?? '') ?? '';
  if (!AMOUNTS.has(unit) || words.some(({ image }) => line.names.isName(image))) return null;
  const at = { from: first.startOffset, to: endOf(last) };
  const said = line.text.slice(at.from, at.to);
  const eaten = words.some(({ image }) => FOODS.has(image.toLowerCase()) || FOOD.test(image));
  const says = `«${said}» does not say what was done with it: dosed, fed, bought?`;
  return fault('unknown-clause', at, says, `${eaten ? 'fed' : 'dosed'} ${said.replace(/\s+(?:added|in|fed)$/iu, '')}`);
}

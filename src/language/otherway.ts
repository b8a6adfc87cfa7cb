/** Fish that came or went, told so that it is offered otherwise: `C2: 12 from C1`, `2 gone`. */
import { numberEnd, wordOf } from '../../grammar/matching.ts';
import type { Piece } from '../../grammar/syntax.ts';
import { endOf, Word } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { SEX_WORDS } from '../../grammar/words.ts';
import { isoDay } from '../core/day.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

/**
 * That fish came from another tank; `here` is null where the heading is no one tank, `said` what is told of them. What
 * else the line says is of its own tank: nothing is offered that would leave it out.
 */
export function movedHere(line: LineContext, from: Piece, here: string | null, said: string): Fault {
  const tank = line.text.slice(from.from, from.to);
  const says = `where fish are moved from stands before the colon: a line of ${tank}`;
  const wrong = fault('place-in-heading', from, says);
  return here === null || line.text.includes(';')
    ? wrong
    : { ...wrong, line: `${isoDay(line.day)} ${tank}: moved ${said} to ${here}` };
}

const CAME: ReadonlySet<string> = new Set(['took', 'came', 'in']);

/** The same where no verb that is read stands before them; null for all other words. */
export function cameFrom(line: LineContext, tokens: readonly Token[], colon: number): Fault | null {
  let at = CAME.has(wordOf(tokens[0])) ? 1 : 0;
  const first = at;
  at = numberEnd(tokens, at);
  while (SEX_WORDS.has(wordOf(tokens[at])) || wordOf(tokens[at]) === 'of' || isFish(line, tokens[at])) at += 1;
  const [start, end] = [tokens[first], tokens[at - 1]];
  if (wordOf(tokens[at]) === 'in') at += 1;
  const from = tokens[at + 1];
  if (wordOf(tokens[at]) !== 'from' || from === undefined || tokens.length > at + 2) return null;
  if (start === undefined || end === undefined || at === first) return null;
  if (line.names.find(from.image, line.day)?.kind !== 'tank') return null;
  const heading = line.text.slice(0, colon).trim().split(/\s+/u);
  const here = line.names.find(heading.at(-1) ?? '', line.day);
  const place = { from: from.startOffset, to: endOf(from) };
  const said = line.text.slice(start.startOffset, endOf(end));
  return movedHere(line, place, heading.length === 2 && here?.kind === 'tank' ? here.name : null, said);
}

/** `2 gone`, `male gone`: nobody can say how they went. Null for all other words. */
export function gone(line: LineContext, tokens: readonly Token[]): Fault | null {
  const last = tokens.at(-1);
  if (last === undefined || wordOf(last) !== 'gone') return null;
  const who = tokens.slice(numberEnd(tokens, 0), -1);
  if (tokens.length < 2 || !who.every((token) => SEX_WORDS.has(wordOf(token)) || isFish(line, token))) return null;
  const at = { from: last.startOffset, to: endOf(last) };
  return fault('two-readings', at, '«gone» may mean `missing`, `died` or `sold`: write which', 'missing');
}

function isFish({ names }: LineContext, token: Token | undefined): boolean {
  return token?.tokenType === Word && names.isFish(token.image);
}

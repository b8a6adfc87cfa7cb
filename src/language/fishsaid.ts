/** Fish that came, went or are there, told without the verb that says so. The line that would be read is offered. */
import { isoDay } from '../core/day.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { isSpecies, NUMBER, pattern } from './said.ts';
import type { Said } from './said.ts';

const BEFORE = pattern(
  `^(?:in|new\\s+arrivals?|arrivals?|arrived|unpacked|added|new)\\s*:?\\s+(${NUMBER}\\s+(?:new\\s+)?(\\p{L}[^\\s,]*).*)$`,
);
const BEHIND = pattern(
  `^(${NUMBER}\\s+(?:new\\s+)?(\\p{L}[^\\s,]*))\\s+(?:(?:came\\s+)?in|arrived|came)((?:\\s|,).*)?$`,
);

/** `in: 6 krib`, `6 krib arrived`: of a species, so they are no fish of this room that were moved. */
export function arrived({ line, at, text, has }: Said): Fault | null {
  const [, before, one] = BEFORE.exec(text) ?? [];
  const [, behind, other, rest = ''] = before === undefined ? (BEHIND.exec(text) ?? []) : [];
  const [fish, told] = [one ?? other, before ?? (behind === undefined ? undefined : `${behind}${rest}`)];
  if (fish === undefined || told === undefined || !has.has('bought') || !isSpecies(line, fish)) return null;
  const words = `received ${told.replace(/(?<=^\S+\s+(?:\S+\s+)?)new\s+/iu, '')}`;
  return fault('unknown-clause', at, `fish that came are told as \`${words}\``, words);
}

const GOT = pattern(`^(?:got|received|bought|took|put\\s+in)\\s+(${NUMBER}\\s+(?:of\\s+)?(\\S+))\\s+from\\s+(\\S+)$`);
const IN = pattern(`^(${NUMBER}(?:\\s+(?:of\\s+)?(\\S+))?)\\s+in\\s+from\\s+(\\S+)$`);

/** `C2: received 10 Rowan-1 from C1`, `C2: 10 in from C1`: a move, told where it led. */
export function received({ line, at, text, has }: Said): Fault | null {
  const [, many, fish, from] = GOT.exec(text) ?? IN.exec(text) ?? [];
  if (many === undefined || from === undefined || !has.has('moved')) return null;
  if (fish !== undefined && !line.names.isFish(fish)) return null;
  const tank = line.names.find(from, line.day);
  const here = headingOf(line.text);
  if (tank?.kind !== 'tank' || line.names.find(here, line.day)?.kind !== 'tank' || line.text.includes(';')) return null;
  const says = `where fish are moved from stands before the colon: a line of ${tank.name}`;
  return { ...fault('place-in-heading', at, says), line: `${isoDay(line.day)} ${tank.name}: moved ${many} to ${here}` };
}

/** The one word between date and colon; empty where there are several. */
function headingOf(text: string): string {
  return /^\s*\S+\s+(?:\d{1,2}:\d{2}\s+)?([^\s:]+)\s*:/u.exec(text)?.[1] ?? '';
}

const MINE = pattern(`^(?:keep\\s+|kept\\s+|hold\\s+)?(${NUMBER}(?:\\s+\\S+)?)\\s+for\\s+(?:me|us|myself|ourselves)$`);

/** `8 for me` */
export function forMyself({ at, text, has }: Said): Fault | null {
  const [, many] = MINE.exec(text) ?? [];
  if (many === undefined || !has.has('kept back')) return null;
  return fault('unknown-clause', at, `fish that you keep are \`kept back\``, `kept back ${many}`);
}

const AT = /^(\S.*?\s)at\s+(?:the\s+)?(\S+?)(?:\s+auction)?((?:\s|,).*)?$/iu;

/** `sold 6 at the Winter auction for 35` */
export function atAuction({ line, at, text, reads }: Said): Fault | null {
  const [, before, name, rest = ''] = AT.exec(text) ?? [];
  const auction = name === undefined ? null : line.names.find(name, line.day);
  if (before === undefined || auction?.kind !== 'auction') return null;
  const words = `${before}at ${auction.name}${rest}`;
  if (words === text || !reads(words)) return null;
  return fault('unknown-clause', at, `an auction is named by its name alone: \`at ${auction.name}\``, words);
}

const STANDS =
  /^((?:the\s+)?(?:male|female|pair|m|f|he|she|her|him|[\p{L}][\p{L}\p{N}'_-]*))\s+(?:is\s+|are\s+)?(?:now\s+)?in\s+(\S+?)(?:\s+now)?$/iu;

/** `N1: female in Q1`: of another tank than that of the line it is a move. */
export function inOtherTank({ line, at, text, has, reads }: Said): Fault | null {
  const [, who, where] = STANDS.exec(text) ?? [];
  const tank = where === undefined ? null : line.names.find(where, line.day);
  if (who === undefined || tank?.kind !== 'tank' || !has.has('moved')) return null;
  const words = `moved ${who} to ${tank.name}`;
  if (line.names.find(headingOf(line.text), line.day)?.name === tank.name || !reads(words)) return null;
  return fault('unknown-clause', at, `«${text}» is said as \`${words}\``, words);
}

const YOUNG = pattern(`^(${NUMBER}(?:\\s?-\\s?\\d+|\\s?ish|\\+)?)\\s+(fry|young|babies|juvies|juvs|juveniles|fish)$`);

/** `12 fry`: what is said of them? */
export function youngAlone({ at, text, has }: Said): Fault | null {
  if (!YOUNG.test(text) || !has.has('counted')) return null;
  const born = has.has('stage') && !/fish$/iu.test(text) ? `, \`fry seen ${text.replace(/\s+\S+$/u, '')}\`` : '';
  const says = `«${text}» may be \`counted ${text}\`${born}, or fish that were moved or sold: write which`;
  return fault('two-readings', at, says, `counted ${text}`);
}

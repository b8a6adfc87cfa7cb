/**
 * What keepers write every week and no clause is made of: a chore in words of their own, a day that two clauses share,
 * `all but 2`, a buyer before what he took. The line that would be read is offered, and never taken.
 */
import type { HeadingKind } from '../../grammar/phrases.ts';
import type { Piece } from '../../grammar/syntax.ts';
import { clausesUnder } from '../../grammar/phrases.ts';
import { arrived, atAuction, forMyself, inOtherTank, received, youngAlone } from './fishsaid.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';
import { isEater } from './otherwords.ts';
import { rephrased } from './rephrased.ts';
import { isClauses, isSomebody, isSpecies, NUMBER, pattern } from './said.ts';
import type { Said } from './said.ts';
import { daysAway, fromTo, onWeekday } from './spansaid.ts';
import { amiss, cost, thingDone } from './thingsaid.ts';
import { unparted } from './unparted.ts';

/** What such words may be; null for all others. `at` are all words of the clause. */
export function oftenSaid(line: LineContext, at: Piece, heading: HeadingKind): Fault | null {
  const text = line.text.slice(at.from, at.to).replace(/[\s.]+$/u, '');
  // What stands in quotes is nobody's clause.
  if (text.length > LONGEST || /["“”]/u.test(text)) return null;
  const reads = (words: string): boolean => isClauses(line, words, heading);
  const here = { from: at.from, to: at.from + text.length };
  const said: Said = { line, at: here, text, heading, has: clausesUnder(heading), reads };
  return (
    putBack(said) ??
    fromTo(said) ??
    daysAway(said) ??
    onWeekday(said) ??
    shared(said) ??
    ownChore(said) ??
    allBut(said) ??
    buyerTook(said) ??
    sponges(said) ??
    newFish(said) ??
    arrived(said) ??
    received(said) ??
    cameFromSomebody(said) ??
    onlyNumber(said) ??
    broodNumber(said) ??
    forMyself(said) ??
    atAuction(said) ??
    inOtherTank(said) ??
    rephrased(said.at, text, reads) ??
    unparted(said) ??
    amiss(said) ??
    thingDone(said) ??
    cost(said) ??
    youngAlone(said)
  );
}

/** Longer clauses are a story, and no pattern's business. */
const LONGEST = 120;

const DAYS =
  'yesterday|yest|yday|today|last night|(?:on )?(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?|\\d+ days? ago';
const PERIODS = 'every\\s+(?:other\\s+|\\d+\\s+|[a-z]+\\s+)?[a-z]+|daily|weekly|monthly';
const LENGTHS = '(?:until|till?)\\s+\\S+(?:\\s+\\S+)?|for\\s+\\d+\\s*\\p{L}+';

const SHARED = pattern(`^(\\S.*?)\\s*(?:\\s(?:and|plus)\\s|&)\\s*(\\S.*?)\\s+(${DAYS}|${PERIODS}|${LENGTHS})$`);

/** `wc 30 % and rinsed sponge yesterday` */
function shared({ at, text, reads }: Said): Fault | null {
  const [, one, other, when] = SHARED.exec(text) ?? [];
  if (one === undefined || other === undefined || when === undefined) return null;
  const says = `«${when}» may be told of both: write it behind each`;
  const told = [one, other].map((words) => toldWith(words, when, reads));
  const isOwn = told.every((words) => words.startsWith('"'));
  const wrong = fault('two-readings', at, says, isOwn ? `${one} ${when}; ${other} ${when}` : told.join('; '));
  const otherwise = ownWords(at, `${one} and ${other}`, when);
  return otherwise === null ? wrong : { ...wrong, otherwise };
}

/** A clause with its time behind it; a chore in words of one's own in quotes, and one that has a period left as it is. */
function toldWith(words: string, when: string, reads: Said['reads']): string {
  const whole = `${words} ${when}`;
  if (OWN.test(words) && reads(words)) return words;
  if (reads(whole)) return whole;
  return OWN.test(whole) ? `"${words}" ${when}` : whole;
}

const OWN = pattern(`^(\\p{L}.*?)\\s+(${PERIODS})$`);

/** `change filter every 4 weeks` */
function ownChore({ at, text, has }: Said): Fault | null {
  const [, what, period] = OWN.exec(text) ?? [];
  if (what === undefined || period === undefined || !has.has('chore')) return null;
  const says = `«${what}» is a chore in words of your own: they stand in quotes`;
  return { ...fault('unknown-clause', at, says), edit: ownWords(at, what, period) };
}

function ownWords({ from, to }: Piece, what: string, period: string): Fault['edit'] {
  return /^(?:every|daily|weekly|monthly)/iu.test(period) ? { from, to, text: `"${what}" ${period}` } : null;
}

const ALL_BUT = pattern(
  `^(?:(?:moved?|put|shifted|transferred)\\s+)?all\\s+(?:but|except(?:\\s+for)?|bar)\\s+(${NUMBER})(?:\\s+(?:of\\s+)?(\\S+))?\\s+(?:moved\\s+)?(?:in)?to\\s+(\\S+)$`,
);

/** `all but 2 to W2`: two are left, and the others went. */
function allBut({ line, at, text, has }: Said): Fault | null {
  const [, number, fish, to] = ALL_BUT.exec(text) ?? [];
  if (number === undefined || to === undefined || !has.has('moved')) return null;
  const whose = fish === undefined || !line.names.isFish(fish) ? '' : ` ${fish}`;
  const says = `«${text}» is a move, and a count of those that stayed`;
  return fault('unknown-clause', at, says, `moved all${whose} to ${to}, rest stay; counted ${number}`);
}

const PUT_BACK = /^put\s+(?:the\s+)?(\S+)\s+back(?:\s+(?:in|into|to)\s+(\S+))?$/iu;

/** `put the male back` */
function putBack({ at, text, has }: Said): Fault | null {
  const [, who, tank] = PUT_BACK.exec(text) ?? [];
  if (who === undefined || !has.has('back')) return null;
  const words = tank === undefined ? `${who} back` : `${who} back in ${tank}`;
  return fault('unknown-clause', at, `«${text}» is said as \`${words}\``, words);
}

const TOOK = pattern(
  `^((?:the\\s+)?[\\p{L}'’]+(?:\\s+[\\p{L}'’]+)?)\\s+(?:took|bought|collected|picked\\s+up|had)\\s+(${NUMBER}.*)$`,
);

/** `shop took 20 at 1.50`: sold, where money is told. */
function buyerTook({ line, at, text, has }: Said): Fault | null {
  const [, who, what] = TOOK.exec(text) ?? [];
  if (who === undefined || what === undefined || !has.has('sold') || !isSomebody(line, who)) return null;
  if (isEater(who) || /(?<!\p{L})(?:eggs?|fry|young|babies)(?!\p{L})/iu.test(what)) return null;
  const paid = /\s(?:at|for|@)\s*\S*\d/u.test(what);
  const to = /\s/u.test(who) ? `"${who}"` : who;
  const says = `nothing here is called «${who}»: who fish are for stands behind them`;
  return fault('unknown-fish', at, paid ? says : `${says}, after \`sold\` or \`gave away\``, `sold ${what} to ${to}`);
}

const BROOD = /^([\p{L}'’_]+)\s?(\d{1,3})\s+(\S.*)$/u;

/** `Rowan 1 counted 30`, `rowan1 …`: a brood without its hyphen. */
function broodNumber({ line, at, text }: Said): Fault | null {
  const [, group, number, rest] = BROOD.exec(text) ?? [];
  if (group === undefined || number === undefined || rest === undefined) return null;
  const brood = line.names.find(`${group}-${number}`, line.day);
  if (brood?.kind !== 'brood' || line.names.find(group, line.day)?.kind !== 'group') return null;
  return fault('unknown-fish', at, `a brood is written with a hyphen: \`${brood.name}\``, `${brood.name} ${rest}`);
}

const SPONGES =
  /^(?:both\s+|the\s+)*(?:sponges\s+(?:rinsed|squeezed|cleaned)(?:\s+out)?|(?:rinsed|squeezed|cleaned)(?:\s+out)?\s+(?:both\s+|the\s+)*sponges)$/iu;

/** `both sponges rinsed`: where none was left as it was, nothing of the filter lives on. */
function sponges({ at, text, has }: Said): Fault | null {
  if (!has.has('sponge rinsed') || has.has('layers cleaned') || !SPONGES.test(text)) return null;
  const says = `«${text}» may be \`rinsed sponge\`, or \`cleaned media\` where no sponge was left as it was: write which`;
  return fault('two-readings', at, says, 'rinsed sponge');
}

const NEW = pattern(`^(?:new\\s+fish[,:]?\\s+)?(${NUMBER})\\s+(?:new\\s+)?(\\S+)$`);

/** `6 new krib`, `new fish, 6 krib` */
function newFish({ line, at, text, has }: Said): Fault | null {
  const [, number, fish] = /^(?:new|\S+\s+new)\s/iu.test(text) ? (NEW.exec(text) ?? []) : [];
  if (number === undefined || fish === undefined || !has.has('bought') || !isSpecies(line, fish)) return null;
  return fault('unknown-clause', at, `«${text}» lacks its verb: \`bought\``, `bought ${number} ${fish}`);
}

const FROM = pattern(`^(${NUMBER})\\s+(\\S+)\\s+from\\s+(\\S.*)$`);

/** `6 krib from Sue` */
function cameFromSomebody({ line, at, text, has }: Said): Fault | null {
  const [, number, fish, who] = FROM.exec(text) ?? [];
  if (number === undefined || fish === undefined || who === undefined || !has.has('bought')) return null;
  if (!isSpecies(line, fish) || !isSomebody(line, who)) return null;
  return fault('unknown-clause', at, `«${text}» lacks its verb: \`bought\``, `bought ${text}`);
}

const ONLY = pattern(
  `^(${NUMBER}\\s+(\\p{L}[^\\s,]*))(?:,?\\s+((?:about\\s+|~\\s*)?\\d[\\d.,-]*\\s*(?:mm|cm|in(?:ch(?:es)?)?)))?$`,
);

/** `12 krib`, `12 krib, about 20 mm`: counted, or come? */
function onlyNumber({ line, at, text, has }: Said): Fault | null {
  const [, many, fish, size] = ONLY.exec(text) ?? [];
  if (many === undefined || fish === undefined || !has.has('counted') || !has.has('bought')) return null;
  if (!isSpecies(line, fish)) return null;
  const counted = size === undefined ? `counted ${many}` : `counted ${many}; ${fish} size ${size}`;
  return fault('two-readings', at, `«${text}» may be \`${counted}\` or \`bought ${text}\`: write which`, counted);
}

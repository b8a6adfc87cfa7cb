/** Parents, shared parents, lines and pairings as text and as JSON. Blank records are told as such: "on record". */
import type { CoupleRow, KinAnswer, LineRow, PairingRow, TreeRow } from '../questions/kin.ts';
import { countJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { heading, listWords, plural } from './words.ts';
import { paragraph } from './wrap.ts';

export function kinText(answer: KinAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer)}`, look.width, 2).split('\n');
  const { trees, couples, lines, pairings } = answer;
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    ...trees.map((tree) => treeText(tree, look)),
    table(look, COUPLES, coupleLines(couples)).trimEnd(),
    table(
      look,
      LINES,
      lines.map((line) => lineLine(line, look)),
    ).trimEnd(),
    table(look, PAIRINGS, pairings.filter(isFair).map(pairingLine)).trimEnd(),
    closeWords(pairings, look),
    paragraph(FOOT, look.width, 2),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

const FOOT =
  'F is the inbreeding of their young: at least that much, since founders are unknown (full sibs 0.25, half sibs 0.125)';

const COUPLES = [{ head: 'pair', wraps: true }, { head: 'F of their young' }, { head: 'on record', wraps: true }];
const LINES = [
  { head: 'line', wraps: true },
  { head: 'species' },
  { head: 'm/f' },
  { head: 'Ne', align: 'right' },
  { head: 'if one fish dies', wraps: true },
] as const;
const PAIRINGS = [
  { head: 'would pair', wraps: true },
  { head: 'F of their young' },
  { head: 'on record', wraps: true },
];

/** What to do about it, in one line: the worst first. */
function matters(answer: KinAnswer): string {
  const { asked, trees, lines } = answer;
  const [one, other] = asked;
  if (one !== undefined && other !== undefined) return ofTwo(answer, one, other);
  const close = tooClose(answer);
  if (one !== undefined) {
    const best = close === null ? bestFor(answer, one) : null;
    const known = trees[0]?.tree.some(({ depth }) => depth > 0) === true;
    return close ?? best ?? `${one}: ${known ? 'parents on record' : 'no parents on record'}`;
  }
  const ending = lines.filter(({ risk }) => risk?.weight === 'ends').map(({ name }) => name);
  if (ending.length > 0) {
    const [which, hangs] = ending.length === 1 ? ['line', 'it hangs'] : ['lines', 'each hangs'];
    return `raise young of the ${which} ${someOf(ending)}: ${hangs} on a single fish`;
  }
  if (close !== null) return close;
  return answer.couples.length + answer.pairings.length === 0
    ? 'no pairs, no young'
    : 'leave the pairs as they are: none shares parents on record';
}

/** So many names stand in the first line; the rest are counted. */
const NAMED = 3;

function someOf(names: readonly string[]): string {
  const rest = names.length - NAMED;
  return listWords(rest > 1 ? [...names.slice(0, NAMED), `${String(rest)} more`] : names);
}

/** From half sibs on nobody breeds on by choice (ours). */
const CLOSE = 0.125;

/** Whether the two that were asked about should be paired: as the closest of them are. */
function ofTwo({ couples }: KinAnswer, one: string, other: string): string {
  const [couple] = couples.toSorted((a, b) => b.kin.f.low - a.kin.f.low);
  if (couple === undefined) return `no pair: ${one} and ${other} are of one sex`;
  const { f, ifSibs, says: words } = couple.kin;
  if (f.low >= CLOSE) return `better not pair ${one} with ${other}: they ${words}`;
  if (f.low > 0 || f.high === null || f.high > 0)
    return `pair ${one} with ${other} only for want of better: they ${words}`;
  return ifSibs === null
    ? `${one} and ${other} may be paired: ${words}`
    : `pair ${one} with ${other} only for want of better: ${words}`;
}

/** Pairs whose young would be inbred, and what would be better; null where there are none. */
function tooClose({ couples, pairings }: KinAnswer): string | null {
  const inbred = couples.filter(({ kin }) => kin.f.low > 0);
  const close = inbred.filter(({ kin }) => kin.f.low >= CLOSE);
  const worst = close.length > 0 ? close : inbred;
  const [first] = worst;
  if (first === undefined) return null;
  const names = someOf(worst.map(({ name }) => name));
  const least = `F ≥ ${figure(Math.min(...worst.map(({ kin }) => kin.f.low)))}`;
  if (close.length === 0) return `pair the young of ${names} with another line: ${least}`;
  const better = pairings.find((pairing) => pairing.species === first.species && isFair(pairing));
  const instead = better === undefined ? '' : `; better ${better.one} × ${better.other}`;
  return `do not breed on from ${names}, too close (${least})${instead}`;
}

/** The best mate on hand for one that was asked about. */
function bestFor({ pairings }: KinAnswer, name: string): string | null {
  const best = pairings.find((pairing) => isFair(pairing) && [pairing.one, pairing.other].includes(name));
  if (best === undefined) return null;
  return `pair ${name} with ${best.one === name ? best.other : best.one}: ${best.kin.says}`;
}

function bound({ f, ifSibs }: CoupleRow['kin']): string {
  const most = Math.max(f.high ?? 0, ifSibs ?? 0);
  return `≥ ${figure(f.low)}${f.high === null ? ', open' : most > f.low ? `, perhaps ${figure(most)}` : ''}`;
}

function figure(value: number): string {
  return String(Math.round(value * 1e4) / 1e4);
}

function says({ says: words, founders }: CoupleRow['kin']): string {
  return `${words}; ${plural(founders, 'unknown founder')}`;
}

/** Pairs of which the same is to be said share a row. */
function coupleLines(couples: readonly CoupleRow[]): readonly Row[] {
  const rows = new Map<string, { names: string[]; f: string; words: readonly string[] }>();
  for (const { name, kin, one, other } of couples) {
    const f = bound(kin);
    const words = [says(kin), ...origins(one, other)];
    const key = [f, ...words].join('\n');
    const known = rows.get(key);
    if (known) known.names.push(name);
    else rows.set(key, { names: [name], f, words });
  }
  return [...rows.values()].map(({ names, f, words }) => ({ cells: [names.join(', '), f, words] }));
}

function origins(one: CoupleRow['one'], other: CoupleRow['one']): readonly string[] {
  const told = [one, other].filter(({ origin }) => origin !== UNSAID);
  const words = ({ origin }: CoupleRow['one']): string => origin.replace(`, ${UNSAID}`, '');
  const [first] = told;
  if (told.length === 2 && first && one.origin === other.origin)
    return [`${first.origin.includes(' or ') ? 'each' : 'both'} ${words(first)}`];
  return told.map((parent) => `${parent.fish} ${words(parent)}`);
}

const UNSAID = 'parents not on record';

function lineLine({ name, species, males, females, ne, risk }: LineRow, look: Look): Row {
  const paint = risk?.weight === 'ends' ? look.paint.late : look.paint.quiet;
  return {
    cells: [
      name,
      species ?? '',
      `${males}/${females}`,
      ne === 0 ? '–' : String(Math.round(ne * 10) / 10),
      { text: risk?.says ?? 'nothing hangs on one', paint },
    ],
  };
}

function pairingLine({ one, other, kin }: PairingRow): Row {
  return { cells: [`${one} × ${other}`, bound(kin), says(kin)] };
}

/** Worth pairing: less than full sibs. */
function isFair({ kin }: PairingRow): boolean {
  return kin.f.low < SIBS;
}

const SIBS = 0.25;

/** Species of which the room holds none but sibs, parents and young. */
function closeWords(pairings: readonly PairingRow[], look: Look): string {
  const species = [...new Set(pairings.map((row) => row.species))];
  const close = species.filter((one) => pairings.every((row) => row.species !== one || !isFair(row)));
  if (close.length === 0) return '';
  const words = `${listWords(close)}: only sibs, or parents with their young, to pair (F ≥ 0.25); a fish from elsewhere would widen the line`;
  return paragraph(words, look.width, 2);
}

function treeText({ tree }: TreeRow, look: Look): string {
  return tree
    .map(({ depth, says: words }) => {
      const margin = '  '.repeat(depth);
      return paragraph(margin + words, look.width, margin.length + 2);
    })
    .join('\n');
}

export function kinJson({ asked, couples, trees, lines, pairings }: KinAnswer): object {
  return {
    asked,
    couples: couples.map((row) => ({
      id: row.id,
      name: row.name,
      species: row.species,
      parents: [row.one, row.other],
      ...kinKeys(row.kin),
      lines: linesJson(row.lines),
    })),
    trees: trees.map((row) => ({
      id: row.id,
      name: row.name,
      species: row.species,
      tree: row.tree,
      lines: linesJson(row.lines),
    })),
    stockLines: lines.map((row) => ({
      id: row.id,
      name: row.name,
      species: row.species,
      groups: row.groups,
      males: row.males,
      females: row.females,
      unsexed: countJson(row.unsexed),
      kept: row.kept.map(({ stock, count }) => ({ stock, count: countJson(count) })),
      young: row.young.map(({ stock, count }) => ({ stock, count: countJson(count) })),
      ne: row.ne,
      deltaF: row.deltaF,
      risk: row.risk,
      lines: linesJson(row.lines),
    })),
    pairings: pairings.map((row) => ({
      id: row.id,
      one: row.one,
      other: row.other,
      species: row.species,
      kept: row.kept,
      ...kinKeys(row.kin),
      lines: linesJson(row.lines),
    })),
  };
}

/** `low` is what is sure; `high` null where the journal leaves it open and it was not worked out. */
function kinKeys({ f, ifSibs, founders, shared, stems, says: words }: CoupleRow['kin']): object {
  return {
    f: { low: f.low, high: f.high },
    ifSibs,
    unknownFounders: founders,
    shared,
    maybeSibsBy: stems,
    says: words,
  };
}

/**
 * Finds the rows that a keeper asks about, among the rows of all answers: by id, or by words that the
 * row's id and title begin with.
 */
import { nearest } from '../core/suggest.ts';
import type { Room } from '../state/draft.ts';
import { liveTanks } from '../state/tanks.ts';
import { awardsWhy } from './awards.ts';
import { broodsWhy } from './broods.ts';
import { dueWhy } from './due.ts';
import { pairsWhy } from './pairs.ts';
import { loopRows } from './loops.ts';
import { tankRows } from './tanks.ts';
import { waterRows } from './water.ts';
import { culturesWhy } from './cultures.ts';
import { holdsWhy } from './holds.ts';
import { oncePerRoom } from './holds/once.ts';
import { kinWhy } from './kin.ts';
import { moneyWhy } from './money.ts';
import { cutRows } from './powercut.ts';
import { planWhy } from './plan/why.ts';
import { promisesWhy } from './promises.ts';
import { saleWhy } from './sale.ts';
import { walkWhy } from './walk.ts';
import { bodyOfWater } from './waters.ts';
import type { WhyRow, WhySource } from './whyrow.ts';

/** Every question whose rows can be asked about. */
export const WHY_SOURCES: readonly WhySource[] = [
  broodsWhy,
  dueWhy,
  pairsWhy,
  loopRows,
  tankRows,
  waterRows,
  cutRows,
  culturesWhy,
  holdsWhy,
  promisesWhy,
  saleWhy,
  planWhy,
  walkWhy,
  kinWhy,
  moneyWhy,
  awardsWhy,
];

interface WhyAnswer {
  /** Rows that match; where several answers have the same row, it stands once. */
  readonly rows: readonly WhyRow[];
  /** Where none does: ids that come near. */
  readonly near: readonly string[];
}

/** Looks in the words of the room's rows; words that stand whole in a row win over beginnings, a tank over its water. */
export function why(room: Room, words: readonly string[], sources: readonly WhySource[] = WHY_SOURCES): WhyAnswer {
  const all = sources === WHY_SOURCES ? everyRow(room) : uniqueRows(sources.flatMap((source) => source(room)));
  const asked = words
    .join(' ')
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const shared = asked.map((word) => waterOf(room, word));
  const tries = [
    ({ id }: WhyRow): boolean => id === asked.join('-'),
    ({ id }: WhyRow): boolean => id === shared.join('-'),
    (row: WhyRow): boolean => asked.every((word) => hasWord(row, word)),
    (row: WhyRow): boolean => shared.every((word) => hasWord(row, word)),
    (row: WhyRow): boolean => asked.every((word) => hasStart(row, word)),
    (row: WhyRow): boolean => shared.every((word) => hasStart(row, word)),
  ];
  for (const isMeant of tries) {
    const rows = all.filter(isMeant);
    if (rows.length > 0) return { rows, near: [] };
  }
  return { rows: [], near: nearIds(all, asked) };
}

/** What is told of its whole water is found by the name of a tank in it: `A1 water` is that of the loop. */
function waterOf(room: Room, word: string): string {
  const tank = liveTanks(room).find(({ name }) => name.toLowerCase() === word)?.name;
  return (tank === undefined ? word : (bodyOfWater(room, tank)?.name ?? word)).toLowerCase();
}

/** Rows of every question: worked out once a room, however many are asked about. */
const everyRow = oncePerRoom((room) => uniqueRows(WHY_SOURCES.flatMap((source) => source(room))));

function uniqueRows(rows: readonly WhyRow[]): readonly WhyRow[] {
  const byId = new Map<string, WhyRow>();
  for (const row of rows) if (!byId.has(row.id)) byId.set(row.id, row);
  return [...byId.values()];
}

/** A name with hyphens is found in an id whole and in its parts. */
function hasWord({ id, title }: WhyRow, word: string): boolean {
  return `-${id}-`.includes(`-${word}-`) || wordsOf(title).includes(word);
}

function hasStart({ id, title }: WhyRow, word: string): boolean {
  return `-${id}`.includes(`-${word}`) || wordsOf(title).some((one) => one.startsWith(word));
}

function wordsOf(title: string): readonly string[] {
  return title.toLowerCase().match(/[\p{L}\p{N}\-_']+/gu) ?? [];
}

/** Ids that share the first word asked for, else those spelt nearly so. */
function nearIds(all: readonly WhyRow[], asked: readonly string[]): readonly string[] {
  const ids = all.map(({ id }) => id);
  const [first = ''] = asked;
  const same = ids.filter((id) => id.startsWith(`${first}-`) || id.includes(`-${first}`));
  return first !== '' && same.length > 0 ? same : nearest(asked.join('-'), ids);
}

/** Jars to start anew, and a food of which too few jars are alive. */
import { onDay } from '../../core/interval.ts';
import { listWords, plural } from '../../core/words.ts';
import { foodClock, LEAST_JARS } from '../../science/foods.ts';
import type { Room } from '../../state/draft.ts';
import { cultures } from '../cultures.ts';
import { FAST_DAYS, GIVEN_UP_DAYS, type FoodRow, type JarRow } from '../cultures/jars.ts';
import { rowId } from '../id.ts';
import type { DueItem, DueSource } from './item.ts';

export const cultureDue: DueSource = (room) => cultures(room).foods.flatMap((food) => rowsOf(room, food));

function rowsOf(room: Room, food: FoodRow): DueItem[] {
  const clock = foodClock(food.of);
  if (clock === null || keptByChore(room, food)) return [];
  const gone = food.jars.filter(({ ended }) => ended !== null);
  const source = youngest(food.jars);
  if (source === null) return startAgain(room, food, gone);
  if (food.restart === null) return [];
  const few = food.live < LEAST_JARS && food.jars.length > 1 && clock.restart <= FAST_DAYS;
  const [spare] = [...gone, ...food.jars.filter(({ state }) => state === 'not started'), ...older(food.jars, source)];
  const dead = gone.length === 0 ? '' : `; ${listWords(gone.map(endWords))}`;
  const alive = few ? `, ${plural(food.live, 'jar')} alive where two are wanted` : '';
  return [
    {
      ...base(food),
      place: source.name,
      what: `start the next jar of ${food.of} from it`,
      due: onDay(food.restart),
      weight: few ? 1 : 0,
      why: `the youngest is ${plural(source.ageDays ?? 0, 'day')} old${alive}${dead}`,
      // Started again under its own name, the jar that still gives would be forgotten.
      close:
        spare === undefined
          ? `culture ${freeName(room, source.name)}: ${food.of}; started`
          : `${source.name}: split to ${spare.name}`,
    },
  ];
}

/** `M2` beside `M1`: the next number that nothing in the room is called by. */
function freeName(room: Room, name: string): string {
  const { plumbing, stock, cultures: jars, settings, sale } = room;
  const tables = [plumbing.tanks, plumbing.loops, stock.species, stock.groups, stock.broods];
  const fish = [...stock.groups.values()].flatMap(({ members }) => members.flatMap((one) => one.name ?? []));
  const others = [...tables, jars.jars, settings.rows, sale.auctions].flatMap((table) => [...table.keys()]);
  const taken = new Set([...others, ...fish].map((one) => one.toLowerCase()));
  const stem = name.replace(/\d+$/, '');
  let number = Number(name.slice(stem.length) || '1') + 1;
  while (taken.has(`${stem}${number}`.toLowerCase())) number += 1;
  return `${stem}${number}`;
}

/** No live jar left: the food must come from elsewhere. */
function startAgain(room: Room, food: FoodRow, gone: readonly JarRow[]): DueItem[] {
  const last = gone.reduce<JarRow | null>((late, jar) => ((jar.ended ?? 0) > (late?.ended ?? 0) ? jar : late), null);
  if (last === null || last.ended === null || room.on - last.ended > GIVEN_UP_DAYS) return [];
  return [
    {
      ...base(food),
      place: last.name,
      what: `start ${food.of} anew: no jar is alive`,
      due: onDay(last.ended),
      weight: 1,
      why: listWords(gone.map(endWords)),
      close: `${last.name}: started`,
    },
  ];
}

function endWords({ name, state }: JarRow): string {
  return state === 'sour' ? `${name} went sour` : `${name} is likely sour by its age`;
}

function base(
  food: FoodRow,
): Pick<DueItem, 'id' | 'kind' | 'putOffKey' | 'pressing' | 'minutes' | 'because' | 'lines'> {
  return {
    id: rowId(food.of, 'start'),
    kind: 'culture',
    putOffKey: 'restart',
    pressing: false,
    minutes: null,
    because: food.because,
    lines: food.lines,
  };
}

/** A standing chore of the keeper's own says when: `M1: restart every 2 weeks`. */
function keptByChore(room: Room, food: FoodRow): boolean {
  const names = food.jars.map(({ name }) => name);
  return room.chores.standing.some(
    (chore) => chore.action.kind === 'restart' && chore.stopped === null && names.includes(chore.where),
  );
}

function youngest(jars: readonly JarRow[]): JarRow | null {
  return jars
    .filter(({ state }) => state === 'live' || state === 'young')
    .reduce<JarRow | null>(
      (last, jar) => (last === null || (jar.started ?? 0) > (last.started ?? 0) ? jar : last),
      null,
    );
}

/** The other live jars, oldest first: the next one goes into the oldest. */
function older(jars: readonly JarRow[], source: JarRow): JarRow[] {
  return jars
    .filter((jar) => jar !== source && jar.started !== null)
    .toSorted((a, b) => (a.started ?? 0) - (b.started ?? 0));
}

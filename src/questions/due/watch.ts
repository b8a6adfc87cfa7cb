/** Today's test in every water watch; where one event disturbed several waters, one row for all of them. */
import { onDay } from '../../core/interval.ts';
import { dayWords, listWords } from '../../core/words.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import { nextTest, WATCH_DAYS, watches, ZEROS, type Watch } from '../watch.ts';
import type { WaterBody } from '../waters.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';
import { TO_READ } from './toread.ts';

const CAUSES: Readonly<Record<Watch['why'], string>> = {
  'media cleaned': 'media cleaned',
  'sponge rinsed': 'its only sponge rinsed',
  'power lost': 'power away for hours',
  'pump stood': 'the pump stood for hours',
  'fresh air filter': 'off the loop on a fresh air filter',
};

export function watchDue(room: Room): readonly DueItem[] {
  const groups = new Map<string, Watch[]>();
  for (const one of watches(room)) {
    const { file, line, from } = one.place;
    // Next test and progress may differ; rows are joined only where they say the same.
    const alone = subjectOf(room, one.body, false) === null ? one.body.name : '';
    const key = [file, line, from, nextTest(one), one.zeros, alone].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((together) => watchRow(room, together));
}

/**
 * Who the line of a test may begin with: one line names tanks alone or loops alone, so beside a tank any tank on a
 * loop speaks for the loop's water. Null where no tank is on it.
 */
function subjectOf(room: Room, { name, kind, tanks }: WaterBody, loopsAlone: boolean): string | null {
  if (kind === 'tank' || loopsAlone) return name;
  return tanks.find((tank) => (room.plumbing.tanks.get(tank)?.inTank ?? null) === null) ?? null;
}

/** The line that closes the row for every water in it, and in words who speaks for whom. */
function closing(room: Room, bodies: readonly WaterBody[]): { close: string; told: string } {
  const loopsAlone = bodies.every(({ kind }) => kind === 'loop');
  const spoken = bodies.map((body) => ({ name: body.name, by: subjectOf(room, body, loopsAlone) ?? body.name }));
  const others = spoken.filter(({ name, by }) => name !== by).map(({ name, by }) => `${by} speaks for ${name}`);
  return {
    close: `${listWords(spoken.map(({ by }) => by))}: test ${TO_READ.watch}`,
    told: bodies.length === 1 ? '' : `; ${[...others, 'a line each where they read differently'].join(', ')}`,
  };
}

function watchRow(room: Room, together: readonly Watch[]): DueItem[] {
  const [first] = together;
  if (first === undefined) return [];
  const names = together.map(({ body }) => body.name);
  const only = together.length === 1;
  const day = room.on - first.since;
  const told = `${CAUSES[first.why]} ${first.why === 'fresh air filter' ? 'since' : 'on'} ${dayWords(first.since, room.on)}`;
  const progress = `day ${day} of at least ${WATCH_DAYS}, ${first.zeros} of ${ZEROS} double zeros`;
  const { close, told: who } = closing(
    room,
    together.map(({ body }) => body),
  );
  const lines = linesOf([...together.map(({ place }) => place), ...first.tests.map(({ place }) => place)]);
  return [
    {
      id: only
        ? rowId(first.body.name, 'water watch')
        : rowId('room', 'water watch', dayWords(first.since, room.on), first.body.name),
      place: only ? first.body.name : 'room',
      what: `test ammonia and nitrite${only ? '' : ` in ${listWords(names)}`}`,
      kind: 'water',
      due: onDay(nextTest(first)),
      weight: 2,
      why: `${told}; ${progress}; half feed, no new fish in${who}`,
      close,
      caution: first.why === 'fresh air filter' ? CAUTION.freshFilter : CAUTION.ammonia,
      putOffKey: 'water watch',
      pressing: true,
      minutes: null,
      because: {
        rule: `after the living filter was disturbed: ammonia and nitrite daily until ${ZEROS} tests in a row show neither, for ${WATCH_DAYS} days at least`,
        source: 'rule of ours; a filter from new takes 2 to 6 weeks (common practice, no source)',
        steps: [
          told,
          ...first.tests.map((test) => `${dayWords(test.day, room.on)}: ${test.clear ? 'double zero' : 'not clear'}`),
          `${progress}, so not over before ${dayWords(first.earliest, room.on)}`,
        ],
        lines,
      },
      lines,
    },
  ];
}

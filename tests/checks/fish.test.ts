import { describe, expect, it } from 'vitest';
import { lostBroods } from '../../src/checks/lost-broods.ts';
import { shrinking } from '../../src/checks/shrinking.ts';
import { day, eventsOf, roomOn, type Line } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { heads, laid, look, lostSome, named, sale, setUp, sizes } from '../support/fishroom.ts';

const facts = (on: string, lines: readonly Line[]) => {
  const room = roomOn(on, lines);
  return { room, events: eventsOf(lines), today: room.on };
};
const R1 = { fish: named('Rowan-1') };

describe('a brood without a word', () => {
  const spawned: Line[] = [...setUp, laid('2026-02-02')];
  it('is doubted three weeks after it should have swum', () => {
    expect(lostBroods(facts('2026-03-10', spawned))).toEqual([]);
    expect(lostBroods(facts('2026-03-11', spawned))).toMatchObject([
      { kind: 'brood-without-word', weight: 'doubt', at: { line: 5 } },
    ]);
  });
  it('of a mouthbrooder should have been released, and is asked for where she is', () => {
    const slate = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 trio Slate: haps; male; females Moth and Wren; in C2
2026-02-02 C2: Moth holding
2026-02-08 C2: moved Moth to C1
`;
    const [one] = lostBroods({ room: journalOn('2026-04-30', slate), events: [], today: day('2026-04-30') });
    expect(one?.says).toMatch(/^Slate-1 should have been released by 2026-03-/);
    expect(one?.write).toContain('C1: Slate-1 eggs gone   (or: released, about 40)');
  });
  it('is not, once a line says what became of it', () => {
    expect(lostBroods(facts('2026-06-01', [...spawned, look('2026-02-12', 'free-swimming')]))).toEqual([]);
    const eaten: Line[] = [...spawned, look('2026-02-06', 'wrigglers'), lostSome('2026-02-08', 'all', 'eaten', R1)];
    expect(lostBroods(facts('2026-06-01', eaten))).toEqual([]);
  });
});

describe('lengths that fall', () => {
  const young: Line[] = [
    ...setUp,
    laid('2026-01-05'),
    look('2026-01-15', 'free-swimming', heads(60)),
    sizes('2026-04-11', 'average', [28], R1),
  ];
  it('are doubted, naming both lines', () => {
    const lines: Line[] = [...young, sizes('2026-04-20', 'average', [18], R1)];
    expect(shrinking(facts('2026-04-20', lines))).toMatchObject([
      { kind: 'sizes-shrink', at: { line: 8 }, also: [{ line: 7 }] },
    ]);
  });
  it('are not, within what an eye errs, or where the best were sold between', () => {
    expect(shrinking(facts('2026-04-20', [...young, sizes('2026-04-20', 'average', [25], R1)]))).toEqual([]);
    const sold: Line[] = [...young, sale('2026-04-12', heads(30), R1), sizes('2026-04-20', 'average', [18], R1)];
    expect(shrinking(facts('2026-04-20', sold))).toEqual([]);
  });
});

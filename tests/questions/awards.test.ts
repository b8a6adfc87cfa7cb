/** Breeder awards by the rules that the journal gives. The rules here are the shapes that clubs use: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { awards, type AwardRow } from '../../src/questions/awards.ts';
import { awardDue } from '../../src/questions/due/award.ts';
import { why } from '../../src/questions/why.ts';
import { day } from '../support/events.ts';
import { journalRoom } from '../support/journal.ts';

const ROOM = `2026-01-01 room: units metric
2026-01-01 tank A1: 100 x 40 x 40 cm; alone
2026-01-01 tank C1: 54 L; alone; sponge filter
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1; from "a friend"
2026-02-02 A1: spawned, about 90 eggs
2026-02-05 A1: hatched
2026-02-10 A1: free-swimming, about 70
2026-03-10 A1: moved all Rowan-1 to C1
`;
const WINDOW = '2026-01-02 room: award "club award": 6 young at 60-120 days from hatched, notice 14 days\n';
const NOTICE = '2026-02-12 room: did "notice of Rowan-1 for club award"\n';

function row(on: string, more: string): AwardRow {
  const [found] = awards(journalRoom(on, ROOM + more)).rows;
  if (found === undefined) throw new Error('no row');
  return found;
}

describe('a rule with an age window and notice', () => {
  test('counts from hatching: of age 60 days on, too old after 120', () => {
    // Hatched by 5 February, most likely not before the 4th: day 60 is 5 or 6 April, day 120 is 4 or 5 June.
    const found = row('2026-03-11', WINDOW + NOTICE);
    expect(found).toMatchObject({
      state: 'growing',
      notice: day('2026-02-16'),
      noticed: true,
      opens: { low: day('2026-04-05'), high: day('2026-04-06') },
      closes: { low: day('2026-06-04'), high: day('2026-06-05') },
    });
  });

  test('a sure count of enough lets it be claimed, a guess does not', () => {
    const counted = '2026-04-07 C1: counted 30\n';
    expect(row('2026-04-08', WINDOW + NOTICE + counted)).toMatchObject({
      state: 'can be claimed',
      says: '30 young, 6 asked for; of age, claim by 4 Jun',
    });
    const few = '2026-04-07 C1: counted 5\n';
    expect(row('2026-04-08', WINDOW + NOTICE + few).state).toBe('too few');
    const guess = '2026-04-07 C1: counted 4-12\n';
    expect(row('2026-04-08', WINDOW + NOTICE + guess).state).toBe('perhaps');
  });

  test('young of two kinds are claimed as neither', () => {
    const other =
      '2026-01-02 species nano: Nanochromis parilus; cave spawner\n2026-01-02 group Fen: nano; 6; in C1\n' +
      '2026-01-20 A1: female died\n2026-01-21 A1: new female from Fen\n';
    expect(row('2026-04-08', `${WINDOW}${NOTICE}${other}2026-04-07 C1: Rowan-1 counted 30\n`)).toMatchObject({
      state: 'perhaps',
      says: 'called krib, but they come of nano too: a cross or a wrong name',
    });
  });

  test('fish sold once they were of age were raised; those sold before were not', () => {
    const counted = '2026-03-20 C1: counted 10\n';
    const sold = (on: string): string => `${counted}${on} C1: sold 6 Rowan-1 at 4.00 each\n`;
    expect(row('2026-04-20', WINDOW + NOTICE + sold('2026-04-10')).state).toBe('can be claimed');
    expect(row('2026-04-20', WINDOW + NOTICE + sold('2026-03-25')).state).toBe('too few');
  });

  test('without notice in time nothing can be claimed, and too old is over', () => {
    expect(row('2026-02-16', WINDOW).state).toBe('growing');
    expect(row('2026-02-17', WINDOW).state).toBe('notice missed');
    expect(row('2026-06-06', WINDOW + NOTICE).state).toBe('over');
  });

  test('a claim that was made is no longer asked for', () => {
    const claim = '2026-04-10 C1: counted 30\n2026-04-11 room: did "claim of Rowan-1 for club award"\n';
    const room = journalRoom('2026-05-30', ROOM + WINDOW + NOTICE + claim);
    expect(awards(room).rows[0]?.state).toBe('claimed');
    expect(awardDue(room, 7)).toEqual([]);
    expect(room.problems).toEqual([]);
  });
});

describe('where it counts from', () => {
  const HOLDING = `2026-01-01 tank B1: 200 L; alone
2026-01-01 species nicholsi: Pseudocrenilabrus nicholsi; mouthbrooder
2026-01-01 harem Iris: nicholsi; male; 3 females; in B1
2026-03-01 B1: Iris holding
2026-03-20 B1: Iris released about 25
`;
  const opens = (from: string): AwardRow | undefined => {
    const rule = `2026-01-02 room: award "club award": 5 young at 60 days from ${from}\n`;
    return awards(journalRoom('2026-04-01', ROOM + HOLDING + rule), 'nicholsi').rows[0];
  };

  // Released on 20 March at the latest: 60 days on is 19 May. Age from release for mouthbrooders: common practice, no source.
  test('from release for mouthbrooders, even where the rule says from hatching', () => {
    expect(opens('released')?.opens?.high).toBe(day('2026-05-19'));
    expect(opens('hatched')?.opens).toEqual(opens('released')?.opens);
    expect(opens('hatched')?.asks).toBe('5 young at 60 days from release');
    expect(opens('hatched')?.says).toMatch(/^of age .*, counted from release$/);
    expect(opens('released')?.says).not.toContain('counted from');
  });

  test('of mouthbrooders the day she was seen holding is evidence, of laying there is none', () => {
    const evidence = opens('hatched')?.evidence.map(({ kind, name, says }) => [kind, name, says]);
    expect(evidence).toContainEqual(['laid', 'holding', 'seen holding on 1 Mar 2026']);
    expect(evidence).toContainEqual(['anchor', 'released', expect.stringContaining('2026')]);
  });

  test('who finds her holding late can still give notice: it is over only once they surely were laid too long ago', () => {
    const rule = '2026-01-02 room: award "club award": 5 young at 60 days from hatched, notice 14 days\n';
    const held = HOLDING.replace(/^.*released.*\n/m, '');
    const state = (on: string): readonly unknown[] => {
      const room = journalRoom(on, ROOM + held + rule);
      return [
        awards(room, 'nicholsi').rows[0]?.state,
        awardDue(room, 7).filter(({ id }) => id.includes('iris')).length,
      ];
    };
    expect(state('2026-03-02')).toEqual(['growing', 1]);
    expect(state('2026-03-15')).toEqual(['growing', 1]);
    expect(state('2026-03-16')).toEqual(['notice missed', 0]);
  });

  test('a rule from release takes hatching for fish that hold none', () => {
    const rule = '2026-01-02 room: award "club award": 5 young at 60 days from released\n';
    expect(row('2026-03-11', rule).opens?.high).toBe(day('2026-04-06'));
  });
});

describe('evidence', () => {
  const says = (on: string, more: string): Record<string, string | null> =>
    Object.fromEntries(row(on, WINDOW + NOTICE + more).evidence.map((one) => [one.kind, one.says]));

  test('what is missing has no words, what is there tells it', () => {
    expect(says('2026-04-10', '')).toEqual({
      species: 'Pelvicachromis taeniatus (krib)',
      parents: 'pair Rowan',
      source: 'a friend',
      laid: '2 Feb 2026',
      anchor: '4–5 Feb 2026',
      count: null,
      photo: null,
      water: null,
    });
  });

  test('a count, a photo of their tank and a reading fill the gaps', () => {
    const more = `2026-01-20 A1: test pH 6.8, GH 4 dH, 26 C
2026-03-20 C1: photo "kribs.jpg"
2026-04-07 C1: counted 30
`;
    expect(says('2026-04-10', more)).toMatchObject({
      count: '30 on 7 Apr 2026',
      photo: 'kribs.jpg',
      water: '26 C, pH 6.8, GH 4 dH',
    });
  });

  test('a photo of another tank, or of their tank before they came, is none of them', () => {
    expect(says('2026-04-10', '2026-03-01 C1: photo "empty.jpg"\n')['photo']).toBeNull();
  });

  test('a count before they are of age proves nothing', () => {
    expect(says('2026-04-10', '2026-03-20 C1: counted 30\n')['count']).toBeNull();
  });
});

describe('due', () => {
  const rows = (on: string, more: string): string[] =>
    awardDue(journalRoom(on, ROOM + WINDOW + more), 7).map(({ id, close }) => `${id}: ${close}`);

  test('asks for notice, then for the claim before they are too old', () => {
    expect(rows('2026-02-12', '')).toEqual(['rowan-1-club-award-notice: room: did "notice of Rowan-1 for club award"']);
    expect(rows('2026-02-13', NOTICE)).toEqual([]);
    expect(rows('2026-05-25', `${NOTICE}2026-04-07 C1: counted 30\n`)).toEqual([
      'rowan-1-club-award-claim: room: did "claim of Rowan-1 for club award"',
    ]);
  });

  test('why tells the rule and the arithmetic', () => {
    const [found] = why(journalRoom('2026-04-10', ROOM + WINDOW + NOTICE), ['rowan-1-club-award']).rows;
    expect(found?.because.rule).toContain('6 young at 60–120 days from hatching');
    expect(found?.because.steps).toContain('60 days old 5–6 Apr');
  });
});

test('a rule without notice and without an end asks for nothing', () => {
  const rule = '2026-01-02 room: award "club award": 6 young at 60 days from hatched\n';
  const room = journalRoom('2026-05-25', `${ROOM}${rule}2026-04-07 C1: counted 30\n`);
  expect(awards(room).rows[0]?.state).toBe('can be claimed');
  expect(awardDue(room, 28)).toEqual([]);
});

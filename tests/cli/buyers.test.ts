/** Buyers' names are in nothing that another program reads, whatever the command, unless they are asked for. */
import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/registry.ts';
import { withoutNames } from '../../src/reports/names.ts';
import { tankside } from '../support/run.ts';

const FILE = '/room/fishroom.txt';
const BUYERS = ['Zebulon Quist', 'Ysolde', 'Wanda Thrupp', 'Percival', 'Oona', 'shop'];
const JOURNAL = `2026-01-04 room: units metric; currency EUR; award Bench: 6 young at 60-120 days from hatched
2026-01-04 loop Long: sump 240 L; return 3200 L/h; prefilter 6 layers; spills at 80 mm
2026-01-04 tank A1: 100 x 40 x 40 cm; on Long
2026-01-04 tank C1: 54 L; alone; sponge filter
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 8 weeks; price 6.00
2026-01-04 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-04 auction Autumn: on 2026-09-05; 20 lots; bags of 6; seller gets 70 %
2026-01-04 culture M1: microworm
2026-01-04 C1: water change 30 % every 7 days
2026-01-11 Long: cleaned 6 of 6 layers; level 20 mm
2026-01-25 Long: level 28 mm
2026-02-02 A1: spawned brood Rowan-1, about 90 eggs
2026-02-05 A1: wrigglers
2026-02-10 A1: free-swimming, about 70
2026-03-10 A1: Rowan-1 moved 45 to C1, rest stay
2026-04-10 C1: Rowan-1 counted 43
2026-04-10 C1: largest 30 mm
2026-05-10 C1: sold 4 Rowan-1 at 4.00 each to "Zebulon Quist"
2026-05-11 C1: gave away 2 Rowan-1 to Ysolde "for Ysolde and her tank"
2026-05-12 C1: reserved 6 Rowan-1 until 2026-07-20 to "Wanda Thrupp"
2026-05-12 C1: reserved 60 Rowan-1 until 2026-07-20 to "Wanda Thrupp"
2026-05-13 room: wanted 20 krib at 30 mm by 2026-07-01 to "Percival"
2026-05-14 C1: sold 99 Rowan-1 to "Oona"
2026-05-14 C1: sold 2 Rowan-1 to "shop"
2026-05-15 C1: sold 2 Rowan-9 to "Nobody Whatever"
2026-05-20 C1: hold "velvet"
`;

/** Words that each command needs to answer at all; null: it speaks of no journal, or writes one. */
const ASKS: Readonly<Record<string, readonly (readonly string[])[] | null>> = {
  start: null,
  jot: null,
  calc: null,
  completion: [
    ['completion', 'words', '--', 'why'],
    ['completion', 'words', '--', 'settle'],
  ],
  check: [['check']],
  tidy: [['tidy']],
  due: [['due', '--days', '28']],
  walk: [['walk']],
  tanks: [['tanks'], ['tanks', '--free']],
  loops: [['loops']],
  broods: [['broods']],
  pairs: [['pairs']],
  sale: [['sale'], ['sale', '--for', 'Autumn'], ['sale', '--for', 'Autumn', '--plan']],
  holds: [['holds']],
  promises: [['promises']],
  cultures: [['cultures']],
  kin: [['kin']],
  money: [['money']],
  water: [['water'], ['water', 'C1']],
  history: [['history'], ['history', '--kind', 'sale'], ['history', 'sold']],
  why: [
    ['why', 'C1', 'hold'],
    ['why', 'promise'],
    ['why', 'Rowan-1'],
    ['why', '2026-05-10-fishroom-txt-18'],
  ],
  chart: [['chart', 'growth', 'Rowan-1']],
  settle: [['settle', 'Autumn', '--sheet', '/room/sheet.csv']],
  awards: [['awards']],
};

const world = { today: '2026-06-01', files: { [FILE]: JOURNAL } };

describe.each(COMMANDS.map(({ name }) => name))('%s', (name) => {
  test('is asked here', () => {
    expect(Object.keys(ASKS)).toContain(name);
  });

  test.each((ASKS[name] ?? []).map((argv) => [argv.join(' '), argv] as const))(
    '«%s --json» names no buyer',
    { timeout: 60_000 },
    async (_, argv) => {
      const { status, out, err, files } = await tankside([...argv, '--json'], world);
      expect([status > 1, err], err).toEqual([false, err]);
      const written = Object.entries(files).flatMap(([file, text]) => (file === FILE ? [] : [text]));
      const said = [out, ...written].join('\n');
      expect(BUYERS.filter((buyer) => new RegExp(`\\b${buyer}\\b`, 'i').test(said))).toEqual([]);
      expect(said.toLowerCase()).not.toMatch(/zebulon|quist|ysolde|thrupp|percival|oona|nobody whatever/);
    },
  );
});

test('what is asked here does say something about them where they are asked for', { timeout: 60_000 }, async () => {
  for (const argv of [['holds'], ['promises'], ['history', 'sold'], ['tidy'], ['why', '2026-05-10-fishroom-txt-18']]) {
    const { out } = await tankside([...argv, '--json', '--with-names'], world);
    expect(out, argv.join(' ')).toMatch(/Zebulon Quist|Wanda Thrupp|Ysolde/);
  }
});

test('CSV names no buyer', { timeout: 60_000 }, async () => {
  const { status, out } = await tankside(['sale', '--csv', '-'], world);
  expect(status).toBe(0);
  expect(out).toContain('Rowan-1');
  expect(out).not.toMatch(/Zebulon|Ysolde|Wanda|Percival|Oona/i);
});

describe('hiding names', () => {
  test('takes them out of every text, whole words alone, and leaves keys, numbers and ids', () => {
    const body = { id: 'jo-1', says: 'sold to Jo', rows: [{ n: 3, text: 'Jo, joy and Jo’s' }], on: null };
    expect(withoutNames(body, ['Jo'])).toEqual({
      id: 'jo-1',
      says: 'sold to …',
      rows: [{ n: 3, text: '…, joy and …’s' }],
      on: null,
    });
  });

  test('of a name that is a common word hides the buyer alone', () => {
    const text = 'sold 2 to shop, seen in the shop';
    expect(withoutNames({ text }, ['shop'])).toEqual({ text: 'sold 2 to …, seen in the shop' });
  });

  test('hides what stands in quotes after «to», known or not', () => {
    expect(withoutNames({ text: 'sold 99 Rowan-9 to “Anna B.” at 2' }, [])).toEqual({
      text: 'sold 99 Rowan-9 to "…" at 2',
    });
  });
});

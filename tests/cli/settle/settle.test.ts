/** Results of an auction: into the journal whole, or not at all and why. */
import fs from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { failing } from '../../support/failing.ts';
import { journalRoom } from '../../support/journal.ts';
import { tankside, type Ran } from '../../support/run.ts';
import { money } from '../../../src/questions/money.ts';

vi.setConfig({ testTimeout: 60_000 });

const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-01-01 tank A1: 100 x 40 x 40 cm; on Long
2026-01-01 tank A2: 100 x 40 x 40 cm; on Long
2026-01-01 tank C1: 54 L; alone; sponge filter
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-02 A1: spawned brood Rowan-1, about 90 eggs
2026-01-12 A1: free-swimming, about 70
2026-02-20 A1: moved all Rowan-1 to C1
2026-02-21 C1: counted 30
2026-03-01 auction Spring: on 2026-05-16; 20 lots; bags of 6; seller gets 70 %
`;
const HEAD = 'lot,stock,species,tank,fish,minimum,fetched,back to\n';
const JOURNAL = '/room/fishroom.txt';

function settle(
  sheet: string,
  more: { readonly argv?: readonly string[]; readonly journal?: string } = {},
): Promise<Ran> {
  const files = { [JOURNAL]: more.journal ?? ROOM, '/room/spring.csv': sheet };
  const argv = more.argv ?? ['settle', 'Spring', 'spring.csv'];
  return tankside(argv, { files, today: '2026-05-17', env: { NO_COLOR: '1' } });
}

function added(ran: Ran, before = ROOM): string {
  const text = ran.files[JOURNAL] ?? '';
  expect(text.startsWith(before)).toBe(true);
  return text.slice(before.length);
}

/** Without the line ends of a narrow page. */
function inOne(text: string): string {
  return text.replaceAll(/\n +/g, ' ');
}

function row(lot: number, fish: number, fetched: string, back = '', stock = 'Rowan-1', tank = 'C1'): string {
  return `${String(lot)},${stock},krib,${tank},${String(fish)},,${fetched},${back}\n`;
}

describe('results that add up', () => {
  const sheet = HEAD + row(1, 6, '14.00') + row(2, 6, '12.50') + row(3, 6, '', 'Q1') + row(4, 2, '', 'given');

  test('become lines of the day of the auction, and check is clean', async () => {
    const ran = await settle(sheet);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(added(ran)).toBe(`2026-05-16 C1: sold 12 Rowan-1 for 26.50 at Spring "lots 1 and 2 at 14.00 and 12.50"
2026-05-16 C1: moved 6 Rowan-1 to Q1 "unsold at Spring, lot 3"
2026-05-16 C1: gave away 2 Rowan-1 "at Spring, lot 4"
2026-05-16 Q1: quarantine 28 days
2026-05-16 room: did "settle for Spring"
`);
    expect(inOne(ran.out)).toContain('12 fish sold for 26.50 EUR, 18.55 after its part');
    expect(ran.out).toContain('6 fish back in Q1, quarantine until 2026-06-13');
    const files = { [JOURNAL]: ran.files[JOURNAL] ?? '' };
    const checked = await tankside(['check'], { files, today: '2026-05-17' });
    expect(checked.status).toBe(0);
    expect(checked.out).toContain('every line is read, and nothing contradicts');
  });

  test('that come back to a tank with a number for a name are read', async () => {
    const journal = ROOM.replace('2026-01-01 species', '2026-01-01 tank 12: 54 L; alone\n2026-01-01 species');
    const ran = await settle(HEAD + row(1, 6, '14.00') + row(2, 6, '', '12'), { journal });
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(added(ran, journal)).toContain('2026-05-16 C1: moved 6 Rowan-1 to tank 12 "unsold at Spring, lot 2"\n');
  });

  test('the split is taken off once: where money is reckoned', async () => {
    const room = journalRoom('2026-05-17', (await settle(sheet)).files[JOURNAL] ?? '');
    // By hand: 14.00 + 12.50 = 26.50, of which the seller gets 70 %: 18.55.
    expect(money(room)?.broods[0]?.income.low).toBeCloseTo(18.55, 9);
    expect(room.stock.broods.get('Rowan-1')?.parts).toEqual(
      new Map([
        ['C1', { low: 10, likely: 10, high: 10 }],
        ['Q1', { low: 6, likely: 6, high: 6 }],
      ]),
    );
  });

  test('--dry-run shows them and writes nothing; --json says the same', async () => {
    const tried = await settle(sheet, { argv: ['settle', 'spring', 'spring.csv', '--dry-run'] });
    expect(added(tried)).toBe('');
    expect(tried.out).toContain('would be 2026-05-16 C1: sold 12 Rowan-1');
    const json = await settle(sheet, { argv: ['settle', 'Spring', 'spring.csv', '--json'] });
    expect(JSON.parse(json.out)).toMatchObject({
      version: 1,
      saved: true,
      auction: 'Spring',
      on: '2026-05-16',
      sold: 12,
      fetched: 26.5,
      net: 18.55,
      currency: 'EUR',
      back: [{ tank: 'Q1', fish: 6, until: '2026-06-13' }],
    });
  });

  test('back into its own tank: no move, but quarantine; stayed: nothing', async () => {
    const ran = await settle(HEAD + row(1, 6, '14') + row(2, 6, '', 'C1') + row(3, 6, '', 'stayed'));
    expect(added(ran)).toBe(`2026-05-16 C1: sold 6 Rowan-1 for 14.00 at Spring "lot 1"
2026-05-16 C1: quarantine 28 days
2026-05-16 room: did "settle for Spring"
`);
    expect(ran.out).toContain('take care: C1 holds Rowan-1');
  });

  test('back onto a loop: whom it reaches; --quarantine 0 writes none', async () => {
    const argv = ['settle', 'Spring', 'spring.csv', '--quarantine', '0'];
    const ran = await settle(HEAD + row(1, 6, '', 'a2'), { argv });
    expect(added(ran)).toBe(
      '2026-05-16 C1: moved 6 Rowan-1 to A2 "unsold at Spring, lot 1"\n2026-05-16 room: did "settle for Spring"\n',
    );
    expect(ran.out).toContain('take care: A2 shares its water with 1 tank on Long');
  });

  test('a lot that the sheet leaves out is told', async () => {
    const ran = await settle(HEAD + row(1, 6, '14.00') + row(3, 6, '12.00') + row(6, 6, '9.00'));
    expect(inOne(ran.out)).toContain('the sheet tells nothing of lots 2, 4 and 5');
    expect((await settle(sheet)).out).not.toContain('tells nothing');
  });

  test('more promised than is left is told', async () => {
    const journal = `${ROOM}2026-05-01 C1: reserved 10 Rowan-1 until 2026-06-01 to "Iris"\n`;
    const ran = await settle(HEAD + row(1, 24, '60'), { journal });
    expect(ran.status).toBe(0);
    expect(inOne(ran.out)).toContain(
      'look again at line 14: 0 Rowan-1 are kept back and 10 reserved, but surely only 6',
    );
    expect(ran.out).not.toContain('Iris');
  });
});

describe('results that do not add up change nothing and say why', () => {
  test.each([
    ['an unknown stock', row(1, 6, '14', '', 'Rown-1'), 'line 2: lot 1: there is no stock called «Rown-1» on 16 May'],
    ['an unknown tank', row(1, 6, '14', '', 'Rowan-1', 'Z9'), 'there is no Rowan-1 in «Z9» on 16 May: they are in C1'],
    ['another tank', row(1, 6, '14', '', 'Rowan-1', 'A1'), 'there is no Rowan-1 in A1 on 16 May: they are in C1'],
    [
      'too many fish',
      row(1, 20, '14') + row(2, 11, '9'),
      'line 3: 31 fish of Rowan-1 out of C1 to Spring, but only 30',
    ],
    ['a bad number', row(1, 6, 'fourteen'), 'line 2: «fourteen» is no sum of money'],
    ['a lot told twice', row(1, 6, '14') + row(1, 6, '14'), 'line 3: lot 1 is told twice: line 2 has it already'],
    ['neither sold nor back', row(1, 6, '') + row(2, 6, ''), 'line 2: lots 1 and 2 were not sold: back to which tank?'],
    ['back to nowhere', row(1, 6, '', 'Z9'), 'line 2: there is no tank called «Z9»'],
    ['a lot that the auction has not', row(33, 6, '14'), 'line 2: there is no lot 33 at Spring'],
    ['a lot that is no number', `x${row(3, 6, '14')}`, 'line 2: there is no lot x3 at Spring'],
    ['nothing', '', 'no result stands in it'],
  ])('%s', async (_, rows, words) => {
    const ran = await settle(HEAD + rows);
    expect(ran.status).toBe(2);
    expect(inOne(ran.err)).toContain(words);
    expect(ran.err).toContain('nothing of Spring was written');
    expect(ran.files).toEqual({ [JOURNAL]: ROOM, '/room/spring.csv': HEAD + rows });
  });

  test('all of it at once, in the order of the sheet', async () => {
    const rows = row(1, 99, '14') + row(33, 6, '9') + row(3, 6, 'thirty') + row(4, 6, '', '', 'Rown-1');
    const { err } = await settle(HEAD + rows);
    expect(err.match(/^spring\.csv line \d+/gm)).toEqual([2, 3, 4, 5, 5].map((line) => `spring.csv line ${line}`));
  });

  test('a second time', async () => {
    const once = await settle(HEAD + row(1, 6, '14'));
    const journal = once.files[JOURNAL] ?? '';
    const again = await settle(HEAD + row(1, 6, '14'), { journal });
    expect(again.status).toBe(2);
    expect(again.err).toContain('Spring is settled already, in line 15 of fishroom.txt');
    expect(again.files[JOURNAL]).toBe(journal);
  });

  test('what was jotted by hand already', async () => {
    const journal = `${ROOM}2026-05-16 C1: sold 6 Rowan-1 for 14.00\n`;
    const ran = await settle(HEAD + row(1, 6, '14'), { journal });
    expect(ran.status).toBe(2);
    expect(inOne(ran.err)).toContain('out of C1 are sold at Spring already, in line 14 of fishroom.txt');
  });

  test('results that would leave a later line without its fish', async () => {
    const journal = `${ROOM}2026-05-17 C1: sold 10 Rowan-1 at 6.00 each to "a neighbour"\n`;
    const ran = await settle(HEAD + row(1, 24, '60'), { journal });
    expect(ran.status).toBe(2);
    expect(inOne(ran.err)).toContain('with these results line 14 of fishroom.txt would not count');
    expect(ran.files[JOURNAL]).toBe(journal);
  });

  test('as JSON: the rows', async () => {
    const ran = await settle(HEAD + row(1, 31, '14'), { argv: ['settle', 'Spring', 'spring.csv', '--json'] });
    expect(JSON.parse(ran.out)).toMatchObject({ version: 1, saved: false, auction: 'Spring', wrong: [{ line: 2 }] });
  });

  test('an auction that nobody knows, or that is still to come; no file', async () => {
    const unknown = await settle(HEAD, { argv: ['settle', 'Sprign', 'spring.csv'] });
    expect(unknown.status).toBe(2);
    expect(unknown.err).toBe('no auction is called «Sprign»\nwrite: tankside settle Spring results.csv\n');
    const noSheet = await settle('', { argv: ['settle', 'Sprign', '--sheet', '-'] });
    expect(noSheet.err).toContain('write: tankside settle Spring --sheet spring.csv\n');
    const noFile = await settle('', { argv: ['settle', 'Spring', 'lost.csv'] });
    expect(noFile.err).toBe('there is no lost.csv\nwrite: tankside settle Spring --sheet lost.csv\n');
    const folder = await settle('', { argv: ['settle', 'Spring', '.'] });
    expect([folder.status, folder.err]).toEqual([
      3,
      '. cannot be read: it is a folder\nwrite: tankside settle Spring results.csv\n',
    ]);
    const early = await settle(HEAD, { argv: ['settle', 'Spring', 'spring.csv', '--on', '2026-05-15'] });
    expect(early.status).toBe(2);
    expect(early.err).toContain('Spring is on 2026-05-16');
    const none = await settle(HEAD, { argv: ['settle', 'Spring', 'summer.csv'] });
    expect(none.status).toBe(3);
    expect(none.err).toContain('there is no summer.csv');
    const bare = await settle(HEAD, { argv: ['settle'] });
    expect(bare.status).toBe(2);
    expect(bare.err).toContain('tankside settle Autumn results.csv');
  });
});

describe('from standard input', () => {
  const world = { files: { [JOURNAL]: ROOM }, today: '2026-05-17', env: { NO_COLOR: '1' } };

  test('a sheet', async () => {
    const ran = await tankside(['settle', 'Spring', '-'], { ...world, input: HEAD + row(1, 6, '14') });
    expect(added(ran)).toContain('C1: sold 6 Rowan-1 for 14.00 at Spring');
  });

  test("buyers' names go into the journal, and into JSON only when asked for", async () => {
    const input = 'C1: sold 6 Rowan-1 for 14.00 to "Iris Quill"\nC1: gave away 1 Rowan-1 to Otto\n';
    const argv = ['settle', 'Spring', '-', '--json'];
    const ran = await tankside(argv, { ...world, input });
    expect(added(ran)).toContain('to "Iris Quill"');
    expect(ran.out).not.toMatch(/Iris|Otto/);
    expect((await tankside([...argv, '--with-names'], { ...world, input })).out).toMatch(/Iris[^]*Otto/);
  });

  test('lines as jot takes them, all or none', async () => {
    const good = await tankside(['settle', 'Spring', '-'], {
      ...world,
      input: 'C1: sold 6 Rowan-1 for 14.00 at Spring\nC1: moved 6 Rowan-1 to Q1; size 36 mm\n',
    });
    expect(added(good)).toBe(`2026-05-16 C1: sold 6 Rowan-1 for 14.00 at Spring
2026-05-16 C1: moved 6 Rowan-1 to Q1; size 36 mm
2026-05-16 room: did "settle for Spring"
`);
    expect(inOne(good.out)).toContain('6 fish sold for 14.00 EUR, 9.80 after its part');
    const bad = await tankside(['settle', 'Spring', '-'], {
      ...world,
      input: 'C1: sold 6 Rowan-1 for 14.00\nC1: sold 60 Rowan-1 for 9.00\n',
    });
    expect(bad.status).toBe(2);
    expect(bad.err).toContain('standard input line 2:');
    expect(added(bad)).toBe('');
  });
});

test('what another writer settled meanwhile is not settled twice', async () => {
  const sheet = HEAD + row(1, 6, '14');
  const other = (await settle(sheet)).files[JOURNAL] ?? '';
  let locks = 0;
  const ran = await tankside(['settle', 'Spring', 'spring.csv'], {
    files: { [JOURNAL]: ROOM, '/room/spring.csv': sheet },
    today: '2026-05-17',
    broken: (disk) => ({
      ...failing(disk, { at: -1, later: false, how: 'before', code: 'EIO' }).disk,
      link(from, to) {
        disk.link(from, to);
        // It was judged; now it has the lock, and finds another journal.
        locks += 1;
        if (locks === 1) disk.put(JOURNAL, other);
      },
    }),
  });
  expect(ran.status).toBe(2);
  expect(ran.err).toContain('Spring is settled already');
  expect(ran.files[JOURNAL]).toBe(other);
});

test('fish sold, back, given and dead add up to what left the tank, whatever the results', async () => {
  const outcome = fc.constantFrom('sold', 'Q1', 'A2', 'stayed', 'given', 'died');
  const lots = fc.array(fc.tuple(fc.integer({ min: 1, max: 7 }), outcome, fc.integer({ min: 1, max: 9999 })), {
    minLength: 1,
    maxLength: 6,
  });
  await fc.assert(
    fc.asyncProperty(lots, async (all) => {
      const rows = all.map(([fish, how, cents], index) =>
        how === 'sold' ? row(index + 1, fish, (cents / 100).toFixed(2)) : row(index + 1, fish, '', how),
      );
      const ran = await settle(HEAD + rows.join(''));
      const out = all.filter(([, how]) => how !== 'stayed').reduce((sum, [fish]) => sum + fish, 0);
      expect(ran.status).toBe(out > 30 ? 2 : 0);
      if (ran.status !== 0) {
        expect(ran.files[JOURNAL]).toBe(ROOM);
        return;
      }
      const room = journalRoom('2026-05-17', ran.files[JOURNAL] ?? '');
      expect(room.problems).toEqual([]);
      const brood = room.stock.broods.get('Rowan-1');
      if (brood === undefined) throw new Error('no Rowan-1');
      const { parts, gone } = brood;
      const went = (how: string) =>
        gone.filter((one) => one.how === how).reduce((sum, { count }) => sum + count.low, 0);
      const heads = (how: string) => all.filter((one) => one[1] === how).reduce((sum, [fish]) => sum + fish, 0);
      expect(parts.get('C1')?.low ?? 0).toBe(30 - out);
      for (const tank of ['Q1', 'A2']) expect(parts.get(tank)?.low ?? 0).toBe(heads(tank));
      expect([went('sold'), went('gave away'), went('died')]).toEqual([heads('sold'), heads('given'), heads('died')]);
      const cents = all.reduce((sum, [, how, one]) => sum + (how === 'sold' ? one : 0), 0);
      expect(money(room)?.total.income.low).toBeCloseTo((cents / 100) * 0.7, 6);
    }),
    { numRuns: 25 },
  );
});

describe('the workshop and its coming auction', () => {
  const journal = fs.readFileSync('examples/workshop/fishroom.txt', 'utf8');
  const world = { files: { [JOURNAL]: journal }, today: '2026-12-06', env: { NO_COLOR: '1' } };

  test('from the blank sheet to a settled auction, with check as clean as before', async () => {
    const blank = await tankside(['settle', 'Winter', '--sheet', 'winter.csv', '--on', '2026-12-04'], world);
    expect(blank.status).toBe(0);
    const [head = '', ...rows] = (blank.files['/room/winter.csv'] ?? '').split('\r\n').filter((line) => line !== '');
    expect(`${head}\n`).toBe(HEAD);
    expect(rows.length).toBeGreaterThan(6);
    const filled = rows.map((line, index) =>
      line.replace(/,,$/, index % 4 === 3 ? ',,Q1' : `,${String(14 + index)}.50,`),
    );
    const files = { [JOURNAL]: journal, '/room/winter.csv': [head, ...filled].join('\r\n') };
    const ran = await tankside(['settle', 'Winter', 'winter.csv'], { ...world, files });
    expect(ran).toMatchObject({ status: 0, err: '' });
    const problems = async (text: string): Promise<unknown> => {
      const { out, status } = await tankside(['check', '--json', '--on', '2026-12-06'], {
        ...world,
        files: { [JOURNAL]: text },
      });
      const told: unknown = JSON.parse(out);
      return { status, told };
    };
    expect(await problems(ran.files[JOURNAL] ?? '')).toEqual(await problems(journal));
    expect(ran.out).not.toContain('look again');
  });

  test('the blank sheet is never written over a file', async () => {
    const files = { [JOURNAL]: journal, '/room/winter.csv': 'filled in' };
    const ran = await tankside(['settle', 'Winter', '--sheet', 'winter.csv', '--on', '2026-12-04'], {
      ...world,
      files,
    });
    expect(ran.status).toBe(3);
    expect(ran.files['/room/winter.csv']).toBe('filled in');
  });
});

/** Reservations, deposits, wants and the price list from a journal's text to what is printed. */
import { describe, expect, test, vi } from 'vitest';
import { tankside, type Ran } from '../support/run.ts';

vi.setConfig({ testTimeout: 60_000 });

const JOURNAL = '/room/fishroom.txt';
/** 30 counted in C1, 16 weeks old on 24 April; 20 younger ones in C2, 16 weeks old by 5 June. */
const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 100 x 40 x 40 cm; alone
2026-01-01 tank A2: 100 x 40 x 40 cm; alone
2026-01-01 tank C1: 54 L; alone
2026-01-01 tank C2: 54 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 16 weeks; price 6.00
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-01 pair Larch: krib; male 80 mm; female 60 mm; in A2
2026-01-02 A1: spawned brood Rowan-1
2026-02-13 A2: spawned brood Larch-1
2026-02-20 A1: moved all Rowan-1 to C1
2026-02-21 C1: counted 30
2026-03-20 A2: moved all Larch-1 to C2
2026-03-21 C2: counted 20
`;

function ask(argv: readonly string[], more: string, today = '2026-05-01'): Promise<Ran> {
  return tankside(argv, { files: { [JOURNAL]: ROOM + more }, today, columns: 100, env: { NO_COLOR: '1' } });
}

describe('more cannot be promised than is surely there', () => {
  test('jot refuses the reservation that is one too many, and says how many there are', async () => {
    const more = '2026-05-01 C1: kept back 8 Rowan-1; reserved 20 Rowan-1 until 2026-06-01 to "Iris"\n';
    const ran = await ask(['jot', 'C1: reserved 3 Rowan-1 until 2026-05-20'], more);
    expect(ran.status).toBe(2);
    expect(ran.err.replaceAll(/\n +/g, ' ')).toContain(
      'with this line 23 reserved and 8 kept back of Rowan-1, but surely only 30 are alive',
    );
    expect(ran.files[JOURNAL]).toBe(ROOM + more);
    const fits = await ask(['jot', 'C1: reserved 2 Rowan-1 until 2026-05-20'], more);
    expect(fits.status).toBe(0);
  });

  test('a guess counts with its low number', async () => {
    const guess = '2026-04-02 C1: died 1 Rowan-1\n2026-04-03 C1: gave away about 8 Rowan-1\n';
    // 29 less 6 to 10: surely 19.
    expect((await ask(['jot', 'C1: reserved 20 Rowan-1'], guess)).status).toBe(2);
    expect((await ask(['jot', 'C1: reserved 19 Rowan-1'], guess)).status).toBe(0);
  });

  test('what has lapsed is free again, and a line for an earlier day promises nothing now', async () => {
    const more = '2026-04-10 C1: reserved 30 Rowan-1 until 2026-04-20 to "Iris"\n';
    expect((await ask(['jot', 'C1: reserved 30 Rowan-1'], more)).status).toBe(0);
    expect((await ask(['jot', '2026-04-12 C1: reserved 6 Rowan-1 until 2026-04-30'], more)).status).toBe(0);
  });

  test('in a journal that was written by hand it counts, and check says so', async () => {
    const more = '2026-05-01 C1: reserved 31 Rowan-1 to "Iris"\n';
    const { out, status } = await ask(['check'], more);
    expect(out).toContain('0 Rowan-1 are kept back and 31 reserved, but surely only 30 are alive');
    expect(status).toBe(0);
  });
});

test('deposits: held, and to give back for what lapsed', async () => {
  const more = `2026-04-10 C1: reserved 6 Rowan-1 until 2026-06-01 to "Iris", deposit 5.00
2026-04-10 C1: reserved 4 Rowan-1 until 2026-04-28 to "Otto", deposit 2.50
`;
  const { out } = await ask(['promises'], more);
  expect(out).toContain('deposits held: 5.00 EUR; 2.50 EUR paid for what has lapsed: give back or agree anew');
  const json = await ask(['promises', '--json'], more);
  expect(JSON.parse(json.out)).toMatchObject({ deposits: { held: 5, lapsed: 2.5 }, currency: 'EUR' });
  expect(json.out).not.toMatch(/Iris|Otto/);
  const fetched = await ask(['promises'], `${more}2026-05-01 C1: sold 6 Rowan-1 for 36.00 to "Iris"\n`);
  expect(fetched.out).not.toContain('deposits held');
});

describe('wants', () => {
  test('fish that meet one are not offered to the next, and what is short is told', async () => {
    const more = `2026-04-20 room: wanted 24 krib by 2026-05-10 to "Iris"
2026-04-21 room: wanted 20 krib by 2026-05-20 to "Otto"
`;
    const { out } = await ask(['promises'], more);
    expect(out).toMatch(/24 krib +10 May +Iris +24 of 30 Rowan-1 in C1\n/);
    expect(out).toMatch(/20 krib +20 May +Otto +6 of 6 Rowan-1 in C1; 14 short\n/);
  });

  test('one that is met in part is not told as met, and one that finds nothing left says who had it', async () => {
    const wish = (count: number, by: string, to: string): string =>
      `2026-04-20 room: wanted ${String(count)} krib by ${by} to "${to}"\n`;
    const first = async (more: string): Promise<string> =>
      ((await ask(['promises'], more)).out.split('\n')[0] ?? '').replace(/^.*?: /, '');
    const [iris, otto, fen] = [
      wish(24, '2026-05-10', 'Iris'),
      wish(20, '2026-05-20', 'Otto'),
      wish(4, '2026-05-25', 'Fen'),
    ];
    expect(await first(iris)).toBe('nothing reserved; 1 want, 1 to be met now');
    expect(await first(iris + otto)).toBe('nothing reserved; 2 wants, 1 to be met now, 1 in part');
    expect(await first(wish(40, '2026-05-10', 'Iris'))).toBe('nothing reserved; 1 want, 1 to be met now in part');
    const { out } = await ask(['promises'], iris + otto + fen);
    expect(out).toMatch(/4 krib +25 May +Fen +none left: Rowan-1 in C1 go to earlier wants\n/);
    const why = (await ask(['why', 'krib-wanted-2026-04-20-3'], iris + otto + fen)).out;
    expect(why).toContain('Rowan-1 in C1: all that may go meet earlier wants');
    expect(why).not.toContain('nothing in the room meets it');
  });

  test('by what will surely be ready on their day, and not a day before', async () => {
    // Laid on 13 February: sixteen weeks old on 5 June, by the calendar.
    const by = (day: string): string =>
      `2026-04-20 C1: gave away all Rowan-1\n2026-04-20 room: wanted 12 krib by ${day} to "Iris"\n`;
    expect((await ask(['promises'], by('2026-06-05'))).out).toContain('12 of 20 Larch-1 in C2 from 5 Jun');
    expect((await ask(['promises'], by('2026-06-04'))).out).toContain('none in time');
  });

  test('what is reserved today is not free then, though the promise lapses before', async () => {
    const more = `2026-04-20 C1: gave away all Rowan-1
2026-04-20 C2: reserved 15 Larch-1 until 2026-05-10 to "Otto"
2026-04-20 room: wanted 12 krib by 2026-06-10 to "Iris"
`;
    expect((await ask(['promises'], more)).out).toContain('5 of 5 Larch-1 in C2 from 5 Jun; 7 short');
  });
});

describe('the price list', () => {
  test('what is ready and promised to nobody, a line each; no tank, no buyer', async () => {
    const more =
      '2026-04-20 C1: Rowan-1 counted 30; kept back 8 Rowan-1; reserved 6 Rowan-1 until 2026-06-01 to "Iris"\n';
    const { out } = await ask(['promises', '--list'], more);
    expect(out).toMatch(
      /^For sale on 1 May 2026\n\nPelvicachromis taeniatus(?:, [\d–]+ mm)?: 6\.00 EUR each, 16 fish \(Rowan-1\)\n$/,
    );
    const json = await ask(['promises', '--list', '--json', '--with-names'], more);
    expect(JSON.parse(json.out)).toMatchObject({
      currency: 'EUR',
      offered: [{ id: 'rowan-1-c1-sale', stock: 'Rowan-1', count: 16, price: { amount: 6, per: 'each' } }],
    });
    expect(json.out).not.toContain('Iris');
  });

  test('fish of one stock and length in two tanks are one offer, and two rows for a program', async () => {
    const split = '2026-04-20 C1: counted 30\n2026-04-20 C1: moved 10 Rowan-1 to C2\n';
    const { out } = await ask(['promises', '--list'], split);
    expect(out.match(/\(Rowan-1\)/g)).toHaveLength(1);
    expect(out).toContain('30 fish (Rowan-1)');
    const json = await ask(['promises', '--list', '--json'], split);
    expect(json.out.match(/"stock": "Rowan-1"/g)).toHaveLength(2);
  });

  test('what to mind before it is sent names its stock', async () => {
    const { out } = await ask(['promises', '--list'], '', '2026-12-01');
    expect(out).toMatch(/^\(before you send it: Rowan-1, last counted 21 Feb, and some die unseen: .*\)$/m);
    expect(out).toMatch(/^\(before you send it: Larch-1, last counted 21 Mar, /m);
  });

  test('nothing of a tank on hold', async () => {
    const { out } = await ask(['promises', '--list'], '2026-04-30 C1: hold "velvet"\n');
    expect(out).toBe('nothing is ready for sale on 1 May 2026\n');
  });

  test('no line of it is broken, whatever the width', async () => {
    const files = { [JOURNAL]: ROOM };
    const { out } = await tankside(['promises', '--list'], { files, today: '2026-05-01', columns: 20 });
    expect(out.split('\n').some((line) => line.length > 40)).toBe(true);
  });
});

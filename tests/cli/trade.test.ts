/** Sales, holds, promises and live foods from a journal's text to what is printed. */
import { describe, expect, test, vi } from 'vitest';
import { tankside, type Ran } from '../support/run.ts';

// The first command loads the parser, which may take its time on a busy machine.
vi.setConfig({ testTimeout: 30_000 });

const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-01-01 tank A1: 100 x 40 x 40 cm; on Long
2026-01-01 tank A2: 100 x 40 x 40 cm; on Long
2026-01-01 tank B1: 60 x 40 x 35 cm; on Long
2026-01-01 tank C1: 54 L; alone; sponge filter
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00
2026-01-01 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-02 A1: spawned, about 90 eggs
2026-01-12 A1: free-swimming, about 70
2026-02-20 A1: moved all Rowan-1 to C1
2026-02-21 C1: counted 30
`;

function ask(command: string, more: string, on: string): Promise<Ran> {
  const files = { '/room/fishroom.txt': ROOM + more };
  return tankside([...command.split(' '), '--on', on], { files, today: on, columns: 100, env: { NO_COLOR: '1' } });
}

describe('sale', () => {
  test('--plan: the bags for an auction, and options that cannot be', async () => {
    const auction = '2026-04-25 auction Spring: on 2026-05-09; bags of 6; 3 bags per species; seller gets 70 %\n';
    const { out, status } = await ask('sale --for spring --plan --tank-week 1.50', auction, '2026-05-01');
    expect(status).toBe(0);
    expect(out).toMatch(/^Fri 1 May 2026: 3 bags, 18 fish for Spring on 9 May; likely 75\.60 EUR after the split/);
    expect(out).toContain('tank-weeks × 1.50 EUR');
    for (const [options, says] of [
      ['--tank-week dear', '--tank-week takes an amount of money'],
      ['--boxes few', '--boxes takes a whole number'],
      ['--box-litres 2', 'a box holds 5 to 500 L'],
      ['--hours 0', 'fish are bagged for 1 to 96 h'],
      ['--offer Rowen', 'no pair is called «Rowen»'],
    ] as const) {
      const wrong = await ask(`sale --for Spring --plan ${options}`, auction, '2026-05-01');
      expect(wrong.status).toBe(2);
      expect(wrong.err).toContain(says);
    }
  });

  test('the sure number, less what is promised, at its price', async () => {
    const more = '2026-04-25 C1: kept back 8 Rowan-1; reserved 6 Rowan-1 until 2026-06-20 to "Iris"\n';
    const { out, status } = await ask('sale', more, '2026-05-01');
    expect(status).toBe(0);
    expect(out).toMatch(/^Fri 1 May 2026: 16 fish in 1 lot can be promised\n/);
    expect(out).toMatch(/Rowan-1, krib +C1 +16 .*6\.00 +8 kept back; 6 reserved/);
  });

  test('more sold than were surely counted is left out, and both lines are named', async () => {
    const { out, err } = await ask('sale', '2026-04-25 C1: sold 50 Rowan-1 at 4.00 each\n', '2026-05-01');
    expect(out).toContain('30 fish in 1 lot');
    expect(err).toContain('fishroom.txt line 14');
    const checked = await ask('check', '2026-04-25 C1: sold 50 Rowan-1 at 4.00 each\n', '2026-05-01');
    expect(checked.status).toBe(1);
    expect(checked.out).toMatch(/line 14[\s\S]*50[\s\S]*30[\s\S]*line 13/);
  });

  test('for an auction: its day and its bags; a wrong name is told the right one', async () => {
    const more = '2026-03-01 auction Spring: on 2026-05-16; 20 lots; bags of 6; seller gets 70 %; fast 2 days\n';
    const { out } = await ask('sale --for spring', more, '2026-04-10');
    expect(out).toMatch(/^Fri 10 Apr 2026: 30 fish in 1 lot can be promised at Spring on 16 May\n/);
    expect(out).toContain('5 bags');
    const wrong = await ask('sale --for Sprign', more, '2026-04-10');
    expect(wrong.status).toBe(2);
    expect(wrong.err).toContain('tankside sale --for Spring');
  });

  test('CSV goes into a new file, and never over one', async () => {
    const files = { '/room/fishroom.txt': ROOM, '/room/mine.csv': 'mine' };
    const made = await tankside(['sale', '--on', '2026-05-01', '--csv', 'lots.csv'], { files });
    expect(made.files['/room/lots.csv']).toMatch(/^stock,species,tank,ready,free/);
    const kept = await tankside(['sale', '--on', '2026-05-01', '--csv', 'mine.csv'], { files });
    expect(kept.status).toBe(3);
    expect(kept.files['/room/mine.csv']).toBe('mine');
  });
});

describe('holds', () => {
  const more = `2026-03-01 A2: fault "valve weeping"; off the loop, air filter in
2026-04-10 C1: moved 12 Rowan-1 to A1
2026-04-18 A1: sold 4 Rowan-1 at 4.00 each to "Iris"
2026-04-20 A1: sick "velvet", catching; hold "velvet"
2026-04-20 A1: treat "velvet remedy" 1 mL/L, every 48 h, 3 doses
2026-04-22 Long: dosed "velvet remedy"
`;

  test('reach, clean tanks, fish moved and sold, and the day', async () => {
    const { out } = await ask('holds', more, '2026-04-23');
    expect(out).toMatch(/3 tanks on hold, clear on 22 May/);
    expect(out).toMatch(/B1 +6 Apr +shares the water of Long with A1/);
    expect(out).toMatch(/C1 +6 Apr +Rowan-1 went from it to A1/);
    expect(out).toMatch(/clean: A2, off Long since 1 Mar/);
    expect(out).toMatch(/sold or given: 4 Rowan-1 from A1 to Iris, 18 Apr/);
    expect(out).toMatch(/velvet remedy, dose 2 of 3, next 24 Apr; treated with it:/);
  });

  test('names of buyers in JSON only when asked for', async () => {
    expect((await ask('holds --json', more, '2026-04-23')).out).not.toContain('Iris');
    expect((await ask('holds --json --with-names', more, '2026-04-23')).out).toContain('Iris');
  });

  test('the answer of the day does not know what comes later', async () => {
    expect((await ask('holds', more, '2026-04-19')).out).toBe('Sun 19 Apr 2026: nothing on hold\n');
  });

  test('due: the next dose on its day, and the hold at its end', async () => {
    const { out } = await ask('due', more, '2026-04-24');
    expect(out).toContain('dose 3 of velvet remedy, by your label');
    expect(out).toContain('jot  A1: treat "velvet remedy"');
    const done = await ask('due', more + '2026-04-24 A1: treat "velvet remedy"\n', '2026-05-22');
    expect(done.out).toContain('jot  A1: hold over');
  });

  test('why tells the rule and the lines', async () => {
    const { out } = await ask('why A1 hold', more, '2026-04-23');
    expect(out).toMatch(/rule +a hold reaches every tank/);
    expect(out).toContain('2026-03-01 A2: fault "valve weeping"; off the loop, air filter in');
  });
});

describe('the line under a row, once jotted, takes the row away', () => {
  /** The `jot` line of the first row of the list that has those words. */
  async function closing(words: string, more: string, on: string): Promise<string> {
    const { out } = await ask('due', more, on);
    const at = out.indexOf(words);
    expect(at).toBeGreaterThanOrEqual(0);
    return /jot {2}(.*)/.exec(out.slice(at))?.[1] ?? '';
  }

  test.each([
    ['hand over 6 Rowan-1', '2026-04-02 C1: reserved 6 Rowan-1 until 2026-05-01 to "Iris"\n', '2026-05-01'],
    ['fetched after all?', '2026-04-02 C1: reserved 6 Rowan-1 until 2026-04-28 to "Iris"\n', '2026-05-01'],
    ['offer krib', '2026-04-25 room: wanted 12 krib by 2026-06-01 to "Otto"\n', '2026-05-01'],
    ['start the next jar', '2026-04-01 culture M1: microworm\n2026-04-01 M1: started\n', '2026-05-01'],
    ['put it on hold', '2026-04-30 A1: sick "velvet", catching\n', '2026-05-01'],
    ['dose 2 of salt', '2026-04-30 Q1: treat "salt" 2 g/L, every 24 h, 2 doses\n', '2026-05-01'],
    ['end the quarantine', '2026-04-03 Q1: bought 6 krib at 4.00 each; quarantine 28 days\n', '2026-05-01'],
  ])('%s', async (words, more, on) => {
    const close = await closing(words, more, on);
    expect((await ask('due', `${more}${on} ${close}\n`, on)).out).not.toContain(words);
  });
});

test('promises and cultures answer in a line where there is nothing', async () => {
  expect((await ask('promises', '', '2026-05-01')).out).toBe('Fri 1 May 2026: nothing reserved\n');
  expect((await ask('cultures', '', '2026-05-01')).out).toBe('Fri 1 May 2026: no culture in the journal yet\n');
});

test('live foods: a jar started, harvested, split, sour, and a hatch', async () => {
  const more = `2026-04-01 culture M1: microworm
2026-04-01 culture M2: microworm
2026-04-01 M1: started
2026-04-05 M1: harvested
2026-04-12 M1: split to M2
2026-04-20 M1: sour
2026-04-25 A1: hatch 2 g brine shrimp
`;
  const { out } = await ask('cultures', more, '2026-04-26');
  expect(out).toMatch(/M1 +microworm +sour/);
  expect(out).toMatch(/M2 +microworm +live +14 days/);
  expect(out).toContain('hatch: 2 g brine shrimp for A1, set 25 Apr, to feed 26–27 Apr');
  expect((await ask('due', more, '2026-04-26')).out).toContain('jot  M2: split to M1');
});

test('quarantine and bought fish', async () => {
  const more = '2026-04-25 Q1: bought 6 krib at 4.00 each; quarantine 28 days\n';
  const { out } = await ask('holds', more, '2026-05-01');
  expect(out).toMatch(/Q1 +quarantine since 25 Apr +23 May +Q1: quarantine over/);
  const listed = await ask('sale', more, '2026-05-01');
  expect(listed.out).toMatch(/krib of 25 Apr +Q1 +6 +not known +in quarantine since 25 Apr, until 23 May/);
});

/** `kin` and `money` from a journal's text to what is printed. */
import { expect, test, vi } from 'vitest';
import { tankside, type Ran } from '../support/run.ts';

vi.setConfig({ testTimeout: 30_000 });

const ROOM = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 100 L; alone
2026-01-01 tank B1: 100 L; alone
2026-01-01 tank C1: 54 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-02 A1: spawned, about 60 eggs
2026-01-13 A1: free-swimming, about 50
2026-02-12 A1: moved all Rowan-1 to B1
2026-02-13 B1: counted 40
2026-04-10 B1: sold 6 Rowan-1 at 4.00 each to "Iris Quill"
2026-07-01 pair Alder: krib; male; female; in C1; from Rowan-1
`;

function ask(...argv: string[]): Promise<Ran> {
  const files = { '/room/fishroom.txt': ROOM };
  return tankside([...argv, '--on', '2026-08-01'], { files, today: '2026-08-01', columns: 80, env: { NO_COLOR: '1' } });
}

test('kin: sibs are told with whom they share; founders are on record or not, never unrelated', async () => {
  const { out, status } = await ask('kin');
  expect(status).toBe(0);
  expect(out).toMatch(/^Sat 1 Aug 2026: do not breed on from Alder, too close \(F ≥ 0\.25\)\n/);
  expect(out).toMatch(/Rowan +≥ 0 +no shared parents on record/);
  expect(out).toMatch(/Alder +≥ 0\.25 +share the male of Rowan/);
  expect(out).not.toContain('unrelated');
});

/** The first line alone, however it was wrapped, without its date. */
async function first(more: string, ...argv: string[]): Promise<string> {
  const files = { '/room/fishroom.txt': ROOM + more };
  const machine = { files, today: '2026-08-01', columns: 80, env: { NO_COLOR: '1' } };
  const { out } = await tankside([...argv, '--on', '2026-08-01'], machine);
  return (out.split('\n\n')[0] ?? '').replace(/\n {2}/g, ' ').replace(/^Sat 1 Aug 2026: /, '');
}

test('kin says first what to do: whom to pair, or not to', async () => {
  const fern = '2026-07-02 group Fern: krib; 6; in C1; from "a friend"\n';
  expect(await first(fern, 'kin')).toBe('do not breed on from Alder, too close (F ≥ 0.25); better Rowan-1 × Fern');
  expect(await first(fern, 'kin', 'Alder')).toBe(
    'do not breed on from Alder, too close (F ≥ 0.25); better Rowan-1 × Fern',
  );
  expect(await first(fern, 'kin', 'Rowan-1')).toBe('pair Rowan-1 with Fern: no shared parents on record');
  expect(await first(fern, 'kin', 'Rowan-1', 'Alder')).toBe(
    'better not pair Rowan-1 with Alder: they share the male of Rowan and the female of Rowan',
  );
  expect(await first(fern, 'kin', 'Rowan-1', 'Fern')).toBe(
    'Rowan-1 and Fern may be paired: no shared parents on record',
  );
  expect(await first(fern, 'kin', 'Fern', 'Fern')).toMatch(
    /^pair Fern with Fern only for want of better: no shared parents on record; they may be sibs/,
  );
});

test('kin: what hangs on one fish comes first, three lines by name', async () => {
  const pairs = ['Ash', 'Elm', 'Ivy', 'Oak', 'Yew'].map(
    (name) => `2026-07-02 pair ${name}: krib; male; female; in C1; line "${name} river"\n`,
  );
  expect(await first(pairs.slice(0, 1).join(''), 'kin')).toBe(
    'raise young of the line Ash river: it hangs on a single fish',
  );
  expect(await first(pairs.join(''), 'kin')).toBe(
    'raise young of the lines Ash river, Elm river, Ivy river and 2 more: each hangs on a single fish',
  );
});

test('kin of two, as JSON; a misspelt name is offered the right one', async () => {
  const { out } = await ask('kin', 'Rowan-1', 'Alder', '--json');
  expect(JSON.parse(out)).toMatchObject({
    version: 1,
    couples: [{ f: { low: 0.25, high: 0.25 } }, { unknownFounders: 2 }],
  });
  const wrong = await ask('kin', 'Rowna-1');
  expect(wrong.status).toBe(2);
  expect(wrong.err).toContain('tankside kin Rowan-1');
});

test('money: sums, tank-weeks, no buyer; and why', async () => {
  const { out } = await ask('money', '--since', '2026-03-01');
  expect(out).toMatch(/^Sat 1 Aug 2026: 24\.00 EUR for fish since 1 Mar; best krib/);
  const json = await ask('money', '--json');
  expect(JSON.parse(json.out)).toMatchObject({ broods: [{ name: 'Rowan-1', income: 24, pair: 'Rowan' }] });
  const why = await ask('why', 'rowan-1-money');
  expect(why.out).toContain('10 Apr: 6 × 4.00: 24.00');
  expect(out + json.out).not.toContain('Iris');
});

test('kin: a pair out of two stocks is told as one of each, as the help says', async () => {
  const more = `2026-05-01 group Sedge: krib; 4; in A1; from "a friend"
2026-07-02 pair Yew: krib; male; female; in C1; from Rowan-1 and Sedge
`;
  const files = { '/room/fishroom.txt': ROOM + more };
  const { out } = await tankside(['kin', '--on', '2026-08-01'], { files, columns: 100, env: { NO_COLOR: '1' } });
  expect(out).toMatch(/Yew +≥ 0 +no shared parents on record/);
  expect(out).toContain('each from Rowan-1 or Sedge');
  expect((await tankside(['kin', '--help'])).out.replace(/\s+/g, ' ')).toContain(
    'from Rowan-1 and Sedge-2 (one of each)',
  );
});

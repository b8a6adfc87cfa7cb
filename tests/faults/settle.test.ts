/** Every call on the file system made to fail in turn, while an auction is settled: all of its lines, or none. */
import { expect, test, vi } from 'vitest';
import { filesOn } from '../../src/files/files.ts';
import { failing, type Failing, type Failure } from '../support/failing.ts';
import { aloneMachine, MemoryDisk } from '../support/memory.ts';
import { tankside, type Ran } from '../support/run.ts';

vi.setConfig({ testTimeout: 120_000 });

const JOURNAL = '/room/fishroom.txt';
const OLD = `2026-01-01 room: units metric; currency EUR
2026-01-01 tank C1: 54 L; alone
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 group Ash: krib; 30; in C1
2026-03-01 auction Spring: on 2026-05-16; seller gets 70 %
`;
const SHEET = `lot,stock,tank,fish,fetched,back to
1,Ash,C1,6,14.00,
2,Ash,C1,6,,Q1
`;
const LINES = `2026-05-16 C1: sold 6 Ash for 14.00 at Spring "lot 1"
2026-05-16 C1: moved 6 Ash to Q1 "unsold at Spring, lot 2"
2026-05-16 Q1: quarantine 28 days
2026-05-16 room: did "settle for Spring"
`;

async function trial(failure: Failure): Promise<Ran & { readonly calls: number }> {
  const broken: Failing[] = [];
  const ran = await tankside(['settle', 'Spring', '-'], {
    files: { [JOURNAL]: OLD },
    today: '2026-05-17',
    input: SHEET,
    broken(disk) {
      const one = failing(disk, failure);
      broken.push(one);
      return one.disk;
    },
  });
  return { ...ran, calls: broken[0]?.calls() ?? 0 };
}

/** What a reader sees of what is left on the disk, the record beside the journal included. */
function seen(files: Ran['files']): string {
  const disk = new MemoryDisk();
  for (const [name, text] of Object.entries(files)) disk.put(name, text);
  const read = filesOn(disk, aloneMachine()).read(JOURNAL);
  return read.ok ? read.content.text : read.says;
}

test('all of it where nothing fails', async () => {
  const { status, files, calls } = await trial({ at: -1, later: false, how: 'before', code: 'EIO' });
  expect(status).toBe(0);
  expect(files).toEqual({ [JOURNAL]: OLD + LINES });
  expect(calls).toBeGreaterThan(20);
});

const HOW = ['before', 'after', 'half'] as const;
const CASES = HOW.flatMap((how) =>
  (['EIO', 'ENOSPC'] as const).flatMap((code) => [true, false].map((later) => ({ how, code, later }))),
);

test.each(CASES)('$code $how it took effect, later calls failing too: $later', async ({ how, code, later }) => {
  const { calls } = await trial({ at: -1, later: false, how, code });
  let refused = 0;
  for (let at = 0; at <= calls; at += 1) {
    const { status, files, err } = await trial({ at, later, how, code });
    const text = seen(files);
    expect([OLD, OLD + LINES]).toContain(text);
    if (status === 0) expect(text).toBe(OLD + LINES);
    else refused += 1;
    if (status !== 0 && !/look\s+at\s+its\s+last\s+lines/.test(err)) expect(text).toBe(OLD);
  }
  expect(refused).toBeGreaterThan(5);
});

/** `check --against`: two copies of one journal, as a phone, a merge or a sync tool leaves them. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { against } from '../../src/questions/against.ts';
import { readJournal } from '../../src/language/read.ts';
import { asPhone } from '../support/phone.ts';
import { NO_FILES } from '../support/lines.ts';
import { tankside } from '../support/run.ts';
import type { Ran } from '../support/run.ts';

const SAMPLE = readFileSync(new URL('../corpus/sample.txt', import.meta.url), 'utf8');
const LINES = SAMPLE.split('\n').filter((line) => line !== '');

function compare(other: string, ...argv: readonly string[]): Promise<Ran> {
  const files = { '/room/fishroom.txt': SAMPLE, '/room/phone.txt': other };
  return tankside(['check', '--against', 'phone.txt', ...argv], { today: '2026-11-25', files });
}

describe('check --against', () => {
  it('finds nothing between a copy and itself in another order, and ends with 0', async () => {
    const ran = await compare(LINES.toReversed().join('\r\n'));
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).toBe(`fishroom.txt and phone.txt: nothing differs, ${LINES.length} lines in both\n`);
  });

  it('a copy that is not there is not to be begun as a journal', async () => {
    const files = { '/room/fishroom.txt': SAMPLE };
    const ran = await tankside(['check', '--against', 'phone.txt'], { today: '2026-11-25', files });
    expect([ran.status, ran.err]).toEqual([
      3,
      'there is no copy at /room/phone.txt\nwrite: tankside check --against FILE\n',
    ]);
  });

  it('a folder in its place is said to be one', async () => {
    const files = { '/room/fishroom.txt': SAMPLE, '/room/phone/x.txt': '' };
    const ran = await tankside(['check', '--against', 'phone'], { today: '2026-11-25', files });
    expect([ran.status, ran.err]).toEqual([
      3,
      '/room/phone cannot be read: it is a folder\nwrite: tankside check --against FILE\n',
    ]);
  });

  it('takes a line as a phone spells it for the same line', async () => {
    expect((await compare(asPhone(SAMPLE))).status).toBe(0);
  });

  it('lists what one copy has and the other lacks, and what a day tells differently', async () => {
    const other = SAMPLE.replace('2026-02-05 A1: wrigglers\n', '').replace('level 54 mm', 'level 45 mm');
    const ran = await compare(`${other}2026-03-11 C1: all well\n`);
    expect(ran.status).toBe(1);
    expect(ran.out).toBe(
      `fishroom.txt and phone.txt: 1 only in fishroom.txt, 1 only in phone.txt, 1
  told differently; ${LINES.length - 2} lines in both

only in fishroom.txt
   fishroom.txt line 17
   2026-02-05 A1: wrigglers

told differently
   fishroom.txt line 20
   2026-02-10 Long: level 54 mm
   phone.txt line 19
   2026-02-10 Long: level 45 mm

only in phone.txt
   phone.txt line 26
   2026-03-11 C1: all well

a line may stand anywhere in fishroom.txt: copy over what is missing there
`,
    );
  });

  it('says that a line stands more often in one of them', async () => {
    const ran = await compare(`${SAMPLE}2026-02-10 C1: water change 30 %\n`, '--json');
    expect(JSON.parse(ran.out)).toMatchObject({
      version: 1,
      same: LINES.length,
      rows: [{ day: '2026-02-10', here: null, there: { line: 27 }, again: true }],
    });
  });

  it('compares lines that neither copy can read', async () => {
    expect((await compare(`${SAMPLE}what is this\n`)).out).toContain('what is this');
  });

  it('ends with 3 where the other copy is not there', async () => {
    const ran = await tankside(['check', '--against', 'x.txt'], { files: { '/room/fishroom.txt': SAMPLE } });
    expect(ran).toMatchObject({ status: 3, out: '' });
    expect(ran.err).toContain('x.txt');
  });

  it('accounts for every line of both copies, whichever lines they share', () => {
    const some = fc.subarray(LINES.slice(12));
    fc.assert(
      fc.property(some, some, (left, right) => {
        const read = (those: readonly string[]) =>
          readJournal('fishroom.txt', [...LINES.slice(0, 12), ...those].join('\n'), NO_FILES).entries;
        const [here, there] = [read(left), read(right)];
        const { same, rows } = against(here, there);
        expect(same + rows.filter((row) => row.here !== null).length).toBe(here.length);
        expect(same + rows.filter((row) => row.there !== null).length).toBe(there.length);
        const missing = rows.filter((row) => row.here === null).map((row) => row.there?.text);
        expect(missing.every((text) => text !== undefined && right.includes(text) && !left.includes(text))).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});

describe('check after a merge', () => {
  const merged = (text: string): Promise<Ran> =>
    tankside(['check'], { today: '2026-11-25', files: { '/room/fishroom.txt': text } });

  it('names the marks that a merge leaves, and reads the lines between them', async () => {
    const ran = await merged(
      `${SAMPLE}<<<<<<< HEAD\n2026-03-12 Long: level 20 mm\n=======\n2026-03-12 Long: level 21 mm\n>>>>>>> phone\n`,
    );
    expect(ran.status).toBe(1);
    expect(ran.out).toContain('a merge left this mark');
    expect(ran.out).toContain('3 lines left out');
  });

  it('says which lines stand twice', async () => {
    const ran = await merged(
      `${SAMPLE}2026-02-10 C1: water change 30 %\n2026-02-02 07:40 A1: spawned, about 90 eggs\n`,
    );
    expect(ran.out).toContain('the same is written twice on this day');
  });
});

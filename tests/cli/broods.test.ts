/** The sample journal, asked about its brood at the command line. */
import { describe, expect, it } from 'vitest';
import { SAMPLE } from '../support/sample.ts';
import { tankside } from '../support/run.ts';

const files = { '/room/fishroom.txt': SAMPLE };
const today = '2026-03-10';

async function json(...words: string[]): Promise<unknown> {
  const { out, status, err } = await tankside(['broods', ...words, '--json'], { today, files });
  expect([status, err]).toEqual([0, '']);
  return JSON.parse(out);
}

describe('tankside broods', () => {
  it('counts nothing twice, ages from laying, and tells when they can be sold', async () => {
    expect(await json('--on', '2026-03-10')).toMatchObject({
      version: 1,
      on: '2026-03-10',
      leftOut: 0,
      broods: [
        {
          id: 'rowan-1',
          group: 'Rowan',
          tanks: [
            { tank: 'A1', count: { low: 1, likely: 25, high: 106 } },
            { tank: 'C1', count: { low: 34, likely: 45, high: 56 } },
          ],
          spawned: '2026-02-02',
          ageDays: 36,
          swam: { low: '2026-02-05', high: '2026-02-10' },
          readyNow: false,
          ready: { low: '2026-05-25', likely: '2026-05-25', high: '2026-05-25' },
          warnings: [],
        },
      ],
    });
  });
  it('knows no swim-up on the day before', async () => {
    expect(await json('--on', '2026-02-09')).toMatchObject({ broods: [{ swam: null, stage: 'wriggler', ageDays: 7 }] });
  });
  it('shows one brood with what its figures rest on', async () => {
    const { out } = await tankside(['broods', 'rowan-1'], { today, files, columns: 80, env: { NO_COLOR: '1' } });
    expect(out).toMatchInlineSnapshot(`
      "Tue 10 Mar 2026: 1 brood; Rowan-1 for sale 25 May

      brood    where                age      stage    mm  next  for sale
      Rowan-1  A1 about 25 (1–106)  36 days  young  9–12        25 May
               C1 about 45 (34–56)

      krib, of Rowan, laid 2 Feb, hatched 3–5 Feb, most likely 4–5, swam 5–10 Feb,
        most likely 9–10
      all together about 70 (35–140); likely there 45–94 (four times of five)
      lived from stage to stage: eggs to swimming 78 % (19–100 %)
      of 90 since 2 Feb: 20 lost between counts, unseen (by guesses)
      78 % lived 8 days, sold and moved fish counted as alive
      grows 0.9–1.5 mm a week
      for sale at 35 mm or 16 weeks: the first 25 May, half 25 May, all 25 May
      more: tankside why Rowan-1 ready
      "
    `);
  });
  it('says what is behind its sale', async () => {
    const { out } = await tankside(['why', 'Rowan-1', 'ready'], { today, files });
    expect(out).toContain('for sale at 35 mm or 16 weeks');
    expect(out).toContain('largest 12 mm');
  });
  it('asks back for a brood that is none', async () => {
    const { status, err } = await tankside(['broods', 'Rowan-9'], { today, files });
    expect(status).toBe(2);
    expect(err).toContain('tankside broods Rowan-1');
  });
});

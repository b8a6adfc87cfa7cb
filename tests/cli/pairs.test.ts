/** The pairs as the commands tell them, from the text of a journal. */
import { describe, expect, test } from 'vitest';
import { tankside } from '../support/run.ts';
import { SAMPLE } from '../support/sample.ts';

async function asked(argv: readonly string[], text = SAMPLE): Promise<string> {
  const ran = await tankside(argv, { today: '2026-03-10', files: { '/room/fishroom.txt': text } });
  expect(ran).toMatchObject({ status: 0, err: '' });
  return ran.out;
}

async function json(argv: readonly string[], text = SAMPLE): Promise<unknown> {
  return JSON.parse(await asked([...argv, '--json'], text));
}

describe('the pair in A1', () => {
  test('had one dispute, 14 to 16 February, worst sign torn fin, ended by a made-up line', async () => {
    expect(await json(['pairs', 'Rowan'])).toMatchObject({
      version: 1,
      pairs: [
        {
          name: 'Rowan',
          tank: 'A1',
          dispute: null,
          disputes: [
            {
              from: '2026-02-14',
              to: '2026-02-16',
              days: 3,
              worst: 'torn fin',
              by: 'male on female',
              measures: ['lights off'],
              endedBy: 'made up',
            },
          ],
          lastSpawn: '2026-02-02',
        },
      ],
    });
  });

  test('without the two lines of the dispute had none', async () => {
    const lines = SAMPLE.split('\n').filter((line) => !/^2026-02-1[45] A1:/.test(line));
    expect(await json(['pairs', 'Rowan'], lines.join('\n'))).toMatchObject({
      pairs: [{ name: 'Rowan', dispute: null, disputes: [] }],
    });
  });

  test('on 15 February is on day 2: what to do is on the list', async () => {
    const list = await asked(['due', '--on', '2026-02-15', '--json']);
    expect(list).toContain('"id": "a1-dispute"');
    expect(list).toContain('"what": "keep both in while she has a refuge and eats; look twice daily"');
    expect(list).toContain(
      '"why": "Rowan: day 2 of a dispute with a torn fin, male on female; lights off since the 14th"',
    );
    expect(list).toContain('"close": "A1: made up, lights on"');
  });

  test('can be asked why, by words and by id', async () => {
    const why = await asked(['why', 'A1', 'dispute', '--on', '2026-02-15']);
    expect(why).toContain('worst sign');
    expect(await asked(['why', 'rowan-dispute-2026-02-14'])).toContain('made up');
  });
});

describe('what happened', () => {
  test('the dispute stands as one row with its three lines', async () => {
    expect(await json(['history', 'Rowan', 'dispute'])).toMatchObject({
      rows: [{ row: 'dispute', from: '2026-02-14', to: '2026-02-16', written: [{}, {}, {}] }],
    });
  });

  test('a line that was found can be asked why', async () => {
    const why = await asked(['why', '2026-02-10-fishroom-txt-19']);
    expect(why).toContain('free-swimming');
  });

  test('a name that is none is wrong use', async () => {
    const ran = await tankside(['history', '--pair', 'Roan'], { files: { '/room/fishroom.txt': SAMPLE } });
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('Roan');
  });
});

describe('the walk', () => {
  test('goes through the sample room tank by tank', async () => {
    const told = await json(['walk', '--on', '2026-02-19']);
    expect(told).toMatchObject({
      tanks: [
        { tank: 'A1', fish: [{ name: 'Rowan' }, { name: 'Rowan-1' }] },
        { tank: 'A2', fish: [] },
        { tank: 'B1', fish: [{ name: 'Pebble' }] },
        { tank: 'C1', fish: [] },
      ],
    });
  });
});

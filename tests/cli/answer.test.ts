import { describe, expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

const JOURNAL = [
  '2026-01-04 tank A1: 100 x 40 x 40 cm; alone; sponge filter',
  '2026-01-04 tank C1: 54 L; alone; sponge filter',
  '2026-01-04 C1: water change 30 % every 7 days',
  '2026-02-06 C1: water change 30 %',
  '2026-02-13 A1: all well',
].join('\n');

const files = (text: string): Record<string, string> => ({ '/room/fishroom.txt': text });

describe('an answer', () => {
  test('is about today, in a folder below the journal too', async () => {
    const { status, out, err } = await tankside(['due'], { cwd: '/room/rack/top', files: files(JOURNAL) });
    expect([status, err]).toEqual([0, '']);
    expect(out.split('\n')[0]).toMatch(/^2026-02-15: \d things? to do, first C1: water change/);
  });

  test('is the same for the same journal and day', async () => {
    const argv = ['due', '--on', '2026-02-20', '--json'];
    const first = await tankside(argv, { files: files(JOURNAL), today: '2026-02-20' });
    const again = await tankside(argv, { files: files(JOURNAL), today: '2026-02-20' });
    expect(again.out).toBe(first.out);
  });

  test('about a day to come says that it is a projection', async () => {
    const world = { files: files(JOURNAL), columns: 100, env: { NO_COLOR: '1' } };
    expect((await tankside(['due', '--on', 'tomorrow'], world)).out).toMatch(/^Mon 16 Feb 2026 \(a projection\): /);
    expect((await tankside(['due', '--on', 'today'], world)).out).toMatch(/^Sun 15 Feb 2026: /);
    expect((await tankside(['due', '--on', '-10'], world)).out).toMatch(/^Thu 5 Feb 2026: /);
  });

  test('as JSON names its version, its day and how many lines were left out', async () => {
    const { out } = await tankside(['due', '--json'], { files: files(JOURNAL) });
    expect(JSON.parse(out)).toMatchObject({ version: 1, on: '2026-02-15', leftOut: 0, putOff: 0 });
  });

  test('refuses a day that does not exist', async () => {
    const { status, out, err } = await tankside(['due', '--on', '2026-02-30'], { files: files(JOURNAL) });
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^«2026-02-30» is no date that exists\nwrite: --on 2026-02-14/);
  });
});

describe('lines left out', () => {
  const broken = files(`${JOURNAL}\n2026-02-14 Z9: all well\n2026-02-31 A1: all well`);

  test('are told beside the answer, and counted in it', async () => {
    const { status, out, err } = await tankside(['due', '--json'], { files: broken });
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ leftOut: 2 });
    expect(err).toBe('2 lines left out: fishroom.txt lines 6 and 7; tankside check says why\n');
  });

  test('are told in lines that fit, between words', async () => {
    const many = Array.from({ length: 40 }, () => '2026-02-14 Z9: all well').join('\n');
    const { err } = await tankside(['due'], { files: files(`${JOURNAL}\n${many}`) });
    expect(err).toBe('40 lines left out: fishroom.txt lines 6, 7, 8, 9 and 10 and 35 more; tankside\ncheck says why\n');
  });

  test('are a failure where the whole journal was asked for', async () => {
    const { status, out } = await tankside(['due', '--whole'], { files: broken });
    expect(status).toBe(1);
    expect(out).toContain('C1');
    expect((await tankside(['due', '--whole'], { files: files(JOURNAL) })).status).toBe(0);
  });
});

describe('the look', () => {
  test('has colour on a terminal only, and never where NO_COLOR says so', async () => {
    const world = { files: files(JOURNAL), columns: 80 };
    expect((await tankside(['due'], world)).out).toContain('\u001b[');
    expect((await tankside(['due'], { ...world, env: { NO_COLOR: '1' } })).out).not.toContain('\u001b[');
    expect((await tankside(['due'], { ...world, env: { TERM: 'dumb' } })).out).not.toContain('\u001b[');
    expect((await tankside(['due'], { files: files(JOURNAL) })).out).not.toContain('\u001b[');
  });

  test('keeps to a narrow terminal', async () => {
    const world = { files: files(JOURNAL), columns: 44, env: { NO_COLOR: '1' } };
    const lines = (await tankside(['due'], world)).out.split('\n');
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(44);
  });

  test('lets no journal text act on the terminal', async () => {
    const evil = `${JOURNAL}\n2026-02-01 A1: to do "new \u001b[2Jair stone" by 2026-02-14`;
    const { out } = await tankside(['due'], { files: files(evil), columns: 80, env: { NO_COLOR: '1' } });
    expect(out).not.toContain('\u001b');
  });
});

test('why shows the line that made the row', async () => {
  const { status, out } = await tankside(['why', 'C1', 'water', 'change'], { files: files(JOURNAL) });
  expect(status).toBe(0);
  expect(out).toContain('fishroom.txt line 3');
  expect(out).toContain('2026-01-04 C1: water change 30 % every 7 days');
});

test('why shows how a line of history was read', async () => {
  const { status, out } = await tankside(['why', '2026-02-13-fishroom-txt-5'], { files: files(JOURNAL) });
  expect(status).toBe(0);
  expect(out).toMatch(/numbers {2}all well/);
  expect((await tankside(['why', '2026-02-13-fishroom-txt-4'], { files: files(JOURNAL) })).status).toBe(2);
});

test('why with words that no row has says so', async () => {
  const { status, err } = await tankside(['why', 'C1', 'gasping'], { files: files(JOURNAL) });
  expect(status).toBe(2);
  expect(err).toMatch(/^no row of any answer has the words «C1 gasping»\nwrite: tankside why c1-/);
});

test('the journal that start writes has no problems, and answers due at once', async () => {
  const started = await tankside(['start']);
  const world = { files: { ...started.files } };
  expect((await tankside(['check', '--json'], world)).out).toContain('"problems": []');
  const { items } = readItems((await tankside(['due', '--json'], world)).out);
  expect(items.length).toBeGreaterThanOrEqual(3);
});

function readItems(text: string): { items: readonly unknown[] } {
  const answer: unknown = JSON.parse(text);
  if (typeof answer === 'object' && answer !== null && 'items' in answer && Array.isArray(answer.items)) {
    return { items: answer.items };
  }
  throw new Error('not an answer of due');
}

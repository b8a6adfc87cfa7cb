import { describe, expect, test } from 'vitest';
import type { Ran } from '../support/run.ts';
import { tankside } from '../support/run.ts';
import { SAMPLE } from '../support/sample.ts';

const onPaper = { columns: 200, env: { NO_COLOR: '1' }, today: '2026-02-15' };

function due(on: string, text = SAMPLE, ...more: readonly string[]): Promise<Ran> {
  const world = { ...onPaper, files: { '/room/fishroom.txt': text }, today: on };
  return tankside(['due', '--on', on, ...more], world);
}

describe('the sample on 15 February', () => {
  test('is on day 2 of a dispute with a torn fin: keep both in, lights off, look twice', async () => {
    const { out, err, status } = await due('2026-02-15');
    expect([status, err]).toEqual([0, '']);
    const [first = ''] = out.split('\n');
    expect(first).toContain('A1: keep both in while she has a refuge and eats; look twice daily');
    expect(out).toMatch(/Rowan: day 2 of a dispute with a torn fin, male on female; lights off since the 14th/);
    expect(out).toContain('jot  A1: made up');
    expect(out).toMatch(/take care: most disputes pass within 48 hours/);
  });

  test('has the full clean of the prefilter about 22 February, with its level, and C1 on the 17th', async () => {
    const { out } = await due('2026-02-15');
    expect(out).toMatch(/^Long {2}by 22 Feb +clean the prefilter, all 6 layers$/m);
    expect(out).toContain('level 54 mm on 10 Feb, spills at 80 mm');
    expect(out).toMatch(/^C1 +by 17 Feb +water change 30 %/m);
    expect(out).toContain('jot  C1: water change 30 %');
  });
});

test('on 19 February A2 has an open fault and is off the loop on an air filter, each with its undo', async () => {
  const { out } = await due('2026-02-19');
  expect(out).toMatch(/^A2 .*valve weeping$/m);
  expect(out).toContain('jot  A2: fixed');
  expect(out).toMatch(/off the loop on an air filter since 18 Feb/);
  expect(out).toContain('jot  A2: back on the loop, air filter out');
});

test('nothing of a later line is known on an earlier day', async () => {
  const lines = SAMPLE.trimEnd().split('\n');
  const known = lines.filter((line) => !/^2026-0[23]/.test(line) || line.slice(0, 10) <= '2026-02-11').join('\n');
  for (const argv of [[], ['--json']]) {
    expect((await due('2026-02-11', known, ...argv)).out).toBe((await due('2026-02-11', SAMPLE, ...argv)).out);
  }
});

describe('the same lines', () => {
  const textOf = async (text: string): Promise<string> => (await due('2026-02-15', text)).out;

  test('in another order give the same answer', async () => {
    const lines = SAMPLE.trimEnd().split('\n');
    expect(await textOf([...lines].reverse().join('\n'))).toBe(await textOf(SAMPLE));
  });

  test('with CRLF and a byte-order mark give the same answer', async () => {
    expect(await textOf(`\ufeff${SAMPLE.replaceAll('\n', '\r\n')}`)).toBe(await textOf(SAMPLE));
  });
});

test('the days ahead and the minutes can be chosen', async () => {
  expect((await due('2026-02-11', SAMPLE, '--days', '1')).out).not.toContain('Long');
  expect((await due('2026-02-11', SAMPLE, '--days=30')).out).toContain('Long');
  const { out } = await due('2026-02-19', SAMPLE, '--minutes', '10');
  expect(out).toMatch(/about 10 of 10 minutes; did not fit: /);
  expect((await due('2026-02-15', SAMPLE, '--days', 'many')).err).toBe(
    '--days takes a whole number from 0 to 9999, not «many»\nwrite: --days 14\n',
  );
});

test('what was put off and what waits is counted, not shown', async () => {
  const off = `${SAMPLE}\n2026-02-18 C1: put off water change until 2026-02-25 "tap cloudy"`;
  const putOff = await due('2026-02-19', off);
  expect(putOff.out).not.toMatch(/^C1/m);
  expect(putOff.out).toMatch(/\n1 put off: C1 water change 30 %.* until 25 Feb\n$/);
  const away = await due('2026-02-19', `${SAMPLE}\n2026-02-17 room: away until 2026-03-02 "feeding twice a day"`);
  expect(away.out).toMatch(/\naway: \d+ wait until you are back on 2 Mar\n$/);
});

test('as JSON every item has the keys that are promised', async () => {
  const { out } = await due('2026-02-15', SAMPLE, '--json');
  const answer: unknown = JSON.parse(out);
  expect(answer).toMatchObject({ version: 1, on: '2026-02-15', leftOut: 0, putOff: 0 });
  expect(answer).toHaveProperty('items');
  expect(answer).toHaveProperty('items.0.id', 'a1-dispute');
  expect(answer).toHaveProperty('items.0.place', 'A1');
  expect(answer).toHaveProperty('items.0.state', 'today');
  expect(answer).toHaveProperty('items.0.due.low');
  expect(answer).toHaveProperty('items.0.lines.0', { file: 'fishroom.txt', line: 22 });
  for (const key of ['what', 'kind', 'why', 'close', 'caution']) expect(answer).toHaveProperty(`items.0.${key}`);
});

test('a clean that a chore asks for is one row, whatever else says that it is time', async () => {
  const ran = await tankside(['due', '--on', '2026-02-15'], { files: { '/room/fishroom.txt': SAMPLE } });
  expect(ran.out.match(/clean the prefilter/g)).toHaveLength(1);
});

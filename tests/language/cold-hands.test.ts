/** Lines as cold hands write them, and the lines that they mean. */
import { describe, expect, test } from 'vitest';
import { eventsOf, problemsIn } from '../support/lines.ts';
import { tankside } from '../support/run.ts';

const DAY = '2026-03-10 ';
const facts = (line: string): unknown =>
  eventsOf(`${DAY}${line}\n`).map((event) => ({ ...event, place: null, seq: null }));

describe('what is said otherwise is read as meant', () => {
  test.each([
    ['C1: Ash -> C2', 'C1: Ash to C2'],
    ['C1: 5 Ash->C2', 'C1: moved 5 Ash to C2'],
    ['C1: 5 Ash => C2', 'C1: moved 5 Ash to C2'],
    ['C1: Fern back to A2', 'C1: moved Fern to A2'],
    ['A1: male is chasing her', 'A1: male chasing female'],
    ['A1: still chasing', 'A1: chasing'],
    ['A1: female is hiding', 'A1: female hiding'],
    ['B1: 2 deaths', 'B1: died 2'],
  ])('«%s»', (said, meant) => {
    expect(facts(said)).toEqual(facts(meant));
  });

  test('an arrow in a quote stays as it was written', () => {
    expect(JSON.stringify(facts('A1: note pump -> floor'))).toContain('pump -> floor');
    expect(JSON.stringify(facts('A1: fault "hose -> floor"'))).toContain('hose -> floor');
  });
});

test('those that hold or spawned are not what they hold or laid', () => {
  const told = (line: string): unknown =>
    eventsOf(`${DAY}${line}\n`).map((event) =>
      event.kind === 'stage seen' ? event.count : event.kind === 'spawned' ? event.eggs?.total.likely : event.kind,
    );
  expect(told('A2: 2 females holding')).toEqual([null]);
  expect(told('A2: two females spawned, about 40 eggs')).toEqual([40]);
  expect(told('A2: holding 12')).toMatchObject([{ total: { low: 12 } }]);
});

test('«all dine out» is no slip for `all fine`', () => {
  expect(problemsIn(`${DAY}B1: all dine out`)[0]?.write).toBe(`${DAY}B1: note all dine out`);
});

test.each([
  ['A1: sold 2 pairs at 15', 'A1: sold 2 pairs for 30.00'],
  ['A1: sold 1 pair at 30 each', 'A1: sold 1 pair for 30.00'],
  ['A1: sold a pair at 30', 'A1: sold a pair for 30.00'],
])('«%s» may be the price of a fish or of a pair', (line, offered) => {
  const [problem] = problemsIn(`${DAY}${line}`);
  expect(problem?.kind).toBe('two-readings');
  expect(problem?.write).toBe(`${DAY}${offered}`);
});

test.each(['male dead?', 'male died ?', 'female missing?'])('«%s» is no loss, only a remark', (words) => {
  expect(problemsIn(`${DAY}A1: ${words}`)[0]).toMatchObject({
    kind: 'does-not-belong',
    write: `${DAY}A1: note ${words}`,
  });
});

test('of young `?` is a number that nobody knows', () => {
  expect(facts('A1: fry died ?')).toMatchObject([{ kind: 'lost', count: { total: { low: 0, high: Infinity } } }]);
});

test('a male of which no verb is read is none that is declared', () => {
  expect(problemsIn(`${DAY}A1: male about`)[0]?.kind).toBe('unknown-clause');
});

test('back to the tank of the heading is said by «back» alone', () => {
  expect(problemsIn(`${DAY}A2: Fern back to A2`)[0]?.write).toBe(`${DAY}A2: Fern back`);
});

describe('what may be either', () => {
  const ROOM = `2026-01-04 tank A1: 54 L; alone
2026-01-04 tank C1: 54 L; alone
2026-01-04 species krib: cave spawner
2026-01-04 pair Rowan: krib; male; female; in A1
2026-01-10 A1: spawned
2026-01-18 A1: free-swimming about 60
2026-02-20 A1: moved about 30 Rowan-1 to C1, rest stay
`;
  const written = async (line: string): Promise<string> => {
    const files = { '/room/fishroom.txt': ROOM };
    const { out, err } = await tankside(['jot', line], { today: '2026-03-10', files });
    return `${out}${err}`.replace(/\s+/g, ' ');
  };
  test('is offered of the young, as a whole line', async () => {
    expect(await written('A1: moved rest to C1')).toContain(`write: ${DAY}A1: Rowan-1 moved rest to C1`);
  });
  test('is offered with the colon that lacks as well', async () => {
    expect(await written('C1 lost 2')).toContain(`write: ${DAY}C1: died 2`);
  });
});

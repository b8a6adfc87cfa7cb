/** The water's answers as the commands give them, from the text of a journal. */
import { describe, expect, test } from 'vitest';
import { tankside } from '../support/run.ts';
import { SAMPLE } from '../support/sample.ts';
import { filled } from '../support/filled.ts';

const asked = (argv: readonly string[], text = SAMPLE) =>
  tankside(argv, { today: '2026-02-15', files: { '/room/fishroom.txt': text } });

interface Item {
  readonly id: string;
  readonly what: string;
  readonly why: string;
  readonly close: string;
  readonly due: { readonly likely: string | null };
  readonly lines: readonly { readonly line: number }[];
}

function hasItems(answer: unknown): answer is { readonly items: readonly Item[] } {
  return typeof answer === 'object' && answer !== null && 'items' in answer && Array.isArray(answer.items);
}

async function items(on: string, text = SAMPLE): Promise<readonly Item[]> {
  const { out } = await asked(['due', '--on', on, '--json'], text);
  const answer: unknown = JSON.parse(out);
  return hasItems(answer) ? answer.items : [];
}

async function item(on: string, id: string, text = SAMPLE): Promise<Item | undefined> {
  return (await items(on, text)).find((one) => one.id === id);
}

describe('due of the sample', () => {
  test('the full prefilter clean falls due about 22 February, its level of 54 mm named', async () => {
    const row = await item('2026-02-15', 'long-clean-prefilter');
    expect(row?.due.likely).toBe('2026-02-22');
    expect(row?.why).toContain('level 54 mm on 10 Feb');
    expect(row?.close).toBe('Long: cleaned 6 of 6 layers');
  });

  test('C1’s water change is due on the 17th', async () => {
    expect((await item('2026-02-15', 'c1-water-change'))?.due.likely).toBe('2026-02-17');
  });

  test('on the 19th A2’s open fault, off the loop on an air filter since the 18th, and what undoes each', async () => {
    const fault = await item('2026-02-19', 'a2-fault-valve-weeping');
    expect(fault?.why).toContain('since 18 Feb');
    expect(fault?.close).toBe('A2: fixed');
    const off = await item('2026-02-19', 'a2-off-the-loop');
    expect(off?.why).toContain('off the loop on an air filter since 18 Feb');
    expect(off?.close).toBe('A2: back on the loop, air filter out');
  });

  test('a level filed late counts, wherever it stands in the file', async () => {
    const moved = SAMPLE.split('\n').reverse().join('\n');
    expect((await item('2026-02-15', 'long-clean-prefilter', moved))?.why).toBe(
      (await item('2026-02-15', 'long-clean-prefilter'))?.why,
    );
  });

  test('every closing line of the water is read, and ends its row', async () => {
    const text = `${SAMPLE}2026-02-20 B1: rocks out\n2026-02-20 Long: pump off\n2026-02-20 C1: rinsed sponge\n`;
    const rows = await items('2026-02-24', text);
    const mine = rows.filter(({ id }) => /^(a2|b1|long|c1|room)-/.test(id));
    expect(mine.length).toBeGreaterThanOrEqual(7);
    for (const row of mine) {
      const after = `${text}2026-02-24 ${filled(row.close)}\n`;
      const checked = await asked(['due', '--on', '2026-02-24', '--whole'], after);
      expect([row.close, checked.err]).toEqual([row.close, '']);
      const left = (await items('2026-02-24', after)).find(({ id }) => id === row.id);
      expect([row.id, left === undefined || (left.due.likely ?? '') > '2026-02-24']).toEqual([row.id, true]);
    }
  });
});

describe('loops', () => {
  test('level, spill, last clean and the next', async () => {
    const { out } = await asked(['loops', '--json']);
    expect(JSON.parse(out)).toMatchObject({
      version: 1,
      on: '2026-02-15',
      loops: [
        {
          id: 'long',
          name: 'Long',
          tanks: ['A1', 'A2', 'B1'],
          level: 54,
          spill: { low: '2026-02-23', high: '2026-02-26' },
          cleaned: { on: '2026-01-11', layers: 6, of: 6 },
          nextClean: '2026-02-22',
        },
      ],
    });
  });

  test('a valved-off tank is off it from that day, and was on it before', async () => {
    const tanks = async (on: string): Promise<unknown> =>
      JSON.parse((await asked(['loops', '--on', on, '--json'])).out);
    expect(await tanks('2026-02-17')).toMatchObject({ loops: [{ tanks: ['A1', 'A2', 'B1'], off: [] }] });
    expect(await tanks('2026-02-18')).toMatchObject({
      loops: [{ tanks: ['A1', 'B1'], off: [{ tank: 'A2', since: '2026-02-18' }] }],
    });
  });

  test('2 of 6 layers are no full clean (trap 3)', async () => {
    const { out } = await asked(['loops', '--json'], `${SAMPLE}2026-02-12 Long: cleaned 2 of 6 layers\n`);
    expect(JSON.parse(out)).toMatchObject({
      loops: [
        {
          cleaned: { layers: 2 },
          cleanedInFull: { on: '2026-01-11' },
          easedUntil: '2026-03-12',
          nextClean: '2026-02-22',
        },
      ],
    });
  });
});

describe('tanks and water', () => {
  test('tanks --free names an empty tank and when a brood’s will be', async () => {
    const { out } = await asked(['tanks', '--free', '--on', '2026-03-10', '--json']);
    expect(JSON.parse(out)).toMatchObject({ tanks: [{ name: 'A2', free: '2026-03-10' }, { name: 'C1' }] });
  });

  test('water of a place, in any case of its letters', async () => {
    const text = `${SAMPLE}2026-02-14 C1: test TAN 0.5, NO3 40\n`;
    const { out, status } = await asked(['water', 'c1', '--target', 'NO3 20', '--tap', '5', '--json'], text);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      waters: [{ name: 'C1', ammonia: { missing: ['pH', 'temperature'] }, reach: { change: { times: 2 } } }],
    });
  });

  test('a place that is none, and a target that is none, are told what to type', async () => {
    expect(await asked(['water', 'Z9'])).toMatchObject({ status: 2, out: '' });
    const wrong = await asked(['water', 'C1', '--target', 'lots']);
    expect(wrong.status).toBe(2);
    expect(wrong.err).toContain('NO3 20');
  });

  test('why explains a loop, a tank, a water and every row of theirs', async () => {
    for (const words of [['long'], ['a1'], ['c1', 'water', 'change'], ['Long', 'clean', 'prefilter'], ['c1-water']]) {
      const { out, status } = await asked(['why', ...words]);
      expect([words, status, out.includes('rule')]).toEqual([words, 0, true]);
    }
  });
});

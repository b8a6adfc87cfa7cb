import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tankside } from '../support/run.ts';
import type { Ran } from '../support/run.ts';

const SAMPLE = readFileSync(new URL('../corpus/sample.txt', import.meta.url), 'utf8');

function check(journal: string, ...argv: readonly string[]): Promise<Ran> {
  return tankside(['check', ...argv], { today: '2026-11-25', files: { '/room/fishroom.txt': journal } });
}

describe('tankside check', () => {
  it('finds nothing wrong with the sample, and ends with 0', async () => {
    const ran = await check(SAMPLE);
    expect(ran.out).toContain('every line is read, and nothing contradicts');
    expect(ran).toMatchObject({ status: 0, err: '' });
  });

  it('says which broods have no name in their lines', async () => {
    expect((await check(SAMPLE)).out).toContain('1 brood has no name in its line yet: tankside tidy --write');
  });

  it('ends with 1 where a line was left out, and shows it', async () => {
    const ran = await check(`${SAMPLE}2026-03-11 A1: chasign, male on female\n`);
    expect(ran.status).toBe(1);
    expect(ran.out).toContain('1 line left out');
    expect(ran.out).toContain('2026-03-11 A1: «chasign»');
    expect(ran.out).toContain('write: ');
    expect(ran.out).toContain('chasing');
  });

  it('ends with 1 where two sure facts contradict', async () => {
    const ran = await check(`${SAMPLE}2026-03-12 C1: Rowan-1 counted 30\n2026-03-14 C1: Rowan-1 counted 44\n`);
    expect(ran.status).toBe(1);
    expect(ran.out).toContain('1 contradiction');
    expect(ran.out).toContain('2026-03-12');
    expect(ran.out).toContain('2026-03-14');
  });

  it('looks at the room as its last line leaves it, whatever the clock says', async () => {
    const ran = await check(SAMPLE, '--json');
    expect(JSON.parse(ran.out)).toEqual({ version: 1, on: '2026-03-10', problems: [], unwritten: 1 });
  });

  it('gives each problem with its place as JSON', async () => {
    const ran = await check(`${SAMPLE}2026-03-11 A11: all well\n`, '--json');
    expect(JSON.parse(ran.out)).toMatchObject({
      problems: [
        { kind: 'unknown-name', weight: 'stops', at: { file: 'fishroom.txt', line: 27, from: 11, to: 14 }, also: [] },
      ],
    });
  });

  it('a bad line never hides or changes another', async () => {
    const lines = SAMPLE.split('\n');
    const broken = [...lines.slice(0, 14), '2026-01-12 A1: ~~~ "', ...lines.slice(14)].join('\n');
    const ran = await check(broken, '--json');
    expect(JSON.parse(ran.out)).toMatchObject({ problems: [{ at: { line: 15 } }] });
  });
});

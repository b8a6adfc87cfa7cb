/** Several processes at once, and processes killed at random. `npm run faults` does the same for longer. */
import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { machineFiles } from '../../src/files/files.ts';
import { folder } from '../support/folder.ts';
import { besides, buildAppender, damage, runAppender } from '../support/processes.ts';

const NO_DAMAGE = { lost: [], twice: [], halves: [] };

function journal(): { file: string; script: string } {
  const place = folder();
  const file = path.join(place, 'fishroom.txt');
  fs.writeFileSync(file, '');
  return { file, script: buildAppender(place) };
}

describe('processes', () => {
  test('200 lines from four at once are 200 whole lines', { timeout: 60_000 }, async () => {
    const { file, script } = journal();
    const told = await Promise.all(['a', 'b', 'c', 'd'].map((label) => runAppender(script, [file, label, '50'], null)));
    expect(told.map(({ status, errors }) => ({ status, errors }))).toEqual(Array(4).fill({ status: 0, errors: '' }));
    const text = fs.readFileSync(file, 'utf8');
    expect(
      damage(
        text,
        told.flatMap(({ lines }) => lines),
      ),
    ).toEqual(NO_DAMAGE);
    expect(text.split('\n').length).toBe(201);
    expect(besides(file)).toEqual([]);
  });

  test('killed at random lose no line that they were told was saved', { timeout: 60_000 }, async () => {
    const { file, script } = journal();
    const told: string[] = [];
    for (let round = 0; round < 24; round += 1) {
      const kill = (at: number) =>
        runAppender(script, [file, `r${round}${'xy'[at] ?? ''}`, '100000'], (round * 7 + at * 13) % 40);
      const runs = await Promise.all([kill(0), kill(1)]);
      told.push(...runs.flatMap(({ lines }) => lines));
      const read = machineFiles.read(file);
      expect(read.ok && damage(read.content.text, told)).toEqual(NO_DAMAGE);
    }
    expect(told.length).toBeGreaterThan(20);
    expect(machineFiles.append(file, () => ['2026-02-14 A1: note end-9 '])).toMatchObject({ saved: true });
    expect(damage(fs.readFileSync(file, 'utf8'), told)).toEqual(NO_DAMAGE);
    expect(besides(file)).toEqual([]);
  });
});

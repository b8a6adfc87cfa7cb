/** A footing is laid on from another one once much stands behind it, and all is as if all had been read. */
import { describe, expect, test } from 'vitest';
import { takeAlong } from '../../../src/cli/footing/worked.ts';
import { chestInMemory } from '../../support/chest.ts';
import type { CountingChest } from '../../support/chest.ts';
import { tankside } from '../../support/run.ts';
import { generateJournal } from '../../tools/generate.ts';

const JOURNAL = '/room/fishroom.txt';
const QUESTIONS = 'due broods water check money'.split(' ');

/** Lines of a room of many days, the same for each seed. */
const roomOf = (seed: number): readonly string[] => generateJournal(2_600, seed, 3).trimEnd().split('\n');
const textOf = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
const dayOf = (lines: readonly string[]): string => lines.at(-1)?.slice(0, 10) ?? '';
const roomIn = (chest: CountingChest): Uint8Array | undefined =>
  [...chest.kept].find(([key]) => key.startsWith('room'))?.[1];

async function ask(words: readonly string[], lines: readonly string[], chest?: CountingChest): Promise<unknown> {
  const today = dayOf(lines);
  const told = await tankside([...words, '--on', today], {
    today,
    files: { [JOURNAL]: textOf(lines) },
    ...(chest && { chest }),
  });
  if (chest !== undefined) takeAlong(chest);
  return told;
}

describe.each([3, 8])('a room that grows, %i', { timeout: 120_000 }, (seed) => {
  test('is stood on anew, seldom, and answers as it would without', async () => {
    const all = roomOf(seed);
    const chest = chestInMemory();
    await ask(['due'], all.slice(0, 1_000), chest);
    let [laid, rooms] = [roomIn(chest), 0];
    for (let length = 1_100; length <= 2_600; length += 300) {
      const lines = all.slice(0, length);
      for (const question of QUESTIONS) {
        expect(await ask([question], lines, chest)).toEqual(await ask([question], lines));
        const now = roomIn(chest);
        if (now !== laid) rooms += 1;
        laid = now;
      }
    }
    expect(rooms).toBeGreaterThanOrEqual(2);
    expect(rooms).toBeLessThanOrEqual(5);
  });

  test('takes lines of the days that are read again, and of long ago, as it would without', async () => {
    const all = roomOf(seed).slice(0, 1_800);
    const chest = chestInMemory();
    await ask(['due'], all.slice(0, 1_000), chest);
    const old = roomIn(chest);
    await ask(['due'], all, chest);
    expect(roomIn(chest)).not.toBe(old);
    const back = (days: number): string =>
      all.findLast((line) => line.slice(0, 10) < dayOf(all.slice(0, -days)))?.slice(0, 10) ?? '';
    const late = ['N1: all well', 'N2: lost 1', 'G1: test pH 7.1, 26 C', 'North: level 41 mm'].flatMap((entry) =>
      [1, 10, 40].map((days) => `${back(days)} ${entry}`),
    );
    for (const line of late) {
      const lines = [...all, line, `${dayOf(all)} room: all well`];
      for (const question of ['due', 'broods', 'check']) {
        expect(await ask([question], lines, chest)).toEqual(await ask([question], lines));
      }
    }
  });
});

/** Another program changes the journal while a line is being jotted: what is kept of it must not be missed or believed. */
import { describe, expect, test } from 'vitest';
import { takeAlong } from '../../../src/cli/footing/worked.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { chestInMemory } from '../../support/chest.ts';
import type { MemoryDisk } from '../../support/memory.ts';
import { tankside } from '../../support/run.ts';
import type { Ran } from '../../support/run.ts';
import { SAMPLE } from '../../support/sample.ts';

const JOURNAL = '/room/fishroom.txt';
const TODAY = '2026-03-15';
const WHOLE = `${SAMPLE}2026-03-14 A1: all well\n`;

/** The disk on which the journal becomes another when it is opened for the nth time. */
function changing(nth: number, becomes: string): (disk: MemoryDisk) => Disk {
  return (disk) => {
    let opened = 0;
    return new Proxy<Disk>(disk, {
      get(target, key) {
        const value: unknown = Reflect.get(target, key);
        if (typeof value !== 'function') return value;
        return (...given: unknown[]): unknown => {
          if (key === 'open' && given[0] === JOURNAL && (opened += 1) === nth) disk.put(JOURNAL, becomes);
          return Reflect.apply(value, target, given);
        };
      },
    });
  };
}

async function jotted(line: string, nth: number, becomes: string, kept: boolean): Promise<Ran> {
  const chest = chestInMemory();
  const files = { [JOURNAL]: WHOLE };
  if (kept) await tankside(['due', '--on', TODAY], { today: TODAY, files, chest });
  takeAlong(chest);
  const world = { today: TODAY, files, broken: changing(nth, becomes) };
  const ran = await tankside(['jot', line], kept ? { ...world, chest } : world);
  if (kept) expect(chest.found).toBeGreaterThan(0);
  return ran;
}

describe.each([1, 2, 3, 4])('where it is opened for the %ith time', { timeout: 60_000 }, (nth) => {
  test.each<readonly [string, string]>([
    ['a letter of long ago is another', WHOLE.replace('pinned', 'hiding')],
    ['a line of long ago is gone', WHOLE.replace(/^.*pinned.*\n/m, '')],
    ['a line of long ago came', WHOLE.replace(/\n/, '\n2026-01-05 room: zone Europe/Berlin\n')],
    ['a line came behind it', `${WHOLE}2026-03-15 A1: topped up 2 L\n`],
    ['its last line is another', `${SAMPLE}2026-03-14 A1: topped up 2 L\n`],
    ['its last line has no end', WHOLE.trimEnd()],
    ['it is cut short', WHOLE.slice(0, WHOLE.length >> 1)],
    ['it is empty', ''],
    ['it begins with a byte-order mark', `\uFEFF${WHOLE}`],
  ])('%s', async (_, becomes) => {
    for (const line of ['A1: all well', 'A1: chasing', 'A1: wobbled', 'Z1: all well']) {
      expect(await jotted(line, nth, becomes, true)).toEqual(await jotted(line, nth, becomes, false));
    }
  });
});

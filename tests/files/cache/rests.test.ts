import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { hashFile } from '../../../src/files/cache/hash.ts';
import { stillStanding } from '../../../src/files/cache/rests.ts';
import type { Rest } from '../../../src/files/cache/rests.ts';
import { tracing } from '../../../src/files/cache/trace.ts';
import { readWhole } from '../../../src/files/bytes.ts';
import { theDisk } from '../../../src/files/disk.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { folder } from '../../support/folder.ts';

const LATER = 60_000;

/** Reads on a traced disk, at a moment so long after now. */
function traced(run: (disk: Disk) => void, after = LATER): readonly Rest[] {
  const traced = tracing(theDisk, () => Date.now() + after);
  run(traced.disk);
  const found = traced.rests();
  if (found === null) throw new Error('the run left no trace');
  return found;
}

function check(rests: readonly Rest[], after = LATER): Promise<{ found: readonly Rest[] | null; hashed: number }> {
  let hashed = 0;
  const hash = (file: string): Promise<string | null> => {
    hashed += 1;
    return Promise.resolve(hashFile(theDisk, file));
  };
  return stillStanding(theDisk, rests, () => Date.now() + after, hash).then((found) => ({ found, hashed }));
}

const quietly = (run: () => void): void => {
  try {
    run();
  } catch {
    // As the reader of a journal does: what is refused is told, and the run goes on.
  }
};

test('a file read well after its last change is believed by its facts alone', async () => {
  const file = path.join(folder(), 'room.txt');
  fs.writeFileSync(file, '2026-02-14 A1: all well\n');
  const rests = traced((disk) => void readWhole(disk, file));
  expect(await check(rests)).toEqual({ found: rests, hashed: 0 });
});

test('a file read right after its last change is believed by its content alone', async () => {
  const file = path.join(folder(), 'room.txt');
  fs.writeFileSync(file, 'one text');
  const rests = traced((disk) => void readWhole(disk, file), 0);
  const first = await check(rests, 0);
  expect([first.found?.length, first.hashed]).toEqual([1, 1]);
  // Another text of the same length, with every time that can be set put back.
  const { atime, mtime } = fs.statSync(file);
  fs.writeFileSync(file, 'two text');
  fs.utimesSync(file, atime, mtime);
  expect((await check(rests)).found).toBeNull();
});

test('a file that was only touched is proved by its content, and its new facts are kept', async () => {
  const file = path.join(folder(), 'room.txt');
  fs.writeFileSync(file, 'one text');
  const rests = traced((disk) => void readWhole(disk, file));
  fs.utimesSync(file, 1, 1);
  const { found, hashed } = await check(rests);
  expect(hashed).toBe(1);
  expect(found).not.toBeNull();
  expect(await check(found ?? [])).toEqual({ found, hashed: 0 });
});

test.each<readonly [string, (file: string) => void]>([
  ['grew', (file) => fs.appendFileSync(file, '!')],
  ['went', (file) => fs.rmSync(file)],
  [
    'became a folder',
    (file) => {
      fs.rmSync(file);
      fs.mkdirSync(file);
    },
  ],
  [
    'was put in place anew',
    (file) => {
      fs.writeFileSync(`${file}~`, 'two text');
      fs.renameSync(`${file}~`, file);
    },
  ],
])('a file that %s is not believed', async (_, change) => {
  const file = path.join(folder(), 'room.txt');
  fs.writeFileSync(file, 'one text');
  const rests = traced((disk) => void readWhole(disk, file));
  change(file);
  expect((await check(rests)).found).toBeNull();
});

test('a file that was not there must still not be there', async () => {
  const file = path.join(folder(), 'room.txt.pending');
  const rests = traced((disk) => {
    quietly(() => void readWhole(disk, file));
    quietly(() => void disk.facts(file));
  });
  expect(rests).toHaveLength(2);
  expect((await check(rests)).found).toBe(rests);
  fs.writeFileSync(file, '');
  expect((await check(rests)).found).toBeNull();
});

test('a link must still lead to the same place', async () => {
  const place = folder();
  for (const name of ['one', 'two']) fs.writeFileSync(path.join(place, name), 'text');
  const link = path.join(place, 'link');
  fs.symlinkSync('one', link);
  const rests = traced((disk) => void disk.real(link));
  expect((await check(rests)).found).toBe(rests);
  fs.rmSync(link);
  fs.symlinkSync('two', link);
  expect((await check(rests)).found).toBeNull();
});

test('a run that changes the disk, lists a folder, or reads a file in part leaves no trace', () => {
  const place = folder();
  const file = path.join(place, 'room.txt');
  fs.writeFileSync(file, 'one text');
  const runs: readonly ((disk: Disk) => void)[] = [
    (disk) => disk.rename(file, `${file}2`),
    (disk) => disk.remove(`${file}2`),
    (disk) => void disk.list(place),
    (disk) => {
      fs.writeFileSync(file, 'one text');
      const open = disk.open(file, fs.constants.O_RDWR, 0);
      disk.close(open);
    },
    (disk) => {
      const open = disk.open(file, fs.constants.O_RDONLY, 0);
      disk.factsOf(open);
      disk.read(open, Buffer.alloc(3), 0);
      disk.close(open);
    },
    (disk) => {
      readWhole(disk, file);
      fs.writeFileSync(file, 'two text');
      readWhole(disk, file);
    },
  ];
  for (const run of runs) {
    const traced = tracing(theDisk, Date.now);
    run(traced.disk);
    expect(traced.rests()).toBeNull();
  }
});

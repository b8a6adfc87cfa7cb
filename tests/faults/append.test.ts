/** Every call on the file system made to fail in turn, while a line is added. */
import { describe, expect, test } from 'vitest';
import { filesOn } from '../../src/files/files.ts';
import type { Appending } from '../../src/files/port.ts';
import { failing } from '../support/failing.ts';
import type { Failure } from '../support/failing.ts';
import { aloneMachine, MemoryDisk } from '../support/memory.ts';

const FILE = '/room/fishroom.txt';
const OLD = '2026-01-04 tank A1: 54 L; alone\n2026-02-01 A1: all well';
const LINE = '2026-02-14 A1: water change 30 %';
const WITH_LINE = `${OLD}\n${LINE}\n`;

interface Trial {
  readonly disk: MemoryDisk;
  readonly result: Appending;
  readonly calls: number;
}

function trial(failure: Failure, before: (disk: MemoryDisk) => void = () => undefined): Trial {
  const disk = new MemoryDisk();
  disk.put(FILE, OLD);
  before(disk);
  const broken = failing(disk, failure);
  const result = filesOn(broken.disk, aloneMachine()).append(FILE, () => [LINE]);
  return { disk, result, calls: broken.calls() };
}

/** What a reader sees, and what stands in the file after the next healthy write. */
function afterwards(disk: MemoryDisk): { seen: string; stands: string } {
  const files = filesOn(disk, aloneMachine());
  const read = files.read(FILE);
  for (const name of disk.list('/room')) if (name.includes('.lock')) disk.remove(`/room/${name}`);
  files.append(FILE, () => ['2026-02-15 A1: all well']);
  return { seen: read.ok ? read.content.text : read.says, stands: disk.text(FILE) ?? '' };
}

function expectTruth({ disk, result }: Trial): void {
  const { seen, stands } = afterwards(disk);
  const has = (text: string) => text.split('\n').filter((line) => line === LINE).length;
  expect(stands.startsWith(OLD)).toBe(true);
  expect(seen.startsWith(OLD)).toBe(true);
  expect(has(stands)).toBe(has(seen));
  if (result.saved) expect(has(stands)).toBe(1);
  else if (result.unsure === true) expect(has(stands)).toBeLessThan(2);
  else expect(has(stands)).toBe(0);
  const lines = stands.split('\n');
  expect(lines.every((line) => line === '' || /^2026-0\d-\d\d A?\w/.test(line))).toBe(true);
  expect(stands.endsWith('2026-02-15 A1: all well\n')).toBe(true);
}

const HOW = ['before', 'after', 'half'] as const;
const CODES = ['EIO', 'ENOSPC', 'EACCES'] as const;
const CASES = HOW.flatMap((how) => CODES.flatMap((code) => [true, false].map((later) => ({ how, code, later }))));

describe('a line added while the disk fails', () => {
  test('is in the journal once when nothing fails', () => {
    const { disk, result, calls } = trial({ at: -1, later: false, how: 'before', code: 'EIO' });
    expect(result).toEqual({ saved: true, notices: [] });
    expect(disk.texts()).toEqual({ [FILE]: WITH_LINE });
    expect(calls).toBeGreaterThan(20);
  });

  test.each(CASES)('$code $how it took effect, later calls failing too: $later', ({ how, code, later }) => {
    const { calls } = trial({ at: -1, later: false, how, code });
    let refused = 0;
    for (let at = 0; at <= calls; at += 1) {
      const done = trial({ at, later, how, code });
      expectTruth(done);
      if (!done.result.saved) refused += 1;
    }
    expect(refused).toBeGreaterThan(5);
  });

  test.each(CASES)('mending first: $code $how it took effect, later too: $later', ({ how, code, later }) => {
    const torn = '2026-02-13 A1: fault "lid cracked"\n';
    const leave = (disk: MemoryDisk) => {
      disk.put(FILE, `${OLD}\n${torn.slice(0, 12)}`);
      disk.put(`${FILE}.pending`, `{"pending":1,"offset":${OLD.length},"length":${torn.length + 1}}\n\n${torn}`);
    };
    const { calls } = trial({ at: -1, later: false, how, code }, leave);
    for (let at = 0; at <= calls; at += 1) {
      const done = trial({ at, later, how, code }, leave);
      const { seen } = afterwards(done.disk);
      expect(seen.startsWith(`${OLD}\n${torn}`)).toBe(true);
      expectTruth(done);
      expect(done.disk.text(FILE)?.split(torn).length).toBe(2);
    }
  });

  test('a full disk leaves every byte as it was, and says so', () => {
    for (let room = 0; room < 700; room += 7) {
      const disk = new MemoryDisk();
      disk.put(FILE, OLD);
      disk.room = OLD.length + room;
      const result = filesOn(disk, aloneMachine()).append(FILE, () => [LINE]);
      if (result.saved) expect(disk.text(FILE)).toBe(WITH_LINE);
      else {
        expect(disk.texts()).toEqual({ [FILE]: OLD });
        expect(result.says).toContain('the disk is full');
      }
      expect(result.notices).toEqual([]);
    }
  });
});

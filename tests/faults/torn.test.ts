/** A process killed in the midst of a write leaves any part of it; the record beside the journal puts it right. */
import { describe, expect, test } from 'vitest';
import { filesOn } from '../../src/files/files.ts';
import { aloneMachine, MemoryDisk } from '../support/memory.ts';

const FILE = '/room/fishroom.txt';
const PENDING = `${FILE}.pending`;
const OLD = Buffer.from('2026-02-01 A1: fin „wéird“ und ½');
const BLOCK = Buffer.from('\n2026-02-14 A1: chasing, ♂ on ♀ “left cave”\n2026-02-14 A2: all well\n');
const NEXT = '2026-02-15 A1: made up';

function record(offset: number, bytes: Buffer): Buffer {
  return Buffer.concat([Buffer.from(`{"pending":1,"offset":${offset},"length":${bytes.length}}\n`), bytes]);
}

function tornAt(length: number): MemoryDisk {
  const disk = new MemoryDisk();
  disk.put(FILE, Buffer.concat([OLD, BLOCK.subarray(0, length)]));
  disk.put(PENDING, record(OLD.length, BLOCK));
  return disk;
}

describe('half a line', () => {
  test('every part of it is read as the whole, and reading changes nothing', () => {
    for (let length = 0; length <= BLOCK.length; length += 1) {
      const disk = tornAt(length);
      const before = disk.texts();
      const read = filesOn(disk, aloneMachine()).read(FILE);
      expect(read).toMatchObject({ ok: true, problems: [], notices: [] });
      expect(read.ok && read.content.text).toBe(`${OLD.toString()}${BLOCK.toString()}`);
      expect(disk.texts()).toEqual(before);
    }
  });

  test('every part of it is completed by the next write, which says so', () => {
    for (let length = 0; length <= BLOCK.length; length += 1) {
      const disk = tornAt(length);
      const result = filesOn(disk, aloneMachine()).append(FILE, () => [NEXT]);
      expect(result.saved).toBe(true);
      expect(result.notices.length).toBe(length === BLOCK.length ? 0 : 1);
      expect(disk.texts()).toEqual({ [FILE]: `${OLD.toString()}${BLOCK.toString()}${NEXT}\n` });
    }
  });

  test('is completed before a new text takes the place of the journal', () => {
    const disk = tornAt(9);
    const whole = `${OLD.toString()}${BLOCK.toString()}`;
    const result = filesOn(disk, aloneMachine()).replace(FILE, whole, 'new\n');
    expect(result.saved).toBe(true);
    expect(disk.texts()).toEqual({ [FILE]: 'new\n' });
  });

  test('is left alone where the record is from another time and its lines are in the journal', () => {
    const disk = tornAt(BLOCK.length);
    disk.put(FILE, `# a line above\n${OLD.toString()}${BLOCK.toString()}2026-02-14 A2: fed microworm\n`);
    expect(filesOn(disk, aloneMachine()).read(FILE)).toMatchObject({ notices: [] });
    const result = filesOn(disk, aloneMachine()).append(FILE, () => [NEXT]);
    expect(result).toEqual({ saved: true, notices: [] });
    expect(disk.text(PENDING)).toBeNull();
  });

  test('is kept aside where the journal was changed meanwhile and its lines are not in it', () => {
    const disk = tornAt(0);
    const changed = '2026-02-01 A1: all well\n2026-02-13 A1: somebody else wrote here, at some length\n';
    disk.put(FILE, changed);
    const files = filesOn(disk, aloneMachine());
    const read = files.read(FILE);
    expect(read).toMatchObject({ ok: true, content: { text: changed } });
    expect(read.ok && read.notices[0]).toContain('fishroom.txt.pending');
    const result = files.append(FILE, () => [NEXT]);
    expect(result.notices[0]).toContain('fishroom.txt.unsaved');
    expect(disk.text(FILE)).toBe(`${changed}${NEXT}\n`);
    expect(disk.text(`${FILE}.unsaved`)).toContain('chasing');
  });

  test('a record that makes no sense is kept aside too, and hides no line', () => {
    for (const nonsense of [
      '',
      'hello',
      '{"pending":1,"offset":3,"length":900}\nxx',
      '{"pending":1,"offset":-1,"length":1}\nx',
    ]) {
      const disk = new MemoryDisk();
      disk.put(FILE, '2026-02-01 A1: all well\n');
      disk.put(PENDING, nonsense);
      const files = filesOn(disk, aloneMachine());
      expect(files.read(FILE)).toMatchObject({ ok: true, content: { text: '2026-02-01 A1: all well\n' } });
      expect(files.append(FILE, () => [NEXT]).saved).toBe(true);
      expect(disk.text(FILE)).toBe(`2026-02-01 A1: all well\n${NEXT}\n`);
      expect(disk.text(`${FILE}.unsaved`)).toBe(nonsense);
    }
  });
});

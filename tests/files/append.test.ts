import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { theDisk } from '../../src/files/disk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { filesOn, machineFiles } from '../../src/files/files.ts';
import type { Appending } from '../../src/files/port.ts';
import { thisMachine } from '../../src/files/machine.ts';
import { folder } from '../support/folder.ts';
import { systemError } from '../support/memory.ts';

const LINE = '2026-02-14 A1: all well';

function journal(content: string | Buffer): string {
  const file = path.join(folder(), 'fishroom.txt');
  fs.writeFileSync(file, content);
  return file;
}

function add(file: string, ...lines: string[]): void {
  expect(machineFiles.append(file, () => lines)).toEqual({ saved: true, notices: [] });
}

function saysOf(result: Appending): string | null {
  return result.saved ? null : result.says;
}

/** The real disk with some of its calls changed. */
function diskWith(changed: Partial<Disk>): Disk {
  return { ...theDisk, ...changed };
}

describe('adding lines', () => {
  test('puts them at the end, and leaves nothing beside the journal', () => {
    const file = journal('2026-02-01 A1: all well\n');
    add(file, LINE, '2026-02-15 A1: fed "flakes"');
    expect(fs.readFileSync(file, 'utf8')).toBe(`2026-02-01 A1: all well\n${LINE}\n2026-02-15 A1: fed "flakes"\n`);
    expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
  });

  test('ends the last line first where nobody did', () => {
    const file = journal('2026-02-01 A1: all well');
    add(file, LINE);
    expect(fs.readFileSync(file, 'utf8')).toBe(`2026-02-01 A1: all well\n${LINE}\n`);
  });

  test.each([
    ['a\r\nb\r\n', `a\r\nb\r\n${LINE}\r\n`],
    ['a\r\nb', `a\r\nb\r\n${LINE}\r\n`],
    ['a\r\nb\r', `a\r\nb\r\n${LINE}\r\n`],
    ['a\nb\r\n', `a\nb\r\n${LINE}\r\n`],
    [`a\r\n${'b'.repeat(200_000)}`, `a\r\n${'b'.repeat(200_000)}\r\n${LINE}\r\n`],
    ['', `${LINE}\n`],
    ['\uFEFF', `\uFEFF${LINE}\n`],
    ['\uFEFFa\r\n', `\uFEFFa\r\n${LINE}\r\n`],
  ])('keeps the line ends and the mark of a file (%#)', (before, after) => {
    const file = journal(before);
    add(file, LINE);
    expect(fs.readFileSync(file, 'utf8')).toBe(after);
  });

  test('keeps mode and inode, and bytes that are no text', () => {
    const broken = Buffer.from([0x61, 0xff, 0xfe, 0x0a]);
    const file = journal(broken);
    fs.chmodSync(file, 0o640);
    const { ino } = fs.statSync(file);
    add(file, LINE);
    expect(fs.statSync(file).mode & 0o777).toBe(0o640);
    expect(fs.statSync(file).ino).toBe(ino);
    expect(fs.readFileSync(file).subarray(0, 4)).toEqual(broken);
  });

  test('follows a symbolic link, and locks beside the real file', () => {
    const file = journal('');
    const link = path.join(folder(), 'link.txt');
    fs.symlinkSync(file, link);
    const seen: string[] = [];
    const result = machineFiles.append(link, () => {
      seen.push(...fs.readdirSync(path.dirname(file)));
      return [LINE];
    });
    expect(result.saved).toBe(true);
    expect(seen).toContain('fishroom.txt.lock');
    expect(fs.readFileSync(file, 'utf8')).toBe(`${LINE}\n`);
    expect(fs.lstatSync(link).isSymbolicLink()).toBe(true);
  });

  test('reads the journal as it is under the lock, and may add nothing after all', () => {
    const file = journal('2026-02-01 A1: all well\n');
    let seen = '';
    const result = machineFiles.append(file, (under) => {
      const got = under.read();
      seen = got.ok ? got.file.content.text : got.says;
      return null;
    });
    expect(result).toEqual({ saved: false, says: null, notices: [] });
    expect(seen).toBe('2026-02-01 A1: all well\n');
    expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
  });

  test('gives the lock back when the caller fails', () => {
    const file = journal('');
    expect(() =>
      machineFiles.append(file, () => {
        throw new Error('a fault of ours');
      }),
    ).toThrow('a fault of ours');
    add(file, LINE);
  });

  test('refuses what is no plain file, in plain words', () => {
    const place = folder();
    expect(saysOf(machineFiles.append(place, () => [LINE]))).toContain('is a folder');
    expect(machineFiles.append('/dev/null', () => [LINE])).toMatchObject({ says: 'null is no plain file' });
    expect(machineFiles.append(path.join(place, 'x.txt'), () => [LINE])).toMatchObject({ says: 'there is no x.txt' });
  });

  test('says so where the file or its folder can only be read', () => {
    const file = journal('old\n');
    const denies = (suffix: string): Disk =>
      diskWith({
        open(name, flags, mode) {
          if ((flags & 3) !== 0 && name.endsWith(suffix)) throw systemError('EACCES');
          return theDisk.open(name, flags, mode);
        },
      });
    const folderOnly = filesOn(denies(''), thisMachine).append(file, () => [LINE]);
    expect(saysOf(folderOnly)).toContain('the folder of fishroom.txt can only be read');
    const fileOnly = filesOn(denies('fishroom.txt'), thisMachine);
    expect(fileOnly.append(file, () => [LINE])).toMatchObject({
      says: 'fishroom.txt cannot be written: you have no right to',
    });
    expect(fs.readFileSync(file, 'utf8')).toBe('old\n');
    expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
  });

  test('a disk that writes a byte at a time changes nothing', () => {
    const file = journal('old');
    const slow = diskWith({ write: (open, bytes) => theDisk.write(open, bytes.subarray(0, 1)) });
    expect(filesOn(slow, thisMachine).append(file, () => [LINE])).toEqual({ saved: true, notices: [] });
    expect(fs.readFileSync(file, 'utf8')).toBe(`old\n${LINE}\n`);
  });

  test('writes to the new file where an editor saved by renaming meanwhile', () => {
    const file = journal('old\n');
    let saves = 0;
    const meanwhile = diskWith({
      write(open, bytes) {
        if (Buffer.from(bytes).equals(Buffer.from(`${LINE}\n`)) && saves === 0) {
          saves += 1;
          fs.writeFileSync(`${file}~`, 'old, and more from the editor\n');
          fs.renameSync(`${file}~`, file);
        }
        return theDisk.write(open, bytes);
      },
    });
    expect(filesOn(meanwhile, thisMachine).append(file, () => [LINE]).saved).toBe(true);
    expect(saves).toBe(1);
    expect(fs.readFileSync(file, 'utf8')).toBe(`old, and more from the editor\n${LINE}\n`);
    expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
  });
});

import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesOn, machineFiles } from '../../src/files/files.ts';
import { failing } from '../support/failing.ts';
import { folder } from '../support/folder.ts';
import { aloneMachine, MemoryDisk } from '../support/memory.ts';

const FILE = '/room/fishroom.txt';

function journal(content: string | Buffer): string {
  const file = path.join(folder(), 'fishroom.txt');
  fs.writeFileSync(file, content);
  return file;
}

describe('a new text in place of the old', () => {
  test('keeps mode, mark and the symbolic link, and leaves nothing behind', () => {
    const file = journal('\uFEFFold\r\n');
    const link = path.join(folder(), 'link.txt');
    fs.symlinkSync(file, link);
    fs.chmodSync(file, 0o640);
    expect(machineFiles.replace(link, 'old\r\n', 'new\r\n')).toEqual({ saved: true, notices: [] });
    expect(fs.readFileSync(file, 'utf8')).toBe('\uFEFFnew\r\n');
    expect(fs.statSync(file).mode & 0o777).toBe(0o640);
    expect(fs.lstatSync(link).isSymbolicLink()).toBe(true);
    expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
  });

  test('is refused where the file is no longer what was read, or never was text', () => {
    const file = journal('old, and a line from the phone\n');
    expect(machineFiles.replace(file, 'old\n', 'new\n')).toMatchObject({
      saved: false,
      says: 'fishroom.txt is unchanged: it is no longer what was read',
    });
    const broken = journal(Buffer.from([0xff, 0x0a]));
    expect(machineFiles.replace(broken, '\uFFFD\n', 'new\n').saved).toBe(false);
    expect(fs.readFileSync(broken)).toEqual(Buffer.from([0xff, 0x0a]));
  });

  test('is refused where the file may only be read: a new one in its place would get round that', () => {
    const disk = new MemoryDisk();
    disk.put(FILE, 'old\n', 0o444);
    expect(filesOn(disk, aloneMachine()).replace(FILE, 'old\n', 'new\n')).toEqual({
      saved: false,
      says: 'fishroom.txt is unchanged: you have no right to',
      notices: [],
    });
    expect(disk.texts()).toEqual({ [FILE]: 'old\n' });
  });

  const CASES = (['before', 'after', 'half'] as const).flatMap((how) => [true, false].map((later) => ({ how, later })));
  test.each(CASES)('every call failing $how it took effect, later ones too: $later', ({ how, later }) => {
    const calls = trial(-1, 'before', false).calls;
    let saved = 0;
    for (let at = 0; at <= calls; at += 1) {
      const { disk, result } = trial(at, how, later);
      const may = result.saved ? ['new text\n'] : result.unsure === true ? ['old\n', 'new text\n'] : ['old\n'];
      expect(may).toContain(disk.text(FILE));
      if (result.saved) saved += 1;
    }
    expect(saved).toBeGreaterThan(0);
    expect(saved).toBeLessThan(calls);
  });

  function trial(at: number, how: 'before' | 'after' | 'half', later: boolean) {
    const disk = new MemoryDisk();
    disk.put(FILE, 'old\n');
    const broken = failing(disk, { at, how, later, code: 'EIO' });
    const result = filesOn(broken.disk, aloneMachine()).replace(FILE, 'old\n', 'new text\n');
    return { disk, result, calls: broken.calls() };
  }
});

describe('a new file', () => {
  test('is never put over one that is there, and is whole or not there', () => {
    const file = journal('mine\n');
    expect(machineFiles.create(file, 'new\n')).toEqual({ ok: false, exists: true, says: 'it is there already' });
    expect(fs.readFileSync(file, 'utf8')).toBe('mine\n');
    const fresh = path.join(path.dirname(file), 'fresh.txt');
    expect(machineFiles.create(fresh, 'new\n')).toEqual({ ok: true });
    expect(fs.readFileSync(fresh, 'utf8')).toBe('new\n');
    expect(fs.readdirSync(path.dirname(file)).sort()).toEqual(['fishroom.txt', 'fresh.txt']);
    expect(machineFiles.create(path.join(file, 'x'), '')).toMatchObject({ ok: false, exists: false });
  });

  test('is never put where a folder is called so, nor into one that is not there', () => {
    const here = folder();
    fs.mkdirSync(path.join(here, 'fishroom.txt'));
    expect(machineFiles.create(path.join(here, 'fishroom.txt'), 'new\n')).toEqual({
      ok: false,
      exists: false,
      folder: true,
      says: 'it is a folder',
    });
    expect(machineFiles.create(path.join(here, 'none', 'x.txt'), 'new\n')).toEqual({
      ok: false,
      exists: false,
      says: 'its folder is not there',
    });
    expect(fs.readdirSync(here)).toEqual(['fishroom.txt']);
  });

  test('is whole or not there at whatever call the disk fails', () => {
    for (const how of ['before', 'half', 'after'] as const) {
      for (let at = 0; at < 10; at += 1) {
        const disk = new MemoryDisk();
        disk.put('/room/other.txt', '');
        const files = filesOn(failing(disk, { at, how, later: false, code: 'ENOSPC' }).disk, aloneMachine());
        const result = files.create(FILE, 'one\ntwo\n');
        expect(disk.text(FILE)).toBe(result.ok ? 'one\ntwo\n' : null);
      }
    }
  });
});

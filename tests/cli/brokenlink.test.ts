/** A journal that is a link to nothing: no command sends the keeper to another that cannot help either. */
import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { folder } from '../support/folder.ts';
import { onDisk } from '../support/ondisk.ts';

const LINK = 'it is a link, and what it points to is not there';

test('a link to nothing is told as that by every command, and is neither followed nor written over', async () => {
  const place = folder();
  const link = path.join(place, 'fishroom.txt');
  fs.symlinkSync('gone.txt', link);
  for (const argv of [['due'], ['check', '--journal', 'fishroom.txt'], ['jot', 'A1: all well'], ['start']]) {
    const { status, out, err } = await onDisk(argv, place);
    expect([status, out]).toEqual([3, '']);
    expect(err.replace(/\s+/gu, ' ')).toContain(LINK);
    expect(err).not.toMatch(/write: tankside (start \(|due|start --journal fishroom)/u);
  }
  expect(fs.readdirSync(place)).toEqual(['fishroom.txt']);
  // Once the file is there, all is as with any other.
  fs.writeFileSync(path.join(place, 'gone.txt'), '2026-05-01 tank A1: 54 L; alone\n');
  expect((await onDisk(['due'], place)).status).toBe(0);
});

test('from a folder below it is told as well, and no journal further up is taken for it', async () => {
  const top = folder();
  const place = path.join(top, 'room');
  const deep = path.join(place, 'photos', '2026');
  fs.mkdirSync(deep, { recursive: true });
  fs.writeFileSync(path.join(top, 'fishroom.txt'), '2026-05-01 tank A1: 54 L; alone\n');
  fs.symlinkSync('gone.txt', path.join(place, 'fishroom.txt'));
  for (const from of [place, deep]) {
    const { status, out, err } = await onDisk(['due'], from);
    expect([status, out]).toEqual([3, '']);
    expect(err.replace(/\s+/gu, ' ')).toContain(LINK);
    expect(err).toContain(path.join(place, 'fishroom.txt'));
  }
  expect((await onDisk(['due'], top)).status).toBe(0);
});

test('without a link there simply is none', async () => {
  const place = folder();
  expect((await onDisk(['due'], place)).err).toContain('no fishroom.txt here');
  expect((await onDisk(['due', '--journal', 'x.txt'], place)).err).toContain('there is no journal at');
});

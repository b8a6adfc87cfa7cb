/** The law that killed commands are held to notices every way of breaking it. */
import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { KINDS, type Kind } from '../support/deeds.ts';
import { folder } from '../support/folder.ts';
import { Journal, type Told } from '../tools/faults/law.ts';

/** A journal before the first command on it, and the text that this one should leave. */
function journal(kind: Kind): { readonly one: Journal; readonly wanted: string } {
  const one = new Journal(path.join(folder(), 'fishroom.txt'), kind);
  one.next('k');
  return { one, wanted: one.wanted('k') };
}

/** What is wrong once the file holds that text and the keeper was told that. */
function faults(kind: Kind, text: (old: string, wanted: string) => string, told: Told): string {
  const { one, wanted } = journal(kind);
  fs.writeFileSync(one.file, text(one.text, wanted));
  return one
    .after('k', told)
    .map((fault) => fault.replace(`${kind} k-1: `, ''))
    .join('; ');
}

describe.each(KINDS)('after %s', (kind) => {
  test('all of it or nothing is right, as it was told', () => {
    expect(faults(kind, (_, wanted) => wanted, '+')).toBe('');
    expect(faults(kind, (_, wanted) => wanted, null)).toBe('');
    expect(faults(kind, (old) => old, null)).toBe('');
  });

  test('half of it, a changed old line, a lost one are wrong', () => {
    const neither = 'neither as it was nor as it should be';
    expect(faults(kind, (_, wanted) => wanted.slice(0, -3), null)).toContain(neither);
    expect(faults(kind, (_, wanted) => wanted.replace('54 L', '55 L'), null)).toContain(neither);
    expect(faults(kind, (old) => old.replace(/^.*\n/, ''), null)).toContain(neither);
    expect(faults(kind, () => '', null)).toContain(neither);
  });

  test('told otherwise than it is is wrong', () => {
    expect(faults(kind, (old) => old, '+')).toBe('told as done, and is not');
    expect(faults(kind, (_, wanted) => wanted, '-')).toBe('told as not done, and is');
    expect(faults(kind, (old) => old, '-')).toBe('refused, with nobody in its way');
  });

  test('another mode is wrong', () => {
    const { one } = journal(kind);
    fs.chmodSync(one.file, 0o600);
    expect(one.after('k', null)).toEqual([`${kind} k-1: its mode is 600`]);
  });
});

test('half of a block is right while its record stands beside it, and is completed by the next', async () => {
  const { one, wanted } = journal('settle');
  const block = wanted.slice(one.text.length);
  const head = JSON.stringify({ pending: 1, offset: one.text.length, length: block.length });
  fs.writeFileSync(`${one.file}.pending`, `${head}\n${block}`);
  fs.writeFileSync(one.file, wanted.slice(0, -9));
  expect(one.after('k', null)).toEqual([]);
  expect(one.text).toBe(wanted);
  expect(await one.end()).toEqual([]);
});

test('what is left behind after a healthy write is wrong', async () => {
  const { one } = journal('jot');
  fs.writeFileSync(`${one.file}.unsaved`, '');
  expect(await one.end()).toEqual(['left behind: fishroom.txt.unsaved']);
});

import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { shelfIn } from '../../../src/files/cache/shelf.ts';
import { folder } from '../../support/folder.ts';
import { expectNotBelievedTorn } from '../../support/torn.ts';

const only = (place: string): string => {
  const names = fs.readdirSync(place);
  expect(names).toHaveLength(1);
  return path.join(place, names[0] ?? '');
};

test('a text is found under its own key alone', () => {
  const shelf = shelfIn(path.join(folder(), 'not', 'there', 'yet'));
  expect(shelf.get('one\n')).toBeNull();
  shelf.put('one\n', 'çedilla, «quotes» and ½ a text');
  expect(shelf.get('one\n')).toBe('çedilla, «quotes» and ½ a text');
  expect(shelf.get('one')).toBeNull();
  shelf.put('one\n', '');
  expect(shelf.get('one\n')).toBe('');
});

test('keys that share a place push each other out, and never answer for each other', () => {
  const shelf = shelfIn(folder());
  const keys = Array.from({ length: 600 }, (_, index) => `key ${String(index)}\n`);
  for (const key of keys) shelf.put(key, `text of ${key}`);
  const found = keys.filter((key) => shelf.get(key) !== null);
  expect(found.length).toBeGreaterThan(100);
  expect(found.length).toBeLessThanOrEqual(256);
  for (const key of found) expect(shelf.get(key)).toBe(`text of ${key}`);
});

test('a text cut short, or with any one byte changed, is not there', () => {
  const place = folder();
  const shelf = shelfIn(place);
  const key = 'due\n';
  shelf.put(key, 'A1: lights on, since 14 Feb');
  const file = only(place);
  expectNotBelievedTorn(file, () => shelf.get(key));
  expect(shelf.get(key)).not.toBeNull();
});

test('what others may write to is not believed', () => {
  const place = folder();
  const shelf = shelfIn(place);
  shelf.put('due\n', 'text');
  const file = only(place);
  expect(fs.statSync(file).mode & 0o777).toBe(0o600);
  fs.chmodSync(file, 0o622);
  expect(shelf.get('due\n')).toBeNull();
  fs.chmodSync(file, 0o600);
  expect(shelf.get('due\n')).toBe('text');
  fs.renameSync(file, `${file}-there`);
  fs.symlinkSync(`${file}-there`, file);
  expect(shelf.get('due\n')).toBeNull();
});

test('where nothing can be kept, nothing is, and nothing is said', () => {
  const file = path.join(folder(), 'a-file');
  fs.writeFileSync(file, '');
  const shelf = shelfIn(path.join(file, 'below'));
  shelf.put('due\n', 'text');
  expect(shelf.get('due\n')).toBeNull();
  const place = folder();
  const long = shelfIn(place);
  long.put('due\n', 'x'.repeat(2_000_000));
  expect(long.get('due\n')).toBeNull();
  expect(fs.readdirSync(place)).toEqual([]);
});

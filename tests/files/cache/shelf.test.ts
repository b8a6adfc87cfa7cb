import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { placesOf, shelfIn } from '../../../src/files/cache/shelf.ts';
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

test('keys that share their places push each other out, and never answer for each other', () => {
  const shelf = shelfIn(folder());
  const keys = Array.from({ length: 600 }, (_, index) => `key ${String(index)}\n`);
  for (const key of keys) shelf.put(key, `text of ${key}`);
  const found = keys.filter((key) => shelf.get(key) !== null);
  expect(found.length).toBeGreaterThan(100);
  expect(found.length).toBeLessThanOrEqual(256);
  for (const key of found) expect(shelf.get(key)).toBe(`text of ${key}`);
});

test('two keys of one place stand side by side; a third takes the place of the older', () => {
  const place = folder();
  const shelf = shelfIn(place);
  const [one, other, third] = meeting();
  shelf.put(one, 'text of one');
  const file = only(place);
  shelf.put(other, 'text of the other');
  fs.utimesSync(file, 1_000, 1_000);
  expect([shelf.get(one), shelf.get(other)]).toEqual(['text of one', 'text of the other']);
  for (const again of [1, 2, 3]) {
    shelf.put(one, `one, ${String(again)}`);
    shelf.put(other, `other, ${String(again)}`);
    expect([shelf.get(one), shelf.get(other)]).toEqual([`one, ${String(again)}`, `other, ${String(again)}`]);
    expect(fs.readdirSync(place)).toHaveLength(2);
  }
  fs.utimesSync(file, 1_000, 1_000);
  shelf.put(third, 'text of the third');
  expect([shelf.get(one), shelf.get(other), shelf.get(third)]).toEqual([null, 'other, 3', 'text of the third']);
});

/** Three keys of one pair of places, two places that differ. */
function meeting(): [string, string, string] {
  const byPlaces = new Map<string, string[]>();
  for (let index = 0; index < 100_000; index += 1) {
    const key = `key ${String(index)}\n`;
    const places = placesOf('', key).join(' ');
    const keys = byPlaces.get(places) ?? [];
    keys.push(key);
    byPlaces.set(places, keys);
    const [one, other, third] = keys;
    const apart = new Set(placesOf('', key)).size === 2;
    if (apart && one !== undefined && other !== undefined && third !== undefined) return [one, other, third];
  }
  throw new Error('no three keys meet');
}

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

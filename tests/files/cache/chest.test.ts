import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { chestIn, sumOf } from '../../../src/files/cache/chest.ts';
import { folder } from '../../support/folder.ts';
import { expectNotBelievedTorn } from '../../support/torn.ts';

const bytes = (text: string): Buffer => Buffer.from(text);

function only(place: string): string {
  const names = fs.readdirSync(place);
  expect(names).toHaveLength(1);
  return path.join(place, names[0] ?? '');
}

test('a thing is found under its own kind and key alone', () => {
  const chest = chestIn(path.join(folder(), 'not', 'there', 'yet'));
  expect(chest.get('room', 'one')).toBeNull();
  chest.put('room', 'one', bytes('a room'));
  expect(chest.get('room', 'one')).toEqual(bytes('a room'));
  expect(chest.get('room', 'two')).toBeNull();
  expect(chest.get('paces', 'one')).toBeNull();
});

test('a thing put where another was is not taken for it', () => {
  const place = folder();
  const chest = chestIn(place);
  chest.put('room', 'one', bytes('a room'));
  const kept = only(place);
  for (let key = 0; key < 100; key += 1) {
    const other = folder();
    const foreign = chestIn(other);
    foreign.put('room', `other ${String(key)}`, bytes('another room'));
    fs.copyFileSync(only(other), kept);
    expect(chest.get('room', 'one')).toBeNull();
  }
});

test('sixteen of a kind are kept, whatever their keys; one more takes the place of the one put longest ago', () => {
  const place = folder();
  const chest = chestIn(place);
  const keys = Array.from({ length: 16 }, (_, at) => `journal ${String(at)}`);
  const kept = (): string[] => keys.filter((key) => chest.get('room', key) !== null);
  chest.put('room', 'journal 0', bytes('the first'));
  fs.utimesSync(only(place), 1, 1);
  for (const key of keys.slice(1)) chest.put('room', key, bytes(key));
  chest.put('paces', 'journal 0', bytes('of another kind'));
  expect(kept()).toEqual(keys);
  chest.put('room', 'one more', bytes('a room'));
  expect(kept()).toEqual(keys.slice(1));
  expect(chest.get('room', 'one more')).not.toBeNull();
  expect(chest.get('paces', 'journal 0')).not.toBeNull();
});

test('a thing cut short, or with any one byte changed, is not there', () => {
  const place = folder();
  const chest = chestIn(place);
  chest.put('room', 'one', bytes('PairA0-1, laid 14 Feb'));
  const file = only(place);
  expectNotBelievedTorn(file, () => chest.get('room', 'one'));
  expect(chest.get('room', 'one')).not.toBeNull();
});

test('what others may write to is not believed', () => {
  const place = folder();
  const chest = chestIn(place);
  chest.put('room', 'one', bytes('a room'));
  const file = only(place);
  expect(fs.statSync(file).mode & 0o777).toBe(0o600);
  fs.chmodSync(file, 0o622);
  expect(chest.get('room', 'one')).toBeNull();
});

// FIPS 180-4: SHA-256 of the empty message, as NIST lists it (CAVP short messages, length 0; from memory).
test('the sum is SHA-256 of all parts, each behind its length', () => {
  expect(sumOf(['abc'])).not.toEqual(sumOf(['ab', 'c']));
  expect(sumOf(['ab', 'c'])).not.toEqual(sumOf(['a', 'bc']));
  expect(sumOf(['½'])).toEqual(sumOf([Buffer.from('½')]));
  expect(sumOf([])).toEqual(Buffer.from('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'hex'));
});

import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { chestIn, sumOf } from '../../../src/files/cache/chest.ts';
import type { Pages } from '../../../src/files/cache/pages.ts';
import { folder } from '../../support/folder.ts';
import { expectNotBelievedTorn } from '../../support/torn.ts';

const bytes = (text: string): Buffer => Buffer.from(text);

function only(place: string): string {
  const names = fs.readdirSync(place);
  expect(names).toHaveLength(1);
  return path.join(place, names[0] ?? '');
}

test('a thing is found under its own kind and key alone', () => {
  const chest = chestIn(path.join(folder(), 'not', 'there', 'yet'), Date.now);
  expect(chest.get('room', 'one')).toBeNull();
  chest.put('room', 'one', bytes('a room'));
  expect(chest.get('room', 'one')).toEqual(bytes('a room'));
  expect(chest.get('room', 'two')).toBeNull();
  expect(chest.get('paces', 'one')).toBeNull();
});

test('a thing put where another was is not taken for it', () => {
  const place = folder();
  const chest = chestIn(place, Date.now);
  chest.put('room', 'one', bytes('a room'));
  const kept = only(place);
  for (let key = 0; key < 100; key += 1) {
    const other = folder();
    const foreign = chestIn(other, Date.now);
    foreign.put('room', `other ${String(key)}`, bytes('another room'));
    fs.copyFileSync(only(other), kept);
    expect(chest.get('room', 'one')).toBeNull();
  }
});

test('sixteen of a kind are kept, whatever their keys; one more takes the place of the one put longest ago', () => {
  const place = folder();
  const chest = chestIn(place, Date.now);
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
  const chest = chestIn(place, Date.now);
  chest.put('room', 'one', bytes('PairA0-1, laid 14 Feb'));
  const file = only(place);
  expectNotBelievedTorn(file, () => chest.get('room', 'one'));
  expect(chest.get('room', 'one')).not.toBeNull();
});

test('what others may write to is not believed', () => {
  const place = folder();
  const chest = chestIn(place, Date.now);
  chest.put('room', 'one', bytes('a room'));
  const file = only(place);
  expect(fs.statSync(file).mode & 0o777).toBe(0o600);
  fs.chmodSync(file, 0o622);
  expect(chest.get('room', 'one')).toBeNull();
});

/** Long enough to be read page by page once it is proved. */
const LONG = Buffer.alloc((1 << 20) + 5, 'PairA0-1, laid 14 Feb; ');
const LATER = 60_000;

/** A long thing in a chest that is opened so long after it was put there. */
function longIn(place: string, after: number): { file: string; readonly look: () => Pages | null } {
  const chest = chestIn(place, () => Date.now() + after);
  chest.put('room', 'one', LONG);
  return { file: only(place), look: () => chest.look('room', 'one') };
}

function all(pages: Pages | null): Buffer | null {
  pages?.seeAll(0, pages.bytes.length);
  return pages === null ? null : Buffer.from(pages.bytes);
}

const proofs = (place: string): string[] => fs.readdirSync(place).filter((name) => name.startsWith('proof-'));
/** Whether it was read whole: then all of its bytes are there without a look at them. */
const isWhole = (pages: Pages | null): boolean => pages !== null && LONG.equals(pages.bytes);

test('a long thing is read whole once, and page by page when its facts say that it is the same', () => {
  const place = folder();
  const { look } = longIn(place, LATER);
  expect(isWhole(look())).toBe(true);
  expect(proofs(place)).toHaveLength(1);
  const late = look();
  expect(isWhole(late)).toBe(false);
  expect(all(late)?.equals(LONG)).toBe(true);
});

test('a long thing that was put there just now is read whole each time', () => {
  const place = folder();
  const { look } = longIn(place, 0);
  look();
  expect(isWhole(look())).toBe(true);
  expect(proofs(place)).toEqual([]);
});

test('a short thing needs no proof', () => {
  const place = folder();
  const chest = chestIn(place, () => Date.now() + LATER);
  chest.put('room', 'one', bytes('a room'));
  expect(all(chest.look('room', 'one'))).toEqual(bytes('a room'));
  expect(all(chest.look('room', 'two'))).toBeNull();
  expect(proofs(place)).toEqual([]);
});

test('a long thing that was proved and then changed, at either end or in the midst, is not there', () => {
  const place = folder();
  const { file, look } = longIn(place, LATER);
  const whole = fs.readFileSync(file);
  for (const at of [0, 31, 40, whole.length >> 1, whole.length - 1]) {
    fs.writeFileSync(file, whole);
    look();
    expect(isWhole(look())).toBe(false);
    nextTick(place, file);
    const [torn, { atime, mtime }] = [Buffer.from(whole), fs.statSync(file)];
    torn[at] = (torn[at] ?? 0) ^ 1;
    fs.writeFileSync(file, torn);
    // Times that can be set put back.
    fs.utimesSync(file, atime, mtime);
    expect(look()).toBeNull();
  }
  fs.writeFileSync(file, whole);
  expect(isWhole(look())).toBe(true);
});

test('a long thing that was proved and then put anew, or given to others to write, is not the old one', () => {
  const place = folder();
  const { file, look } = longIn(place, LATER);
  look();
  const old = look();
  chestIn(place, Date.now).put('room', 'one', Buffer.alloc(LONG.length, 'another room'));
  expect(all(look())?.equals(Buffer.alloc(LONG.length, 'another room'))).toBe(true);
  // What is looked at already stays what it was.
  expect(all(old)?.equals(LONG)).toBe(true);
  fs.chmodSync(file, 0o622);
  expect(look()).toBeNull();
});

test('a proof of another thing, or a torn one, proves nothing', () => {
  const place = folder();
  const { look } = longIn(place, LATER);
  look();
  const proof = path.join(place, proofs(place)[0] ?? '');
  fs.truncateSync(proof, 40);
  expect(isWhole(look())).toBe(true);
  const chest = chestIn(place, () => Date.now() + LATER);
  chest.put('room', 'two', LONG);
  fs.rmSync(proof);
  chest.look('room', 'two');
  fs.renameSync(path.join(place, proofs(place)[0] ?? ''), proof);
  expect(isWhole(look())).toBe(true);
});

/** Waits until a file written now has another time of change than this one: disks count in steps. */
function nextTick(place: string, than: string): void {
  const probe = path.join(place, 'probe');
  const of = (file: string): bigint => fs.statSync(file, { bigint: true }).ctimeNs;
  do fs.writeFileSync(probe, 'x');
  while (of(probe) <= of(than));
  fs.rmSync(probe);
}

// FIPS 180-4: SHA-256 of the empty message, as NIST lists it (CAVP short messages, length 0; from memory).
test('the sum is SHA-256 of all parts, each behind its length', () => {
  expect(sumOf(['abc'])).not.toEqual(sumOf(['ab', 'c']));
  expect(sumOf(['ab', 'c'])).not.toEqual(sumOf(['a', 'bc']));
  expect(sumOf(['½'])).toEqual(sumOf([Buffer.from('½')]));
  expect(sumOf([])).toEqual(Buffer.from('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'hex'));
});

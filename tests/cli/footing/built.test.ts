/** What the built program keeps between its runs: never believed where it is old, torn or another's, never missed. */
import fs from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { buildBundle } from '../../support/bundle.ts';
import type { Bundle } from '../../support/bundle.ts';
import { generateJournal } from '../../tools/generate.ts';

let bundle: Bundle;
let journal = '';
let cache = '';
const TEXT = generateJournal(900, 4);
const LAST = TEXT.trimEnd().split('\n').at(-1)?.slice(0, 10) ?? '';

beforeAll(() => {
  bundle = buildBundle();
}, 60_000);

afterAll(() => {
  bundle.remove();
});

beforeEach(() => {
  const folder = fs.mkdtempSync(path.join(bundle.folder, 'room-'));
  journal = path.join(folder, 'fishroom.txt');
  cache = path.join(folder, 'cache');
  fs.writeFileSync(journal, TEXT);
});

const due = (where: string): string =>
  bundle.run(['due', '--journal', journal, '--on', LAST], { TANKSIDE_CACHE: where }).out;
const truth = (): string => due('off');
const kept = (kind: string): string[] => fs.readdirSync(cache).filter((name) => name.startsWith(kind));

function addLine(): void {
  fs.appendFileSync(journal, `${LAST} G1: topped up 3 L\n`);
}

test('a room is kept by the first answer, and the next after a line more is the same', () => {
  expect(due(cache)).toBe(truth());
  expect(kept('room-')).toHaveLength(1);
  const room = path.join(cache, kept('room-')[0] ?? '');
  const before = fs.readFileSync(room);
  addLine();
  expect(due(cache)).toBe(truth());
  // Read on from: nothing was kept anew.
  expect(fs.readFileSync(room).equals(before)).toBe(true);
});

test.each<readonly [string, () => void]>([
  ['torn', () => forEach((file) => fs.truncateSync(file, 100))],
  ['empty', () => forEach((file) => fs.truncateSync(file, 0))],
  ['of another build', () => forEach((file) => fs.writeFileSync(file, 'from another world'))],
  ['gone', () => fs.rmSync(cache, { recursive: true })],
  ['a folder', () => forEach((file) => (fs.rmSync(file), fs.mkdirSync(file)))],
])('an answer is the same where what was kept is %s', (_, spoil) => {
  due(cache);
  spoil();
  expect(due(cache)).toBe(truth());
  addLine();
  expect(due(cache)).toBe(truth());
});

test('a line of years ago that was changed in its place counts', () => {
  due(cache);
  const changed = TEXT.replace('sump 240 L', 'sump 140 L');
  expect(changed).not.toBe(TEXT);
  fs.writeFileSync(journal, changed);
  expect(due(cache)).toBe(truth());
});

test('a line is jotted as it would be without, and what is kept is still good', () => {
  due(cache);
  const jot = (where: string): string =>
    bundle.run(['jot', '--journal', journal, '--on', LAST, 'G1: fault "drips"'], { TANKSIDE_CACHE: where }).out;
  const told = jot(cache);
  fs.writeFileSync(journal, TEXT);
  expect(told).toBe(jot('off'));
  expect(due(cache)).toBe(truth());
});

test('lines are read the same where the shapes that were built ahead are gone, torn or another build’s', () => {
  const shapes = path.join(bundle.folder, 'tankside-shapes.json');
  const whole = fs.readFileSync(shapes, 'utf8');
  const expected = truth();
  for (const spoiled of ['', whole.slice(0, 1_000), whole.replace(/"build":"\w+"/, '"build":"other"'), '[]', 'null']) {
    fs.writeFileSync(shapes, spoiled);
    expect(truth()).toBe(expected);
  }
  fs.rmSync(shapes);
  expect(truth()).toBe(expected);
  fs.writeFileSync(shapes, whole);
});

function forEach(change: (file: string) => void): void {
  for (const name of fs.readdirSync(cache)) change(path.join(cache, name));
}

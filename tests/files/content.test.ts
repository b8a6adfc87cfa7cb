/** What a file holds is the same however much of it was decoded, and is read anew exactly where it changed. */
import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readWhole } from '../../src/files/bytes.ts';
import { contentOf, contentOfText, sameBefore, withTail } from '../../src/files/content.ts';
import type { Content } from '../../src/files/content.ts';
import { theDisk } from '../../src/files/disk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { folder } from '../support/folder.ts';

const line = fc.oneof(fc.string(), fc.string({ unit: 'grapheme' })).map((words) => `${words.replaceAll('\n', ' ')}\n`);
const lines = fc.array(line, { maxLength: 6 }).map((all) => all.join(''));

describe('a content', () => {
  const whole = (content: Content): string => Buffer.from(content.before(content.size)).toString();

  test('of a head and a tail is that of both in one', () => {
    fc.assert(
      fc.property(lines, lines, lines, (first, second, tail) => {
        const head = contentOfText(`${first}${second}`);
        const at = Buffer.byteLength(first);
        const [composed, truth] = [withTail(head, at, tail), contentOf(Buffer.from(`${first}${tail}`))];
        expect([composed.size, composed.text, whole(composed)]).toEqual([truth.size, truth.text, whole(truth)]);
        for (const cut of [0, at, truth.size]) {
          expect(composed.behind(cut)).toBe(truth.behind(cut));
          expect(Buffer.compare(composed.before(cut), truth.before(cut))).toBe(0);
        }
        expect(sameBefore(composed, head, at)).toBe(true);
        expect(sameBefore(composed, truth, truth.size)).toBe(true);
      }),
    );
  });

  test('begins like another as far as the bytes are the same, and no further than either goes', () => {
    const [one, other] = [contentOfText('krib\nü\n'), contentOfText('krib\nä\n')];
    expect([5, 6, 7].map((at) => sameBefore(one, other, at))).toEqual([true, true, false]);
    expect(sameBefore(one, contentOfText('krib\n'), 6)).toBe(false);
    expect(sameBefore(contentOfText(''), one, 0)).toBe(true);
  });

  test('shows what is no UTF-8 and goes on behind it', () => {
    const content = contentOf(Buffer.from('f\xfcr\nA1\n', 'latin1'));
    expect([content.text, content.behind(4)]).toEqual(['f\uFFFDr\nA1\n', 'A1\n']);
  });
});

describe('a file read again', () => {
  const BLOCK = 1 << 18;
  const OLD = Buffer.alloc(2 * BLOCK + 9, '2026-02-14 A1: all well\n');

  function readingAgain(now: Buffer, disk: Disk = theDisk): Buffer {
    const file = path.join(folder(), 'fishroom.txt');
    fs.writeFileSync(file, now);
    return readWhole(disk, file, OLD).bytes;
  }

  test('gives the bytes of before where it holds them still', () => {
    expect(readingAgain(Buffer.from(OLD))).toBe(OLD);
  });

  test.each([0, 5, BLOCK - 1, BLOCK, 2 * BLOCK + 8])('gives what it holds where byte %i is another', (at) => {
    const now = Buffer.from(OLD);
    now[at] = 33;
    expect(readingAgain(now).equals(now)).toBe(true);
    // A system may give less than it was asked for.
    const slow = {
      ...theDisk,
      read: (file: number, into: Uint8Array, from: number) => theDisk.read(file, into.subarray(0, 70_001), from),
    };
    expect(readingAgain(now, slow).equals(now)).toBe(true);
  });

  test('gives what it holds where it is shorter, longer or ends while it is read', () => {
    for (const now of [OLD.subarray(0, 7), Buffer.concat([OLD, Buffer.from('x')]), Buffer.alloc(0)])
      expect(readingAgain(now).equals(now)).toBe(true);
    const ending = {
      ...theDisk,
      read: (file: number, into: Uint8Array, from: number) => (from < BLOCK ? theDisk.read(file, into, from) : 0),
    };
    expect(readingAgain(Buffer.from(OLD), ending).equals(OLD.subarray(0, BLOCK))).toBe(true);
  });
});

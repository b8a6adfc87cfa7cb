/** Tidying never changes what a journal says, and a tidy journal stays as it is. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/reading.ts';
import { tidy } from '../../src/language/tidy.ts';
import type { Tidied } from '../../src/language/tidy.ts';
import { asPhone } from '../support/phone.ts';

const FOLDER = new URL('../corpus/', import.meta.url);
const NAMES = readdirSync(FOLDER).flatMap((name) => (name.endsWith('.txt') ? [name.slice(0, -4)] : []));

function read(text: string): Reading {
  return readJournal('fishroom.txt', text, () => ({ ok: false, says: 'there is no such file' }));
}

function tidied(text: string): Extract<Tidied, { ok: true }> {
  const reading = read(text);
  const leftOut = new Set(reading.problems.map(({ at }) => at.line));
  const result = tidy({ file: 'fishroom.txt', text, reading, reread: read, brood: () => null, leftOut });
  if (!result.ok) throw new Error(result.says);
  return result;
}

describe.each(NAMES)('the journal %s', (name) => {
  const text = readFileSync(new URL(`${name}.txt`, FOLDER), 'utf8');

  it('is tidied once and for all', () => {
    const once = tidied(text);
    expect(tidied(once.text).changes).toEqual([]);
  });

  it('is tidied to the same text from a phone', () => {
    expect(tidied(asPhone(text)).text).toBe(tidied(text).text);
  });
});

describe('a tidied line', () => {
  const room = '2026-01-01 room: units metric\n2026-01-01 tank A1: 54 L; alone\n2026-01-01 loop Long: sump 9 L\n';
  const becomes = (line: string): string => tidied(`${room}${line}\n`).text.split('\n')[3] ?? '';
  it('has a semicolon where an and stood between two clauses', () => {
    expect(becomes('2026-03-10 A1: wc 30%, and lights off & rinsed sponge')).toBe(
      '2026-03-10 A1: water change 30 %; lights off; rinsed sponge',
    );
  });

  it.each([
    ['2026-01-02 a1: WC 30%, Looked all well', '2026-01-02 A1: water change 30 %; all well'],
    ['2026-01-02  tank a1 : all good .', '2026-01-02 tank A1: all well'],
    ['2026-01-02 7:05 a1: lights back on', '2026-01-02 07:05 A1: lights on'],
    ['2026-01-02 long: Level about 2 in', '2026-01-02 Long: level about 2 in'],
    ['2026-01-02 long: level 40 - 50mm', '2026-01-02 Long: level 40-50 mm'],
    ['2026-01-02 a1: wc 30 % every 2 weeks', '2026-01-02 A1: water change 30 % every 2 weeks'],
    ['2026-01-02 a1: away from home', '2026-01-02 a1: away from home'],
  ])('%s', (line, tidy_) => {
    expect(becomes(line)).toBe(tidy_);
  });

  it('keeps a measure of the keeper’s own', () => {
    const own = `${room}2026-01-01 room: bucket 12 L\n`;
    expect(tidied(`${own}2026-01-02 a1: water change  2 buckets\n`).text).toBe(
      `${own}2026-01-02 A1: water change 2 buckets\n`,
    );
  });

  it('keeps nitrogen as the kit reports it', () => {
    const ion = `${room}2026-01-01 room: nitrogen as ion\n2026-01-02 a1: test NO3 40\n`;
    expect(tidied(ion).text).toContain('2026-01-02 A1: test NO3 40\n');
  });
});

describe('a tidy that would not say the same', () => {
  it('is refused', () => {
    const text = '2026-01-01 tank A1: 54 L; alone\n2026-01-02 a1: all well\n';
    const reread = (changed: string): Reading => read(changed.replace('2026-01-02', '2026-01-03'));
    const task = {
      file: 'fishroom.txt',
      text,
      reading: read(text),
      reread,
      brood: () => null,
      leftOut: new Set<number>(),
    };
    expect(tidy(task)).toMatchObject({ ok: false });
  });

  it('leaves a line as it is whose new form would mean something else', () => {
    const text = '2026-01-01 tank A1: 54 L; alone\n2026-01-02 a1: all well\n2026-01-03 a1: leak\n';
    const reread = (changed: string): Reading => read(changed.replace('2026-01-02 A1', '2026-01-02 07:00 A1'));
    const task = {
      file: 'fishroom.txt',
      text,
      reading: read(text),
      reread,
      brood: () => null,
      leftOut: new Set<number>(),
    };
    expect(tidy(task)).toMatchObject({ ok: true, changes: [{ line: 3 }] });
  });
});

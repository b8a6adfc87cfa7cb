/**
 * Good journals. Beside each stand the facts that it states, one a line, and each entry as it is printed.
 * The same journal as other machines would have written it states the same.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Event } from '../../src/journal/event.ts';
import { printEntry } from '../../src/language/print.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/reading.ts';
import { asPhone } from '../support/phone.ts';

const FOLDER = new URL('./', import.meta.url);
const NAMES = readdirSync(FOLDER).flatMap((name) => (name.endsWith('.txt') ? [name.slice(0, -4)] : []));

function read(text: string): Reading {
  return readJournal('fishroom.txt', text, () => ({ ok: false, says: 'there is no such file' }));
}

function told(events: readonly Event[]): string {
  return events.map(({ place, seq: _, ...says }) => `${place.line} ${JSON.stringify(says, open)}\n`).join('');
}

function open(_key: string, value: unknown): unknown {
  return value === Infinity ? 'open' : value;
}

/** Each entry printed, in the order of the file. */
function printed({ entries }: Reading): string {
  return entries.map(({ events }) => `${printEntry(events)}\n`).join('');
}

describe.each(NAMES)('the journal %s', (name) => {
  const text = readFileSync(new URL(`${name}.txt`, FOLDER), 'utf8');
  const reading = read(text);

  it('has no problems', () => {
    expect(reading.problems).toEqual([]);
  });

  it('states these facts', async () => {
    await expect(told(reading.events)).toMatchFileSnapshot(`${name}.events.jsonl`);
  });

  it('is printed so', async () => {
    await expect(printed(reading)).toMatchFileSnapshot(`${name}.printed`);
  });

  it.each([
    ['CRLF line ends', text.replaceAll('\n', '\r\n')],
    ['a byte-order mark', `\ufeff${text}`],
    ['no last line end', text.trimEnd()],
    ['blanks at the ends of lines', text.replaceAll('\n', '  \n')],
    ['phone punctuation', asPhone(text)],
  ])('states the same with %s', (_how, other) => {
    const again = read(other);
    expect(again.problems).toEqual([]);
    expect(told(again.events)).toBe(told(reading.events));
  });

  it('states the same in any order of its lines', () => {
    const shuffled = text.split('\n').toReversed().join('\n');
    const bare = (events: readonly Event[]): readonly string[] =>
      told(events)
        .split('\n')
        .map((line) => line.replace(/^\d+ /u, '').replace(/"minute":\d+/u, '"minute":null'))
        .toSorted();
    expect(bare(read(shuffled).events)).toEqual(bare(reading.events));
  });

  it('states the same when read from print, and is then printed the same', () => {
    const once = printed(reading);
    const again = read(once);
    expect(again.problems).toEqual([]);
    const facts = (from: Reading): readonly string[] => from.entries.map(({ events }) => told(events).replace(/^\d+ /gmu, ''));
    expect(facts(again)).toEqual(facts(reading));
    expect(printed(again)).toBe(once);
  });
});

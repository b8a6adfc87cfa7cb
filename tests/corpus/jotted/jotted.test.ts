/**
 * Lines as keepers jot them, clumsy ones too. Beside each stands what it is read as, or why it is refused
 * and what is offered instead. Whatever is offered would be read, and states no number that was not written.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { printEntry } from '../../../src/language/print.ts';
import { readJournal } from '../../../src/language/read.ts';
import type { Reading } from '../../../src/language/reading.ts';

const text = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const ROOM = text('room.txt');
const NUMBER = ROOM.split('\n').length;
const DATE = '2026-08-01 ';
const LINES = text('lines.txt')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));

function read(line: string): Reading {
  return readJournal('fishroom.txt', `${ROOM}${line}\n`, () => ({ ok: false, says: 'there is no such file' }));
}

interface Told {
  readonly read: string | null;
  readonly says: readonly string[];
  readonly writes: readonly string[];
}

function told(line: string): Told {
  const { events, problems } = read(DATE + line);
  const own = problems.filter(({ at }) => at.line === NUMBER);
  const said = printEntry(events.filter(({ place }) => place.line === NUMBER));
  return {
    read: own.length > 0 ? null : said.slice(DATE.length),
    says: [...new Set(own.map(({ says }) => says))],
    writes: [...new Set(own.map(({ write }) => write))],
  };
}

function shown(line: string): string {
  const { read: as, says, writes } = told(line);
  const undated = writes.map((write) => `   write: ${write.replace(DATE, '')}`);
  const answer = as === null ? [...says.map((words) => `   ${words}`), ...undated] : [`   read: ${as}`];
  return [line, ...answer, ''].join('\n');
}

const REFUSED = LINES.filter((line) => told(line).read === null);

function numbers(line: string): readonly string[] {
  return (line.replace(DATE, '').match(/\d+/gu) ?? []).toSorted();
}

describe('jotted lines', () => {
  it('are read so', async () => {
    await expect(LINES.map(shown).join('\n')).toMatchFileSnapshot('lines.read');
  });

  it.each(REFUSED)('what is offered for «%s» would be read', (line) => {
    for (const write of told(line).writes) {
      expect(read(write).problems.filter(({ at }) => at.line === NUMBER)).toEqual([]);
    }
  });

  it.each(REFUSED)('what is offered for «%s» keeps its numbers, and adds none', (line) => {
    const [write = ''] = told(line).writes;
    // A tank that is missing is declared first; the line itself comes after.
    const declared = /^\S+ tank (\S+):$/u.exec(write)?.[1];
    if (declared === undefined) expect(numbers(write)).toEqual(numbers(line));
    else expect(line).toContain(declared);
  });
});

/** Every way of writing who quarrels with whom: what is printed of it is read as the same, and nobody is lost. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Event } from '../../src/journal/event.ts';
import { printEntry } from '../../src/language/print.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/reading.ts';
import { tidy } from '../../src/language/tidy.ts';
import { ROOM } from '../support/arbitrary.ts';

const LINE = ROOM.split('\n').length;
const FISH = fc.constantFrom('male', 'female', 'Fern', 'Lark');
const SIGN = fc.constantFrom('chasing', 'pinned', 'torn fin', 'hiding', 'beating her up', 'beating him up', 'wounded');
const BEFORE = fc.oneof(FISH, fc.constantFrom('', 'Sedge', 'Sedge male'));
const HEADING = fc.constantFrom('B1', 'Sedge', 'Fern');
const QUARREL = fc.oneof(
  fc.tuple(BEFORE, SIGN).map((parts) => parts.join(' ')),
  fc.tuple(BEFORE, SIGN, FISH).map((parts) => parts.join(' ')),
  fc.tuple(BEFORE, SIGN, FISH, FISH).map(([before, sign, one, two]) => `${before} ${sign}, ${one} on ${two}`),
  fc.tuple(FISH, FISH).map(([one, two]) => `${one} on ${two}`),
);

function read(text: string): Reading {
  return readJournal('fishroom.txt', text, () => ({ ok: false, says: '' }));
}

function told(event: Event): unknown {
  return { ...event, place: null, seq: null };
}

const names = (text: string): readonly string[] => [...new Set(text.match(/Fern|Lark/gu))].sort();

it('a quarrel is read the same once it is printed, with every fish that has a name', () => {
  fc.assert(
    fc.property(HEADING, QUARREL, (heading, quarrel) => {
      const line = `2026-03-18 ${heading}: ${quarrel.trim()}`;
      const before = read(`${ROOM}${line}\n`);
      const own = before.events.filter(({ place }) => place.line === LINE);
      if (own.length === 0) {
        expect(before.problems, line).not.toEqual([]);
        return;
      }
      const printed = printEntry(own);
      const after = read(`${ROOM}${printed}\n`);
      expect(after.problems, printed).toEqual([]);
      expect(after.events.filter(({ place }) => place.line === LINE).map(told), `${line} → ${printed}`).toEqual(
        own.map(told),
      );
      expect(names(printed), `${line} → ${printed}`).toEqual(names(line));
      const tidied = tidy({
        file: 'fishroom.txt',
        text: `${ROOM}${line}\n`,
        reading: before,
        reread: read,
        brood: () => null,
        leftOut: new Set(),
      });
      expect(tidied.ok && tidied.text.split('\n')[LINE - 1]).toBe(printed);
    }),
    { numRuns: 150 },
  );
});

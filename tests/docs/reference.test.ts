/** Every example of the language's reference is read, without a problem, and gives the facts that it stands for. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CLAUSES, CLAUSE_KINDS } from '../../grammar/phrases.ts';
import { readJournal } from '../../src/language/read.ts';
import type { Reading } from '../../src/language/reading.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { toDay } from '../../src/core/day.ts';
import { EVENT_KINDS } from '../support/kinds.ts';

const REFERENCE = readFileSync(new URL('../../grammar/README.md', import.meta.url), 'utf8');

interface Section {
  readonly title: string;
  readonly kind: string | null;
  readonly examples: readonly string[];
}

const SECTIONS: readonly Section[] = REFERENCE.split(/^(?=#{1,3} )/mu).map((text) => {
  const [first = ''] = text.split('\n');
  const marked = /^#+ (?<title>.*?)(?: <!-- event: (?<kind>.+) -->)?$/u.exec(first)?.groups;
  const examples = [...text.matchAll(/^```journal\n(?<lines>[^]*?)^```/gmu)].map(
    (match) => match.groups?.['lines'] ?? '',
  );
  return { title: marked?.['title'] ?? first, kind: marked?.['kind'] ?? null, examples };
});

const ROOM = /^```journal room\n(?<lines>[^]*?)^```/mu.exec(REFERENCE)?.groups?.['lines'] ?? '';

function read(example: string): Reading {
  return readJournal('fishroom.txt', ROOM + example, () => ({ ok: false, says: 'there is no such file' }));
}

/** What was wrong with it, by the reader or by the room, in words that name the line. */
function wrongs(example: string): readonly string[] {
  const reading = read(example);
  const room = foldRoom(reading.events, toDay(25_000));
  const lines = (ROOM + example).split('\n');
  return [...reading.problems, ...room.problems].map(({ says, at }) => `${lines[at.line - 1] ?? ''} → ${says}`);
}

describe('the reference', () => {
  it('sets up a room without problems', () => {
    expect(wrongs('')).toEqual([]);
  });

  const shown = SECTIONS.flatMap(({ title, kind, examples }) =>
    examples.map((example) => [title, kind, example] as const),
  );

  it.each(shown)('has an example under «%s» that is read', (_title, _kind, example) => {
    expect(wrongs(example)).toEqual([]);
  });

  it.each(
    SECTIONS.filter(({ kind }) => kind !== null).map(({ title, kind, examples }) => [title, kind, examples] as const),
  )('shows under «%s» the fact «%s»', (_title, kind, examples) => {
    const from = ROOM.split('\n').length;
    const kinds = examples.flatMap((example) =>
      read(example)
        .events.filter(({ place }) => place.line >= from)
        .map((event) => event.kind),
    );
    expect(kinds).toContain(kind);
  });

  it('has one section for every kind of fact', () => {
    const told = SECTIONS.flatMap(({ kind }) => (kind === null ? [] : [kind]));
    expect(told.toSorted()).toEqual(Object.keys(EVENT_KINDS).toSorted());
  });

  it('shows every usual phrase of every clause', () => {
    const usual = CLAUSE_KINDS.flatMap((kind) =>
      Object.values(CLAUSES[kind].says).map((says) => says.split('|')[0] ?? ''),
    );
    expect(usual.filter((phrase) => !REFERENCE.includes(phrase))).toEqual([]);
  });
});

/** One kind of event, one home: a clause that states it, a slice that folds it, a page that tells of it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CLAUSE_KINDS, CLAUSES } from '../grammar/phrases.ts';
import type { EventKind } from '../src/journal/event.ts';
import { HOMES } from '../src/state/homes.ts';

const KINDS = Object.keys(HOMES).filter((kind): kind is EventKind => Object.hasOwn(HOMES, kind));
const REFERENCE = readFileSync(new URL('../grammar/README.md', import.meta.url), 'utf8');
const EVENT_KINDS = readFileSync(new URL('../src/journal/kinds.ts', import.meta.url), 'utf8');

/** The keys of `interface Kinds`, as written: the union itself exists for the compiler only. */
function declaredKinds(): string[] {
  const body = /interface Kinds \{\n([\s\S]*?)\n\}\n/.exec(EVENT_KINDS)?.[1] ?? '';
  return [...body.matchAll(/^ {2}(?:'([^']+)'|(\w+)):/gm)].map((match) => match[1] ?? match[2] ?? '');
}

const made: readonly string[] = CLAUSE_KINDS.flatMap((kind) => CLAUSES[kind].makes);
const told = [...REFERENCE.matchAll(/<!-- event: ([^>]+?) -->/g)].map((match) => match[1]);

describe('every kind of event', () => {
  test('is folded by a slice', () => {
    expect([...KINDS].sort()).toEqual(declaredKinds().sort());
    expect(KINDS.length).toBeGreaterThan(80);
  });

  test.each(KINDS)('%s is stated by a clause of the grammar', (kind) => {
    expect(made).toContain(kind);
  });

  test.each(KINDS)('%s has its section in the reference', (kind) => {
    expect(told.filter((each) => each === kind)).toHaveLength(1);
  });

  test('nothing is stated or told that is no kind of event', () => {
    expect([...made, ...told].filter((kind) => !declaredKinds().includes(kind ?? ''))).toEqual([]);
  });
});

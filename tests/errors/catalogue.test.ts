/**
 * The catalogue of problems: for each kind a small journal that has it, beside what a keeper is shown. A
 * kind that the code can produce and the catalogue does not show fails here.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dayFromIso, toDay } from '../../src/core/day.ts';
import { PROBLEM_KINDS } from '../../src/core/problem-kinds.ts';
import type { ProblemKind } from '../../src/core/problem-kinds.ts';
import { linesOf } from '../../src/language/lines.ts';
import { readJournal } from '../../src/language/read.ts';
import { checkJournal, lastDay } from '../../src/questions/check.ts';
import { plainLook } from '../../src/reports/look.ts';
import { problemsReport } from '../../src/reports/problems.ts';
import { foldRoom } from '../../src/state/fold.ts';

const FOLDER = new URL('./', import.meta.url);
const TODAY = dayFromIso('2026-06-01') ?? toDay(0);
/** Found where bytes are read, or while a line is jotted: shown by the tests of these. */
const ELSEWHERE: readonly ProblemKind[] = ['broken-text', 'name-would-change', 'nothing-put-off'];

const shown = readdirSync(FOLDER).flatMap((name) => (name.endsWith('.txt') ? [name.slice(0, -4)] : []));

/** Other files that a journal of the catalogue may ask for. */
function fetch(_from: string, asked: string): ReturnType<Parameters<typeof readJournal>[2]> {
  if (asked === 'circle.txt') return { ok: true, name: asked, text: 'also read "fishroom.txt"\n' };
  if (asked === 'empty.txt') return { ok: true, name: asked, text: '' };
  if (asked === 'fishroom.txt') return { ok: true, name: asked, text: '' };
  return {
    ok: false,
    says: asked.startsWith('..') ? 'it is outside the folder of the journal' : 'there is no such file',
  };
}

describe('the catalogue of problems', () => {
  it.each(shown)('shows %s', async (kind) => {
    const text = readFileSync(new URL(`${kind}.txt`, FOLDER), 'utf8');
    const reading = readJournal('fishroom.txt', text, fetch);
    const on = Math.min(TODAY, lastDay(reading.events) ?? TODAY);
    const { problems } = checkJournal(reading, foldRoom(reading.events, toDay(on)), TODAY);
    expect(problems.map((problem) => problem.kind)).toContain(kind);
    await expect(problemsReport(problems, linesOf(reading), plainLook(TODAY))).toMatchFileSnapshot(`${kind}.out`);
  });

  it('has every kind of problem that there is', () => {
    expect([...shown, ...ELSEWHERE].toSorted()).toEqual([...PROBLEM_KINDS].toSorted());
  });
});

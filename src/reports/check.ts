/** The answer of `check`: the verdict first, then every problem with its line, then what `tidy` would write. */
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import type { CheckAnswer } from '../questions/check.ts';
import type { Look } from './look.ts';
import type { Lines } from './problems.ts';
import { problemsReport, sortedProblems, verdict } from './problems.ts';
import { heading } from './words.ts';

export function checkReport(answer: CheckAnswer, lines: Lines, look: Look): string {
  const said = `${heading(look)}: ${look.paint.strong(verdict(answer.problems))}\n`;
  const shown = answer.problems.length === 0 ? '' : `\n${problemsReport(answer.problems, lines, look)}`;
  return said + shown + unwritten(answer.unwritten);
}

function unwritten(spawns: number): string {
  if (spawns === 0) return '';
  const who = spawns === 1 ? 'brood has no name in its line' : 'broods have no name in their lines';
  return `\n${spawns} ${who} yet: tankside tidy --write writes ${spawns === 1 ? 'it' : 'them'} in\n`;
}

/** Keys of the JSON answer after `version`: `problems`, and the number of broods without a written name. */
export function checkJson(answer: CheckAnswer): { problems: readonly Problem[]; unwritten: number } {
  return {
    problems: sortedProblems(answer.problems).map(({ kind, weight, says, write, at, also }) => ({
      kind,
      weight,
      says,
      write,
      at: placeJson(at),
      also: also.map(placeJson),
    })),
    unwritten: answer.unwritten,
  };
}

function placeJson({ file, line, from, to }: Place): Place {
  return { file, line, from, to };
}

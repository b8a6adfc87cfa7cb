/** The answer of `check`: the verdict first, then every problem with its line, then what `tidy` would write. */
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import type { CheckAnswer } from '../questions/check.ts';
import type { Look } from './look.ts';
import { lineToWrite } from './mended.ts';
import type { Lines } from './problems.ts';
import { leftOutLines, problemsReport, sortedProblems } from './problems.ts';
import { heading, listWords, plural } from './words.ts';
import { paragraph } from './wrap.ts';

export function checkReport(answer: CheckAnswer, lines: Lines, look: Look): string {
  const said = `${heading(look)}: ${look.paint.strong(verdict(answer))}\n`;
  const shown = answer.problems.length === 0 ? '' : `\n${problemsReport(answer.problems, lines, look)}`;
  return said + shown + unwritten(answer.unwritten, look.width);
}

/** `2 lines left out, 1 contradiction and 3 to look at again`. */
export function verdict({ problems, contradictions }: Pick<CheckAnswer, 'problems' | 'contradictions'>): string {
  const stopped = leftOutLines(problems).length;
  const doubts = problems.filter(({ weight }) => weight === 'doubt').length - contradictions;
  const parts = [
    ...(stopped > 0 ? [`${plural(stopped, 'line')} left out`] : []),
    ...(contradictions > 0 ? [plural(contradictions, 'contradiction')] : []),
    ...(doubts > 0 ? [`${doubts} to look at again`] : []),
  ];
  return parts.length === 0 ? 'every line is read, and nothing contradicts' : listWords(parts);
}

function unwritten(spawns: number, width: number): string {
  if (spawns === 0) return '';
  const who = spawns === 1 ? 'brood has no name in its line' : 'broods have no name in their lines';
  const text = `${spawns} ${who} yet: tankside tidy --write writes ${spawns === 1 ? 'it' : 'them'} in`;
  return `\n${paragraph(text, width)}\n`;
}

/** Keys of the JSON answer after `version`: `problems`, and the number of broods without a written name. */
export function checkJson(answer: CheckAnswer, lines: Lines): { problems: readonly Problem[]; unwritten: number } {
  return {
    problems: sortedProblems(answer.problems).map((problem) => ({
      kind: problem.kind,
      weight: problem.weight,
      says: problem.says,
      write: lineToWrite(problem, lines(problem.at.file, problem.at.line)),
      at: placeJson(problem.at),
      also: problem.also.map(placeJson),
    })),
    unwritten: answer.unwritten,
  };
}

function placeJson({ file, line, from, to }: Place): Place {
  return { file, line, from, to };
}

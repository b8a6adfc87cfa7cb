/** Two clauses that lack the sign between them: `2 dead wc 30%`, `heater broke, 19 C`. A `;` is offered there. */
import { cut } from '../../grammar/cut.ts';
import { numberEnd, wordOf } from '../../grammar/matching.ts';
import { openingAt } from '../../grammar/openings.ts';
import { parseClausesAfresh } from '../../grammar/parse.ts';
import type { ClauseKind } from '../../grammar/phrases.ts';
import { Comma, Unit } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { SEX_WORDS } from '../../grammar/words.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import { foldPunctuation } from './punctuation.ts';
import type { Said } from './said.ts';

/** Where the second of the two begins; null where the words make no two clauses. */
export function unparted(said: Said): Fault | null {
  const tokens = cut(foldPunctuation(said.text));
  // What stands behind a comma may be of the clause before it: `spawned, about 60 looks ok`.
  const [inside, behind] = [false, true].map((comma) =>
    tokens.filter((_, at) => at > 0 && (tokens[at - 1]?.tokenType === Comma) === comma && begins(said, tokens, at)),
  );
  for (const token of [...(inside ?? []), ...(behind ?? [])]) {
    const [one, other] = [said.text.slice(0, token.startOffset), said.text.slice(token.startOffset)];
    const before = one.replace(/[\s,+&]+$/u, '');
    if (!isWhole(said, before) || !said.reads(other)) continue;
    const says = `«${other}» is a clause of its own: a \`;\` stands before it`;
    const place = { from: said.at.from + token.startOffset, to: said.at.to };
    const edit = { from: said.at.from + before.length, to: place.from, text: '; ' };
    return { ...fault('unknown-clause', place, says), edit };
  }
  return null;
}

/** Whether words are clauses to which nothing is wanting. */
function isWhole({ line, heading }: Said, words: string): boolean {
  if (words === '' || DANGLING.test(words)) return false;
  const { clauses, unread, faults } = parseClausesAfresh(cut(foldPunctuation(words)), 0, heading, line.names);
  const last = clauses.at(-1);
  if (last === undefined || unread.length > 0 || faults.length > 0) return false;
  // `1 sick wc`, `no eggs laid`: what follows is most likely theirs.
  if (last.kind === 'sick' || last.kind === 'no eggs') return false;
  const named = clauses.flatMap(({ before, details }) => [...before, ...details]);
  if (named.some((each) => each.type === 'name' && !line.names.isName(each.text))) return false;
  // `heater dead` is a fault whole.
  const says = last.details.length > 0 || last.before.length > 0 || last.head.sense === 'named';
  return says || !WANTING.has(last.kind);
}

const DANGLING = /(?<!\p{L})(?:from|of|with|to|into|in|on|at|for|and|by|under|the|an?)$/iu;

/** Clauses that say nothing without a detail. */
const WANTING: ReadonlySet<ClauseKind> = new Set<ClauseKind>([
  'put off',
  'stop chore',
  'chore',
  'to do',
  'did',
  'hold',
  'treat',
  'dosed',
  'test',
  'level',
  'bought',
  'moved',
  'lost',
  'counted',
  'size',
  'kept back',
  'reserved',
  'wanted',
  'spent',
  'fault',
  'photo',
  'quarantine',
  'two readings',
]);

/** Clauses whose first words may as well be about the clause before them: `culled 1 bent spine`. */
const OF_BEFORE: ReadonlySet<ClauseKind> = new Set<ClauseKind>([
  'sick',
  'put off',
  'chore',
  'stop chore',
  'to do',
  'did',
]);

/** Whether a clause surely begins there: by its phrase, or behind a comma by anything that is read alone. */
function begins({ line, heading }: Said, tokens: readonly Token[], at: number): boolean {
  // `5 l fed`: a unit is no fish.
  if (tokens[at]?.tokenType === Unit) return false;
  const afterComma = tokens[at - 1]?.tokenType === Comma;
  const opening = openingAt(tokens, at, { heading, ...line.names }, !afterComma);
  if (opening === null || opening.kind === 'two readings') return false;
  // Any word before a phrase may be a fish: of `eggs gone lights off` none is called gone.
  const isFish = SEX_WORDS.has(wordOf(tokens[at])) || line.names.isFish(tokens[at]?.image ?? '');
  if (opening.head > at && !isFish && numberEnd(tokens, at) === at) return false;
  return afterComma || (!OF_BEFORE.has(opening.kind) && (opening.end > opening.head || opening.kind === 'test'));
}

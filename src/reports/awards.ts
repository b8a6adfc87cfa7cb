/** Breeder awards as text and as JSON: what can be claimed, by when, and what evidence is missing. */
import type { AwardRow, AwardsAnswer } from '../questions/awards.ts';
import { dayJson, linesJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { dayText, heading, listWords, plural } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'brood' },
  { head: 'stands' },
  { head: 'why', wraps: true },
  { head: 'missing', wraps: true },
] as const;
/** What can still be claimed, or was: the rest is counted. */
const SHOWN: readonly AwardRow['state'][] = ['can be claimed', 'perhaps', 'growing', 'claimed'];

export function awardsText(answer: AwardsAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer)}`, look.width, 2).split('\n');
  const shown = answer.asked === null ? answer.rows.filter(({ state }) => SHOWN.includes(state)) : answer.rows;
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    ...answer.rules.flatMap(({ name, asks }) => {
      const rows = shown.filter(({ rule }) => rule === name);
      return [
        paragraph(`${name}: ${asks}`, look.width, 2),
        table(
          look,
          COLUMNS,
          rows.map((row) => rowOf(row, look)),
        ).trimEnd(),
      ];
    }),
    nextWords(shown, look),
    restWords(answer, shown.length),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters({ rules, rows, asked }: AwardsAnswer): string {
  if (rules.length === 0) return 'no award rule yet; jot: room: award "club award": 6 young at 60 days from hatched';
  const claimable = rows.filter(({ state }) => state === 'can be claimed');
  const ready = new Set(claimable.map(({ brood }) => brood));
  const whole = new Set(claimable.filter(isWhole).map(({ brood }) => brood));
  if (ready.size > 0)
    return `${plural(ready.size, 'brood')} can be claimed, ${whole.size === 0 ? 'none' : String(whole.size)} with all evidence`;
  return asked === null ? 'no brood can be claimed yet' : `${asked} cannot be claimed yet`;
}

/** Nothing that a club asks to see is missing. */
function isWhole({ evidence }: AwardRow): boolean {
  return evidence.every(({ says }) => says !== null);
}

function rowOf(row: AwardRow, look: Look): Row {
  const missing = row.evidence.filter(({ says }) => says === null).map(({ name }) => name);
  const notice =
    row.notice === null || row.noticed || row.state === 'claimed' || row.state === 'notice missed'
      ? []
      : [`notice by ${dayText(row.notice, look)}`];
  return {
    cells: [
      row.brood,
      row.state,
      [row.says, ...notice],
      row.state === 'claimed' || missing.length === 0 ? 'nothing' : missing.join(', '),
    ],
  };
}

/** The lines to jot for the first that can be claimed: what is missing, else the claim. */
function nextWords(rows: readonly AwardRow[], look: Look): string {
  const next = rows.find(({ state }) => state === 'can be claimed' || state === 'perhaps');
  if (next === undefined) return '';
  const writes = next.evidence.flatMap(({ says, write }) => (says === null && write !== null ? [write] : []));
  const lines = writes.length > 0 ? writes : next.state === 'can be claimed' ? [next.close] : [];
  if (lines.length === 0) return '';
  return [`for ${next.brood}:`, ...lines.map((line) => look.paint.quiet(`jot  ${line}`))].join('\n');
}

function restWords({ rows }: AwardsAnswer, shown: number): string {
  const rest = rows.length - shown;
  if (rest === 0) return '';
  const states = [...new Set(rows.filter(({ state }) => !SHOWN.includes(state)).map(({ state }) => state))];
  return `${plural(rest, 'more brood')} ${rest === 1 ? 'is' : 'are'} ${listWords(states.map(stateWords))}; name one to see it`;
}

function stateWords(state: AwardRow['state']): string {
  return state === 'over' ? 'too old' : state === 'notice missed' ? 'without notice' : state;
}

export function awardsJson({ asked, rules, rows }: AwardsAnswer): object {
  return {
    asked,
    rules: rules.map(({ name, asks, lines }) => ({ name, asks, lines: linesJson(lines) })),
    broods: rows.map((row) => ({
      id: row.id,
      name: row.brood,
      species: row.species,
      latin: row.latin,
      rule: row.rule,
      state: row.state,
      says: row.says,
      young: row.young,
      opens: windowJson(row.opens),
      closes: windowJson(row.closes),
      notice: dayJson(row.notice),
      noticed: row.noticed,
      evidence: row.evidence.map(({ kind, says, write, lines }) => ({
        kind,
        says,
        ...(says === null && write !== null ? { write } : {}),
        lines: linesJson(lines),
      })),
      lines: linesJson(row.lines),
    })),
  };
}

/** Breeder awards as text and as JSON: what can be claimed, by when, and what evidence is missing. */
import type { AwardRow, AwardsAnswer } from '../questions/awards.ts';
import { dayJson, linesJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { dayText, heading, listWords, plural, saidDay, windowText } from './words.ts';
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
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
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
    restWords(answer, shown.length, look),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** What to do next, in one line: what runs out first. */
function matters({ rules, rows, asked }: AwardsAnswer, look: Look): string {
  if (rules.length === 0) return 'no award rule yet; jot: room: award "club award": 6 young at 60 days from hatched';
  const claims = rows.filter(({ state }) => state === 'can be claimed');
  const notices = rows.filter(isOpenNotice).toSorted((a, b) => noticeEnd(a) - noticeEnd(b));
  const [claim] = claims;
  const [notice] = notices;
  if (notice !== undefined && (claim === undefined || noticeEnd(notice) <= (claim.closes?.low ?? Infinity)))
    return `give notice of ${notice.brood}${notice.notice === null ? '' : ` by ${dayText(notice.notice, look)}`}`;
  if (claim !== undefined) {
    const more = new Set(claims.map(({ brood }) => brood)).size - 1;
    return `${claimWords(claim, look)}${more === 0 ? '' : `; ${String(more)} more can be claimed`}`;
  }
  const count = rows.find(({ state, young }) => state === 'perhaps' && young.sure < young.needed);
  if (count !== undefined)
    return `count ${count.brood}: surely ${String(count.young.sure)}, ${String(count.young.needed)} are asked for`;
  const next = rows.find(({ state, opens }) => state === 'growing' && opens !== null);
  const first = next?.opens
    ? `; ${asked === null ? `first ${next.brood}, ` : ''}of age ${windowText(next.opens, look)}`
    : '';
  return `${asked ?? 'no brood'} ${asked === null ? 'can' : 'cannot'} be claimed yet${first}`;
}

function isOpenNotice({ notice, noticed, state }: AwardRow): boolean {
  return notice !== null && !noticed && SHOWN.includes(state) && state !== 'claimed';
}

function noticeEnd({ notice }: AwardRow): number {
  return notice ?? Infinity;
}

/** What a keeper does for evidence that is missing and can still be had. */
const GETS: { readonly [K in AwardRow['evidence'][number]['kind']]?: string } = {
  count: 'count them',
  photo: 'take a photo',
  water: 'test the water',
  source: 'write where the parents are from',
  species: 'write the full name of the species',
};

/** `claim Rowan-1 by 4 Jun`; where evidence is missing that can still be had, what to get first. */
function claimWords({ brood, closes, evidence }: AwardRow, look: Look): string {
  const by = closes?.low === undefined || closes.low === null ? '' : ` by ${dayText(closes.low, look)}`;
  const gets = evidence.flatMap(({ says, write, kind }) => (says === null && write !== null ? (GETS[kind] ?? []) : []));
  return gets.length === 0 ? `claim ${brood}${by}` : `for ${brood} ${listWords(gets)}, then claim it${by}`;
}

function rowOf(row: AwardRow, look: Look): Row {
  const missing = row.evidence.filter(({ says }) => says === null).map(({ name }) => name);
  const notice =
    row.notice === null || row.noticed || row.state === 'claimed' || row.state === 'notice missed'
      ? []
      : [`notice by ${saidDay(row.notice, look)}`];
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

/** So many broods are named in the last line; more are counted. */
const NAMED = 4;

function restWords({ rows }: AwardsAnswer, shown: number, look: Look): string {
  const rest = rows.length - shown;
  if (rest === 0) return '';
  const hidden = rows.filter(({ state }) => !SHOWN.includes(state));
  const states = [...new Set(hidden.map(({ state }) => state))];
  const names = [...new Set(hidden.map(({ brood }) => brood))];
  const who = names.length > NAMED ? plural(rest, 'more brood') : listWords(names);
  const words = `${who} ${names.length === 1 ? 'is' : 'are'} ${states.map(stateWords).join(' or ')}`;
  return paragraph(`${words}; name one to see it`, look.width, 2);
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

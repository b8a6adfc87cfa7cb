/** A sheet for each brood that can be claimed or may be: what the journal proves, and room for what it does not. */
import { addDays, type Day } from '../core/day.ts';
import { dayWords } from '../core/words.ts';
import type { AwardRow, AwardsAnswer } from '../questions/awards.ts';
import { pageHtml } from './html.ts';
import { kindOf } from './labels.ts';
import { markup, type Markup } from './markup.ts';

/** All rows of a named brood; else those that can still be claimed. */
export function awardsHtml(answer: AwardsAnswer): string {
  const rows = answer.asked === null ? answer.rows.filter(({ state }) => PRINTED.includes(state)) : answer.rows;
  return pageHtml('Breeder awards', rows.length === 0 ? [nothing()] : rows.map((row) => sheet(row, answer.on)));
}

const PRINTED: readonly AwardRow['state'][] = ['can be claimed', 'perhaps', 'claimed'];

function nothing(): Markup {
  return markup`<section class="sheet"><h1>Breeder awards</h1><p>No brood can be claimed.</p></section>`;
}

function sheet(row: AwardRow, on: Day): Markup {
  const dated = (day: Day): string => dayWords(day, addDays(day, 2 * 366));
  const notice =
    row.notice === null ? 'none asked' : `${row.noticed ? 'given' : 'not written'}, due by ${dated(row.notice)}`;
  return markup`<section class="sheet" aria-label="${row.brood}">
<h1>${kindOf(row.latin, row.species)}</h1>
<p>${row.rule}: ${row.asks}</p>
<table><tbody>
${fact('brood', row.brood)}${fact('stands', `${row.state}: ${row.says}, on ${dated(on)}`)}${fact('notice', notice)}${row.evidence.map(
    ({ name, says }) => fact(name, says),
  )}${fact('young shown', null)}${fact('date and signature', null)}${fact('seen for the club by', null)}</tbody></table>
</section>`;
}

/** A line of the sheet; what the journal does not hold is left to be written in. */
function fact(name: string, says: string | null): Markup {
  const cell = says === null ? markup`<td class="open"></td>` : markup`<td>${says}</td>`;
  return markup`<tr><td class="name">${name}</td>${cell}</tr>
`;
}

/** `tankside awards [NAME]`: breeder awards, what can be claimed and what evidence is missing. */
import { awardNames, awards, type AwardsAnswer } from '../../questions/awards.ts';
import { awardsJson, awardsText } from '../../reports/awards.ts';
import { awardsHtml } from '../../reports/html-awards.ts';
import type { Room } from '../../state/draft.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { textFlag } from '../flags.ts';
import { oneOutput, writePage } from '../papers.ts';
import { unknownName } from '../unknown.ts';

const HTML = textFlag('--html FILE', 'a sheet for each brood, to print and sign (- for standard output)');

export const command: Command = {
  takes: '[NAME]',
  about:
    'By the award rules in the journal: which broods can be claimed and until when, the last day for notice, and what ' +
    'evidence is missing, with the line that fills it. Clubs differ, so write the rule of yours: ' +
    'room: award "club award": 6 young at 60-120 days from hatched, notice 14 days',
  flags: [HTML],
  examples: ['tankside awards', 'tankside awards Rowan-1', 'tankside awards --html awards.html'],
  run(context, get, words) {
    oneOutput(get, [get(HTML)]);
    return answer(context, get, {
      ask(room) {
        const found = ask(room, words);
        return { found, written: writePage(context, get(HTML), () => awardsHtml(found)) };
      },
      text: ({ found, written }, look) => written ?? awardsText(found, look),
      json: ({ found }) => awardsJson(found),
    });
  },
};

function ask(room: Room, words: readonly string[]): AwardsAnswer {
  const asked = words.join(' ');
  if (asked === '') return awards(room);
  const found = awards(room, asked);
  if (found.rows.length > 0 || found.rules.length === 0) return found;
  throw unknownName({ what: 'brood', asked, names: awardNames(room), all: 'tankside awards' });
}

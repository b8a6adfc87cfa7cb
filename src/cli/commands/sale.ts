/** `tankside sale`: what can be promised, and what stands in the way of the rest. */
import { papersOf } from '../../questions/papers.ts';
import { sale } from '../../questions/sale.ts';
import { timetableRows } from '../../questions/timetable/row.ts';
import { timetableCalendar } from '../../reports/calendar.ts';
import { saleHtml } from '../../reports/html-sale.ts';
import { planJson } from '../../reports/sale-plan-data.ts';
import { planText } from '../../reports/sale-plan.ts';
import { saleText } from '../../reports/sale.ts';
import { saleCsv, saleJson } from '../../reports/sale-data.ts';
import { sheetCsv } from '../../reports/settle.ts';
import type { Room } from '../../state/draft.ts';
import { answer, discreetText } from '../answer.ts';
import { auctionOf } from '../auction.ts';
import type { Command } from '../command.ts';
import type { Context } from '../context.ts';
import type { Exit } from '../exit.ts';
import { NAMES, flag, textFlag, type Get, wholeFlag } from '../flags.ts';
import { oneOutput, writeAll, writeCalendar, writePage, writeSpreadsheet } from '../papers.ts';
import type { Journal } from '../journal.ts';
import { PLAN_FLAGS, planFor } from '../planning.ts';

const FOR = textFlag('--for AUCTION', 'the day and the bags of an auction in the journal');
const AHEAD = wholeFlag('--ahead DAYS', 'so many days further on, as the room will likely stand then', 0);
const CSV = textFlag(
  '--csv FILE',
  'for a spreadsheet, with --plan one row a bag, into a new file, or - for standard output',
);
const PLAN = flag('--plan', 'which bags to take: those worth most together within the rules and the boxes');
const HTML = textFlag('--html FILE', 'of the plan: a sheet for the table, labels, a packing list, to print (- too)');
const ICS = textFlag('--ics FILE', 'of the plan: the days before the auction as a calendar (- too)');

export const command: Command = {
  takes: '',
  about:
    'What is ready to sell, with the number that can surely be promised: alive at least, less what is kept back and ' +
    'reserved. For everything else, each thing that stands in its way and until when; and what to count to promise more. With --plan the bags to take, ' +
    'their water, air and boxes, what they likely bring, and why the others stay.',
  flags: [FOR, AHEAD, PLAN, ...PLAN_FLAGS, CSV, HTML, ICS, NAMES],
  only: [{ of: PLAN_FLAGS, beside: [PLAN, HTML, ICS] }],
  apart: [{ of: [AHEAD], beside: [FOR] }],
  wordFor: FOR,
  examples: [
    'tankside sale',
    'tankside sale --for Autumn',
    'tankside sale --for Autumn --plan --boxes 2',
    'tankside sale --for Autumn --html autumn.html --ics autumn.ics',
    'tankside sale --ahead 28',
    'tankside sale --csv lots.csv',
  ],
  run(context, get) {
    oneOutput(get, [get(CSV), get(HTML), get(ICS)]);
    return get(PLAN) || get(HTML) !== null || get(ICS) !== null ? planned(context, get) : shown(context, get);
  },
};

function shown(context: Context, get: Get): Promise<Exit> {
  return answer(context, get, {
    ask(room, journal) {
      const found = ask(room, get, journal.on > journal.today);
      const names = namesFor(get, journal);
      return { found, written: writeSpreadsheet(context, get(CSV), () => saleCsv(found, names)) };
    },
    text: ({ found, written }, look) => written ?? saleText(found, look),
    json: ({ found }) => saleJson(found, get(NAMES)),
  });
}

/** The plan, or that its papers are written. */
function planned(context: Context, get: Get): Promise<Exit> {
  return answer(context, get, {
    ask(room, journal) {
      const { on, today } = journal;
      const names = namesFor(get, journal);
      const plan = planFor(room, get, { auction: get(FOR), ahead: get(AHEAD), projected: on > today });
      const [csv, html, ics] = [get(CSV), get(HTML), get(ICS)];
      const rows = () => (get(PLAN) ? sheetCsv(plan) : saleCsv(ask(room, get, on > today), names));
      const spreadsheet = () => writeSpreadsheet(context, csv, rows);
      const page = () => writePage(context, html, () => saleHtml(papersOf(room, plan, names)));
      const days = () => timetableCalendar(timetableRows(room, plan), on, names.hide);
      const calendar = () => writeCalendar(context, ics, days, on);
      return {
        plan,
        papers: writeAll([
          [csv, spreadsheet],
          [html, page],
          [ics, calendar],
        ]),
      };
    },
    text: ({ plan, papers }, look) => papers ?? planText(plan, look),
    json: ({ plan }) => planJson(plan),
  });
}

/** Whether buyers' names may stand in what leaves for others, and what takes them out of it. */
function namesFor(get: Get, { latest }: Journal): { withNames: boolean; hide: (text: string) => string } {
  return { withNames: get(NAMES), hide: discreetText(get, latest) };
}

function ask(room: Room, get: Get, projected: boolean): ReturnType<typeof sale> {
  return sale(room, { ahead: get(AHEAD), auction: auctionOf(room, get(FOR)), projected });
}

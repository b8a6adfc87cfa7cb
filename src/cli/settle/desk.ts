/** Where results come from and where what became of them is told: files, standard input, the two outputs. */
import path from 'node:path';
import { plural } from '../../core/words.ts';
import type { Reading } from '../../language/reading.ts';
import type { Wrong } from '../../questions/settle/result.ts';
import { settleJson, settleText, sheetCsv, wrongJson, wrongText } from '../../reports/settle.ts';
import { jsonText } from '../../reports/json.ts';
import { printableAnswer } from '../../reports/printable.ts';
import { USUAL_WIDTH } from '../../reports/wrap.ts';
import { discreet, lookOf, show, tellLeftOut } from '../answer.ts';
import { auctionOf } from '../auction.ts';
import type { Context } from '../context.ts';
import { readPastDate } from '../dates.ts';
import { EXIT, misuse, Stop, type Exit } from '../exit.ts';
import { COMMON, type Get } from '../flags.ts';
import { createOut } from '../outfile.ts';
import { planFor } from '../planning.ts';
import { journalPath, openJournal, readMain } from '../journal.ts';
import { tell } from '../tell.ts';
import { openDesk } from '../jot/desk.ts';
import { isSheet, readSheet } from './sheet.ts';
import { SETTLES, verdict, write, type Case, type Handed } from './settle.ts';

export interface SettleWish {
  readonly auction: string;
  /** File; `-` or null: standard input. */
  readonly source: string | null;
  readonly quarantine: number;
  readonly tryOnly: boolean;
}

/** Settles an auction from a sheet or lines and tells what became of it. Throws a `Stop` for a file that cannot be had. */
export async function settleFrom(context: Context, get: Get, wish: SettleWish): Promise<Exit> {
  const file = journalPath(context, get(COMMON.journal));
  const { content } = readMain(context, file);
  const { text } = content;
  const results = await handedIn(context, wish);
  // An auction may be settled long after its day: all lines have to be at hand.
  const { book } = await openDesk({ ...context, chest: null }, file, content);
  const told = get(COMMON.on);
  const on = told === null ? book.today : readPastDate(told, book.today);
  const reading = book.read(text);
  const room = book.fold(reading, on);
  const auction = auctionOf(room, wish.auction, SETTLES)?.name ?? wish.auction;
  const refuse = (wrong: readonly Wrong[]): Exit =>
    tellWrong(context, get, wrong, { source: results.name, auction, reading });
  const handed = handedOver(results.text, room.settings.currency);
  const found: Case = { book, auction, on, quarantine: wish.quarantine, handed };
  const done = wish.tryOnly ? { ...verdict(found, text), notices: [] } : write(context.files, file, found, text);
  for (const notice of done.notices) tell(context, notice);
  if (!done.ok) return refuse(done.wrong);
  if (get(COMMON.json)) context.out.write(jsonText(discreet(get, done.reading, settleJson(done.answer))));
  else {
    const look = await lookOf(context, { on, today: book.today });
    await show(context, () => settleText(done.answer, look));
  }
  return EXIT.answered;
}

/** The text of the results, and how to call where they came from. Throws a `Stop` where there are none. */
async function handedIn(context: Context, { auction, source }: SettleWish): Promise<{ name: string; text: string }> {
  if (source === null && context.input.isTTY)
    throw misuse(
      'settle wants the results: a sheet, or - for standard input',
      `${SHEETS(auction)} (a blank one), then tankside settle ${auction} ${auction.toLowerCase()}.csv`,
    );
  if (source === null || source === '-') return { name: 'standard input', text: await context.input.text() };
  const found = context.files.read(path.resolve(context.cwd, source), source);
  if (!found.ok) {
    if (found.missing)
      throw new Stop(EXIT.noFile, `there is no ${source}`, `tankside settle ${auction} --sheet ${source}`);
    throw new Stop(EXIT.noFile, `${source} cannot be read: ${found.says}`, `tankside settle ${auction} results.csv`);
  }
  const [broken] = found.problems;
  if (broken !== undefined)
    throw misuse(`${source} line ${String(broken.at.line)} is not UTF-8`, 'save it as CSV UTF-8 and try again');
  return { name: path.basename(source), text: found.content.text };
}

/** A sheet, or lines of the journal: whichever the first row looks like. */
function handedOver(text: string, currency: string | null): Handed {
  const lines = text
    .split(/\r\n|\n|\r/)
    .flatMap((words, index) => (words.trim() === '' ? [] : [{ line: index + 1, words }]));
  if (!isSheet(text) && lines.length > 0 && lines.every(({ words }) => words.includes(':')))
    return { kind: 'lines', lines };
  return { kind: 'sheet', ...readSheet(text, currency) };
}

function tellWrong(
  context: Context,
  get: Get,
  wrong: readonly Wrong[],
  { source, auction, reading }: { readonly source: string; readonly auction: string; readonly reading: Reading },
): Exit {
  if (get(COMMON.json)) context.out.write(jsonText(discreet(get, reading, wrongJson(wrong, auction))));
  const width = context.err.isTTY ? (context.err.columns ?? USUAL_WIDTH) : USUAL_WIDTH;
  context.err.write(printableAnswer(wrongText(wrong, { source, auction, width }), false));
  return EXIT.misuse;
}

const SHEETS = (name: string): string => `tankside settle ${name} --sheet ${name.toLowerCase()}.csv`;

/** The blank sheet of the plan's lots, never over a file that is there: it may be filled in already. */
export async function blankSheet(context: Context, get: Get, asked: string, file: string): Promise<Exit> {
  const journal = await openJournal(context, get);
  const auction = auctionOf(journal.room(), asked, SHEETS);
  const held = auction?.on ?? null;
  if (auction === null || held === null) throw misuse('which auction?', 'tankside settle Autumn --sheet autumn.csv');
  // Asked for after the auction: what was to be sold on its day.
  const room = journal.room(held < journal.on ? held : journal.on);
  const plan = planFor(room, get, { auction: auction.name, ahead: 0, projected: journal.on > journal.today });
  const text = sheetCsv(plan);
  if (file === '-') context.out.write(text);
  else {
    createOut(context, file, text, '--sheet -');
    const lots = plan.lots.reduce((sum, lot) => sum + lot.bags.length, 0);
    if (get(COMMON.json)) context.out.write(jsonText({ version: 1, auction: auction.name, written: file, lots }));
    const next = `fill in what each lot fetched, then: tankside settle ${auction.name} ${file}`;
    if (!get(COMMON.json))
      await show(context, () => `${file} is written: ${plural(lots, 'lot')} of ${auction.name}\n${next}\n`);
  }
  return tellLeftOut(context, get, journal.leftOut(room));
}

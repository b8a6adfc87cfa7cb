/** Holds with their reach, and what else keeps fish where they are, as text and as JSON. */
import type { Day } from '../core/day.ts';
import type { CourseRow, Gone, HoldRow, HoldsAnswer, QuarantineRow, SickRow } from '../questions/holds.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { countWords, dayText, heading, listWords, plural } from './words.ts';
import { paragraph } from './wrap.ts';

const REACHED = [{ head: 'tank', wraps: true }, { head: 'since' }, { head: 'reached', wraps: true }];
const ELSE = [{ head: 'where' }, { head: 'what', wraps: true }, { head: 'until' }, { head: 'jot', wraps: true }];

export function holdsText(answer: HoldsAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const others = [
    ...answer.sick.map((row) => sickLine(row, look)),
    ...answer.treatments.map((row) => courseLine(row, look)),
    ...answer.quarantines.map((row) => quarantineLine(row, look)),
  ];
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    ...answer.holds.map((hold) => holdBlock(hold, look)),
    table(look, ELSE, others).trimEnd(),
    cautionOf(answer, look),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** A dose that is late comes first: it is all that cannot wait. */
function matters(answer: HoldsAnswer, look: Look): string {
  const late = answer.treatments.flatMap((row) => {
    const days = daysLate(row, look);
    return days === 0
      ? []
      : [`${row.place}: dose ${String(row.given + 1)} of ${row.product} late ${plural(days, 'day')}`];
  });
  return [...late, heldWords(answer, look)].join('; ');
}

/** Days since the last day on which the next dose was due; none while it is put off or the keeper is away. */
function daysLate({ next, waits }: CourseRow, { on }: Look): number {
  return next === null || next.high === null || waits !== null ? 0 : Math.max(0, on - next.high);
}

function heldWords({ holds, sick, treatments, quarantines }: HoldsAnswer, look: Look): string {
  const tanks = new Set(holds.flatMap((hold) => hold.tanks.map(({ tank }) => tank)));
  const asked = sick.filter(({ catching }) => catching === null);
  if (holds.length > 0) {
    const [last] = holds.toSorted((a, b) => b.clear - a.clear);
    const clear = last === undefined ? '' : clearWords(last, look);
    return `${plural(tanks.size, 'tank')} on hold, ${clear}`;
  }
  const [first] = asked;
  if (first) return `nothing on hold; is «${first.text}» in ${first.place} catching?`;
  const over = quarantines.filter(({ until }) => until <= look.on).map(({ place }) => place);
  const ended = over.length === 0 ? '' : `, over in ${listWords(over)}`;
  const rest = [
    ...(treatments.length > 0 ? [`${plural(treatments.length, 'treatment')} running`] : []),
    ...(quarantines.length > 0 ? [`${plural(quarantines.length, 'tank')} in quarantine${ended}`] : []),
  ];
  return rest.length === 0 ? 'nothing on hold' : `nothing on hold; ${listWords(rest)}`;
}

function clearWords({ clear, lastSign, lastDose, dosesTo }: HoldRow, look: Look): string {
  if (clear <= look.on) return `clear since ${dayText(clear, look)} if no sign came since`;
  const dosed = dosesTo ?? lastDose;
  const from =
    dosed === null || dosed < lastSign
      ? `last sign ${dayText(lastSign, look)}`
      : `${dosesTo === null ? 'last dose' : 'doses to come till'} ${dayText(dosed, look)}`;
  return `clear on ${dayText(clear, look)} if no new sign comes (${from})`;
}

/** Tanks that were reached on one day in one way stand in one row, at the place of the first. */
function reachedAlike({ tanks }: HoldRow, look: Look): readonly { tanks: string[]; since: Day; how: string }[] {
  const rows = new Map<string, { tanks: string[]; since: Day; how: string }>();
  for (const { tank, since, route } of tanks) {
    const says = route.map((step) => `${step.says}, ${dayText(step.on, look)}`).join('; ');
    const how = route.length === 0 ? 'named in the line' : says;
    const key = `${String(since)} ${how}`;
    const row = rows.get(key) ?? { tanks: [], since, how };
    row.tanks.push(tank);
    rows.set(key, row);
  }
  return [...rows.values()];
}

function holdBlock(hold: HoldRow, look: Look): string {
  const rows = reachedAlike(hold, look).map(({ tanks, since, how }): Row => ({
    cells: [tanks.join(', '), dayText(since, look), how],
  }));
  const lines = [
    ...hold.clean.map(({ tank, says }) => `clean: ${tank}, ${says}`),
    ...gone('moved on', hold.moved, look),
    ...gone('sold or given', hold.sold, look),
  ];
  const title = `${hold.place}: ${hold.text}, on hold since ${dayText(hold.since, look)}; followed from ${dayText(hold.lookBack, look)}; ${clearWords(hold, look)}`;
  return [
    paragraph(title, look.width, 2),
    table(look, REACHED, rows).trimEnd(),
    ...lines.map((line) => paragraph(line, look.width, 2)),
    look.paint.quiet(`jot  ${hold.close}`),
  ].join('\n');
}

function gone(word: string, rows: readonly Gone[], look: Look): string[] {
  return rows.map(({ fish, count, from, to, on }) => {
    const where = `${from === null ? '' : ` from ${from}`}${to === null ? (word === 'moved on' ? '' : ', buyer not written') : ` to ${to}`}`;
    return `${word}: ${countWords(count)} ${fish}${where}, ${dayText(on, look)}`;
  });
}

function sickLine(row: SickRow, look: Look): Row {
  const near = row.beside.length === 0 ? '' : `; same water: ${listWords(row.beside)}`;
  const asked = row.catching === null ? 'catching or not? ' : 'catching, no hold written: ';
  return {
    cells: [
      row.place,
      `${asked}${row.text}, ${dayText(row.since, look)}${near}`,
      row.until === null ? 'you say' : dayText(row.until, look),
      row.close,
    ],
  };
}

function courseLine(row: CourseRow, look: Look): Row {
  const doses = `dose ${row.given}${row.of === null ? '' : ` of ${row.of}`}`;
  const late = daysLate(row, look);
  const since = late === 0 ? waitWords(row, look) : ` (late ${plural(late, 'day')})`;
  const next = row.next === null ? '' : `, next ${dayText(row.next.low, look)}${since}`;
  const shared =
    row.tanks.length > 1 ? `; treated with it: ${listWords(row.tanks.filter((tank) => tank !== row.place))}` : '';
  return {
    cells: [
      row.place,
      `${row.product}, ${doses}${next}${shared}`,
      dayText(row.clear, look),
      row.next === null ? '' : `${row.place}: treat "${row.product}"`,
    ],
  };
}

function waitWords({ waits }: CourseRow, look: Look): string {
  if (waits === null) return '';
  return waits.for === 'away'
    ? ` (you are away until ${dayText(waits.until, look)})`
    : ` (put off until ${dayText(waits.until, look)})`;
}

function quarantineLine(row: QuarantineRow, look: Look): Row {
  const usual = row.usual ? ' (four weeks are usual)' : '';
  const over = row.until <= look.on ? ', over' : '';
  return {
    cells: [
      row.place,
      `quarantine since ${dayText(row.since, look)}${usual}${over}`,
      dayText(row.until, look),
      row.close,
    ],
  };
}

function cautionOf({ holds, sick, treatments }: HoldsAnswer, look: Look): string {
  const words =
    treatments.length > 0
      ? 'take care: a label or a veterinarian gives doses, never this list; treated fish are not for eating; own net and washed hands'
      : holds.length + sick.length > 0
        ? 'take care: held and sick tanks last, own net, washed hands; what it is, a veterinarian says'
        : '';
  return words === '' ? '' : paragraph(words, look.width, 2);
}

/** Buyers' names stay out unless asked for. */
export function holdsJson(answer: HoldsAnswer, withNames: boolean): object {
  return {
    holds: answer.holds.map((hold) => holdJson(hold, withNames)),
    sick: answer.sick.map(({ id, place, text, catching, since, until, beside, close, lines }) => ({
      id,
      place,
      text,
      catching,
      since: dayJson(since),
      until: dayJson(until),
      beside,
      close,
      lines: linesJson(lines),
    })),
    treatments: answer.treatments.map(({ id, place, product, tanks, since, given, of, next, waits, clear, lines }) => ({
      id,
      place,
      product,
      tanks,
      since: dayJson(since),
      given,
      of,
      next: next === null ? null : { low: dayJson(next.low), high: dayJson(next.high) },
      waits: waits === null ? null : { until: dayJson(waits.until), for: waits.for },
      clear: dayJson(clear),
      lines: linesJson(lines),
    })),
    quarantines: answer.quarantines.map(({ id, place, since, until, usual, close, lines }) => ({
      id,
      place,
      since: dayJson(since),
      until: dayJson(until),
      usual,
      close,
      lines: linesJson(lines),
    })),
  };
}

function holdJson(hold: HoldsAnswer['holds'][number], withNames: boolean): object {
  return {
    id: hold.id,
    place: hold.place,
    text: hold.text,
    since: dayJson(hold.since),
    firstSign: dayJson(hold.firstSign),
    lookBack: dayJson(hold.lookBack),
    lastSign: dayJson(hold.lastSign),
    lastDose: dayJson(hold.lastDose),
    dosesTo: dayJson(hold.dosesTo),
    clear: dayJson(hold.clear),
    tanks: hold.tanks.map(({ tank, since, route }) => ({
      tank,
      since: dayJson(since),
      route: route.map(({ from, to, says, on, lines }) => ({
        from,
        to,
        says,
        on: dayJson(on),
        lines: linesJson(lines),
      })),
    })),
    clean: hold.clean.map(({ tank, says, line }) => ({ tank, says, lines: linesJson([line]) })),
    moved: hold.moved.map((row) => ({ ...goneJson(row), to: row.to })),
    sold: hold.sold.map((row) => ({ ...goneJson(row), gift: row.gift, ...(withNames ? { to: row.to } : {}) })),
    close: hold.close,
    lines: linesJson(hold.lines),
  };
}

function goneJson({ fish, count, from, on, line }: Gone): object {
  return { fish, count: countJson(count), from, on: dayJson(on), lines: linesJson([line]) };
}

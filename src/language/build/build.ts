/** From the parsed clauses of one line to facts: one for each subject, the declaring clauses together as one. */
import type { ClauseKind } from '../../../grammar/phrases.ts';
import { CLAUSES } from '../../../grammar/phrases.ts';
import { WEEKDAYS } from '../../../grammar/words.ts';
import type { ClauseNode, DateNode, LinkValue, Piece } from '../../../grammar/syntax.ts';
import { addDays, isoDay } from '../../core/day.ts';
import type { Day } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import type { DayWindow } from '../../core/interval.ts';
import type { Subject } from '../../journal/subject.ts';
import { Clause } from '../clause.ts';
import { asRemark, fault } from '../faults.ts';
import type { Declaration, ReadHeading } from '../heading.ts';
import { IMPLIED } from '../fish.ts';
import type { LineContext } from '../line.ts';
import { oftenSaid } from '../oftensaid.ts';
import { sayOtherwise } from './often.ts';
import { strayDetail } from '../stray.ts';
import { leftOver } from '../unsaidcount.ts';
import { countOf, figureValue } from '../quantities.ts';
import { blankDraft } from './declaring.ts';
import type { Draft } from './declaring.ts';
import { FISH_BUILDS } from './fish.ts';
import { fillDraft } from './parts.ts';
import { ROOM_BUILDS } from './room.ts';
import { SETUP_BUILDS } from './setup.ts';
import type { Body, Build } from './table.ts';
import { TRADE_BUILDS } from './trade.ts';

/** A fact on its way into the history: it lacks its place in the order of the room. */
export interface Fact {
  readonly body: Body;
  readonly subject: Subject;
  readonly at: Piece;
  readonly remark: string | null;
  readonly when: DayWindow | null;
  /** Set where the line declares something: such facts come first on their day. */
  readonly declares: Declaration | null;
  /** It takes back the one such fact of that subject and day. */
  readonly mistake: boolean;
}

const BUILDS: Readonly<Partial<Record<ClauseKind, Build>>> = {
  ...SETUP_BUILDS,
  ...ROOM_BUILDS,
  ...FISH_BUILDS,
  ...TRADE_BUILDS,
};

/** The facts of a line. Faults are noted in the line; with any of them the facts are worth nothing. */
export function build(line: LineContext, heading: ReadHeading, nodes: readonly ClauseNode[]): readonly Fact[] {
  const facts: Fact[] = [];
  const declaring = heading.declaration === null ? null : new Declaring(line, heading, heading.declaration);
  for (const node of nodes) {
    if (declaring?.takes(node, heading) === true) continue;
    facts.push(...ordinary(line, heading, node));
  }
  const declared = declaring?.fact();
  return declared ? [declared, ...facts] : facts;
}

/** Collects the declaring clauses of a line into one fact. */
class Declaring {
  private readonly line: LineContext;
  private readonly declaration: Declaration;
  private readonly subject: Subject;
  private readonly draft: Draft;
  private readonly remarks: string[] = [];
  private at: Piece | null = null;

  constructor(line: LineContext, heading: ReadHeading, declaration: Declaration) {
    this.line = line;
    this.declaration = declaration;
    this.subject = declaration.declares === 'row' ? { kind: 'room' } : (heading.subjects[0] ?? { kind: 'room' });
    this.draft = blankDraft(declaration.declares, declaration.name, declaration.groupKind);
  }

  takes(node: ClauseNode, heading: ReadHeading): boolean {
    const clause = new Clause(this.line, node);
    if (node.mistake || !fillDraft(clause, this.draft)) return false;
    const remark = finish(clause, heading);
    if (remark !== null) this.remarks.push(remark);
    const { from, to } = this.at ?? node;
    this.at = { from: Math.min(from, node.from), to: Math.max(to, node.to) };
    return true;
  }

  /** Null where the line only speaks of what was declared before. */
  fact(): Fact | null {
    const { declaration } = this;
    if (this.at === null && this.line.names.timesDeclared(declaration.name) > 1) return null;
    return {
      body: this.draft,
      subject: this.subject,
      at: this.at ?? declaration.at,
      remark: this.remarks.length === 0 ? null : this.remarks.join('; '),
      when: null,
      declares: declaration,
      mistake: false,
    };
  }
}

function ordinary(line: LineContext, heading: ReadHeading, node: ClauseNode): readonly Fact[] {
  if (node.kind === 'two readings') {
    line.faults.push(readOnce(line, heading, node) ?? twoReadings(line, node));
    return [];
  }
  const facts: Fact[] = [];
  if (heading.subjects.length === 0 && heading.declaration !== null) {
    line.faults.push(fault('empty-row', heading.declaration.at, 'that row has no tanks on that day'));
  }
  for (const subject of heading.subjects) {
    // Each subject gets the clause; what is wrong with it is told once.
    const own: LineContext = facts.length === 0 ? line : { ...line, faults: [] };
    facts.push(...oneSubject(own, heading, node, subject));
  }
  if (
    facts.some(({ subject, body }) => (heading.subjects.length > 1 || subject.kind === 'tanks') && countsFish(body))
  ) {
    const says = 'fish and money are counted for one tank, not for several: write a line for each';
    line.faults.push({ ...fault('count-for-several', node, says), ...lineForOne(line, heading, node) });
  }
  return facts;
}

/** The clause said of the first of several subjects alone. */
function lineForOne(line: LineContext, { subjects }: ReadHeading, node: ClauseNode): { readonly line?: string } {
  const [first] = subjects;
  const name = first?.kind === 'tank' ? first.tank : first?.kind === 'group' ? first.group : null;
  return name === null ? {} : { line: `${isoDay(line.day)} ${name}: ${line.text.slice(node.from, node.to)}` };
}

function oneSubject(line: LineContext, heading: ReadHeading, node: ClauseNode, subject: Subject): readonly Fact[] {
  const clause = new Clause(line, node);
  takeLeftOver(clause);
  const among = subject.kind === 'tanks' ? 2 : heading.subjects.length;
  const made = BUILDS[node.kind]?.({ clause, subject, fish: fishFor(heading, subject), among });
  const when = whenOf(clause);
  const remark = finish(clause, heading);
  sayOtherwise(line, heading.kind, node);
  if (made === undefined || made === null) {
    if (line.faults.length === 0)
      line.faults.push(fault('does-not-belong', node, `\`${clause.phrase()}\` has no meaning here`));
    return [];
  }
  const bodies: readonly Body[] = Array.isArray(made) ? made : [made];
  return bodies.map((body) => ({ body, subject, at: node, remark, when, declares: null, mistake: node.mistake }));
}

/** Takes out what tells how many stayed, a number and its word: they are a clause of their own. */
function takeLeftOver(clause: Clause): void {
  for (let at = 0; at + 1 < clause.rest.length; at += 1) {
    const wrong = leftOver(clause.line, clause.rest, at);
    if (wrong === null) continue;
    clause.line.faults.push(wrong);
    clause.takeAt(at);
    clause.takeAt(at);
    return;
  }
}

/** With several groups in the heading each clause is about the group whose turn it is. */
function fishFor(heading: ReadHeading, subject: Subject): ReadHeading['fish'] {
  if (heading.fish.kind !== 'implied' || heading.subjects.length === 1) return heading.fish;
  return subject.kind === 'brood' || subject.kind === 'group' ? subject : IMPLIED;
}

/** Numbers of fish and sums of money belong to one tank. */
function countsFish(body: Body): boolean {
  switch (body.kind) {
    case 'counted':
    case 'sold':
    case 'bought':
    case 'reserved':
    case 'spent':
      return true;
    case 'moved':
    case 'lost':
    case 'kept back':
    case 'gave away':
    case 'eggs white':
      return typeof body.count !== 'string';
    case 'stage seen':
      return body.count !== null;
    case 'spawned':
      return body.eggs !== null;
    default:
      return false;
  }
}

/** The remark; everything else that nobody asked for is a fault. */
function finish(clause: Clause, heading: ReadHeading): string | null {
  const remark = [...clause.asides(), clause.quote()].filter((words) => words !== null && words !== '').join(', ');
  const { faults } = clause.line;
  const inClause = faults.filter(({ from, to }) => from >= clause.node.from && to <= clause.node.to);
  // Words that are left over where something is missing were meant for it: one cause, one problem.
  if (inClause.some(({ kind }) => kind === 'something-missing')) return null;
  for (const detail of clause.rest) {
    if (detail.type === 'quote') {
      const says = 'a clause has one remark; put a `;` before the next clause, or use `note`';
      clause.fault('two-remarks', detail, says, '');
    } else if (inClause.every(({ from, to }) => to <= detail.from || from >= detail.to)) {
      faults.push(strayDetail(clause.line, clause.node, detail, heading.kind));
    }
  }
  return remark === '' ? null : remark;
}

/** When it happened, where the clause says so; null: on the day of the line. */
function whenOf(clause: Clause): DayWindow | null {
  const window = byDay(clause) ?? dated(clause) ?? ago(clause);
  if (window === null) return null;
  if (window.high !== null && window.high > clause.day) {
    const only = window.low === window.high ? window.high : null;
    clause.fault(
      'date-ahead',
      clause.node,
      'what has happened cannot lie after the day of the line',
      plan(clause, only),
    );
  }
  return window.low === clause.day && window.high === clause.day ? null : window;
}

/** What is to be done on a day ahead, as a task. */
function plan(clause: Clause, day: Day | null): string | null {
  const words = asRemark(clause.written(clause.node));
  return day === null || words === '' ? null : `to do ${words} by ${isoDay(day)}`;
}

function byDay(clause: Clause): DayWindow | null {
  const by = clause.linked('by');
  if (by === null) return null;
  if (by.value.type === 'quantity') return agoWindow(clause, by.value);
  const day = clause.toDay(by.value, 'past');
  return day === null ? null : { low: null, likely: null, high: day };
}

function dated(clause: Clause): DayWindow | null {
  const on = clause.rest.find((detail) => detail.type === 'link' && detail.link === 'on');
  const linked = on === undefined ? null : clause.linked('on');
  const date =
    linked?.value ?? clause.take((detail): detail is typeof detail & { type: 'date' } => detail.type === 'date');
  if (date === null) return null;
  if (isPlan(clause, date)) return toCome(clause, date);
  const day = clause.toDay(date, 'past');
  return day === null ? null : onDay(day);
}

/** `sell 6 friday`: of what is told as an order, a weekday is hardly the last one. */
function isPlan(clause: Clause, date: LinkValue | DateNode): boolean {
  const orders = /^(?:sell|move|put|cull|dose|treat|reserve)$/i.test(clause.phrase());
  return orders && date.type === 'date' && WEEKDAYS.has(date.text.toLowerCase().replace(/^(?:next|on)\s+/u, ''));
}

function toCome(clause: Clause, date: LinkValue | DateNode): null {
  const words = clause.written(date);
  const says = `«${words}» may be the last or the next one: write the date, or what is to be done`;
  clause.fault('date-ahead', clause.node, says, plan(clause, clause.toDay(date, 'ahead')));
  return null;
}

function ago(clause: Clause): DayWindow | null {
  const node = clause.take(
    (detail): detail is typeof detail & { type: 'quantity' } => detail.type === 'quantity' && detail.ago,
  );
  return node === null ? null : agoWindow(clause, node);
}

function agoWindow(clause: Clause, node: Parameters<Clause['toMeasure']>[0]): DayWindow | null {
  if (node.word !== null) {
    const { total } = countOf(node);
    return { low: addDays(clause.day, -total.high), likely: null, high: addDays(clause.day, -total.low) };
  }
  const days = clause.toMeasure(node, 'days');
  if (days === null || figureValue(node.numbers[0] ?? { text: '', sense: '', from: 0, to: 0 }) < 0) return null;
  const back = (value: number): ReturnType<typeof addDays> => addDays(clause.day, -Math.min(value, 1e6));
  return {
    low: back(Math.ceil(days.high)),
    likely: days.likely === null ? null : back(Math.round(days.likely)),
    high: back(Math.floor(days.low)),
  };
}

/** Words with two readings beside others that leave one: `6 krib in`, `half an inch`, `female in Q1`. */
function readOnce(line: LineContext, heading: ReadHeading, node: ClauseNode): ReturnType<typeof oftenSaid> {
  return /^(?:in|half)$/u.test(node.head.sense) ? oftenSaid(line, node, heading.kind) : null;
}

function twoReadings(line: LineContext, node: ClauseNode): ReturnType<typeof fault> {
  // `lost 1, jumped` leaves one of them.
  if (node.details.some((detail) => detail.type === 'link' && detail.link === 'jumped'))
    return fault(
      'two-readings',
      node.head,
      'fish that jumped are `missing`, or `died` where they were found',
      'missing',
    );
  const readings = CLAUSES['two readings'].readings?.[node.head.sense] ?? ['', ''];
  const said = line.text.slice(node.head.from, node.head.to);
  const list = readings.map((each) => `\`${each}\``);
  const says = `«${said}» may mean ${list.slice(0, -1).join(', ')} or ${list.at(-1) ?? ''}: write which`;
  const whole = readings.find((reading) => !reading.includes('…')) ?? null;
  return fault('two-readings', node.head, says, whole);
}

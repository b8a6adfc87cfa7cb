/** What a clause was found to be about, and how that carries into the later clauses of its line. */
import type { EventBase, EventKind } from '../journal/event.ts';
import type { Member } from '../journal/subject.ts';
import { isBrood } from './bodies.ts';
import type { Draft } from './draft.ts';
import type { Brood, Group } from './stock.ts';

/** The fish that a clause was found to be about. */
export type Resolved =
  { readonly kind: 'group'; readonly group: string } | { readonly kind: 'brood'; readonly brood: string };

/** The fish that a clause is about, for the slices to change. */
export interface Found {
  readonly body: Group | Brood;
  /** Where it happens: the tank of the line, else the only one that they are in. */
  readonly tank: string | null;
  readonly member: Member | null;
}

/** An event whose fish are looked for. */
export type Clause = EventBase & { readonly kind: EventKind };

/** The tank of the line, where its heading is one. */
export function tankOf(event: Clause): string | null {
  return event.subject.kind === 'tank' ? event.subject.tank : null;
}

/** Writes down what a clause is about, and where it happens. */
export function settle(
  draft: Draft,
  event: Clause,
  body: Group | Brood,
  tank: string | null,
  member: Member | null,
  byName = false,
): Found {
  note(draft, event, body, byName);
  const tanks = [...body.parts.keys()];
  return { body, tank: tank ?? (tanks.length === 1 ? (tanks[0] ?? null) : null), member };
}

/** Writes down what a clause is about; a fish that was named carries into the rest of the line. */
export function note(draft: Draft, event: Clause, body: Group | Brood, byName: boolean): void {
  // A few that turn up after all went bring a brood back.
  if (isBrood(body)) draft.stock.living.set(body.name, body);
  draft.resolved.set(event.seq, resolvedAs(body));
  if (byName) draft.stock.named = { file: event.place.file, line: event.place.line, body: body.name };
}

/** By body, as it was called when it was found last: thousands of clauses are about the same few. */
const called = new WeakMap<Group | Brood, { readonly name: string; readonly as: Resolved }>();

function resolvedAs(body: Group | Brood): Resolved {
  const before = called.get(body);
  if (before?.name === body.name) return before.as;
  const { name } = body;
  const as: Resolved = isBrood(body) ? { kind: 'brood', brood: name } : { kind: 'group', group: name };
  called.set(body, { name, as });
  return as;
}

/** The fish that an earlier clause of the same line named. */
export function carriedBody(draft: Draft, event: Clause): Group | Brood | null {
  const { named: last, groups, broods } = draft.stock;
  if (last?.file !== event.place.file || last.line !== event.place.line) return null;
  return groups.get(last.body) ?? broods.get(last.body) ?? null;
}

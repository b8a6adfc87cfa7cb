/**
 * The order of the room's history: by day; on a day what is declared first, then by time, then as filed.
 * A line without a time takes that of the nearest timed line above it in its file and of its date.
 */
import type { Day } from '../core/day.ts';
import type { Event } from '../journal/event.ts';
import type { Fact } from './build/build.ts';
import { declarationOrder } from './heading.ts';
import { toEvent } from './dated.ts';
import type { Dated } from './dated.ts';
import { takeBack } from './mistakes.ts';
import type { Corrected } from './mistakes.ts';

/** Gives lines their time of day: their own, or that of the nearest timed line above of the same file and date. */
export class Clock {
  private readonly last = new Map<string, Map<Day, number>>();

  at(file: string, day: Day, minute: number | null): number | null {
    const days = this.last.get(file);
    if (minute === null) return days?.get(day) ?? null;
    if (days === undefined) this.last.set(file, new Map([[day, minute]]));
    else days.set(day, minute);
    return minute;
  }
}

/**
 * Events as they are filed, and then in the order of history. A fact is let go as soon as its event is made: of a
 * long journal hardly anything else may stay in memory.
 */
export class Filing {
  private readonly first: number;
  private readonly events: Event[] = [];
  private readonly ranks: number[] = [];
  private readonly declares: Fact['declares'][] = [];
  private readonly filed: number[] = [];
  private readonly mistakes: number[] = [];
  private inOrder = true;

  /** `first` is the number of the first event. */
  constructor(first: number) {
    this.first = first;
  }

  add(dated: Dated): void {
    const { fact, filed } = dated;
    const index = this.events.length;
    if (fact.mistake) this.mistakes.push(index);
    this.events.push(toEvent(dated, this.first + index));
    this.ranks.push(rankOf(fact));
    this.declares.push(fact.declares);
    this.filed.push(filed);
    if (this.inOrder && index > 0 && this.compare(index - 1, index) > 0) this.inOrder = false;
  }

  /** The history without what a mistake takes back, and the mistakes that fit none or several, by the lines before them. */
  history(): { readonly events: readonly Event[]; readonly faults: Corrected['faults'] } {
    const { gone, faults } = takeBack(this.events, this.mistakes, this.filed);
    if (this.inOrder && gone.size === 0) return { events: this.events, faults };
    const order = [...this.events.keys()].filter((index) => !gone.has(index));
    // The sort is stable, so clauses of a line stay from left to right.
    if (!this.inOrder) order.sort((a, b) => this.compare(a, b));
    return { events: order.flatMap((index, at) => this.numbered(index, at)), faults };
  }

  private numbered(index: number, at: number): Event[] {
    const event = this.events[index];
    if (event === undefined) return [];
    return [event.seq === this.first + at ? event : { ...event, seq: this.first + at }];
  }

  private compare(one: number, other: number): number {
    const [a, b] = [this.events[one], this.events[other]];
    if (a === undefined || b === undefined) return 0;
    if (a.day !== b.day) return a.day - b.day;
    const rank = (this.ranks[one] ?? 0) - (this.ranks[other] ?? 0);
    if (rank !== 0) return rank;
    const [declares, next] = [this.declares[one] ?? null, this.declares[other] ?? null];
    const declared = declares !== null && next !== null ? declarationOrder(declares, next) : 0;
    return declared || (a.minute ?? -1) - (b.minute ?? -1) || one - other;
  }
}

/** Conventions, then declarations, then what amends them from an ordinary line, then what happened. */
function rankOf(fact: Fact): 0 | 1 | 2 | 3 {
  if (fact.declares !== null) return 1;
  switch (fact.body.kind) {
    case 'units set':
    case 'currency set':
    case 'zone set':
    case 'nitrogen set':
    case 'scoop set':
    case 'walk set':
    case 'award rule set':
      return 0;
    case 'tank declared':
      return 2;
    default:
      return 3;
  }
}

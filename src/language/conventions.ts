/**
 * What the room has said about how it writes: units, nitrogen, measures of its own, walking order. A
 * convention holds from its day; before the first one that one holds too, since nobody changes their
 * gallons by saying so.
 */
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';

export type UnitSystem = 'metric' | 'US' | 'imperial';

export interface OwnMeasure {
  readonly volume: Measure<'L'> | null;
  readonly mass: Measure<'g'> | null;
}

/** What was said to hold from a day on. */
interface Said<T> {
  readonly day: Day;
  readonly value: T;
}

/** Conventions as plain data. */
export interface SaidConventions {
  readonly units: readonly Said<UnitSystem>[];
  readonly nitrogen: readonly Said<'N' | 'ion'>[];
  readonly walk: readonly Said<readonly string[]>[];
  readonly own: readonly (readonly [string, readonly Said<OwnMeasure>[]])[];
}

class Timeline<T> {
  private readonly entries: Said<T>[] = [];

  set(day: Day, value: T): void {
    let at = this.entries.length;
    while (at > 0 && (this.entries[at - 1]?.day ?? day) > day) at -= 1;
    this.entries.splice(at, 0, { day, value });
  }

  /** Everything said, by day, as plain data that `of` takes. */
  all(): readonly Said<T>[] {
    return this.entries;
  }

  static of<T>(said: readonly Said<T>[]): Timeline<T> {
    const timeline = new Timeline<T>();
    timeline.entries.push(...said);
    return timeline;
  }

  on(day: Day): T | null {
    let found = this.entries[0];
    for (const entry of this.entries) if (entry.day <= day) found = entry;
    return found?.value ?? null;
  }
}

export class Conventions {
  readonly units: Timeline<UnitSystem>;
  readonly nitrogen: Timeline<'N' | 'ion'>;
  readonly walk: Timeline<readonly string[]>;
  private readonly own = new Map<string, Timeline<OwnMeasure>>();

  /** Those that were said, or none yet. */
  constructor(said: SaidConventions = { units: [], nitrogen: [], walk: [], own: [] }) {
    this.units = Timeline.of(said.units);
    this.nitrogen = Timeline.of(said.nitrogen);
    this.walk = Timeline.of(said.walk);
    for (const [name, own] of said.own) this.own.set(name, Timeline.of(own));
  }

  said(): SaidConventions {
    const own = [...this.own].map(([name, timeline]) => [name, timeline.all()] as const);
    return { units: this.units.all(), nitrogen: this.nitrogen.all(), walk: this.walk.all(), own };
  }

  copy(): Conventions {
    return new Conventions(this.said());
  }

  setOwn(name: string, day: Day, value: OwnMeasure): void {
    const timeline = this.own.get(name) ?? new Timeline<OwnMeasure>();
    timeline.set(day, value);
    this.own.set(name, timeline);
  }

  ownMeasure(name: string, day: Day): OwnMeasure | null {
    return this.own.get(name)?.on(day) ?? null;
  }
}

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

class Timeline<T> {
  private readonly entries: { day: Day; value: T }[] = [];

  set(day: Day, value: T): void {
    let at = this.entries.length;
    while (at > 0 && (this.entries[at - 1]?.day ?? day) > day) at -= 1;
    this.entries.splice(at, 0, { day, value });
  }

  copy(): Timeline<T> {
    const copy = new Timeline<T>();
    copy.entries.push(...this.entries);
    return copy;
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

  constructor(from: Conventions | null = null) {
    this.units = from?.units.copy() ?? new Timeline<UnitSystem>();
    this.nitrogen = from?.nitrogen.copy() ?? new Timeline<'N' | 'ion'>();
    this.walk = from?.walk.copy() ?? new Timeline<readonly string[]>();
    for (const [name, timeline] of from?.own ?? []) this.own.set(name, timeline.copy());
  }

  copy(): Conventions {
    return new Conventions(this);
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

/** A room before its first line. */
import type { Day } from '../core/day.ts';
import type { Draft } from './draft.ts';

/** A room of which nothing is known yet. */
export function emptyDraft(on: Day): Draft {
  return {
    on,
    settings: { units: null, nitrogen: null, currency: null, zone: null, walk: [], rows: new Map(), scoops: new Map() },
    plumbing: { tanks: new Map(), loops: new Map(), order: [] },
    measures: { rigs: [], unclosed: [], raised: [], faults: [] },
    chores: { standing: [], tasks: [], did: [], putOffs: [], away: [] },
    water: { readings: [], changes: [], topUps: [], doses: [], disturbed: [] },
    looks: { last: new Map(), quiet: new Map(), photos: [] },
    stock: {
      species: new Map(),
      groups: new Map(),
      broods: new Map(),
      living: new Map(),
      begunAt: new Map(),
      moves: [],
      picked: new Map(),
      stocked: new Set(),
      takenNames: new Set(),
      chasedFry: new Map(),
      named: null,
    },
    health: { sick: [], holds: [], released: [], treatments: [], quarantines: [] },
    shared: [],
    sale: {
      keptBack: [],
      reservations: [],
      wants: [],
      sales: [],
      purchases: [],
      spent: [],
      auctions: new Map(),
      awards: new Map(),
    },
    cultures: { jars: new Map(), hatches: [], feeds: [] },
    problems: [],
    resolved: new Map(),
  };
}

/**
 * The usual numbers of each way of breeding, at about 26 °C. Every one is a default that the room's own
 * history or a line of the journal overrides. Common practice, no source, unless a source is named.
 */
import type { Guild } from '../core/guild.ts';
import type { Measure } from '../core/quantity.ts';
import { measure } from '../core/quantity.ts';

interface GuildDefaults {
  /** Days from laying to hatching; for livebearers nothing is laid. */
  readonly hatch: Measure<'days'> | null;
  /** Days from hatching to swimming free; null where the young are released or born swimming. */
  readonly swim: Measure<'days'> | null;
  /** Days from laying to leaving the mouth, for mouthbrooders. */
  readonly release: Measure<'days'> | null;
  /** Carrying time of livebearers, days. */
  readonly carrying: Measure<'days'> | null;
  readonly firstFood: readonly string[];
  /** Days from swimming free (birth, release) to the first move away from the parents. */
  readonly firstMove: Measure<'days'>;
  /** Total length at which the young sell, mm, and the usual age then, days from laying (birth). */
  readonly saleSize: Measure<'mm'>;
  readonly saleAge: Measure<'days'>;
  /** Days between spawns where the young stay, and where the brood was taken early. */
  readonly interval: Measure<'days'>;
  readonly intervalPulled: Measure<'days'>;
  /** Age gap, days, up to which an older brood leaves a younger one alone; null: whatever the gap; 0: never. */
  readonly gap: number | null;
  /** Total length when they first swim, are born or released, mm (ours: a setting). */
  readonly swimSize: Measure<'mm'>;
}

const days = (low: number, likely: number, high: number): Measure<'days'> => measure('days', low, likely, high);
const mm = (low: number, likely: number, high: number): Measure<'mm'> => measure('mm', low, likely, high);
const months = (low: number, high: number): Measure<'days'> => days(low * 30.4, ((low + high) / 2) * 30.4, high * 30.4);

const USUAL: { readonly [G in Guild]: GuildDefaults } = {
  'substrate spawner': {
    hatch: days(2.5, 3, 4),
    swim: days(3, 4.5, 8),
    release: null,
    carrying: null,
    firstFood: ['brine shrimp', 'microworm'],
    firstMove: days(21, 28, 42),
    saleSize: mm(25, 32, 40),
    saleAge: months(3, 5),
    interval: days(21, 28, 42),
    intervalPulled: days(10, 14, 21),
    gap: 5,
    swimSize: mm(4, 5, 6),
  },
  'open spawner': {
    // Hatching: 72 h, on day 3 at 24 °C; swimming: 4–5 days at 28 °C, 6–7 at 24 °C (Thilakarathne et al. 2021; Celik et al. 2014).
    hatch: days(2.5, 2.8, 3.2),
    swim: days(4, 5, 7),
    release: null,
    carrying: null,
    firstFood: ['infusoria', 'brine shrimp'],
    firstMove: days(14, 21, 28),
    saleSize: mm(20, 25, 30),
    saleAge: months(2, 3),
    interval: days(12, 15, 18),
    intervalPulled: days(7, 8, 10),
    gap: 0,
    swimSize: mm(4, 5, 6),
  },
  'cave spawner': {
    hatch: days(2.5, 3, 4),
    swim: days(4, 6.5, 8),
    release: null,
    carrying: null,
    firstFood: ['brine shrimp', 'microworm'],
    firstMove: days(28, 35, 42),
    saleSize: mm(20, 25, 30),
    saleAge: months(3, 5),
    interval: days(28, 35, 42),
    intervalPulled: days(14, 21, 28),
    gap: 7,
    swimSize: mm(4, 5, 6),
  },
  'shell spawner': {
    hatch: days(3, 6, 8),
    swim: days(4, 7, 9),
    release: null,
    carrying: null,
    firstFood: ['microworm', 'brine shrimp'],
    firstMove: days(56, 70, 84),
    saleSize: mm(20, 22, 25),
    saleAge: months(4, 6),
    interval: days(21, 28, 35),
    intervalPulled: days(21, 28, 35),
    gap: 10,
    swimSize: mm(4, 5, 6),
  },
  'rock spawner': {
    hatch: days(2.5, 3, 4),
    swim: days(5, 6.5, 8),
    release: null,
    carrying: null,
    firstFood: ['brine shrimp'],
    firstMove: days(56, 60, 90),
    saleSize: mm(28, 30, 35),
    saleAge: months(5, 6),
    interval: days(28, 35, 42),
    intervalPulled: days(28, 35, 42),
    gap: null,
    swimSize: mm(4, 5, 6),
  },
  mouthbrooder: {
    hatch: days(5, 6, 7),
    swim: null,
    release: days(18, 21, 24),
    carrying: null,
    firstFood: ['crushed flake', 'brine shrimp'],
    firstMove: days(0, 0, 7),
    saleSize: mm(25, 32, 40),
    saleAge: months(3, 5),
    interval: days(35, 40, 45),
    intervalPulled: days(35, 40, 45),
    gap: 21,
    swimSize: mm(8, 10, 12),
  },
  livebearer: {
    hatch: null,
    swim: null,
    release: null,
    carrying: days(21, 28, 30),
    firstFood: ['flake dust', 'brine shrimp'],
    firstMove: days(0, 0, 14),
    saleSize: mm(20, 22, 25),
    saleAge: months(2, 3),
    interval: days(24, 28, 35),
    intervalPulled: days(24, 28, 35),
    gap: 7,
    swimSize: mm(6, 7, 9),
  },
  'egg scatterer': {
    hatch: days(1, 3, 5),
    swim: days(2, 3, 5),
    release: null,
    carrying: null,
    firstFood: ['infusoria'],
    firstMove: days(0, 7, 28),
    saleSize: mm(15, 18, 20),
    saleAge: months(2, 4),
    interval: days(7, 10, 14),
    intervalPulled: days(7, 10, 14),
    gap: 0,
    swimSize: mm(3, 4, 5),
  },
  'bubble nester': {
    hatch: days(1, 1.5, 2),
    swim: days(2, 2.5, 3),
    release: null,
    carrying: null,
    firstFood: ['infusoria', 'brine shrimp'],
    firstMove: days(0, 14, 28),
    saleSize: mm(28, 30, 35),
    saleAge: months(3, 4),
    interval: days(14, 18, 21),
    intervalPulled: days(14, 18, 21),
    gap: 0,
    swimSize: mm(3, 4, 5),
  },
};

/** The usual numbers of a guild; a species without one is taken as a substrate spawner, and answers say so. */
export function guildDefaults(guild: Guild | null): GuildDefaults {
  return USUAL[guild ?? 'substrate spawner'];
}

/** Every kind of event and the slice that folds it: leaving one out does not compile. */
import { BROODS_HOMES } from './broods.ts';
import { CHORES_HOMES } from './chores.ts';
import { CULTURES_HOMES } from './cultures.ts';
import { DISPUTES_HOMES } from './disputes.ts';
import { GROUPS_HOMES } from './groups.ts';
import { HEALTH_HOMES } from './health.ts';
import { LOOKS_HOMES } from './looks.ts';
import { MEASURES_HOMES } from './measures.ts';
import { PLUMBING_HOMES } from './plumbing.ts';
import { SALE_HOMES } from './sale.ts';
import { SETTINGS_HOMES } from './settings.ts';
import { SHARED_HOMES } from './shared.ts';
import { STOCK_HOMES } from './stockhomes.ts';
import { WATER_HOMES } from './water.ts';
import type { EventKind } from '../journal/event.ts';
import type { Homes } from './home.ts';

export const HOMES: Homes<EventKind> = {
  ...SETTINGS_HOMES,
  ...PLUMBING_HOMES,
  ...MEASURES_HOMES,
  ...CHORES_HOMES,
  ...WATER_HOMES,
  ...LOOKS_HOMES,
  ...STOCK_HOMES,
  ...GROUPS_HOMES,
  ...DISPUTES_HOMES,
  ...BROODS_HOMES,
  ...HEALTH_HOMES,
  ...SHARED_HOMES,
  ...SALE_HOMES,
  ...CULTURES_HOMES,
};

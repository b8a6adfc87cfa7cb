/** Every theme of today's list. Adding one here is all that it takes to be in it. */
import { disputesDue } from './dispute.ts';
import type { DueSource } from './item.ts';
import { spawnsDue } from './spawn.ts';

export const DUE_SOURCES: readonly DueSource[] = [disputesDue, spawnsDue];

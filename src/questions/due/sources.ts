/** Every theme of today's list. Adding one here is all that it takes to be in it. */
import { choresDue } from './chores.ts';
import { faultsDue } from './faults.ts';
import { loopsDue } from './loops.ts';
import { measuresDue } from './measures.ts';
import { readingsDue } from './readings.ts';
import { silenceDue } from './silence.ts';
import { watchDue } from './watch.ts';
import { disputesDue } from './dispute.ts';
import { auctionDue } from './auction.ts';
import { awardDue } from './award.ts';
import { cultureDue } from './culture.ts';
import { healthDue } from './health.ts';
import { promiseDue } from './promise.ts';
import { quarantineDue } from './quarantine.ts';
import { retiredDue } from './retired.ts';
import { treatmentDue } from './treatment.ts';
import type { DueSource } from './item.ts';
import { spawnsDue } from './spawn.ts';
import { stagesDue } from './stages.ts';
import { youngDue } from './young.ts';

export const DUE_SOURCES: readonly DueSource[] = [
  choresDue,
  faultsDue,
  loopsDue,
  measuresDue,
  readingsDue,
  watchDue,
  silenceDue,
  disputesDue,
  spawnsDue,
  stagesDue,
  youngDue,
  auctionDue,
  awardDue,
  cultureDue,
  healthDue,
  promiseDue,
  quarantineDue,
  retiredDue,
  treatmentDue,
];

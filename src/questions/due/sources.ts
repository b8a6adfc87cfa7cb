/** Every theme of today's list. Adding one here is all that it takes to be in it. */
import type { DueSource } from './item.ts';

export const DUE_SOURCES: readonly DueSource[] = [];

/**
 * Every command by name. Each is loaded only when it is asked for, so that no command pays for another;
 * the summaries stand here, so that `--help` loads none.
 */
import type { Command } from './command.ts';

export interface Entry {
  readonly name: string;
  /** What it answers, for the list of commands. */
  readonly summary: string;
  load(): Promise<{ readonly command: Command }>;
}

/** In the order in which a keeper meets them. */
export const COMMANDS: readonly Entry[] = [
  { name: 'start', summary: 'write a starter journal', load: () => import('./commands/start.ts') },
  {
    name: 'jot',
    summary: 'write lines down: checked, shown as understood, on the disk',
    load: () => import('./commands/jot.ts'),
  },
  { name: 'due', summary: "today's work, most pressing first", load: () => import('./commands/due.ts') },
  {
    name: 'walk',
    summary: 'the room tank by tank, on the screen or on paper',
    load: () => import('./commands/walk.ts'),
  },
  {
    name: 'pairs',
    summary: 'bond, dispute and what to do, last spawn, late',
    load: () => import('./commands/pairs.ts'),
  },
  {
    name: 'broods',
    summary: 'age, stage, count, size, what comes next, for sale from',
    load: () => import('./commands/broods.ts'),
  },
  { name: 'tanks', summary: 'every tank, or those that come free', load: () => import('./commands/tanks.ts') },
  { name: 'loops', summary: 'prefilters, spills, cleans', load: () => import('./commands/loops.ts') },
  {
    name: 'water',
    summary: 'readings, toxic ammonia, what reaches a target',
    load: () => import('./commands/water.ts'),
  },
  {
    name: 'sale',
    summary: 'what can be promised for sale, and what stands in the way',
    load: () => import('./commands/sale.ts'),
  },
  {
    name: 'settle',
    summary: 'results of an auction into the journal, or the sheet for them',
    load: () => import('./commands/settle.ts'),
  },
  {
    name: 'holds',
    summary: 'how far each hold reaches, and when it is clear',
    load: () => import('./commands/holds.ts'),
  },
  { name: 'promises', summary: 'reservations, wants, what is kept back', load: () => import('./commands/promises.ts') },
  { name: 'cultures', summary: 'jars and hatches of live food', load: () => import('./commands/cultures.ts') },
  {
    name: 'kin',
    summary: 'parents, shared parents, lines at risk, pairings',
    load: () => import('./commands/kin.ts'),
  },
  {
    name: 'money',
    summary: 'income and tank-weeks of each brood, pair and species',
    load: () => import('./commands/money.ts'),
  },
  {
    name: 'awards',
    summary: 'which broods a breeder award takes, what evidence is missing',
    load: () => import('./commands/awards.ts'),
  },
  {
    name: 'history',
    summary: 'the lines that match, by words, pair, tank, brood, kind, date',
    load: () => import('./commands/history.ts'),
  },
  {
    name: 'chart',
    summary: 'growth, prefilter level, survival or a reading as a picture',
    load: () => import('./commands/chart.ts'),
  },
  { name: 'why', summary: 'the rule, the numbers and the lines behind a row', load: () => import('./commands/why.ts') },
  {
    name: 'check',
    summary: 'every problem in the journal, and what to write instead',
    load: () => import('./commands/check.ts'),
  },
  {
    name: 'tidy',
    summary: 'the journal in its usual form, names of broods written in',
    load: () => import('./commands/tidy.ts'),
  },
  { name: 'calc', summary: 'the formulas without a journal', load: () => import('./commands/calc.ts') },
  {
    name: 'completion',
    summary: 'commands, options and names for the Tab key of your shell',
    load: async () => ({ command: (await import('./commands/completion.ts')).completionOf(COMMANDS) }),
  },
];

export function entryNamed(name: string): Entry | undefined {
  return COMMANDS.find((entry) => entry.name === name);
}

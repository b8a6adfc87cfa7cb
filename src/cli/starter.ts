/**
 * The journal that `start` writes: a small invented fish room, dated back from today so that `due` has
 * something to say at once, with the basics of writing as comments.
 */
import type { Day } from '../core/day.ts';
import { addDays, isoDay } from '../core/day.ts';

/** Days before today, and the entry, to come where the keeper has such things; null stands for an empty line, a text alone for a comment. */
type Line = readonly [daysAgo: number, entry: string, perhaps?: 'perhaps'] | string | null;

/** Entries to come, as comments. */
const NEXT: readonly string[] = [
  'A1: lights on',
  'A2: water change 30 %',
  'A1: free-swimming, about 60, fed microworm',
  'room: all well',
];

const LINES: readonly Line[] = [
  'One line for each thing you see or do: a date, a tank, a colon, what happened.',
  'Several things on one line stand apart by ";". Lines may be in any order.',
  'Everything here is made up: change it into your own room, or clear it away.',
  null,
  'The room: a bare number of litres, millimetres or degrees is metric.',
  [28, 'room: units metric'],
  [28, 'tank A1: 80 x 35 x 40 cm; alone; sponge filter'],
  [28, 'tank A2: 54 L; alone; sponge filter'],
  'If you have them, without the "#": your money, and tanks that share a sump.',
  [28, 'room: currency EUR', 'perhaps'],
  [28, 'loop Long: sump 120 L; return 2000 L/h; prefilter 4 layers; spills at 70 mm', 'perhaps'],
  [28, 'tank B1: 100 x 40 x 40 cm; on Long', 'perhaps'],
  null,
  'The fish: what they are, when they can be sold, and who lives where.',
  [28, 'species krib: Pelvicachromis pulcher; cave spawner; sale at 35 mm or 16 weeks'],
  [28, 'pair Juniper: krib; male 80 mm; female 60 mm; in A1'],
  null,
  'What has to be done again and again.',
  [28, 'A1: water change 30 % every 7 days, takes 20 min'],
  [28, 'A2: water change 30 % every 7 days, takes 15 min'],
  null,
  'And then, day by day, what happened.',
  [9, 'A1: spawned brood Juniper-1, about 80 eggs "on the roof of the left cave"'],
  [8, 'A1 and A2: water change 30 %'],
  [6, 'A1: wrigglers'],
  [2, 'A1: chasing, male on female; lights off'],
  [1, 'A1: made up'],
];

/** The starter journal's text as of a day. */
export function starterJournal(today: Day): string {
  const lines = LINES.map((line) => {
    if (line === null) return '';
    if (typeof line === 'string') return `# ${line}`;
    const [daysAgo, entry, perhaps] = line;
    return `${perhaps === undefined ? '' : '# '}${isoDay(addDays(today, -daysAgo))} ${entry}`;
  });
  const next = NEXT.map((entry) => `# ${isoDay(today)} ${entry}`);
  return [...lines, '', '# What comes next is written like this, without the "#":', ...next, ''].join('\n');
}

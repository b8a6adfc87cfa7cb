/** Commands that write, each over a small room: journals, files that are read in, pages, calendars, sheets, pictures. */
import type { Command } from './trials.ts';

const JOURNAL = '/room/fishroom.txt';
const ROOM = `2026-01-01 room: units metric; currency EUR; award Bench: 1 young at 1-900 days from hatched
2026-01-01 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-01-01 tank C1: 54 L; alone
2026-01-01 tank Q1: 40 L; alone; quarantine
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; sale at 1 mm or 1 week; price 6.00
2026-01-01 group Ash: krib; 30; in C1
2026-01-11 Long: level 20 mm
2026-01-25 Long: level 28 mm
2026-03-01 auction Spring: on 2026-05-16; seller gets 70 %
`;
const SHEET = `lot,stock,tank,fish,fetched,back to
1,Ash,C1,6,14.00,
2,Ash,C1,6,,Q1
`;

function command(name: string, argv: readonly string[], files: Record<string, string> = {}): Command {
  return { name, argv, world: { files: { [JOURNAL]: ROOM, ...files }, today: '2026-05-17', input: SHEET } };
}

export const WRITING: readonly Command[] = [
  command('jot', ['jot', 'C1: water change 30 %']),
  command('settle', ['settle', 'Spring', '-']),
  command('tidy', ['tidy', '--write'], {
    [JOURNAL]: `${ROOM}also read "more.txt"\n2026-05-02 C1: wc 30%\n`,
    '/room/more.txt': '2026-04-01 C1 : wc 20%\n',
  }),
  command('start', ['start', '--journal', 'new.txt']),
  command('a new page', ['sale', '--for', 'Spring', '--on', '2026-05-10', '--html', 'new.html']),
  command('a page and a calendar', ['sale', '--plan', '--html', 'new.html', '--ics', 'new.ics']),
  command('a calendar over an empty file', ['due', '--ics', 'old.ics'], { '/room/old.ics': '' }),
  command('a spreadsheet', ['sale', '--csv', 'new.csv']),
  command('the blank sheet', ['settle', 'Spring', '--sheet', 'new.csv']),
  command('a picture', ['chart', 'level', 'Long', '--svg', 'new.svg']),
  command('a picture over an older one', ['chart', 'level', 'Long', '--svg', 'old.svg'], {
    '/room/old.svg': '<svg xmlns="http://www.w3.org/2000/svg"></svg>\n',
  }),
];

/** The README's screens: each is a command run on the workshop example, written into the page by `npm run readme`. */
import { readFileSync } from 'node:fs';
import { tankside } from './run.ts';

const JOURNAL = '/room/fishroom.txt';
const START = '<!-- screens -->';
const END = '<!-- end of screens -->';

/** One screen each of the answers that a keeper asks most. Lines beyond `most` are cut with a dotted line. */
export const SCREENS: readonly { readonly says: string; readonly argv: readonly string[]; readonly most: number }[] = [
  { says: 'What must I do today?', argv: ['due'], most: 34 },
  { says: 'When will the sump spill?', argv: ['loops'], most: 20 },
  { says: 'Is she in trouble, or is it the usual?', argv: ['pairs', 'Aspen'], most: 24 },
  { says: 'How do the broods stand?', argv: ['broods', 'Birch-5'], most: 20 },
  { says: 'What can I bring to the auction?', argv: ['sale', '--for', 'Winter'], most: 22 },
  { says: 'Why do you say so?', argv: ['why', 'n1-dispute'], most: 30 },
];

export const ON = '2026-11-22';

/** The page with its screens made anew. */
export async function withScreens(page: string): Promise<string> {
  const from = page.indexOf(START);
  const to = page.includes(END) ? page.indexOf(END) + END.length : from + START.length;
  const journal = readFileSync('examples/workshop/fishroom.txt', 'utf8');
  const screens: string[] = [];
  for (const { says, argv, most } of SCREENS) {
    const ran = await tankside([...argv, '--on', ON], {
      today: ON,
      files: { [JOURNAL]: journal },
      columns: 80,
      env: { NO_COLOR: '1' },
    });
    const lines = ran.out.trimEnd().split('\n');
    const shown = lines.length > most ? [...lines.slice(0, most), '…'] : lines;
    screens.push(`**${says}**\n\n\`\`\`text\n$ tankside ${argv.join(' ')}\n${shown.join('\n')}\n\`\`\`\n`);
  }
  return `${page.slice(0, from)}${START}\n\n${screens.join('\n')}\n${END}${page.slice(to)}`;
}

/**
 * Command lines for hostile journals: every command with every option, its words drawn from what the journal
 * may know and from what no journal knows; what is handed in besides is as hostile.
 */
import { CALCULATORS } from '../../src/questions/calc/table.ts';
import type { Draw } from './hostile.ts';
import { damaged, hostileJournal, hostileLine, NUMBERS, SIGNS } from './hostile.ts';

/** `@`: a name or words that the journal may know; `@a`: an auction; `@d`: a date; `@n`: a number; `@f`: a file. */
export const ASKED = [
  'start',
  'start --journal @f',
  'completion bash',
  'completion words',
  'completion words why @',
  'completion words settle @a',
  'due',
  'due --minutes 40',
  'due --days @n',
  'due --days 9999 --ics -',
  'due --ics @f',
  'walk',
  'walk --paper',
  'tanks',
  'tanks --free',
  'loops',
  'broods',
  'broods @',
  'pairs',
  'pairs @',
  'sale',
  'sale --csv -',
  'sale --csv @f',
  'sale --ahead 60',
  'sale --for @a',
  'sale --for @a --plan',
  'sale --plan --ahead @n --boxes @n --box-litres @n --hours @n --oxygen --tank-week @n --offer @',
  'sale --for @a --plan --csv -',
  'sale --for @a --plan --csv @f',
  'sale --for @a --html - --with-names',
  'sale --for @a --html -',
  'sale --plan --html @f --ics @f',
  'sale --for @a --ics -',
  'settle @a -',
  'settle @a -',
  'settle @a sheet.csv --dry-run',
  'settle @a sheet.csv --quarantine @n',
  'settle @a @f',
  'settle @a --sheet -',
  'settle @a --sheet @f --boxes @n',
  'settle @a --sheet - --box-litres @n --hours @n --oxygen --tank-week @n --offer @ --with-names',
  'holds',
  'holds --with-names',
  'promises',
  'promises --list --with-names',
  'cultures',
  'awards',
  'awards @',
  'awards --html -',
  'awards --html @f',
  'water',
  'water @',
  'water @ --target @n --tap @n',
  'water --cut --air @n',
  'history',
  'history @ --with-names',
  'history --pair @ --tank @ --brood @ --kind @ --since @d --until @d',
  'kin',
  'money',
  'money --since @d',
  'check',
  'check --with-names',
  'check --against other.txt',
  'check --against @f',
  'tidy',
  'tidy --write',
  'tidy --with-names',
  'why @',
  'why @ --with-names',
  'chart growth @',
  'chart level @ --since @d',
  'chart survival @',
  'chart growth @ --svg -',
  'chart level @ --svg @f',
  'calc @c',
  'calc @c --csv',
  'calc @i',
  'calc @i --csv',
  'jot --dry-run @',
  'jot --as-note @',
  'jot @',
  'jot @ --with-names',
  'jot',
  'jot',
] as const;

const DATES = ['2026-02-15', '2026-11-22', '2031-01-01', '1996-06-01', '+14', 'next saturday', '0001-01-01'] as const;
const STRANGE_DATES = ['9999-12-31', '31 Feb', '+99999999', '-1', 'today', '2026-13-40', ''] as const;
const NAMES = [
  'A1',
  'Rowan',
  'Rowan-1',
  'Long',
  'C1',
  'krib',
  'Zinc',
  '__proto__',
  '\u001b[2J',
  '',
  'a1-dispute',
] as const;
/** New ones, an empty one, those of others, the journal itself, folders, and none at all. */
const FILES = ['new.out', 'new.out', 'theirs.html', 'empty.ics', 'fishroom.txt', '/room', '../up', ''] as const;

/** What others wrote, which no command may change. */
export const THEIRS = '<!doctype html><p>BEGIN:VCALENDAR of somebody else\n';

export interface Question {
  readonly argv: readonly string[];
  /** What comes on standard input. */
  readonly input: string;
  readonly files: Readonly<Record<string, string | Buffer>>;
}

/** A command line for a journal. The same draw gives the same. */
export function question(draw: Draw, journal: Buffer): Question {
  const text = journal.toString();
  const asked = draw.of(ASKED);
  const argv = asked.split(' ').flatMap((word) => filled(draw, word, text));
  if (!asked.startsWith('calc') && draw.chance(0.95))
    argv.push('--on', draw.chance(0.1) ? draw.of(STRANGE_DATES) : draw.of(DATES));
  if (draw.chance(0.35) && !argv.includes('-') && !argv.includes('--csv')) argv.push('--json');
  if (draw.chance(0.05)) argv.push('--whole');
  const sheet = hostileSheet(draw, text);
  const input = asked.startsWith('calc') ? hostileTable(draw) : asked === 'jot' ? typed(draw, text) : sheet;
  return {
    argv,
    input,
    files: {
      '/room/sheet.csv': draw.chance(0.1) ? damaged(draw, Buffer.from(`${sheet} `)) : sheet,
      '/room/other.txt': draw.chance(0.5)
        ? `${text}\n2026-02-14 A1: all well\n`
        : hostileJournal(draw.below(1e6)).bytes,
      '/room/theirs.html': THEIRS,
      '/room/empty.ics': '',
    },
  };
}

function filled(draw: Draw, word: string, text: string): readonly string[] {
  switch (word) {
    case '@':
      return [draw.chance(0.4) ? nameIn(draw, text, /(?:tank|loop|pair|brood|group) ([\w-]+)/gu) : draw.of(NAMES)];
    case '@a':
      return [draw.chance(0.9) ? nameIn(draw, text, /auction ([\w-]+):/gu) : draw.of(NAMES)];
    case '@d':
      return [draw.chance(0.7) ? draw.of(DATES) : draw.of(STRANGE_DATES)];
    case '@n':
      return [
        draw.chance(0.6) ? String(1 + draw.below(60)) : draw.chance(0.5) ? `NO3 ${draw.of(NUMBERS)}` : draw.of(NUMBERS),
      ];
    case '@f':
      return [draw.of(FILES)];
    case '@c':
      return calculation(draw);
    case '@i':
      return [draw.of(CALCULATORS).name];
    default:
      return [word];
  }
}

function nameIn(draw: Draw, text: string, pattern: RegExp): string {
  const names = [...text.matchAll(pattern)].flatMap(({ 1: name }) => (name === undefined ? [] : [name]));
  return names.length === 0 ? 'Autumn' : draw.of(names);
}

/** The example of a calculator with some of its values made hostile, options of its own added. */
function calculation(draw: Draw): readonly string[] {
  const { example, options } = draw.of(CALCULATORS);
  const words = [...example.matchAll(/"([^"]*)"|\S+/gu)].map(([all, quoted]) => quoted ?? all).slice(2);
  const changed = words.map((word) => (word.startsWith('--') || draw.chance(0.6) ? word : value(draw, word)));
  const [option] = draw.chance(0.3) && options.length > 0 ? [draw.of(options)] : [];
  return option === undefined || option === 'oxygen' ? changed : [...changed, `--${option}=${value(draw, '5C')}`];
}

function value(draw: Draw, word: string): string {
  const unit = word.replace(/^[\d.,]+/u, '');
  return draw.of([draw.of(NUMBERS) + unit, draw.of(NUMBERS), word + draw.of(SIGNS), draw.of(SIGNS), '1e308' + unit]);
}

/** Rows for `calc` as CSV. */
function hostileTable(draw: Draw): string {
  const { options, example } = draw.of(CALCULATORS);
  const rows = Array.from({ length: 1 + draw.below(4) }, () =>
    options.map(() => (draw.chance(0.5) ? value(draw, '5') : '5')),
  );
  const heading = draw.chance(0.9) ? options : [...options, draw.of(SIGNS)];
  return [heading, ...rows, ...(draw.chance(0.2) ? [[example]] : [])]
    .map((row) => row.join(','))
    .join(draw.of(['\n', '\r\n']));
}

/** A sheet of results for an auction of a journal, filled in by somebody who wishes no good; now and then lines. */
function hostileSheet(draw: Draw, text: string): string {
  if (draw.chance(0.1)) return typed(draw, text);
  const stock = (): string => (draw.chance(0.5) ? 'Zinc' : nameIn(draw, text, /(?:brood|group) ([\w-]+)/gu));
  const tank = (): string => (draw.chance(0.5) ? 'Z1' : nameIn(draw, text, /tank ([\w-]+)/gu));
  const wild = (kind: string): string => (draw.chance(0.12) ? draw.of([...NUMBERS, ...SIGNS]) : kind);
  const rows = Array.from({ length: 1 + draw.below(5) }, (_, i) => {
    const sold = draw.chance(0.6);
    const cells = [
      String(i + 1),
      wild(stock()),
      wild(tank()),
      wild('2'),
      sold ? wild('14.00') : '',
      sold ? '' : wild('Z1'),
    ];
    return cells
      .map((cell) => (draw.chance(0.2) ? `"${cell.replaceAll('"', '""')}"` : cell))
      .join(draw.of([',', ',', ',', ';']));
  });
  return ['lot,stock,tank,fish,fetched,back to', ...rows].join(draw.of(['\n', '\r\n', '\r']));
}

/** Lines as somebody types them. */
function typed(draw: Draw, text: string): string {
  const lines = text.split(/\r\n|\r|\n/u);
  return Array.from({ length: 1 + draw.below(4) }, () => {
    const line = draw.of(lines).replace(/^\S+ /u, '');
    return draw.chance(0.5) ? hostileLine(draw, line) : line;
  }).join('\n');
}

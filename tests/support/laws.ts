/** What must hold of every answer to any journal: it ends, in one of the ways that are told, and harms nobody. */
import { parse } from 'csv-parse/sync';
import { Draw, hostileJournal } from './hostile.ts';
import { tankside } from './run.ts';
import type { Ran } from './run.ts';

const FILE = '/room/fishroom.txt';
const DATES = ['2026-02-15', '2026-11-22', '2031-01-01', '1996-06-01', '+14', 'next saturday', '0001-01-01'] as const;

/** Command lines that ask a journal something; `@` stands for a name or words that it may know. */
const ASKED = [
  'due',
  'due --minutes 40',
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
  'sale --csv',
  'sale --ahead 60',
  'holds',
  'promises',
  'promises --list',
  'cultures',
  'water',
  'water @',
  'history',
  'history @',
  'kin',
  'money',
  'check',
  'tidy',
  'why @',
  'chart growth @',
  'chart level @',
  'chart survival @',
  'settle @ -',
  'settle @ --sheet -',
  'jot --dry-run @',
  'jot --as-note @',
  'jot @',
] as const;
const NAMES = ['A1', 'Rowan', 'Rowan-1', 'Long', 'C1', 'krib', '__proto__', '\u001b[2J', '', 'a1-dispute'] as const;

export interface Asked {
  readonly argv: readonly string[];
  readonly ran: Ran;
  /** What is wrong with the answer; empty where nothing is. */
  readonly wrong: readonly string[];
}

/** Asks a hostile journal one question, and judges the answer. Only a crash throws. */
export async function askHostile(seed: number): Promise<Asked> {
  const draw = new Draw(seed ^ 0x5eed);
  const argv = draw
    .of(ASKED)
    .split(' ')
    .map((word) => (word === '@' ? draw.of(NAMES) : word));
  argv.push('--on', draw.of(DATES));
  if (draw.chance(0.4) && !argv.includes('--csv')) argv.push('--json');
  const { bytes } = hostileJournal(seed);
  const columns = draw.of([null, 80, 40]);
  const ran = await tankside(argv, {
    files: { [FILE]: bytes },
    ...(columns === null ? {} : { columns }),
    env: { NO_COLOR: '1' },
  });
  return { argv, ran, wrong: faultsOf(argv, ran, bytes) };
}

const ACTS = /[^\P{Cc}\n]|[\p{Zl}\p{Zp}\p{Bidi_Control}]/u;

function faultsOf(argv: readonly string[], { status, out, err, files }: Ran, bytes: Buffer): readonly string[] {
  const machine = argv.includes('--json') || argv.includes('--csv');
  const faults: string[] = [];
  if (![0, 1, 2, 3].includes(status)) faults.push(`ends with ${status}`);
  // What jot and settle refuse is told to a program as JSON.
  const writes = argv[0] === 'jot' || argv[0] === 'settle';
  if (status >= 2 && out !== '' && !(machine && writes)) faults.push('prints an answer, yet fails');
  if (status >= 2 && err.trim() === '') faults.push('fails without a word');
  if (!machine && ACTS.test(out)) faults.push('a sign that acts on the terminal');
  if (ACTS.test(err)) faults.push('a sign that acts on the terminal, among what went wrong');
  if (/\b(?:NaN|undefined|Infinity|\[object)\b/u.test(out.replaceAll(/NaN|undefined/gu, quoted(bytes)))) {
    faults.push('a number that is none');
  }
  if (argv.includes('--json') && status < 2 && !isJson(out)) faults.push('no JSON');
  if (argv.includes('--csv') && status < 2) faults.push(...formulas(out));
  if (!argv.includes('jot') && Buffer.compare(Buffer.from(files[FILE] ?? ''), Buffer.from(bytes.toString())) !== 0) {
    faults.push('the journal was changed');
  }
  if (argv.includes('jot') && !(files[FILE] ?? '').startsWith(bytes.toString().trimEnd()))
    faults.push('lines were lost');
  return faults;
}

/** Words of the journal itself are not the answer's. */
function quoted(bytes: Buffer): (word: string) => string {
  const text = bytes.toString();
  return (word) => (text.includes(word) ? '' : word);
}

function isJson(text: string): boolean {
  try {
    return typeof JSON.parse(text) === 'object';
  } catch {
    return false;
  }
}

/** Cells that a spreadsheet would reckon instead of showing. */
function formulas(text: string): readonly string[] {
  const rows: unknown = parse(text, { relax_column_count: true });
  const cells = Array.isArray(rows) ? rows.flat() : [];
  return cells
    .filter((cell) => typeof cell === 'string' && /^[=+@\t\r]|^-(?!\d)/u.test(cell))
    .map((cell) => `a formula: ${String(cell)}`);
}

/** What must hold of every answer to any journal: it ends, in one of the ways that are told, and harms nobody. */
import path from 'node:path';
import { question, THEIRS, type Question } from './asked.ts';
import { csvFaults, htmlFaults, icsFaults, isJson } from './formats.ts';
import { Draw, hostileJournal } from './hostile.ts';
import { tankside } from './run.ts';
import type { Ran } from './run.ts';

const FILE = '/room/fishroom.txt';
/** What stands on the disk before, and what may be written to. */
const MAY_BE_NEW = new Set(['/room/new.out', '/room/empty.ics', '/up']);

export interface Asked {
  readonly argv: readonly string[];
  readonly ran: Ran;
  /** What is wrong with the answer; empty where nothing is. */
  readonly wrong: readonly string[];
}

/** Asks a hostile journal one question, and judges the answer. Only a crash throws. */
export async function askHostile(seed: number): Promise<Asked> {
  const draw = new Draw(seed ^ 0x5eed);
  const { bytes } = hostileJournal(seed);
  const asked = question(draw, bytes);
  const columns = draw.of([null, 80, 40]);
  const ran = await tankside(asked.argv, {
    files: { [FILE]: bytes, ...asked.files },
    input: asked.input,
    ...(columns === null ? {} : { columns }),
    env: { NO_COLOR: '1' },
  });
  return { argv: asked.argv, ran, wrong: [...faultsOf(asked, ran, bytes), ...changed(asked, ran, bytes)] };
}

const ACTS = /[^\P{Cc}\n]|[\p{Zl}\p{Zp}\p{Bidi_Control}]/u;
const CONTROL = /[^\P{Cc}\r\n\t]/u;
/** Commands that tell a program in JSON what they refuse. */
const WRITERS = new Set(['jot', 'settle']);

function faultsOf({ argv, input, files }: Question, { status, out, err }: Ran, bytes: Buffer): readonly string[] {
  const [command = ''] = argv;
  const json = argv.includes('--json');
  const machine = json || argv.includes('--csv') || argv.includes('-');
  const faults: string[] = [];
  if (![0, 1, 2, 3].includes(status)) faults.push(`ends with ${status}`);
  if (status >= 2 && out !== '' && !(json && WRITERS.has(command))) faults.push('prints an answer, yet fails');
  if (status >= 2 && err.trim() === '') faults.push('fails without a word');
  if ((machine ? CONTROL : ACTS).test(out)) faults.push('a sign that acts on the terminal');
  if (ACTS.test(err)) faults.push('a sign that acts on the terminal, among what went wrong');
  if (
    /\b(?:NaN|undefined|Infinity|\[object)\b/u.test(
      without(out, [bytes, ...Object.values(files), input, argv.join(' ')].map(String)),
    )
  )
    faults.push('a number that is none');
  if (json && status < 2 && !isJson(out)) faults.push('no JSON');
  if (status < 2) faults.push(...formatFaults(argv, (option) => valueOf(argv, option) === '-', out));
  return faults;
}

/** The answer without those words that the keeper wrote. */
function without(out: string, given: readonly string[]): string {
  return out.replaceAll(/NaN|undefined|Infinity/gu, (word) => (given.some((text) => text.includes(word)) ? '' : word));
}

/** What goes to one place in a format of its own. */
function formatFaults(
  argv: readonly string[],
  goesThere: (option: string) => boolean,
  text: string,
): readonly string[] {
  if (goesThere('--html') || goesThere('--svg')) return htmlFaults(text);
  if (goesThere('--ics')) return icsFaults(text);
  const isCsv = goesThere('--sheet') || goesThere('--csv') || (argv[0] === 'calc' && argv.includes('--csv'));
  return isCsv && !argv.includes('--json') ? csvFaults(text) : [];
}

function valueOf(argv: readonly string[], option: string): string | null {
  const at = argv.indexOf(option);
  return at < 0 ? null : (argv[at + 1] ?? null);
}

/** What became of the files: nothing lost, nothing of others touched, nothing half written or told as written. */
function changed({ argv, files: given }: Question, { status, files, err }: Ran, bytes: Buffer): readonly string[] {
  const [command = ''] = argv;
  const before = { [FILE]: bytes, ...given };
  const faults: string[] = [];
  for (const [name, content] of Object.entries(before)) {
    const [then, now] = [Buffer.from(content).toString(), files[name]];
    if (now === then) continue;
    if (now === undefined) faults.push(`${name} is gone`);
    else if (name !== FILE) {
      if (!MAY_BE_NEW.has(name) || (status >= 2 && !err.includes(`${path.basename(name)} is written`)))
        faults.push(`${name} was changed`);
    } else if (status >= 2 || argv.includes('--dry-run'))
      faults.push('the journal was changed, yet it fails or only shows');
    else if (WRITERS.has(command) ? !now.startsWith(then) : !argv.includes('--write')) faults.push('lines were lost');
  }
  for (const name of Object.keys(files)) {
    if (name in before) continue;
    if (!MAY_BE_NEW.has(name)) faults.push(`${name} was left behind`);
    else if (status >= 2 && !err.includes(`${path.basename(name)} is written`))
      faults.push(`${name} was written, yet it fails`);
  }
  for (const option of ['--html', '--svg', '--ics', '--csv', '--sheet']) {
    const value = valueOf(argv, option);
    if (value === null || value === '-' || value.startsWith('--') || status >= 2) continue;
    const text = files[path.resolve('/room', value)];
    if (text === undefined || text === THEIRS) faults.push(`${value} is told as written`);
    else faults.push(...formatFaults(argv, (one) => one === option, text));
  }
  return faults;
}

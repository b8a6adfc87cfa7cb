/**
 * What writers do to one journal in the fault tests, as jot, settle and tidy do it, and what must hold of the
 * journal whatever became of them: nothing lost, twice, half or told otherwise than it is.
 */
import path from 'node:path';
import { onDisk } from './ondisk.ts';

export const KINDS = ['jot', 'settle', 'tidy'] as const;
export type Kind = (typeof KINDS)[number];

/** Auctions to settle in the journal that `room` makes. */
export const AUCTIONS = 120;

/** A room in its usual form already, so that tidying leaves these lines as they are. */
export function room(): string {
  const auctions = Array.from({ length: AUCTIONS }, (_, n) => `2026-03-01 auction S${n + 1}: on 2026-05-16\n`);
  return `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 54 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 group Ash: krib; 3000; in A1
${auctions.join('')}`;
}

const HEADING = 'lot,stock,tank,fish,fetched,back to\n';

/** Does one deed; its id and whether it was told as done. A tidying that is refused has lost nothing, and is done again. */
export async function deed(
  kind: Kind,
  file: string,
  label: string,
  number: number,
): Promise<{ id: string; done: boolean }> {
  const cwd = path.dirname(file);
  const at = ['--journal', file];
  if (kind === 'settle') {
    const id = `S${number}`;
    const sheet = `${HEADING}1,Ash,A1,1,1.00,\n2,Ash,A1,1,,A1\n`;
    return { id, done: (await onDisk(['settle', id, '-', ...at], cwd, sheet)).status === 0 };
  }
  const id = `${label}-${number}`;
  const words = kind === 'jot' ? `note ${id}${' the left cave,'.repeat(number % 9)}` : `wc 30% "${id}"`;
  const { status } = await onDisk(['jot', ...at, `2026-02-14 A1: ${words}`], cwd);
  if (kind === 'tidy') await onDisk(['tidy', '--write', ...at], cwd);
  return { id, done: status === 0 };
}

const NOTE = /^2026-02-14 A1: note ([a-z]+\d*-(\d+))((?: the left cave,)*)$/;
const CHANGE = /^2026-02-14 A1: (?:wc 30%|water change 30 %) "([a-z]+\d*-\d+)"$/;
const SOLD = /^2026-05-16 A1: sold 1 Ash for 1\.00 at (S\d+) "lot 1"$/;
const HOME = '2026-05-16 A1: quarantine 28 days';
const SETTLED = /^2026-05-16 room: did "settle for (S\d+)"$/;

/** What is wrong with a journal, after those deeds were told as done and those as not done. */
export function damageOf(text: string, done: readonly string[], refused: readonly string[]): readonly string[] {
  if (!text.startsWith(room())) return ['old lines were changed'];
  const lines = text.slice(room().length).split('\n');
  if (lines.at(-1) !== '') return ['the last line has no end'];
  const seen = new Map<string, number>();
  const faults: string[] = [];
  for (let at = 0; at < lines.length - 1; at += 1) {
    const id = idAt(lines, at);
    if (id === null) faults.push(`half: ${lines[at] ?? ''}`);
    else seen.set(id, (seen.get(id) ?? 0) + 1);
    if (id !== null && SOLD.test(lines[at] ?? '')) at += 2;
  }
  for (const [id, times] of seen) if (times > 1) faults.push(`twice: ${id}`);
  for (const id of done) if (!seen.has(id)) faults.push(`lost: ${id}`);
  for (const id of refused) if (seen.has(id)) faults.push(`told as not written: ${id}`);
  return faults;
}

/** The deed whose line, or first of three lines, stands there whole. */
function idAt(lines: readonly string[], at: number): string | null {
  const line = lines[at] ?? '';
  const note = NOTE.exec(line);
  if (note !== null)
    return (note[3]?.length ?? 0) === (Number(note[2]) % 9) * ' the left cave,'.length ? (note[1] ?? null) : null;
  const sold = SOLD.exec(line);
  if (sold === null) return CHANGE.exec(line)?.[1] ?? null;
  const whole = lines[at + 1] === HOME && SETTLED.exec(lines[at + 2] ?? '')?.[1] === sold[1];
  return whole ? (sold[1] ?? null) : null;
}

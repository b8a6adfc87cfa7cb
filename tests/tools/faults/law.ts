/** What must hold of a journal after a command that wrote to it was killed: as before or as wanted, and told as it is. */
import fs from 'node:fs';
import process from 'node:process';
import { machineFiles } from '../../../src/files/files.ts';
import { deed, type Kind } from '../../support/deeds.ts';
import { besides } from '../../support/processes.ts';
import { small } from './small.ts';

/** A mode that none of ours has by itself. */
const MODE = 0o640;
/** Somebody else, where we may give files away: keeping the owner is then something to be done. */
const OWNER = process.getuid?.() === 0 ? 65_534 : null;

/** `+`: the keeper was told that it is done; `-`: that it is not; null: was told nothing any more. */
export type Told = '+' | '-' | null;

/** One journal of the real disk through several killed commands of one kind. */
export class Journal {
  readonly file: string;
  readonly kind: Kind;
  /** As a reader saw it last. */
  text = small();
  number = 0;
  #raw = small();

  constructor(file: string, kind: Kind) {
    [this.file, this.kind] = [file, kind];
    fs.writeFileSync(file, this.text);
    fs.chmodSync(file, MODE);
    if (OWNER !== null) fs.chownSync(file, OWNER, OWNER);
  }

  /** Makes ready for the next command: where that tidies there must be something to tidy. */
  next(label: string): readonly string[] {
    this.number += 1;
    if (this.kind === 'tidy') {
      fs.appendFileSync(this.file, `2026-02-14 A1: wc 30% "${label}-${this.number}"\n`);
      [this.text, this.#raw] = [this.#seen(), fs.readFileSync(this.file, 'utf8')];
    }
    return [this.file, this.kind, label, String(this.number)];
  }

  /** The journal as that command should leave it. */
  wanted(label: string): string {
    const [old, n] = [this.text, this.number];
    if (this.kind === 'tidy') return old.replaceAll('wc 30%', 'water change 30 %');
    if (this.kind === 'jot') return `${old}2026-02-14 A1: note ${label}-${n}${' the left cave,'.repeat(n % 9)}\n`;
    return `${old}2026-05-16 A1: sold 1 Ash for 1.00 at S${n} "lot 1"
2026-05-16 A1: quarantine 28 days
2026-05-16 room: did "settle for S${n}"\n`;
  }

  /** What is wrong now. What a reader sees becomes what must be kept from here on. */
  after(label: string, told: Told): readonly string[] {
    const [old, wanted, seen, raw] = [this.text, this.wanted(label), this.#seen(), fs.readFileSync(this.file, 'utf8')];
    const { mode, uid, gid } = fs.statSync(this.file);
    const faults: string[] = [];
    if (seen !== old && seen !== wanted) faults.push('neither as it was nor as it should be');
    // Half a block may stand in the file itself while its record stands beside it; half a new text never.
    if (this.kind === 'tidy' ? raw !== seen : !wanted.startsWith(raw) || !raw.startsWith(this.#raw))
      faults.push('the file itself was changed otherwise');
    if (told === '+' && seen !== wanted) faults.push('told as done, and is not');
    if (told === '-') faults.push(seen === wanted ? 'told as not done, and is' : 'refused, with nobody in its way');
    if ((mode & 0o7777) !== MODE) faults.push(`its mode is ${(mode & 0o7777).toString(8)}`);
    if (OWNER !== null && (uid !== OWNER || gid !== OWNER)) faults.push(`its owner is ${uid}, its group ${gid}`);
    [this.text, this.#raw] = [seen, raw];
    return faults.map((fault) => `${this.kind} ${label}-${this.number}: ${fault}`);
  }

  /** The next healthy write must pass the dead, put right what is torn, and clear up. */
  async end(): Promise<readonly string[]> {
    const old = this.text;
    const { done } = await deed('jot', this.file, 'end', 1);
    const now = fs.readFileSync(this.file, 'utf8');
    const wrong = done ? [] : ['the next jot is refused'];
    if (now !== `${old}2026-02-14 A1: note end-1 the left cave,\n`) wrong.push('the next jot leaves something else');
    return [...wrong, ...besides(this.file).map((name) => `left behind: ${name}`)];
  }

  #seen(): string {
    const read = machineFiles.read(this.file);
    return read.ok ? read.content.text : read.says;
  }
}

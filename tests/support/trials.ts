/** One command on a disk in memory on which one call fails, and what a reader sees of what is left. */
import { filesOn } from '../../src/files/files.ts';
import { failing, type Failing, type Failure } from './failing.ts';
import { aloneMachine, MemoryDisk } from './memory.ts';
import { tankside, type Ran, type World } from './run.ts';

export interface Command {
  readonly name: string;
  readonly argv: readonly string[];
  readonly world: World;
}

export interface Tried extends Ran {
  /** Calls on the disk that it made. */
  readonly calls: number;
}

/** Each message in one line: what it says of a file has to stand beside the file's name. */
const WIDE = 2000;

const NEVER: Failure = { at: -1, later: false, how: 'before', code: 'EIO' };

export async function tryOnce({ argv, world }: Command, failure: Failure = NEVER): Promise<Tried> {
  const broken: Failing[] = [];
  const ran = await tankside(argv, {
    ...world,
    columns: WIDE,
    broken(disk) {
      const one = failing(disk, failure);
      broken.push(one);
      return one.disk;
    },
  });
  return { ...ran, calls: broken[0]?.calls() ?? 0 };
}

/** The text of a file as a reader sees it, a record of ours beside it included; null where it is not there. */
export function seen(files: Ran['files'], name: string): string | null {
  const disk = new MemoryDisk();
  for (const [one, text] of Object.entries(files)) disk.put(one, text);
  const read = filesOn(disk, aloneMachine()).read(name);
  return read.ok ? read.content.text : null;
}

/**
 * What is wrong after a run on a failing disk. Each file must be as before or as a run without faults leaves it;
 * told as done, it is so; told as not done, it is not, but for those files that the words name as done or unsure.
 */
export function faultsAfter(before: Ran['files'], whole: Ran, { status, files, err }: Tried): readonly string[] {
  const faults: string[] = [];
  const names = new Set([...Object.keys(before), ...Object.keys(whole.files)]);
  for (const name of names) {
    const [then, now, wanted] = [before[name] ?? null, seen(files, name), whole.files[name] ?? null];
    if (now !== then && now !== wanted) faults.push(`${name} is neither as it was nor as it should be`);
    if (status === whole.status && now !== wanted) faults.push(`${name} is told as done, and is not`);
    if (status !== whole.status && now !== then && !isToldOf(name, err))
      faults.push(`${name} is done, and told as not`);
  }
  if (status !== whole.status && err.trim() === '') faults.push('fails without a word');
  return faults;
}

/** Whether the words say that a file was written after all, or that nobody can tell. */
function isToldOf(name: string, err: string): boolean {
  const short = name.slice(name.lastIndexOf('/') + 1);
  return err
    .split('\n')
    .some((line) => line.includes(short) && /is written|is tidied|cannot be seen|look at its last lines/.test(line));
}

/** Temporary files that a command left beside others, though the disk let it remove them. */
export function leftBehind({ files }: Ran): readonly string[] {
  return Object.keys(files).filter((name) => /\.(?:new-|lock)/.test(name));
}

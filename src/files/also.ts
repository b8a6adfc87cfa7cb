/**
 * Files that a journal reads in with `also read`: in the main file's folder or below, wherever links
 * lead, so that a journal from someone else can show nothing of the rest of the disk.
 */
import { basename, dirname, isAbsolute, relative, resolve, sep, win32 } from 'node:path';
import type { Problem } from '../core/problem.ts';
import type { Disk } from './disk.ts';
import { readText } from './read.ts';
import { codeOf, reason } from './trouble.ts';

export type Also =
  | { readonly ok: true; readonly name: string; readonly text: string; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly says: string };

/**
 * Gives a function that fetches: `from` is the name of the file that asks, `asked` the path as written in
 * it, from that file's own folder. One file has one name, however it was reached: circles show.
 */
export function alsoReader(disk: Disk, main: string): (from: string, asked: string) => Also {
  return (from, asked) => {
    try {
      return fetch(disk, main, from, asked);
    } catch (error) {
      return no(codeOf(error) === 'ENOENT' ? 'there is no such file' : reason(error));
    }
  };
}

function fetch(disk: Disk, main: string, from: string, asked: string): Also {
  if (isAbsolute(asked) || win32.isAbsolute(asked)) return no('only files in the folder of the journal are read in');
  const home = disk.real(main);
  const folder = dirname(home);
  const asker = from === basename(main) ? folder : dirname(resolve(folder, from));
  const path = disk.real(resolve(asker, asked.replaceAll('\\', '/')));
  const way = relative(folder, path);
  if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way))
    return no('it is outside the folder of the journal');
  const name = path === home ? basename(main) : way.split(sep).join('/');
  const got = readText(disk, path, name);
  return got.ok ? { ok: true, name, text: got.file.content.text, problems: got.file.problems } : no(got.says);
}

function no(says: string): Also {
  return { ok: false, says };
}

/** The files of this machine, as the rest of Tankside may ask of them. */
import { basename } from 'node:path';
import { alsoReader } from './also.ts';
import { appendLines } from './append.ts';
import { createText } from './create.ts';
import { theDisk } from './disk.ts';
import type { Disk } from './disk.ts';
import { thisMachine } from './machine.ts';
import type { Machine } from './machine.ts';
import { patient } from './patient.ts';
import type { Files } from './port.ts';
import { readText } from './read.ts';
import { replaceText } from './replace.ts';

/** Reading, adding and replacing on a disk, as whoever this machine says that we are. */
export function filesOn(disk: Disk, machine: Machine): Files {
  return {
    read(path, name = basename(path)) {
      const got = readText(disk, path, name);
      if (!got.ok) return got;
      const { content, problems, notices } = got.file;
      return { ok: true, content, problems, notices };
    },
    also: (main) => alsoReader(disk, main),
    isFile: (path) => isFile(disk, path),
    create: (path, text) => createText(disk, machine, path, text),
    append: (path, compose) => appendLines(disk, machine, path, basename(path), compose),
    replace: (path, expected, text) => replaceText(disk, machine, path, basename(path), expected, text),
  };
}

function isFile(disk: Disk, path: string): boolean {
  try {
    return disk.facts(path).kind === 'file';
  } catch {
    return false;
  }
}

/** The disk of this machine, with the patience that it asks for. */
export const ownDisk: Disk = process.platform === 'win32' ? patient(theDisk, thisMachine) : theDisk;

export const machineFiles: Files = filesOn(ownDisk, thisMachine);

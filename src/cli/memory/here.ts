/** The key of this very run. */
import fs from 'node:fs';
import process from 'node:process';
import { keyOf } from './remembered.ts';

export function keyHere(build: string): string {
  const columns = mayBeTerminal() ? process.stdout.columns : null;
  return keyOf({ build, engine: process.version, argv: process.argv.slice(2), cwd: process.cwd(), columns });
}

/** Asked of the system first: Node's own streams take longer to load than a remembered answer to say. */
function mayBeTerminal(): boolean {
  try {
    const out = fs.fstatSync(1);
    return out.isCharacterDevice() && out.rdev !== rdevOfNothing() && process.stdout.isTTY;
  } catch {
    return false;
  }
}

/** The number of the device that swallows everything, where there is one. */
function rdevOfNothing(): number | null {
  return fs.statSync('/dev/null', { throwIfNoEntry: false })?.rdev ?? null;
}

/**
 * Runs the program from the file beside the starter, with the engine's compiled form of it where that is
 * there and was made by this very engine. Compiling a megabyte anew each time costs more than most
 * answers. The compiled form is the build's, never the user's data.
 */
import 'node:crypto';
import fs from 'node:fs';
import module from 'node:module';
import 'node:os';
import path from 'node:path';
import process from 'node:process';
import vm from 'node:vm';
import { tuneForShortRun } from './shortrun.ts';

const CODE = path.join(__dirname, 'tankside-code.cjs');

function compiled(): Buffer | undefined {
  try {
    return fs.readFileSync(path.join(__dirname, 'tankside-code.cache'));
  } catch {
    return undefined;
  }
}

export function runProgram(): void {
  // Parts of Node's own that come after the settings are compiled anew, its compiled form being of other settings:
  // what every run needs comes before, as the modules above and what stands behind the streams.
  void [process.stdout, process.stderr];
  // The engine compares its settings with those that the compiled form was made under.
  tuneForShortRun();
  const cachedData = compiled();
  const script = new vm.Script(fs.readFileSync(CODE, 'latin1'), {
    filename: CODE,
    ...(cachedData === undefined ? {} : { cachedData }),
  });
  const program: unknown = script.runInThisContext();
  if (isProgram(program)) program(module.createRequire(CODE), __dirname);
}

function isProgram(value: unknown): value is (require: NodeJS.Require, folder: string) => void {
  return typeof value === 'function';
}

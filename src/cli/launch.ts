/**
 * What users start: runs the program from the file beside it, with the engine's compiled form of it
 * where that is there and was made by this very engine. Compiling a megabyte anew each time costs more
 * than most answers. Only a build uses this file; the compiled form is the build's, never the user's data.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { Script } from 'node:vm';
import { optimiseLater } from './shortrun.ts';

const CODE = path.join(__dirname, 'tankside-code.cjs');

function compiled(): Buffer | undefined {
  try {
    return readFileSync(path.join(__dirname, 'tankside-code.cache'));
  } catch {
    return undefined;
  }
}

// The engine compares its settings with those that the compiled form was made under.
optimiseLater();
const cachedData = compiled();
const script = new Script(readFileSync(CODE, 'utf8'), {
  filename: CODE,
  ...(cachedData === undefined ? {} : { cachedData }),
});
const program: unknown = script.runInThisContext();
if (isProgram(program)) program(createRequire(CODE));

function isProgram(value: unknown): value is (require: NodeJS.Require) => void {
  return typeof value === 'function';
}

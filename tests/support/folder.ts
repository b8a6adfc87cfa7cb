/** A folder on the real disk for one test, removed after it. */
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

export function folder(): string {
  const made = fs.mkdtempSync(path.join(os.tmpdir(), 'tankside-'));
  onTestFinished(() => fs.rmSync(made, { recursive: true, force: true }));
  return fs.realpathSync(made);
}

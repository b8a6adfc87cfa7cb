/**
 * A process that adds lines one by one and prints each once it is told that it is saved, for the tests
 * that run several at once and kill them: `appender FILE LABEL COUNT TIMES`,
 * where TIMES makes the lines longer.
 */
import fs from 'node:fs';
import process from 'node:process';
import { machineFiles } from '../../src/files/files.ts';

const [file = '', label = '', count = '0', times = '1'] = process.argv.slice(2);

for (let number = 1; number <= Number(count); number += 1) {
  const line = `2026-02-14 A1: note ${label}-${number} ${'the left cave, '.repeat((number % 9) * Number(times))}`;
  const result = machineFiles.append(file, () => [line]);
  if (!result.saved) {
    process.stderr.write(`${result.says ?? ''}\n`);
    process.exit(1);
  }
  fs.writeSync(1, `${line}\n`);
}

import fs from 'node:fs';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, expect, test, vi } from 'vitest';
import { thisMachine } from '../../src/files/machine.ts';
import type { Holder } from '../../src/files/machine.ts';
import { systemError } from '../support/memory.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** `/proc` as where it is mounted with `hidepid`: the processes of others are not there. */
function hideProcess(pid: number): void {
  const read = fs.readFileSync;
  vi.spyOn(fs, 'readFileSync').mockImplementation((...asked) => {
    if (asked[0] === `/proc/${String(pid)}/stat`) throw systemError('ENOENT');
    return read(...asked);
  });
}

test('a process that this system hides lives as long as it can be signalled', async () => {
  const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], { stdio: 'ignore' });
  const ended = once(child, 'exit');
  const { pid } = child;
  if (pid === undefined) throw new Error('no process was started');
  const holder: Holder = { ...thisMachine.me(), pid, start: '17' };
  hideProcess(pid);
  expect(thisMachine.fate(holder)).toBe('lives');
  child.kill('SIGKILL');
  await ended;
  expect(thisMachine.fate(holder)).toBe('dead');
});

import fs from 'node:fs';
import path from 'node:path';
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { theDisk } from '../../src/files/disk.ts';
import { filesOn, machineFiles } from '../../src/files/files.ts';
import { dropLock, takeLock } from '../../src/files/lock.ts';
import type { Locking } from '../../src/files/lock.ts';
import { thisMachine } from '../../src/files/machine.ts';
import type { Holder, Machine } from '../../src/files/machine.ts';
import { temporaryName } from '../../src/files/temporary.ts';
import { folder } from '../support/folder.ts';
import { systemError } from '../support/memory.ts';

const LINE = '2026-02-14 A1: all well';

function journal(): string {
  const file = path.join(folder(), 'fishroom.txt');
  fs.writeFileSync(file, '');
  return file;
}

/** A process that was here and is gone. */
function gone(): Holder {
  const { pid } = spawnSync('true');
  return { ...thisMachine.me(), pid, start: '17', nonce: 'gonegonegone1' };
}

function leaveLock(file: string, holder: unknown): void {
  fs.writeFileSync(`${file}.lock`, typeof holder === 'string' ? holder : JSON.stringify(holder));
}

function saysOf(taken: Locking): string | null {
  return taken.ok ? null : taken.says;
}

function others(file: string): readonly string[] {
  return fs.readdirSync(path.dirname(file)).filter((name) => name !== 'fishroom.txt');
}

describe('the lock', () => {
  test('keeps a second writer out until it is given back', () => {
    const file = journal();
    const first = takeLock(theDisk, thisMachine, file);
    const second = takeLock(theDisk, thisMachine, file, 30);
    expect(saysOf(second)).toContain(`process ${process.pid}`);
    expect(saysOf(second)).toContain('remove fishroom.txt.lock');
    expect(first.ok && dropLock(theDisk, first.lock)).toBeNull();
    expect(others(file)).toEqual([]);
    const third = takeLock(theDisk, thisMachine, file, 30);
    expect(third.ok).toBe(true);
  });

  test('of a dead process is taken over', () => {
    const file = journal();
    leaveLock(file, gone());
    expect(machineFiles.append(file, () => [LINE])).toEqual({ saved: true, notices: [] });
    expect(others(file)).toEqual([]);
  });

  test('of a process whose number was given out again is taken over', () => {
    const file = journal();
    leaveLock(file, { ...thisMachine.me(), start: '1' });
    expect(machineFiles.append(file, () => [LINE]).saved).toBe(true);
  });

  test('from before the machine was started again is taken over, from another machine is not', () => {
    const file = journal();
    const before = { ...thisMachine.me(), boot: '0-0-0' };
    leaveLock(file, { ...before, host: 'elsewhere' });
    expect(takeLock(theDisk, thisMachine, file, 20)).toMatchObject({ ok: false });
    leaveLock(file, before);
    expect(takeLock(theDisk, thisMachine, file, 20)).toMatchObject({ ok: true });
  });

  test('of another container is not judged by this one', () => {
    const file = journal();
    leaveLock(file, { ...gone(), space: 'pid:[1]' });
    expect(takeLock(theDisk, thisMachine, file, 20)).toMatchObject({ ok: false });
  });

  test.each(['', 'hello', '{}', '[1]', '{"pid":1,"host":"x","since":1,"nonce":"../../x"}'])(
    'that says nothing sensible is respected and named: %s',
    (content) => {
      const file = journal();
      leaveLock(file, content);
      const taken = takeLock(theDisk, thisMachine, file, 20);
      expect(saysOf(taken)).toContain('remove fishroom.txt.lock');
      expect(fs.readFileSync(`${file}.lock`, 'utf8')).toBe(content);
    },
  );

  test('is taken over past a claim whose maker died as well, and nothing stays behind', () => {
    const file = journal();
    const dead = gone();
    leaveLock(file, dead);
    fs.writeFileSync(`${file}.lock-${dead.nonce}`, JSON.stringify({ ...dead, nonce: 'claimclaim1' }));
    fs.writeFileSync(temporaryName(file, { ...dead, nonce: 'left' }), 'half of somethi');
    expect(machineFiles.append(file, () => [LINE])).toEqual({ saved: true, notices: [] });
    expect(others(file)).toEqual([]);
  });

  test('is not removed by a late claimer once somebody else has it', () => {
    const file = journal();
    const dead = gone();
    leaveLock(file, dead);
    let stolen = false;
    /** Another process buries the dead one's lock and takes it, between our look at it and our claim. */
    const slow: Machine = {
      ...thisMachine,
      fate(holder) {
        if (!stolen && holder.nonce === dead.nonce) {
          stolen = true;
          leaveLock(file, { ...thisMachine.me(), nonce: 'newownernew' });
          return 'dead';
        }
        return thisMachine.fate(holder);
      },
    };
    expect(takeLock(theDisk, slow, file, 20).ok).toBe(false);
    expect(fs.readFileSync(`${file}.lock`, 'utf8')).toContain('newownernew');
    expect(others(file)).toEqual(['fishroom.txt.lock']);
  });

  test.each(['EPERM', 'EISDIR', 'EACCES'])('works where the file system has no hard links and says %s', (code) => {
    const file = journal();
    const plain = {
      ...theDisk,
      link() {
        throw systemError(code);
      },
    };
    expect(filesOn(plain, thisMachine).append(file, () => [LINE])).toEqual({ saved: true, notices: [] });
    expect(others(file)).toEqual([]);
    const held = takeLock(plain, thisMachine, file, 20);
    expect(held.ok).toBe(true);
    expect(takeLock(plain, thisMachine, file, 20).ok).toBe(false);
  });

  test('what living processes and other people keep beside the journal stays', () => {
    const file = journal();
    const living = temporaryName(file, { ...thisMachine.me(), nonce: 'other' });
    fs.writeFileSync(living, '');
    for (const name of ['fishroom.txt.bak', 'fishroom.txt.new-1', 'fishroom.txt~', 'notes.txt']) {
      fs.writeFileSync(path.join(path.dirname(file), name), 'mine');
    }
    expect(machineFiles.append(file, () => [LINE]).saved).toBe(true);
    expect(others(file)).toEqual(
      ['fishroom.txt.bak', 'fishroom.txt.new-1', path.basename(living), 'fishroom.txt~', 'notes.txt'].sort(),
    );
  });
});

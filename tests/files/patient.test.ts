import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { theDisk } from '../../src/files/disk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { filesOn } from '../../src/files/files.ts';
import { thisMachine } from '../../src/files/machine.ts';
import { patient } from '../../src/files/patient.ts';
import { folder } from '../support/folder.ts';
import { systemError } from '../support/memory.ts';

/** A call that is refused so many times, and then works. */
function heldFor(times: number, code: string): { disk: Disk; tries: () => number } {
  let tries = 0;
  const remove = (): void => {
    tries += 1;
    if (tries <= times) throw systemError(code);
  };
  return { disk: { ...theDisk, remove }, tries: () => tries };
}

/** The call of that number, of those that Windows refuses for what another program holds, is refused once. */
function heldOnce(at: number): { disk: Disk; calls: () => number } {
  let calls = 0;
  function call<T>(run: () => T): T {
    calls += 1;
    if (calls - 1 === at) throw systemError('EPERM');
    return run();
  }
  const disk: Disk = {
    ...theDisk,
    open: (file, flags, mode) => call(() => theDisk.open(file, flags, mode)),
    link: (from, to) => {
      call(() => theDisk.link(from, to));
    },
    rename: (from, to) => {
      call(() => theDisk.rename(from, to));
    },
    remove: (file) => {
      call(() => theDisk.remove(file));
    },
  };
  return { disk, calls: () => calls };
}

describe('a file that another program holds for a moment', () => {
  test.each(['EPERM', 'EACCES', 'EBUSY'])('is tried again after %s, with longer pauses each time', (code) => {
    const { disk, tries } = heldFor(3, code);
    const pauses: number[] = [];
    patient(disk, { pause: (milliseconds) => pauses.push(milliseconds) }).remove('a');
    expect(tries()).toBe(4);
    expect(pauses).toEqual([5, 10, 20]);
  });

  test('is given up after two seconds, with what the system said last', () => {
    const { disk, tries } = heldFor(Infinity, 'EPERM');
    let waited = 0;
    const held = patient(disk, {
      pause(milliseconds) {
        waited += milliseconds;
      },
    });
    expect(() => {
      held.remove('a');
    }).toThrow(systemError('EPERM'));
    expect([waited, tries()]).toEqual([2000, 10]);
  });

  test('any other refusal is final', () => {
    const { disk, tries } = heldFor(1, 'ENOENT');
    const pause = (): never => {
      throw new Error('nobody should wait');
    };
    expect(() => {
      patient(disk, { pause }).remove('a');
    }).toThrow(systemError('ENOENT'));
    expect(tries()).toBe(1);
  });

  test('whichever of its calls is held once, the line is saved', () => {
    for (let at = 0; ; at += 1) {
      const file = path.join(folder(), 'fishroom.txt');
      fs.writeFileSync(file, '2026-01-01 room: units metric\n');
      const { disk, calls } = heldOnce(at);
      const files = filesOn(patient(disk, { pause: () => undefined }), thisMachine);
      expect(files.append(file, () => ['2026-01-02 room: all well'])).toEqual({ saved: true, notices: [] });
      expect(fs.readFileSync(file, 'utf8')).toBe('2026-01-01 room: units metric\n2026-01-02 room: all well\n');
      expect(fs.readdirSync(path.dirname(file))).toEqual(['fishroom.txt']);
      if (calls() <= at) {
        expect(at).toBeGreaterThan(8);
        return;
      }
    }
  });
});

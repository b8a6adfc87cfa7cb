import fs from 'node:fs';
import path from 'node:path';
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { theDisk } from '../../src/files/disk.ts';
import { filesOn, machineFiles } from '../../src/files/files.ts';
import { findJournal } from '../../src/files/find.ts';
import { thisMachine } from '../../src/files/machine.ts';
import { folder } from '../support/folder.ts';

function write(place: string, name: string, content: string | Buffer): string {
  const file = path.join(place, name);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, content);
  return file;
}

describe('reading', () => {
  test('takes the mark off, and keeps all else as it is', () => {
    const file = write(folder(), 'fishroom.txt', '\uFEFFa\r\nb “ü” \u0000\n');
    const got = machineFiles.read(file);
    expect(got).toMatchObject({ ok: true, problems: [], notices: [] });
    expect(got.ok && got.content.text).toBe('a\r\nb “ü” \u0000\n');
  });

  test('names the lines that are not UTF-8', () => {
    const latin = Buffer.from('2026-02-01 A1: note f\xfcr M\xe4rz\r\nfine\n2026-02-02 A1: \xff', 'latin1');
    const got = machineFiles.read(write(folder(), 'fishroom.txt', latin));
    expect(got.ok && got.content.text.startsWith('2026-02-01 A1: note f\uFFFDr M\uFFFDrz\r\nfine\n')).toBe(true);
    expect(got.ok && got.problems.map(({ kind, at }) => ({ kind, at }))).toEqual([
      { kind: 'broken-text', at: { file: 'fishroom.txt', line: 1, from: 21, to: 26 } },
      { kind: 'broken-text', at: { file: 'fishroom.txt', line: 3, from: 15, to: 16 } },
    ]);
  });

  test('a sign for something unreadable that was typed is no broken text', () => {
    expect(machineFiles.read(write(folder(), 'a.txt', 'typed \uFFFD\n'))).toMatchObject({ problems: [] });
  });

  test('refuses folders, devices, pipes and UTF-16, without waiting', () => {
    const place = folder();
    spawnSync('mkfifo', [path.join(place, 'pipe')]);
    const utf16 = write(place, 'wide.txt', Buffer.from('\uFEFF2026', 'utf16le'));
    expect(machineFiles.read(place)).toEqual({ ok: false, missing: false, says: 'it is a folder' });
    expect(machineFiles.read('/dev/zero')).toEqual({ ok: false, missing: false, says: 'it is no plain file' });
    expect(machineFiles.read(path.join(place, 'pipe'))).toMatchObject({ says: 'it is no plain file' });
    expect(machineFiles.read(utf16)).toMatchObject({ says: 'it is UTF-16; save it as UTF-8 in your editor' });
    expect(machineFiles.read(path.join(place, 'none'))).toMatchObject({ missing: true, says: 'it is not there' });
  });

  test('reads once more where the journal grew while it was read', () => {
    const file = write(folder(), 'fishroom.txt', 'old\n');
    let reads = 0;
    const growing = filesOn(
      {
        ...theDisk,
        read(open, into, position) {
          reads += 1;
          const got = theDisk.read(open, into, position);
          if (reads === 1) fs.appendFileSync(file, 'new\n');
          return got;
        },
      },
      thisMachine,
    );
    expect(growing.read(file)).toMatchObject({ ok: true, content: { text: 'old\nnew\n' } });
  });
});

describe('files that are read in', () => {
  function room(): { place: string; main: string } {
    const place = folder();
    const main = write(place, 'room/fishroom.txt', 'also read "2025.txt"\n');
    write(place, 'room/2025.txt', 'old');
    write(place, 'room/years/2024.txt', 'older');
    write(place, 'secret.txt', 'secret');
    return { place, main };
  }

  test('come from the folder of the journal or below, from the asking file on', () => {
    const { main } = room();
    const also = machineFiles.also(main);
    expect(also('fishroom.txt', '2025.txt')).toMatchObject({ ok: true, name: '2025.txt', text: 'old' });
    expect(also('fishroom.txt', './years/2024.txt')).toMatchObject({ name: 'years/2024.txt', text: 'older' });
    expect(also('years/2024.txt', '../2025.txt')).toMatchObject({ name: '2025.txt' });
    expect(also('2025.txt', 'fishroom.txt')).toMatchObject({ name: 'fishroom.txt' });
  });

  test.each(['../secret.txt', 'years/../../secret.txt', 'way-out.txt', 'way/secret.txt', '..'])(
    'never lead outside: %s',
    (asked) => {
      const { place, main } = room();
      fs.symlinkSync(path.join(place, 'secret.txt'), path.join(place, 'room/way-out.txt'));
      fs.symlinkSync(place, path.join(place, 'room/way'));
      expect(machineFiles.also(main)('fishroom.txt', asked)).toEqual({
        ok: false,
        says: 'it is outside the folder of the journal',
      });
    },
  );

  test.each(['/etc/passwd', 'C:\\notes.txt', '\\\\host\\notes.txt'])('are never taken from the top: %s', (asked) => {
    expect(machineFiles.also(room().main)('fishroom.txt', asked)).toEqual({
      ok: false,
      says: 'only files in the folder of the journal are read in',
    });
  });

  test('have one name however they are reached, so that a circle shows', () => {
    const { place, main } = room();
    fs.symlinkSync(path.join(place, 'room/2025.txt'), path.join(place, 'room/years/again.txt'));
    fs.symlinkSync(main, path.join(place, 'room/years/main.txt'));
    const link = path.join(place, 'link.txt');
    fs.symlinkSync(main, link);
    expect(machineFiles.also(main)('fishroom.txt', 'years/again.txt')).toMatchObject({ name: '2025.txt' });
    expect(machineFiles.also(main)('fishroom.txt', 'years/main.txt')).toMatchObject({ name: 'fishroom.txt' });
    expect(machineFiles.also(link)('link.txt', '2025.txt')).toMatchObject({ name: '2025.txt' });
    expect(machineFiles.also(link)('link.txt', 'fishroom.txt')).toMatchObject({ name: 'link.txt' });
  });

  test('that are missing, folders or endless links are refused in words', () => {
    const { place, main } = room();
    fs.symlinkSync('loop.txt', path.join(place, 'room/loop.txt'));
    const also = machineFiles.also(main);
    expect(also('fishroom.txt', '2023.txt')).toEqual({ ok: false, says: 'there is no such file' });
    expect(also('fishroom.txt', 'years')).toEqual({ ok: false, says: 'it is a folder' });
    expect(also('fishroom.txt', 'loop.txt')).toEqual({ ok: false, says: 'its links lead in a circle' });
    expect(also('fishroom.txt', 'nul\u0000')).toMatchObject({ ok: false });
  });
});

describe('finding the journal', () => {
  const at = (told: string | null, usual: string | undefined, ...there: string[]) =>
    findJournal((file) => there.includes(file), { told, usual, here: '/home/kim/fish/notes' });

  test('as told, else as the environment says, else here, else above', () => {
    expect(at('a.txt', 'b.txt', '/home/kim/fish/fishroom.txt')).toBe('/home/kim/fish/notes/a.txt');
    expect(at(null, '../b.txt', '/home/kim/fish/fishroom.txt')).toBe('/home/kim/fish/b.txt');
    expect(at(null, '', '/home/kim/fish/fishroom.txt', '/fishroom.txt')).toBe('/home/kim/fish/fishroom.txt');
    expect(at(null, undefined, '/fishroom.txt')).toBe('/fishroom.txt');
    expect(at(null, undefined)).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import { leftOutWords } from '../../src/cli/journal.ts';
import { tankside } from '../support/run.ts';

describe('the journal', () => {
  test('that is not found says how to begin', async () => {
    const { status, out, err } = await tankside(['due'], { cwd: '/room/rack' });
    expect([status, out]).toEqual([3, '']);
    expect(err).toBe(
      'no fishroom.txt here or in a folder above\nwrite: tankside start (writes one here), or --journal FILE\n',
    );
  });

  test('that was named and is not there is named in full', async () => {
    const told = await tankside(['due', '--journal', 'old/fish.txt']);
    expect([told.status, told.err]).toEqual([
      3,
      'there is no journal at /room/old/fish.txt\nwrite: tankside start --journal /room/old/fish.txt\n',
    ]);
    const here = await tankside(['due', '--journal', 'my fish.txt']);
    expect(here.err).toContain('write: tankside start --journal "my fish.txt"\n');
    const env = await tankside(['due'], { env: { TANKSIDE_JOURNAL: '/elsewhere/fish.txt' } });
    expect([env.status, env.err.split('\n')[0]]).toEqual([3, 'there is no journal at /elsewhere/fish.txt']);
  });

  test('is a file, and a folder that holds one says how it is named', async () => {
    const files = { '/room/fish/fishroom.txt': '2026-01-04 room: units metric\n', '/room/other/x.txt': '' };
    const folder = (name: string) => tankside(['due', '--journal', name], { files });
    expect((await folder('fish')).err).toBe(
      '/room/fish cannot be read: it is a folder\nwrite: --journal /room/fish/fishroom.txt\n',
    );
    const without = await folder('other');
    expect([without.status, without.err]).toEqual([3, '/room/other cannot be read: it is a folder\n']);
  });

  test('whose lines end in CR alone is refused: all of it would be one line', async () => {
    const text = '# our room\r2026-01-04 room: units metric\r2026-01-04 A1: chasing\r';
    for (const argv of [['due'], ['check'], ['tidy', '--write'], ['jot', 'room: all well']]) {
      const ran = await tankside(argv, { files: { '/room/fishroom.txt': text } });
      expect([ran.status, ran.out, ran.files['/room/fishroom.txt']]).toEqual([3, '', text]);
      expect(ran.err.replace(/\s+/g, ' ')).toContain('its lines end in CR alone; save it with line ends LF or CRLF');
    }
    const one = await tankside(['due'], { files: { '/room/fishroom.txt': '2026-01-04 room: units metric\r' } });
    expect([one.status, one.err]).toEqual([0, '']);
  });
});

describe('what was left out', () => {
  const line = (file: string, at: number) => ({ file, line: at });

  test('is told with its places, file by file', () => {
    expect(leftOutWords([])).toBeNull();
    expect(leftOutWords([line('fishroom.txt', 3)])).toBe(
      '1 line left out: fishroom.txt line 3; tankside check says why',
    );
    expect(leftOutWords([line('2025.txt', 7), line('fishroom.txt', 3), line('fishroom.txt', 9)])).toBe(
      '3 lines left out: 2025.txt line 7 and fishroom.txt lines 3 and 9; tankside check says why',
    );
  });

  test('is summed up where it is much', () => {
    const many = Array.from({ length: 40 }, (_, index) => line('fishroom.txt', index + 1));
    expect(leftOutWords(many)).toBe(
      '40 lines left out: fishroom.txt lines 1, 2, 3, 4 and 5 and 35 more; tankside check says why',
    );
  });
});

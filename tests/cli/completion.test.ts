import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { ASKED } from '../../src/cli/completion/next.ts';
import { COMMANDS } from '../../src/cli/registry.ts';
import type { World } from '../support/run.ts';
import { tankside } from '../support/run.ts';

const JOURNAL = `2026-01-01 loop Long: sump 100 L
2026-01-01 tank A1: 60 L; on Long
2026-01-01 tank B2: 60 L; alone
2026-01-01 tank Z9: 60 L; alone
2026-01-01 species krib: nest
2026-01-01 pair Rowan: krib; in A1
2026-01-01 auction Spring: on 2026-05-02
2026-02-02 A1: spawned brood Rowan-1, about 90 eggs
2026-02-03 A1: eggs gone
2026-03-02 A1: spawned brood Rowan-2, about 90 eggs
2026-03-03 Z9: retired
`;
const WORLD: World = { today: '2026-03-10', files: { '/room/fishroom.txt': JOURNAL, '/room/none.txt': '\n' } };

async function next(...before: string[]): Promise<readonly string[]> {
  const { status, out, err } = await tankside(['completion', 'words', '--', ...before], WORLD);
  expect([status, err]).toEqual([0, '']);
  return out.split('\n').slice(0, -1);
}

const COMMON = ['--journal', '--on', '--json', '--whole', '--help'];
const names = (words: readonly string[]): readonly string[] => words.filter((word) => !word.startsWith('-'));

describe('what may come next', () => {
  test('is every command at first, with the common options', async () => {
    expect(await next()).toEqual([...COMMANDS.map(({ name }) => name), ...COMMON, '--version']);
    expect(names(await next('--on', 'today'))).toContain('due');
    expect(names(await next('help'))).toContain('due');
    expect(await next('no-such')).toEqual([]);
  });

  test('is the options of the command', async () => {
    expect(await next('due')).toEqual(['--days', '--minutes', '--ics', ...COMMON]);
  });

  test('is what the command may be asked about, as far as it is in the room', async () => {
    expect(names(await next('pairs'))).toEqual(['Rowan', 'A1', 'B2']);
    expect(names(await next('water'))).toEqual(['A1', 'B2', 'Long']);
    expect(names(await next('broods'))).toEqual(['Rowan-2', 'Rowan']);
    expect(names(await next('settle'))).toEqual(['Spring']);
    expect(names(await next('chart'))).toEqual(expect.arrayContaining(['growth', 'A1', 'Rowan-2', 'Long', 'krib']));
    expect(names(await next('chart', 'growth'))).not.toContain('level');
    expect(names(await next('calc'))).toContain('ammonia');
  });

  test('is what the option before takes', async () => {
    expect(await next('sale', '--for')).toEqual(['Spring']);
    expect(await next('due', '--on')).toEqual(['today', 'yesterday', 'tomorrow', '+7', '+14']);
    expect(await next('history', '--pair')).toEqual(['Rowan']);
    expect(await next('history', '--tank')).toEqual(['A1', 'B2']);
    expect(await next('history', '--kind')).toContain('dispute');
    expect(await next('due', '--journal')).toEqual([]);
    expect(await next('due', '--days')).toEqual([]);
  });

  test('comes from the journal and the day that the line tells', async () => {
    expect(names(await next('pairs', '--journal', 'none.txt'))).toEqual([]);
    expect(names(await next('--journal=none.txt', 'pairs'))).toEqual([]);
    expect(names(await next('water', '--on', '2026-03-01'))).toEqual(['A1', 'B2', 'Z9', 'Long']);
    expect(names(await next('pairs', '--journal', 'gone.txt'))).toEqual([]);
    const own = await tankside(['completion', 'words', '--journal', 'none.txt', '--', 'pairs'], WORLD);
    expect(names(own.out.split('\n').slice(0, -1))).toEqual([]);
  });

  test('is nothing without words of its own', async () => {
    const { out } = await tankside(['completion', 'words', '--json', '--', 'settle'], WORLD);
    const said: unknown = JSON.parse(out);
    expect(said).toEqual({ version: 1, words: [...(await next('settle'))] });
  });

  test('is known of every command that takes words', async () => {
    for (const entry of COMMANDS) {
      const { takes } = (await entry.load()).command;
      expect([entry.name, ASKED.has(entry.name)]).toEqual([entry.name, takes !== '']);
    }
  });
});

describe('the script of a shell', () => {
  test.each(['bash', 'zsh', 'fish'])('%s asks for the words', async (shell) => {
    const { status, out, err } = await tankside(['completion', shell], {});
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('tankside completion words -- ');
    expect(out).toMatch(/^# for ~\//);
  });

  test('bash picks what begins as was typed, and options where one was begun', () => {
    const answers = `tankside() {
      if [ "$2" = bash ]; then cat; else printf '%s\\n' due --days "O'Neil" Rowan-1 Rowan-2; fi
    }`;
    const picked = (typed: string, script: string): string => {
      const line = `COMP_WORDS=(tankside why ${typed}); COMP_CWORD=2; _tankside; printf '%s|' "\${COMPREPLY[@]}"`;
      const { stdout } = spawnSync('bash', ['--norc', '-c', `${answers}\n${script}\n${line}`], { encoding: 'utf8' });
      return stdout;
    };
    return tankside(['completion', 'bash'], {}).then(({ out }) => {
      expect(picked('Ro', out)).toBe('Rowan-1|Rowan-2|');
      expect(picked('--', out)).toBe('--days|');
      expect(picked("''", out)).toBe("due|O\\'Neil|Rowan-1|Rowan-2|");
    });
  });

  test('of another shell there is none', async () => {
    expect(await tankside(['completion', 'tcsh'], {})).toMatchObject({
      status: 2,
      out: '',
      err: 'there is no completion for «tcsh»\nwrite: tankside completion bash\n',
    });
    expect((await tankside(['completion'], {})).err).toBe(
      'completion takes one of bash, zsh, fish\nwrite: tankside completion bash\n',
    );
  });
});

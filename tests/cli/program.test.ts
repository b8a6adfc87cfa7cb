import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/registry.ts';
import { tankside } from '../support/run.ts';

describe('help', () => {
  test('lists every command on eighty columns', async () => {
    const { status, out, err } = await tankside(['--help']);
    expect([status, err]).toEqual([0, '']);
    for (const { name, summary } of COMMANDS) {
      expect(out).toMatch(new RegExp(`^  ${name} +${summary.split(' ')[0] ?? ''}`, 'm'));
    }
    expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80);
  });

  test('is what tankside alone, -h and help say', async () => {
    const { out } = await tankside(['--help']);
    for (const argv of [[], ['-h'], ['help']]) expect((await tankside(argv)).out).toBe(out);
  });

  test.each(COMMANDS.map(({ name }) => name))('of %s shows how to type it and an example', async (name) => {
    const { status, out, err } = await tankside([name, '--help']);
    expect([status, err]).toEqual([0, '']);
    expect(out.split('\n')[0]).toMatch(new RegExp(`^${name}: \\S`));
    expect(out).toContain('--journal FILE');
    expect(out.split('for example')[1]).toContain(`  tankside ${name}`);
    expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80);
    expect((await tankside(['help', name])).out).toBe(out);
    expect((await tankside(['--help', name])).out).toBe(out);
  });
});

test('the version is one line', async () => {
  expect((await tankside(['--version'])).out).toMatch(/^tankside \S.*\n$/);
});

test('common options are read before the name of the command and after it', async () => {
  const none = 'there is no journal at /room/x.txt';
  const tries = [
    ['--journal', 'x.txt', 'due'],
    ['due', '--journal', 'x.txt'],
    ['due', '--days', '3', '--journal=x.txt'],
    ['--json', '--on', '-3', '--journal=x.txt', 'due', '--days=3'],
  ];
  for (const argv of tries) {
    const { status, err } = await tankside(argv);
    expect([status, err.split('\n')[0]]).toEqual([3, none]);
  }
});

describe('wrong use', () => {
  const wrong = async (...argv: string[]): Promise<readonly [number, string, string]> => {
    const { status, out, err } = await tankside(argv);
    return [status, out, err];
  };

  test('names the nearest command', async () => {
    expect(await wrong('deu')).toEqual([2, '', 'there is no command «deu»\nwrite: tankside due\n']);
    expect(await wrong('help', 'strat')).toEqual([2, '', 'there is no command «strat»\nwrite: tankside start\n']);
    expect(await wrong('feed-the-cat')).toEqual([
      2,
      '',
      'there is no command «feed-the-cat»\nwrite: tankside --help\n',
    ]);
  });

  test('names the nearest option', async () => {
    expect(await wrong('due', '--dys', '3')).toEqual([
      2,
      '',
      'due has no option «--dys»\nwrite: tankside due --days\n',
    ]);
    expect(await wrong('--jsn')).toEqual([2, '', 'there is no option «--jsn»\nwrite: tankside --help\n']);
  });

  test('says where an option of a command belongs', async () => {
    expect(await wrong('--days', '3', 'due')).toEqual([
      2,
      '',
      '«--days» belongs after the name of its command\nwrite: tankside COMMAND --days\n',
    ]);
  });

  test('takes no option for what another one wants', async () => {
    expect(await wrong('sale', '--csv', '--on', '2026-02-14')).toEqual([
      2,
      '',
      '--csv needs a word after it\nwrite: tankside sale --csv FILE\n',
    ]);
    expect(await wrong('sale', '--for', '--plan')).toEqual([
      2,
      '',
      '--for needs a word after it\nwrite: tankside sale --for AUCTION\n',
    ]);
  });

  test('says what an option takes', async () => {
    expect(await wrong('due', '--days')).toEqual([
      2,
      '',
      '--days needs a word after it\nwrite: tankside due --days DAYS\n',
    ]);
  });

  test('takes no empty text for what an option wants', async () => {
    const says = '--journal needs a word after it\nwrite: tankside due --journal FILE\n';
    expect(await wrong('due', '--journal', '')).toEqual([2, '', says]);
    expect(await wrong('--journal=', 'due')).toEqual([2, '', says]);
    expect(await wrong('settle', 'Autumn', '--sheet', ' ')).toEqual([
      2,
      '',
      '--sheet needs a word after it\nwrite: tankside settle AUCTION --sheet FILE\n',
    ]);
  });

  test('asks which of two values is meant; the same one twice is that one', async () => {
    expect(await wrong('due', '--on', '2026-02-14', '--days', '3', '--on', 'today')).toEqual([
      2,
      '',
      '--on is given twice: «2026-02-14» and «today»\nwrite: tankside due --on DATE\n',
    ]);
    const [status, , err] = await wrong('--journal', 'x.txt', 'due', '--json', '--journal', 'x.txt', '--json');
    expect([status, err.split('\n')[0]]).toEqual([3, 'there is no journal at /room/x.txt']);
  });

  test.each([
    [['sale', '--boxes', '2'], '--boxes changes nothing without --plan\nwrite: --plan --boxes COUNT\n'],
    [['sale', '--for', 'Autumn', '--oxygen'], '--oxygen changes nothing without --plan\nwrite: --plan --oxygen\n'],
    [
      ['settle', 'Autumn', 'x.csv', '--hours', '5'],
      '--hours changes nothing without --sheet\nwrite: --sheet FILE --hours HOURS\n',
    ],
    [['water', 'C1', '--tap', '5'], '--tap changes nothing without --target\nwrite: --target "NO3 20" --tap NUMBER\n'],
    [['water', '--air', '16'], '--air changes nothing without --cut\nwrite: --cut --air NUMBER\n'],
  ])('says what an option needs beside it: %s', async (argv, says) => {
    expect(await wrong(...argv)).toEqual([2, '', says]);
  });

  test.each([
    [
      ['sale', '--for', 'Autumn', '--ahead', '28'],
      '--ahead changes nothing beside --for\nwrite: --for AUCTION, or --ahead DAYS\n',
    ],
    [
      ['water', '--cut', '--target', 'NO3 20'],
      '--target changes nothing beside --cut\nwrite: --cut, or --target "NO3 20"\n',
    ],
    [['water', 'C1', '--cut'], '--cut ranks every tank of the room, and got «C1»\nwrite: tankside water --cut\n'],
  ])('says which two options cannot both be meant: %s', async (argv, says) => {
    expect(await wrong(...argv)).toEqual([2, '', says]);
  });

  test('takes it beside any of those that make use of it', async () => {
    for (const argv of [
      ['sale', '--plan', '--boxes', '2'],
      ['sale', '--html', '-', '--boxes', '2'],
      ['sale', '--ics', '-', '--oxygen'],
      ['water', '--target', 'NO3 20', '--tap', '5'],
      ['water', '--cut', '--air', '16'],
    ]) {
      const { status, err } = await tankside(argv, { files: { '/room/fishroom.txt': '' } });
      expect([status, err]).toEqual([0, '']);
    }
  });

  test('refuses words where a command takes none, and asks for them where it needs some', async () => {
    expect(await wrong('start', 'here')).toEqual([
      2,
      '',
      'start takes no words, and got «here»\nwrite: tankside start\n',
    ]);
    expect(await wrong('sale', 'Autumn')).toEqual([
      2,
      '',
      'sale takes no words, and got «Autumn»\nwrite: tankside sale --for Autumn\n',
    ]);
    expect(await wrong('why')).toEqual([2, '', 'why needs the words of a row\nwrite: tankside why A1 dispute\n']);
  });

  test('prints what was typed without what would move the cursor', async () => {
    const [, , err] = await wrong('due', '--\u001b[2Jx');
    expect(err).not.toContain('\u001b');
  });
});

test('words about wrong use fit the width; what is to be copied stays whole', async () => {
  const files = { '/room/fishroom.txt': '2026-01-04 room: units metric\n' };
  const asked = ['money', ...Array.from({ length: 12 }, () => 'nobody-of-this-name')];
  for (const [columns, most] of [
    [undefined, 80],
    [50, 50],
  ] as const) {
    const { status, err } = await tankside(asked, { files, ...(columns === undefined ? {} : { columns }) });
    expect(status).toBe(2);
    expect(err.split('\n').length).toBeGreaterThan(3);
    expect(err.split('\n').filter((line) => line.length > most)).toEqual([]);
    expect(err.replace(/\n/g, ' ')).toContain('nobody-of-this-name» on that day');
  }
  const long = `/room/${'deep/'.repeat(20)}x.txt`;
  expect((await tankside(['due', '--journal', long])).err).toContain(`\n${long}\n`);
});

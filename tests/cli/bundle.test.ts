import fs from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { COMMANDS } from '../../src/cli/registry.ts';
import { buildBundle, type Bundle } from '../support/bundle.ts';
import { SAMPLE } from '../support/sample.ts';

let bundle: Bundle;
let journal = '';

beforeAll(() => {
  bundle = buildBundle();
  journal = path.join(bundle.folder, 'room.txt');
  fs.writeFileSync(journal, SAMPLE);
}, 60_000);

afterAll(() => {
  bundle.remove();
});

const due = (...more: readonly string[]): string[] => ['due', '--journal', journal, '--on', '2026-02-15', ...more];

describe('the built program', () => {
  test('tells its version', () => {
    expect(bundle.run(['--version'])).toEqual({ status: 0, out: `tankside ${packageFile.version}\n`, err: '' });
  });

  test('lists every command, and helps with each, within 80 columns', () => {
    const { status, out, err } = bundle.run(['--help']);
    expect([status, err]).toEqual([0, '']);
    for (const { name } of COMMANDS) expect(out).toMatch(new RegExp(`^ +${name} `, 'm'));
    for (const name of ['due', 'chart', 'why']) {
      const help = bundle.run([name, '--help']);
      expect([help.status, help.err]).toEqual([0, '']);
      expect(help.out).toContain(`tankside ${name}`);
      for (const line of `${out}${help.out}`.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
    }
  });

  test('answers due on the sample on standard output alone', () => {
    const { status, out, err } = bundle.run(due());
    expect([status, err]).toEqual([0, '']);
    expect(out.split('\n')[0]).toMatch(/^2026-02-15/);
    expect(out).toContain('lights on');
    // A pipe gets no colours and no control characters.
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  });

  test('gives JSON that parses, and the same bytes twice', () => {
    const first = bundle.run(due('--json'));
    expect(JSON.parse(first.out)).toMatchObject({ version: 1, on: '2026-02-15', leftOut: 0 });
    expect(bundle.run(due('--json'))).toEqual(first);
  });

  test('ends with 2 and the nearest command for one that it does not know', () => {
    expect(bundle.run(['deu'])).toEqual({
      status: 2,
      out: '',
      err: 'there is no command «deu»\nwrite: tankside due\n',
    });
  });

  test('ends with 3 where there is no journal', () => {
    expect(bundle.run(['due'])).toEqual({
      status: 3,
      out: '',
      err: 'no fishroom.txt here or in a folder above\nwrite: tankside start (writes one here), or --journal FILE\n',
    });
  });

  test('ends with 1 where check finds a line that does not count, and shows it', () => {
    const wrong = path.join(bundle.folder, 'wrong.txt');
    fs.writeFileSync(wrong, `${SAMPLE}2026-03-11 A9: eggs seen\n`);
    const { status, out } = bundle.run(['check', '--journal', wrong, '--on', '2026-03-12']);
    expect(status).toBe(1);
    expect(out).toContain('«A9»');
    const answered = bundle.run(['due', '--journal', wrong, '--on', '2026-03-12']);
    expect(answered.status).toBe(0);
    expect(answered.err).toBe('1 line left out: wrong.txt line 27; tankside check says why\n');
    expect(bundle.run(['due', '--whole', '--journal', wrong, '--on', '2026-03-12']).status).toBe(1);
  });

  test('ends quietly where the reader of its output has gone', async () => {
    expect(await bundle.closedPipe(due())).toEqual({ status: 0, err: '' });
    expect(await bundle.closedPipe(['--help'])).toEqual({ status: 0, err: '' });
  });

  test('paints at a terminal, and not under NO_COLOR', () => {
    const painted = bundle.atTerminal(due(), 80);
    const plain = bundle.atTerminal(due(), 80, { NO_COLOR: '1' });
    expect([painted.status, plain.status]).toEqual([0, 0]);
    expect(painted.out).toContain('\u001b[');
    expect(plain.out).not.toContain('\u001b');
    // The colours say nothing that the words do not.
    expect(painted.out.replace(/\u001b\[[\d;]*m/g, '')).toBe(plain.out);
  });

  test.each(['due', 'walk', 'pairs', 'broods', 'tanks', 'loops', 'water', 'sale', 'chart level Long', 'why long'])(
    'keeps %s within a terminal of 40 columns',
    (words) => {
      const line = [...words.split(' '), '--journal', journal, '--on', '2026-03-11'];
      const { status, out } = bundle.atTerminal(line, 40, { NO_COLOR: '1' });
      expect(status).toBe(0);
      expect(out.split('\n').length).toBeGreaterThan(1);
      for (const one of out.split('\n')) expect(one.length, one).toBeLessThanOrEqual(40);
    },
  );

  test('appends what jot is told, and what it says is on the disk', () => {
    const mine = path.join(bundle.folder, 'mine.txt');
    fs.writeFileSync(mine, SAMPLE);
    const { status, err } = bundle.run(['jot', '--journal', mine, '--on', '2026-03-11', 'C1: Rowan-1 died 2']);
    expect([status, err]).toEqual([0, '']);
    expect(fs.readFileSync(mine, 'utf8')).toBe(`${SAMPLE}2026-03-11 C1: Rowan-1 died 2\n`);
  });
});

describe('the compiled form beside the program', () => {
  const form = (): string => path.join(bundle.folder, 'tankside-code.cache');

  test.each([
    ['missing', () => null],
    ['empty', () => Buffer.alloc(0)],
    ['cut short', (whole: Buffer) => whole.subarray(0, whole.length / 2)],
    ['no such thing', () => Buffer.from('2026-02-15 A1: all well\n'.repeat(50))],
    [
      "another engine's",
      (whole: Buffer) => Buffer.concat([whole.subarray(0, 4), Buffer.alloc(4, 7), whole.subarray(8)]),
    ],
  ])('may be %s: the answer is the same', (_, change) => {
    const answer = bundle.run(due());
    const whole = fs.readFileSync(form());
    const changed = change(whole);
    if (changed === null) fs.rmSync(form());
    else fs.writeFileSync(form(), changed);
    try {
      expect(bundle.run(due())).toEqual(answer);
    } finally {
      fs.writeFileSync(form(), whole);
    }
  });
});

describe('the day', () => {
  const FAR = ['Pacific/Auckland', 'America/New_York'] as const;

  test('asked about gives the same answer in every time zone', () => {
    const [first, second] = FAR.map((TZ) => bundle.run(due(), { TZ }));
    expect(second).toEqual(first);
  });

  test('is that of the zone that the room names, wherever the machine stands', () => {
    const day = (TZ: string, file: string): string => bundle.run(['due', '--journal', file], { TZ }).out.slice(0, 10);
    const [before, ...named] = [dayIn('Europe/Dublin'), ...FAR.map((TZ) => day(TZ, journal))];
    expect(named.every((one) => [before, dayIn('Europe/Dublin')].includes(one))).toBe(true);
    // Without a zone it is the machine's own.
    const nowhere = path.join(bundle.folder, 'nowhere.txt');
    fs.writeFileSync(nowhere, SAMPLE.replace('; zone Europe/Dublin', ''));
    for (const TZ of FAR) {
      const early = dayIn(TZ);
      const told = day(TZ, nowhere);
      expect([early, dayIn(TZ)]).toContain(told);
    }
  });
});

function dayIn(timeZone: string): string {
  return new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }).format(new Date());
}

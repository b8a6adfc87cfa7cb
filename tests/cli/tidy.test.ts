import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { asPhone } from '../support/phone.ts';
import { tankside } from '../support/run.ts';
import type { Ran } from '../support/run.ts';

const SAMPLE = readFileSync(new URL('../corpus/sample.txt', import.meta.url), 'utf8');
const NAMED = SAMPLE.replace('A1: spawned, about', 'A1: spawned brood Rowan-1, about')
  .replace('free-swimming, about 70, fed', 'free-swimming, about 70; fed')
  .replace('made up, lights on', 'made up; lights on')
  .replace('pinned, torn fin', 'pinned; torn fin')
  .replace('off the loop, air filter in', 'off the loop; air filter in')
  .replace('Rowan-1 moved about 45 to', 'moved about 45 Rowan-1 to');

function tidy(files: Record<string, string>, ...argv: readonly string[]): Promise<Ran> {
  return tankside(['tidy', ...argv], { today: '2026-11-25', files });
}

function one(journal: string, ...argv: readonly string[]): Promise<Ran> {
  return tidy({ '/room/fishroom.txt': journal }, ...argv);
}

describe('tankside tidy', () => {
  it('shows each line as it was and as it becomes, and changes nothing', async () => {
    const ran = await one(SAMPLE);
    expect(ran.out).toContain('   was:  2026-02-02 07:40 A1: spawned, about 90 eggs "left cave"');
    expect(ran.out).toContain('   now:  2026-02-02 07:40 A1: spawned brood Rowan-1, about 90 eggs "left cave"');
    expect(ran.out).toContain('nothing is changed yet');
    expect(ran.files['/room/fishroom.txt']).toBe(SAMPLE);
  });

  it('writes them with --write, and has nothing to do the second time', async () => {
    const ran = await one(SAMPLE, '--write');
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.files['/room/fishroom.txt']).toBe(NAMED);
    expect((await one(NAMED)).out).toBe('nothing to tidy: every line that is read is in its usual form\n');
  });

  it('names the file that it would need and cannot read', async () => {
    const lacking = `also read "2024.txt"\n${NAMED}`;
    const { status, out, err, files } = await one(lacking, '--write');
    expect([status, out, files['/room/fishroom.txt']]).toEqual([3, '', lacking]);
    expect(err).toBe('not all of the journal can be read: «2024.txt», there is no such file\nwrite: tankside check\n');
  });

  it('says which lines it leaves alone because nobody can read them', async () => {
    const broken = `${NAMED}2026-03-11 nonsense\n`;
    for (const argv of [[], ['--write'], ['--json']]) {
      const { status, err, files } = await one(broken, ...argv);
      expect([status, files['/room/fishroom.txt']]).toEqual([0, broken]);
      expect(err).toMatch(/^1 line left out: fishroom\.txt line \d+; tankside check says why\n$/);
    }
    expect((await one(broken, '--whole')).status).toBe(1);
  });

  it('makes the same of phone punctuation', async () => {
    expect((await one(asPhone(SAMPLE), '--write')).files['/room/fishroom.txt']).toBe(NAMED);
  });

  it('keeps CRLF line ends, and a last line without one', async () => {
    const crlf = SAMPLE.trimEnd().replaceAll('\n', '\r\n');
    expect((await one(crlf, '--write')).files['/room/fishroom.txt']).toBe(NAMED.trimEnd().replaceAll('\n', '\r\n'));
  });

  it('keeps a byte-order mark', async () => {
    expect((await one(`\ufeff${SAMPLE}`, '--write')).files['/room/fishroom.txt']).toBe(`\ufeff${NAMED}`);
  });

  it('leaves a line that is not understood byte for byte', async () => {
    const odd = '2026-03-11  a1:  Chasign ,  lights off . # odd';
    const ran = await one(`${SAMPLE}${odd}\n`, '--write');
    expect(ran.files['/room/fishroom.txt']).toBe(`${NAMED}${odd}\n`);
  });

  it('keeps comments, blank lines and the units that a line was written in', async () => {
    const journal = [
      '# My room',
      '',
      '2026-01-01 room: units metric',
      '2026-01-01 tank A1: 36 x 18 x 16 in; alone   # a gift',
      '2026-01-02 a1: wc 2 us gal, Topped up 1,5 L',
      '',
    ].join('\n');
    const ran = await one(journal, '--write');
    expect(ran.files['/room/fishroom.txt']?.split('\n')).toEqual([
      '# My room',
      '',
      '2026-01-01 room: units metric',
      '2026-01-01 tank A1: 36 x 18 x 16 in; alone   # a gift',
      '2026-01-02 A1: water change 2 US gal; topped up 1.5 L',
      '',
    ]);
  });

  it('tidies the files that the journal reads in, each in its place', async () => {
    const files = {
      '/room/fishroom.txt': 'also read "2025.txt"\n2026-01-02 a1: All well\n',
      '/room/2025.txt': '2025-01-01 tank A1: 54 L ; alone\n',
    };
    const ran = await tidy(files, '--write');
    expect(ran.files['/room/fishroom.txt']).toBe('also read "2025.txt"\n2026-01-02 A1: all well\n');
    expect(ran.files['/room/2025.txt']).toBe('2025-01-01 tank A1: 54 L; alone\n');
  });

  it('gives the changes as JSON', async () => {
    const ran = await one('2025-01-01 tank A1: 54 L; alone\n2026-01-02 a1: all well\n', '--json');
    expect(JSON.parse(ran.out)).toEqual({
      version: 1,
      written: false,
      files: [
        {
          file: 'fishroom.txt',
          changes: [{ line: 2, was: '2026-01-02 a1: all well', becomes: '2026-01-02 A1: all well' }],
        },
      ],
    });
  });

  const workshop = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');

  it.each([
    ['the sample', SAMPLE, '2026-03-01'],
    ['the sample from a phone', asPhone(SAMPLE), '2026-03-01'],
    ['the workshop', workshop, '2026-06-01'],
  ])('leaves every answer about %s as it was', async (_name, journal, on) => {
    const after = (await one(journal, '--write')).files['/room/fishroom.txt'] ?? '';
    expect(after).not.toBe(journal);
    for (const question of ['due', 'broods', 'pairs', 'sale', 'holds', 'loops']) {
      const ask = async (text: string): Promise<string> =>
        (await tankside([question, '--on', on, '--json'], { files: { '/room/fishroom.txt': text } })).out;
      expect(await ask(after)).toBe(await ask(journal));
    }
  });
});

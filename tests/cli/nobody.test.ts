/** A name that nobody has: what is wrong, and a command to type instead that is answered. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

const SAMPLE = readFileSync(new URL('../corpus/sample.txt', import.meta.url), 'utf8');

const run = (argv: readonly string[], text = SAMPLE) =>
  tankside(argv, { today: '2026-03-20', files: { '/room/fishroom.txt': text } });

/** The words of the command after `write:`, without what stands behind it in brackets. */
function written(err: string): readonly string[] {
  const line = /^write: tankside (.*)$/m.exec(err)?.[1] ?? '';
  return line.replace(/ \(.*\)$/, '').split(' ');
}

const NEAR: readonly (readonly [string, string])[] = [
  ['broods Rowen-1', 'broods Rowan-1'],
  ['pairs Rowen', 'pairs Rowan'],
  ['water Lnog', 'water Long'],
  ['kin Rowen-1', 'kin Rowan-1'],
  ['money Rowen', 'money Rowan'],
  ['history --pair Rowen', 'history --pair Rowan'],
  ['history --brood Rowen-1', 'history --brood Rowan-1'],
];

describe('a name like another', () => {
  test.each(NEAR)('%s', async (typed, meant) => {
    const { status, out, err } = await run(typed.split(' '));
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(`«${typed.split(' ').at(-1) ?? ''}»`);
    expect(written(err).join(' ')).toBe(meant);
    expect((await run(written(err))).status).toBe(0);
  });
});

const FAR = ['broods', 'pairs', 'water', 'kin', 'money', 'history --pair', 'history --tank', 'history --brood'];

describe('a name like none', () => {
  test.each(FAR)('%s', async (typed) => {
    const { status, out, err } = await run([...typed.split(' '), 'Quillwort']);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('«Quillwort»');
    expect((await run(written(err))).status).toBe(0);
  });

  test.each(['broods', 'pairs', 'water', 'kin', 'money'])('%s of an empty journal', async (typed) => {
    const { status, err } = await run([typed, 'Quillwort'], '');
    expect(status).toBe(2);
    expect((await run(written(err), '')).status).toBe(0);
  });
});

test('a day that is none is told by the name of its option', async () => {
  for (const [option, ...argv] of [
    ['--since', 'history', '--since', '2026-02-30'],
    ['--until', 'history', '--until', '2026-02-30'],
    ['--since', 'money', '--since', '2026-02-30'],
    ['--since', 'chart', 'level', 'Long', '--since', '2026-02-30'],
    ['--on', 'due', '--on', '2026-02-30'],
  ]) {
    const { status, out, err } = await run(argv);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(new RegExp(`^«2026-02-30» is no date that exists\nwrite: ${option ?? ''} 2026-02-14 `));
  }
});

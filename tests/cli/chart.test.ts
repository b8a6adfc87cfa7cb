import { expect, test } from 'vitest';
import { SAMPLE } from '../support/sample.ts';
import { tankside } from '../support/run.ts';

const FILES = { '/room/fishroom.txt': SAMPLE };
const AT = { today: '2026-02-15', files: FILES };

test.each([80, 60, 40])('a chart keeps to %i columns', async (columns) => {
  for (const words of [
    ['level', 'Long'],
    ['growth', 'Rowan-1'],
    ['survival', 'Rowan-1'],
  ]) {
    const { status, out } = await tankside(['chart', ...words], { ...AT, columns });
    expect(status).toBe(0);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(columns);
  }
});

test('the SVG goes into a new file, and over an older picture', async () => {
  const first = await tankside(['chart', 'level', 'Long', '--svg', 'long.svg'], AT);
  expect(first).toMatchObject({ status: 0, out: 'long.svg is written: prefilter of Long\n', err: '' });
  const svg = first.files['/room/long.svg'] ?? '';
  expect(svg).toMatch(/^<svg .*<\/svg>\n$/s);
  const files = { ...FILES, '/room/long.svg': '<svg old/>\n' };
  const second = await tankside(['chart', 'level', 'Long', '--svg', 'long.svg'], { ...AT, files });
  expect(second.files['/room/long.svg']).toBe(svg);
});

test('a picture is never written over anything else', async () => {
  const run = await tankside(['chart', 'level', 'Long', '--svg', 'fishroom.txt'], AT);
  expect(run.status).toBe(3);
  expect(run.out).toBe('');
  expect(run.err).toContain('fishroom.txt is there already and is no SVG: it is left as it is');
  expect(run.files['/room/fishroom.txt']).toBe(SAMPLE);
});

test('the SVG goes to standard output for -, and the same with JSON beside a file', async () => {
  const { files, out } = await tankside(['chart', 'level', 'Long', '--svg', '-'], AT);
  expect(out).toMatch(/^<svg /);
  expect(Object.keys(files)).toEqual(Object.keys(FILES));
  const both = await tankside(['chart', 'level', 'Long', '--svg', 'long.svg', '--json'], AT);
  expect(JSON.parse(both.out)).toMatchObject({ version: 1, on: '2026-02-15', id: 'chart-level-long' });
  expect(both.files['/room/long.svg']).toBe(out);
});

test('JSON has the model as data', async () => {
  const { out } = await tankside(['chart', 'level', 'Long', '--json'], AT);
  expect(JSON.parse(out)).toMatchObject({
    title: 'prefilter of Long',
    up: 'level, mm above the chamber floor',
    marks: [{ name: 'spills at', value: 80 }],
    moments: [{ name: 'all layers cleaned', days: ['2026-01-11'] }],
    lines: [{ file: 'fishroom.txt', line: 2 }, { line: 14 }, { line: 15 }, { line: 18 }, { line: 20 }],
  });
});

test('--since leaves out what came before', async () => {
  const { out } = await tankside(['chart', 'level', 'Long', '--since', '2026-02-01', '--json'], AT);
  expect(JSON.parse(out)).toMatchObject({
    series: [{ points: [{ day: '2026-02-04' }, { day: '2026-02-10' }] }, {}, {}],
  });
});

test('words that ask for nothing that is there are refused with what to type', async () => {
  const run = await tankside(['chart', 'levl', 'Long'], AT);
  expect(run).toMatchObject({ status: 2, out: '' });
  expect(run.err).toContain('write: tankside chart level Long');
});

test('why takes the id of a chart', async () => {
  const { status, out } = await tankside(['why', 'chart-level-long'], AT);
  expect(status).toBe(0);
  expect(out).toContain('prefilter of Long');
  expect(out).toContain('rule');
});

test('a kind without a name is answered with that kind', async () => {
  const { status, err } = await tankside(['chart', 'level'], AT);
  expect(status).toBe(2);
  expect(err).toContain('write: tankside chart level Long');
});

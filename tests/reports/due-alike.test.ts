import { expect, test } from 'vitest';
import { tankside } from '../support/run.ts';

const room = (tanks: readonly string[], litres: (i: number) => number): string =>
  [
    '2026-01-04 room: units metric',
    ...tanks.map((tank, i) => `2026-01-04 tank ${tank}: ${litres(i)} L; alone; sponge filter`),
    ...tanks.map((tank) => `2026-01-04 ${tank}: water change 30 % every 7 days`),
    '2026-01-06 room: all well',
    '',
  ].join('\n');

const due = async (text: string): Promise<string> =>
  (
    await tankside(['due', '--on', '2026-01-08'], {
      files: { '/room/fishroom.txt': text },
      columns: 80,
      env: { NO_COLOR: '1' },
    })
  ).out;

test('tanks that want the same on the same day are told in one row with one line to jot', async () => {
  const out = await due(room(['G1', 'G2', 'G3'], (i) => 50 + i * 10));
  expect(out).toMatch(/^G1 G2 G3 +by 11 Jan +water change 30 %$/m);
  expect(out).toContain('jot  G1 G2 G3: water change 30 %');
  expect(out.match(/jot /g)).toHaveLength(1);
});

test('litres are told where they are the same', async () => {
  expect(await due(room(['G1', 'G2'], () => 60))).toMatch(/^G1 G2 +by 11 Jan +water change 30 % \(about/m);
});

test('no row holds more than four tanks', async () => {
  const out = await due(room(['G1', 'G2', 'G3', 'G4', 'G5'], () => 60));
  expect(out).toContain('jot  G1 G2 G3 G4: water change 30 %');
  expect(out).toContain('jot  G5: water change 30 %');
});

test('what differs in its date stays apart', async () => {
  const text = room(['G1', 'G2'], () => 60).replace('2026-01-06 room: all well', '2026-01-06 G1: water change 30 %');
  const out = await due(text);
  expect(out).not.toContain('G1 G2');
});

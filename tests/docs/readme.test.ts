import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withScreens } from '../support/readme.ts';

const page = readFileSync('README.md', 'utf8');

test('the README shows what the commands print', async () => {
  expect(page).toContain('<!-- end of screens -->');
  expect(await withScreens(page)).toBe(page);
});

test('the README states the job first, then the two commands', () => {
  const [, first = ''] = page.split('\n\n');
  expect(first).toMatch(/breeds pair-bonding fish/);
  const commands = [...page.matchAll(/```sh\n(.*)\n```/g)].map((match) => match[1]);
  expect(commands).toEqual([
    'npm ci && npx tankside due --journal examples/workshop/fishroom.txt --on 2026-11-22',
    'npm ci && npm test',
  ]);
});

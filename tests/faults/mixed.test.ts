/** Jot, settle and tidy at once on one journal of the real disk, and killed; `npm run faults` does it for longer. */
import fs from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { KINDS } from '../support/deeds.ts';
import { folder } from '../support/folder.ts';
import { buildAppender } from '../support/processes.ts';
import { mixedTogether } from '../tools/faults/commands.ts';
import { oddPlaces } from '../tools/faults/disks.ts';
import { buildVictim, killedInside } from '../tools/faults/kills.ts';

vi.setConfig({ testTimeout: 120_000 });

interface Said {
  readonly what: string;
  readonly wrong: readonly string[];
}

async function told(run: (tell: (what: string, wrong: readonly string[]) => void) => Promise<void>): Promise<Said[]> {
  const said: Said[] = [];
  await run((what, wrong) => said.push({ what, wrong }));
  return said;
}

describe('commands that write', () => {
  test('four at once lose nothing of each other', async () => {
    const place = folder();
    const said = await told((tell) => mixedTogether(place, buildAppender(place, 'writer'), 1, tell));
    expect(said.map(({ wrong }) => wrong)).toEqual([[]]);
    expect(said[0]?.what).toContain(' 80 told as done');
  });

  test.each(KINDS)('%s killed in the midst of it loses nothing', async (kind) => {
    const place = folder();
    const victim = buildVictim(place, false);
    const said = await told((tell) => killedInside(place, victim, kind, 4, tell));
    expect(said.map(({ wrong }) => wrong)).toEqual([[]]);
    // The first is killed once it is told: only then it is known what there is to hit.
    expect(said[0]?.what).toMatch(/ [1-9]\d* once told as done/);
    expect(fs.readdirSync(place)).toEqual(['victim.cjs']);
  });

  test('keep links, mode and owner, and pass the lock of a dead writer', async () => {
    const said = await told((tell) => oddPlaces(folder(), tell));
    expect(said.map(({ wrong }) => wrong)).toEqual([[]]);
  });
});

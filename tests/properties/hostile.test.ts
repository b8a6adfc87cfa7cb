/** A short run of `npm run fuzz`: the same journals every time. */
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/registry.ts';
import { ASKED } from '../support/asked.ts';
import { GIANTS } from '../support/giants.ts';
import { askHostile } from '../support/laws.ts';
import { tankside } from '../support/run.ts';

const ROUNDS = 80;

describe('what hostile journals are asked', () => {
  it.each(COMMANDS.map((entry) => [entry.name, entry] as const))(
    '%s, with every option of its own',
    async (name, entry) => {
      const words = new Set(ASKED.filter((asked) => asked.split(' ')[0] === name).flatMap((asked) => asked.split(' ')));
      expect([...words]).toContain(name);
      const { command } = await entry.load();
      const options = command.flags.map(({ spelling }) => spelling.split(' ')[0] ?? '');
      // The options of a calculation are drawn with its example.
      expect(options.filter((option) => !words.has(option) && name !== 'calc')).toEqual([]);
    },
  );
});

describe('any journal', { timeout: 120_000 }, () => {
  it('gets an answer or a reason from every command, and nothing that acts on a terminal', async () => {
    for (let seed = 1; seed <= ROUNDS; seed += 1) {
      const { argv, wrong } = await askHostile(seed);
      expect(wrong, `seed ${seed}: ${argv.join(' ')}`).toEqual([]);
    }
  });

  it.each(GIANTS.map((giant) => [giant.name, giant] as const))('%s: a twentieth of it is read', async (_, giant) => {
    const { status, err } = await tankside(['check'], { files: { '/room/fishroom.txt': giant.journal(0.05) } });
    expect(err).toBe('');
    expect([0, 1]).toContain(status);
  });
});

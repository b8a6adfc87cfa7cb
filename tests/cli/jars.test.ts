/** A jar past its days that still gives is not told as one of which nothing need be feared. */
import { expect, it } from 'vitest';
import { tankside } from '../support/run.ts';

const JAR = '2026-01-01 culture M1: microworm\n2026-01-01 M1: started\n2026-02-09 M1: harvested\n';

async function ask(on: string, ...words: readonly string[]): Promise<string> {
  return (await tankside([...words, '--on', on], { files: { '/room/fishroom.txt': JAR } })).out;
}

it('a harvest keeps it among the live ones until ten days later, with a word that it is past its days', async () => {
  expect(await ask('2026-02-03', 'cultures')).toMatch(/M1 +microworm +live /u);
  const past = await ask('2026-02-10', 'cultures');
  expect(past).toMatch(/M1 +microworm +gives still: smell it/u);
  expect(past).toContain('1 live jar');
  expect(await ask('2026-02-20', 'cultures')).toMatch(/M1 +microworm +likely sour: smell it/u);
});

it('why says which harvest that rests on', async () => {
  expect(await ask('2026-02-10', 'why', 'm1-jar')).toContain('harvested 9 Feb, which shows it alive for 10 days');
});

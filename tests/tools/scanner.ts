/**
 * The limit that the benchmark measures against: a scanner written by hand for the journals of
 * `generate.ts` and no others, with the fold that the tool has. `scanner.test.ts` shows that it finds the
 * very same events. Tells how many of what there are, so that nothing of the work can be left out.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { toDay } from '../../src/core/day.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { scan } from './scanner/scan.ts';

async function main(path: string): Promise<void> {
  const events = await scan(basename(path), readFileSync(path, 'utf8'));
  const room = foldRoom(events, events.at(-1)?.day ?? toDay(0));
  console.log(events.length, room.plumbing.tanks.size, room.stock.broods.size);
}

void main(process.argv[2] ?? '');

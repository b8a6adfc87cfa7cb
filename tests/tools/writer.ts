/**
 * A process that writes to a journal as the commands do and prints each deed once it is told as done, for the
 * tests that run several at once and kill them: `writer FILE KIND LABEL FROM COUNT`.
 */
import fs from 'node:fs';
import process from 'node:process';
import { deed, KINDS } from '../support/deeds.ts';

const [file = '', kind = '', label = '', from = '1', count = '0'] = process.argv.slice(2);

async function write(): Promise<void> {
  const known = KINDS.find((one) => one === kind);
  if (known === undefined) throw new Error(`nothing is known of ${kind}`);
  for (let number = Number(from); number < Number(from) + Number(count); number += 1) {
    const { id, done } = await deed(known, file, label, number);
    fs.writeSync(1, `${done ? '' : 'not '}${id}\n`);
  }
}

void write();

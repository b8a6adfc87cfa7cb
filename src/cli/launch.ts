/**
 * What users start: as little as answers what needs no journal read, or what was answered already. All
 * else is the program's. Only a build uses this file.
 */
import process from 'node:process';
import { shelfIn } from '../files/cache/shelf.ts';
import { memoryFolder, thisBuild } from './memory/build.ts';
import { helpFor } from './memory/helped.ts';
import { keyHere } from './memory/here.ts';
import { recall } from './memory/recall.ts';
import type { Remembered } from './memory/remembered.ts';
import { say } from './memory/say.ts';

async function start(): Promise<void> {
  if (helpFor(process.argv.slice(2))) return;
  const before = await answeredBefore();
  if (before !== null) {
    for (const [stream, text] of before.said) say(stream, text);
    process.exitCode = before.status;
    return;
  }
  const { runProgram } = await import('./compiled.ts');
  runProgram();
}

async function answeredBefore(): Promise<Remembered | null> {
  const [build, folder] = [thisBuild(), memoryFolder()];
  if (build === null || folder === null) return null;
  return await recall(shelfIn(folder), keyHere(build), { env: process.env, now: () => new Date() });
}

void start();

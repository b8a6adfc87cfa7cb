/** Writes straight to the system, without loading streams; what a slow reader does not take at once goes the usual way. */
import fs from 'node:fs';
import process from 'node:process';
import { codeOf, reason } from '../../files/trouble.ts';
import { EXIT } from '../exit.ts';

/** Writes all of a text to standard output (1) or error (2). */
export function say(stream: 1 | 2, text: string): void {
  const bytes = Buffer.from(text);
  let at = 0;
  try {
    while (at < bytes.length) at += fs.writeSync(stream, bytes, at);
  } catch (error) {
    if (codeOf(error) === 'EAGAIN') later(stream, bytes.subarray(at));
    else failed(stream, error);
  }
}

function later(stream: 1 | 2, bytes: Buffer): void {
  const output = stream === 1 ? process.stdout : process.stderr;
  output.on('error', (error) => failed(stream, error));
  output.write(bytes);
}

function failed(stream: 1 | 2, error: unknown): void {
  // Where the reader has left, nobody is there to be told.
  if (codeOf(error) === 'EPIPE') process.exit();
  if (stream === 2) return;
  say(2, `the answer could not be written: ${reason(error)}\n`);
  process.exit(EXIT.noFile);
}

/** Which build of the program this is, and where it keeps what it remembers. */
import process from 'node:process';
import { cacheFolder } from '../../files/cache/folder.ts';

declare const TANKSIDE_BUILD: string;

/** The build's own mark; null when run from its sources, which change under us: then nothing is remembered. */
export function thisBuild(): string | null {
  return typeof TANKSIDE_BUILD === 'string' ? TANKSIDE_BUILD : null;
}

/** Null where nothing is to be remembered. */
export function memoryFolder(): string | null {
  return cacheFolder({ env: process.env, platform: process.platform, home: process.env['HOME'] ?? '' });
}

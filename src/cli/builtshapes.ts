/**
 * Shapes of lines that the build parsed ahead, from journals that use the whole language: a line of one of them
 * needs no parser, and making that takes as long as a short answer. Without them all works, only later.
 */
import fs from 'node:fs';
import path from 'node:path';
import { bringBackShapes } from '../../grammar/parse.ts';
import { thisBuild } from './memory/build.ts';

/** Takes them over, where they are those of this very build. */
export function bringBuiltShapes(): void {
  const build = thisBuild();
  if (build === null) return;
  try {
    const kept: unknown = JSON.parse(fs.readFileSync(path.join(__dirname, 'tankside-shapes.json'), 'utf8'));
    if (isOf(build, kept)) bringBackShapes(kept.shapes, false);
  } catch {
    // Nothing was built ahead, or it is torn.
  }
}

function isOf(build: string, value: unknown): value is { readonly shapes: unknown } {
  return typeof value === 'object' && value !== null && 'build' in value && value.build === build && 'shapes' in value;
}

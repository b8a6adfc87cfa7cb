/**
 * Help and version as the build wrote them down, so that asking for them loads nothing. They depend on
 * the command line alone; where the build wrote none, the program tells them.
 */
import fs from 'node:fs';
import path from 'node:path';
import { say } from './say.ts';

const HELP = new Set(['--help', '-h', 'help']);
const VERSION = new Set(['--version', '-V']);

/** True where the words were those of a question for help, and it was answered. */
export function helpFor(argv: readonly string[]): boolean {
  const topic = topicOf(argv);
  const texts = topic === null ? {} : written();
  if (topic === null || !Object.hasOwn(texts, topic)) return false;
  say(1, texts[topic] ?? '');
  return true;
}

/** The command that help is asked for, `` for all of them, `--version`; null where none of these is asked. */
function topicOf([first, second, ...more]: readonly string[]): string | null {
  if (first === undefined) return '';
  if (more.length > 0) return null;
  if (second === undefined) return VERSION.has(first) ? '--version' : HELP.has(first) ? '' : null;
  if (HELP.has(first)) return second;
  return second !== 'help' && HELP.has(second) ? first : null;
}

function written(): Readonly<Record<string, string>> {
  try {
    const texts: unknown = JSON.parse(fs.readFileSync(path.join(__dirname, 'tankside-help.json'), 'utf8'));
    return isTexts(texts) ? texts : {};
  } catch {
    return {};
  }
}

function isTexts(value: unknown): value is Readonly<Record<string, string>> {
  return typeof value === 'object' && value !== null;
}

/**
 * Reads a journal as text: UTF-8, with or without a byte-order mark, from plain files only. Never
 * writes: where an interrupted jot left half a line and its record, the line is read as it will stand
 * once the next jot has completed it.
 */
import { isUtf8 } from 'node:buffer';
import type { Problem } from '../core/problem.ts';
import { NoPlainFile, readWhole } from './bytes.ts';
import { contentOf } from './content.ts';
import type { Content } from './content.ts';
import { sameFacts } from './disk.ts';
import type { Disk, Facts } from './disk.ts';
import { holdsLines, intentName, leftOver, readIntent, standing } from './intent.ts';
import { codeOf, reason } from './trouble.ts';

export interface FileText {
  /** As shown in answers. */
  readonly name: string;
  /** Where it really is. */
  readonly path: string;
  readonly content: Content;
  /** Of the file as it was read: tells later whether it still is the same. */
  readonly facts: Facts;
  readonly problems: readonly Problem[];
  /** For the margin of an answer: what else was found beside the file. */
  readonly notices: readonly string[];
}

export type Got =
  | { readonly ok: true; readonly file: FileText }
  | { readonly ok: false; readonly missing: boolean; readonly says: string };

/** One string of the engine holds no more than half a billion characters. */
const TOO_LONG = 400_000_000;

const MARK = Buffer.from([0xef, 0xbb, 0xbf]);

/** The text of a file, without its byte-order mark; or why it cannot be read, in words. Never throws. */
export function readText(disk: Disk, path: string, name: string): Got {
  try {
    const real = disk.real(path);
    const { bytes, facts, notices } = steady(disk, real);
    if (bytes.length > TOO_LONG) return no('it is too long to be read at once');
    if (isUtf16(bytes)) return no('it is UTF-16; save it as UTF-8 in your editor');
    const { content, problems } = seen(bytes, name);
    return { ok: true, file: { name, path: real, content, facts, problems, notices } };
  } catch (error) {
    if (codeOf(error) === 'ENOENT' && isNamed(disk, path))
      return no('it is a link, and what it points to is not there: mend it or take it away');
    if (codeOf(error) === 'ENOENT') return { ok: false, missing: true, says: 'it is not there' };
    return no(error instanceof NoPlainFile ? error.message : reason(error));
  }
}

/** True where the folder has that name, though nothing is behind it: a link whose file went away. */
function isNamed(disk: Disk, path: string): boolean {
  try {
    disk.named(path);
    return true;
  } catch {
    return false;
  }
}

interface Seen extends Pick<FileText, 'content' | 'problems'> {
  readonly bytes: Buffer;
  readonly name: string;
}

/**
 * What was read last, for as long as nobody needs its room: a journal is read before its lock and under it, and to
 * hold a file against bytes takes much less time than to keep its bytes anew.
 */
let last: WeakRef<Seen> | null = null;

function seen(bytes: Buffer, name: string): Seen {
  const before = last?.deref();
  if (before?.name === name && before.bytes === bytes) return before;
  const body = bytes.subarray(0, 3).equals(MARK) ? bytes.subarray(3) : bytes;
  const now = { bytes, name, content: contentOf(body), problems: isUtf8(body) ? [] : brokenLines(body, name) };
  last = new WeakRef(now);
  return now;
}

function no(says: string): Got {
  return { ok: false, missing: false, says };
}

interface Steady {
  readonly bytes: Buffer;
  readonly facts: Facts;
  readonly notices: readonly string[];
}

/**
 * A journal as it would be once mended. The record is looked at after the journal and the journal's
 * facts once more after the record: if they are the same, no write came between and was missed.
 */
function steady(disk: Disk, path: string): Steady {
  for (let tries = 1; ; tries += 1) {
    const { bytes, facts } = readWhole(disk, path, last?.deref()?.bytes);
    const intent = readIntent(disk, path);
    if (!sameFacts(facts, disk.facts(path)) && tries < 20) continue;
    if (intent === null) return { bytes, facts, notices: [] };
    if (intent === 'broken') return { bytes, facts, notices: [leftOver(path, intentName(path))] };
    const behind = bytes.subarray(Math.min(intent.offset, bytes.length));
    const stands = standing(bytes.length, behind, intent);
    if (stands === 'finish') {
      const mended = Buffer.concat([bytes.subarray(0, intent.offset), intent.bytes]);
      return { bytes: mended, facts, notices: [] };
    }
    const missing = stands === 'foreign' && !holdsLines(bytes, intent);
    return { bytes, facts, notices: missing ? [leftOver(path, intentName(path))] : [] };
  }
}

function isUtf16(bytes: Buffer): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}

const MOST_BROKEN = 50;

function brokenLines(bytes: Buffer, name: string): Problem[] {
  const problems: Problem[] = [];
  let line = 0;
  for (let from = 0; from <= bytes.length && problems.length < MOST_BROKEN; line += 1) {
    const found = bytes.indexOf(10, from);
    const to = found < 0 ? bytes.length : found;
    const part = bytes.subarray(from, to);
    if (!isUtf8(part)) problems.push(brokenLine(part.toString(), name, line + 1));
    from = to + 1;
  }
  return problems;
}

function brokenLine(text: string, name: string, line: number): Problem {
  const [from, to] = [text.indexOf('\uFFFD'), text.lastIndexOf('\uFFFD') + 1];
  return {
    kind: 'broken-text',
    weight: 'doubt',
    says: 'this line holds bytes that are not UTF-8; they are shown as \uFFFD',
    write: 'type the marked words again, and save the file as UTF-8',
    at: { file: name, line, from, to },
    also: [],
  };
}

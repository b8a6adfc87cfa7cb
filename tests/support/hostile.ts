/**
 * Journals that nobody wrote kindly: a keeper's lines with words swapped, cut and doubled, names that
 * programs trip over, signs that act on a terminal, numbers that no ruler reads, bytes that are no text.
 * The same seed gives the same journal.
 */
import { readFileSync } from 'node:fs';
import { generateJournal, randomFrom } from '../tools/generate.ts';
import { FACTS, ROOM } from './arbitrary.ts';
import { SAMPLE } from './sample.ts';

/** A busy room, with auctions and an award before it. */
const WORKSHOP = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');

/** Words of the language and of its enemies. */
const WORDS = [
  ...'A1 C1 Long Rowan Rowan-1 M1 room tank row all and to from of in on at by until every for with stay some half'.split(
    ' ',
  ),
  ...Object.keys(FACTS).flatMap((kind) => kind.split(' ')),
  ...'mistake note spawned eggs moved counted sold reserved died missing hold quarantine treat level cleaned test'.split(
    ' ',
  ),
];
export const NUMBERS = [
  '0',
  '-1',
  '1e308',
  '9'.repeat(40),
  '0.0000001',
  '1,500',
  '½',
  '30–20',
  '40+',
  '~0',
  '15',
  '١٢',
  'NaN',
];
const NAMES = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'Ünïcødé', '饲养', "O'Neill", 'a'.repeat(300)];
export const SIGNS = [
  '\u001b[2J',
  '\u001b]0;x\u0007',
  '\u0000',
  '\u202e',
  '\u2028',
  '\ufeff',
  '\ud800',
  '\r',
  '\t',
  '"',
  '“',
  '# ',
  '#',
  ';',
  ',',
  ':',
  '<b>&amp;</b>',
  '"><script>x</script>',
  '</title></style><img src=x onerror=x>',
  '</text></svg>',
  '\u009b31m',
  '\u0000BEGIN:VEVENT',
  '=1+1',
  '=HYPERLINK("x")',
  '-1+1|x',
  '@SUM(1)',
  '👨‍👩‍👧',
  'e\u0301',
];
const DAYS = [
  '0001-01-01',
  '9999-12-31',
  '2026-02-29',
  '2026-13-01',
  '1582-10-10',
  '2026-02-14',
  '2024-02-29',
  '20260214',
];

/** What an award, a plan and a calendar need of a room. */
const TRADE = [
  '2026-01-05 room: award "<i>bench</i>": 1 young at 1-900 days from hatched',
  '2026-01-05 auction Autumn: on 2026-12-05; 18 lots; bags of 6; 3 bags per species; seller gets 70 %; minimum 2.00',
  '2026-01-05 tank Z1: 54 L; alone',
  '2026-01-05 tank Z2: 100 L; alone',
  '2026-01-05 species zebra: Amatitlania sp.; cave spawner; sale at 1 mm or 1 week; price 6.00',
  '2026-01-05 pair Zig: zebra; male 80 mm; female 60 mm; in Z2',
  '2026-01-06 Z2: spawned brood Zinc',
  '2026-01-10 Z2: wrigglers',
  '2026-01-13 Z2: free-swimming, about 70',
  '2026-02-01 Z2: Zinc moved 45 to Z1, rest stay',
  '2026-02-10 Z1: Zinc counted 43',
  '2026-02-10 Z1: largest 40 mm',
  '2026-02-12 Z1: reserved 2 Zinc until 2026-12-20 to "=1+1 <b>\u001b[2J"',
  '2026-01-06 room: wanted 3 zebra at 25 mm by 2026-12-10 to "O\'Neill & <co>"',
];

export interface Hostile {
  readonly seed: number;
  readonly bytes: Buffer;
}

/** Draws whole numbers and members of lists from one seed. */
export class Draw {
  readonly #random: () => number;
  constructor(seed: number) {
    this.#random = randomFrom(seed);
  }
  /** 0 ≤ x < n. */
  below(n: number): number {
    return Math.floor(this.#random() * n);
  }
  of<T>(list: readonly [T, ...T[]] | readonly T[]): T {
    const one = list[this.below(list.length)];
    if (one === undefined) throw new Error('nothing to draw from');
    return one;
  }
  chance(p: number): boolean {
    return this.#random() < p;
  }
}

/** One journal of up to a few hundred lines. */
export function hostileJournal(seed: number): Hostile {
  const draw = new Draw(seed);
  const base = draw.chance(0.06) ? WORKSHOP : draw.of([SAMPLE, ROOM, generateJournal(60 + draw.below(120), seed)]);
  const lines = base.split('\n');
  for (const line of draw.chance(0.5) ? TRADE : []) if (draw.chance(0.8)) lines.push(line);
  const times = 1 + draw.below(24);
  for (let n = 0; n < times; n += 1) {
    const at = draw.below(lines.length);
    lines.splice(at, draw.chance(0.5) ? 1 : 0, hostileLine(draw, lines[at] ?? ''));
  }
  const text = lines.join(draw.of(['\n', '\n', '\r\n', '\r']));
  return { seed, bytes: draw.chance(0.2) ? damaged(draw, Buffer.from(text)) : Buffer.from(text) };
}

/** A line made from another: by words of the language, by signs, by number, by day, or from nothing. */
export function hostileLine(draw: Draw, line: string): string {
  switch (draw.below(7)) {
    case 0: {
      const words = Array.from({ length: 1 + draw.below(14) }, () => word(draw));
      return `2026-0${1 + draw.below(9)}-1${draw.below(9)} ${draw.of(['A1', 'C1', 'Long', 'room', word(draw)])}: ${words.join(' ')}`;
    }
    case 1:
      return line.replace(/\d+(?:[.,]\d+)?(?=[^\d-]*$)/u, () => draw.of(NUMBERS));
    case 2:
      return line.replace(/^\d{4}-\d{2}-\d{2}/u, () => draw.of(DAYS));
    case 3:
      return line.replaceAll(/\b[A-Z][\w-]*\b/gu, (name) => (draw.chance(0.3) ? draw.of(NAMES) : name));
    case 4:
      return line.replaceAll(/"[^"]*"/gu, () => `"${draw.of(SIGNS)} ${draw.of(NAMES)}${draw.of(SIGNS)}"`);
    case 5: {
      const at = draw.below(line.length + 1);
      return line.slice(0, at) + draw.of(SIGNS) + line.slice(at + draw.below(3));
    }
    default: {
      const words = line.split(' ');
      const at = draw.below(words.length);
      words.splice(at, draw.below(3), ...Array.from({ length: draw.below(3) }, () => word(draw)));
      return words.join(' ');
    }
  }
}

function word(draw: Draw): string {
  return draw.of([draw.of(WORDS), draw.of(WORDS), draw.of(WORDS), draw.of(NUMBERS), draw.of(NAMES), draw.of(SIGNS)]);
}

export function damaged(draw: Draw, bytes: Buffer): Buffer {
  const copy = Buffer.from(bytes);
  for (let n = draw.below(40); n >= 0; n -= 1) copy[draw.below(copy.length)] = draw.below(256);
  return copy;
}

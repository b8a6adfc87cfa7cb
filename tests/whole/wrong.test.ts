/** Ten wrong lines of ten kinds: each is told with its line, what is wrong and what to write; the rest still counts. */
import { describe, expect, test } from 'vitest';
import { SAMPLE } from '../support/sample.ts';
import { tankside } from '../support/run.ts';

interface Case {
  readonly name: string;
  /** Lines added to the sample; the wrong one last. */
  readonly lines: readonly string[];
  /** Words that the diagnostic must hold, and a pattern for what to write. */
  readonly says: RegExp;
  readonly write: RegExp;
}

const CASES: readonly Case[] = [
  { name: 'an unknown tank', lines: ['2026-03-12 A9: all well'], says: /A9/, write: /A1|A2|tank A9/ },
  { name: 'a misspelt clause', lines: ['2026-03-12 A1: chasnig'], says: /chasnig/, write: /A1: chasing/ },
  {
    name: 'an impossible date',
    lines: ['2026-02-30 A1: all well'],
    says: /2026-02-30|30/,
    write: /2026-02-2\d|2026-03/,
  },
  { name: 'mixed units', lines: ['2026-03-12 C1: water change 30 mm'], says: /mm/, write: /C1: water change 30 (%|L)/ },
  {
    name: 'two candidate broods',
    lines: [
      '2026-03-14 C1: moved 3 Rowan-1 to A2',
      '2026-03-13 pair Alder: krib; male; female; in A2',
      '2026-03-15 A2: spawned brood Alder-1, about 40 eggs',
      '2026-03-18 A2: Alder-1 wrigglers',
      '2026-03-24 A2: Alder-1 free-swimming, about 30',
      '2026-03-25 A2: died 1 young',
    ],
    says: /Rowan-1.*Alder-1|Alder-1.*Rowan-1/s,
    write: /A2: .*(Rowan-1|Alder-1)/,
  },
  {
    name: 'more sold than were surely counted',
    lines: ['2026-03-12 C1: counted 40 Rowan-1', '2026-03-13 C1: sold 50 Rowan-1 at 4.00 each'],
    says: /50/,
    write: /./,
  },
  {
    name: 'a name that is a clause word',
    lines: ['2026-03-12 tank spawned: 60 L; alone'],
    says: /spawned/,
    write: /tank /,
  },
  {
    name: 'a move to a retired tank',
    lines: [
      '2026-03-11 A2: back on the loop, air filter out',
      '2026-03-12 A2: retired',
      '2026-03-13 C1: moved 5 Rowan-1 to A2',
    ],
    says: /A2/,
    write: /./,
  },
  { name: 'a word with two readings', lines: ['2026-03-12 C1: lost 2'], says: /lost/, write: /(died 2|missing 2)/ },
];

describe('wrong lines', () => {
  test.each(CASES)('$name', async ({ lines, says, write }) => {
    const wrong = lines.at(-1) ?? '';
    const text = `${SAMPLE.trimEnd()}\n${lines.join('\n')}\n`;
    const number = text.trimEnd().split('\n').length;
    const ran = await tankside(['check'], { today: '2026-03-30', files: { '/room/fishroom.txt': text } });
    expect(ran.status).toBe(1);
    const told = ran.out.split('\n\n').find((part) => part.includes(`line ${number}, left out`)) ?? ran.out;
    expect(told).toContain(`line ${number}, left out`);
    expect(told.replace(/[«»]/g, '').replace(/\s+/g, ' ')).toContain(wrong);
    expect(told).toMatch(says);
    expect(/write: ([\s\S]*)/.exec(told)?.[1] ?? '').toMatch(write);
    const due = await tankside(['due', '--on', '2026-02-15'], { files: { '/room/fishroom.txt': text } });
    const clean = await tankside(['due', '--on', '2026-02-15'], { files: { '/room/fishroom.txt': SAMPLE } });
    expect(due.out).toBe(clean.out);
    const later = await tankside(['due', '--on', '2026-03-30'], { files: { '/room/fishroom.txt': text } });
    expect(later.err).toContain(String(number));
  });

  test('files that read each other in a circle', async () => {
    const ran = await tankside(['check'], {
      today: '2026-03-30',
      files: {
        '/room/fishroom.txt': `${SAMPLE}also read "more.txt"\n`,
        '/room/more.txt': 'also read "fishroom.txt"\n2026-03-12 A1: all well\n',
      },
    });
    expect(ran.status).toBe(1);
    expect(ran.out).toMatch(/more\.txt, line 1, left out/);
    expect(ran.out).toMatch(/circle|reads? .* already|each other/);
    expect(ran.out).toMatch(/write: /);
  });

  test('ten at once give ten diagnostics', async () => {
    const bad = CASES.map(({ lines }) => lines.at(-1) ?? '');
    const text = `${SAMPLE.trimEnd()}\n${bad.join('\n')}\n`;
    const ran = await tankside(['check', '--json'], { today: '2026-03-30', files: { '/room/fishroom.txt': text } });
    const json: unknown = JSON.parse(ran.out);
    expect(JSON.stringify(json).match(/"weight":"stops"/g)?.length).toBeGreaterThanOrEqual(6);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dayFromIso } from '../../src/core/day.ts';
import { readJournal } from '../../src/language/read.ts';
import { ammoniaOf, ammoniaSteps } from '../../src/questions/readings.ts';
import { saleableFrom } from '../../src/questions/saleable.ts';
import { bodyOfWater } from '../../src/questions/waters.ts';
import { prefilterOf } from '../../src/questions/prefilter.ts';
import { WHY_SOURCES } from '../../src/questions/why.ts';
import { bodyNamed } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { SAMPLE } from '../support/sample.ts';

const WORKSHOP = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');

function room(text: string, on: string): Room {
  const day = dayFromIso(on);
  if (day === null) throw new Error(on);
  return foldRoom(readJournal('fishroom.txt', text, () => ({ ok: false, says: 'no' })).events, day);
}

describe('every row of every answer', () => {
  test.each([
    ['the sample', SAMPLE, ['2026-02-11', '2026-02-15', '2026-03-20', '2026-06-01']],
    ['the workshop', WORKSHOP, ['2025-11-15', '2026-05-01', '2026-11-22', '2027-01-15']],
  ])(
    'of %s has its rule, a source, numbers and lines',
    (_, text, days) => {
      const thin = days.flatMap((on) => {
        const of = room(text, on);
        return WHY_SOURCES.flatMap((source) => source(of)).flatMap(({ id, because, lines }) => {
          const { rule, source, steps } = because;
          const whole = rule !== '' && source !== '' && steps.length > 0 && steps.every((step) => step.trim() !== '');
          // What nobody ever wrote about rests on no line: a water without a reading, a pair without a dispute.
          const rests = because.lines.length + lines.length > 0 || /-(water|walk|disputes|record|spawns)$/.test(id);
          return whole && rests ? [] : [`${on} ${id}: ${rule}`];
        });
      });
      expect(thin).toEqual([]);
    },
    30_000,
  );
});

describe('the formula with the numbers put in', () => {
  test('toxic ammonia: pKa, share, product (Emerson et al. 1975 at 25 C: pKa 9.25)', () => {
    const of = room(
      '2026-02-01 tank C1: 54 L; alone\n2026-02-01 room: nitrogen as N\n2026-02-10 C1: test TAN 0.5, pH 8, 25 C',
      '2026-02-12',
    );
    const body = bodyOfWater(of, 'C1');
    const ammonia = body === null ? null : ammoniaOf(of, body);
    // 1 / (1 + 10^(9.246 − 8)) = 0.0537; UF/IFAS FA-16 prints 0.0537 for 25 C and pH 8.0.
    expect(ammonia === null ? [] : ammoniaSteps(of, ammonia)).toContain(
      'at 25 C, pH 8: pKa 9.246, share 1 / (1 + 10^1.246); 0.5 × 0.0537 = 0.0268 mg/L as N',
    );
  });

  test('toxic ammonia without a pH: both ends', () => {
    const of = room('2026-02-01 tank C1: 54 L; alone\n2026-02-10 C1: test TAN 0.5, 25 C', '2026-02-12');
    const body = bodyOfWater(of, 'C1');
    const ammonia = body === null ? null : ammoniaOf(of, body);
    const steps = ammonia === null ? [] : ammoniaSteps(of, ammonia);
    expect(steps.filter((step) => step.startsWith('at the ')).map((step) => step.slice(0, 26))).toEqual([
      'at the least, 25 C, pH 6: ',
      'at the most, 25 C, pH 8.5:',
    ]);
  });

  test('the lines of a prefilter, each with its slope and the day on which it reaches the lip', () => {
    const of = room(SAMPLE, '2026-02-15');
    const loop = of.plumbing.loops.get('Long');
    expect(loop === undefined ? [] : prefilterOf(of, loop).steps).toEqual(
      expect.arrayContaining([
        'line through all: median slope 1.27 mm a day, at 80 mm on 4 Mar',
        'through the last three: median slope 1.63 mm a day, at 80 mm on 26 Feb',
        'through the last two: median slope 2.00 mm a day, at 80 mm on 23 Feb',
      ]),
    );
  });

  test('for sale: the age summed, the sale size in spreads above the mean', () => {
    const of = room(SAMPLE, '2026-03-20');
    const body = bodyNamed(of, 'Rowan-1');
    const steps = body === null ? [] : (saleableFrom(of, body)?.because.steps ?? []);
    expect(steps).toContain('of age: 2 Feb + 112 days = 25 May');
    expect(steps.join('\n')).toMatch(/at the longest \(35 − [\d.]+\) \/ \(0\.12 × [\d.]+\) = [\d.]+ spreads, so \d+ %/);
  });
});

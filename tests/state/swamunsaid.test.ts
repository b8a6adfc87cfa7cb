/** Nobody wrote that they swam: a line about living fish, after the last day on which they may not have, says it too. */
import { expect, it } from 'vitest';
import { lostBroods } from '../../src/checks/lost-broods.ts';
import { dayFromIso, isoDay } from '../../src/core/day.ts';
import { broods } from '../../src/questions/broods.ts';
import { journalOn } from '../support/journal.ts';

const LAID = '2026-02-02 A1: spawned\n2026-02-06 A1: wrigglers\n';

function roomOf(...lines: readonly string[]) {
  return journalOn('2026-06-30', `${LAID}${lines.join('\n')}\n`);
}

/** From when to when they swam, as far as the room knows. */
function swam(...lines: readonly string[]): string {
  const window = roomOf(...lines).stock.broods.get('Rowan-1')?.swam ?? null;
  if (window === null) return 'not known';
  return [window.low, window.high].map((day) => (day === null ? 'open' : isoDay(day))).join(' to ');
}

/** Swimming 5 to 15 days after laying: usual for cave spawners, at a warmth that nobody read. */
const FIRST = '2026-02-07 to 2026-02-17';

it.each([
  'A1: Rowan-1 average 20 mm',
  'A1: Rowan-1 counted 30',
  'A1: Rowan-1 moved about 30 to C1',
  'A1: sold 4 Rowan-1 at 3.00 each',
  'A1: gave away 4 Rowan-1',
])('«%s», months later: by the clock of their kind', (line) => {
  expect(swam(`2026-05-10 ${line}`)).toBe(FIRST);
});

it('the same line while they may be wrigglers says nothing of it', () => {
  expect(swam('2026-02-12 A1: Rowan-1 moved about 30 to C1')).toBe('not known');
  expect(swam('2026-05-10 A1: Rowan-1 died 3')).toBe('not known');
  expect(swam('2026-05-10 A1: Rowan-1 counted 0')).toBe('not known');
});

it('not before the last look that found them short of it', () => {
  expect(swam('2026-02-13 A1: wrigglers', '2026-05-10 A1: Rowan-1 average 20 mm')).toBe('2026-02-13 to 2026-02-17');
});

it('what somebody wrote stands', () => {
  const seen = '2026-02-11 A1: free-swimming, about 60';
  expect(swam(seen, '2026-05-10 A1: Rowan-1 average 20 mm')).toBe(swam(seen));
});

it('a mix of two clutches swam, from the first that may to the last', () => {
  const other =
    '2026-01-01 pair Elm: krib; male; female; in C2\n2026-02-10 C2: spawned brood Elm-1\n' +
    '2026-02-11 C2: moved 20 Elm-1 to B1\n2026-02-11 A1: moved 20 Rowan-1 to B1\n' +
    '2026-02-11 B1: mixed Rowan-1 and Elm-1\n2026-05-10 B1: Rowan-1 counted 30\n';
  const room = journalOn('2026-06-30', `2026-02-02 A1: spawned\n${other}`);
  const mix = room.stock.broods.get('Rowan-1 or Elm-1')?.swam ?? null;
  expect(mix?.low).toBe(dayFromIso('2026-02-07'));
  expect(mix?.high).toBe(dayFromIso('2026-02-25'));
});

it('a mouthbrooder was released', () => {
  const room = journalOn(
    '2026-06-30',
    '2026-01-01 species ngara: Aulonocara stuartgranti; mouthbrooder\n' +
      '2026-01-02 harem Heath: ngara; male; females Gorse and Ling; in C2\n' +
      '2026-02-02 C2: Gorse holding\n2026-05-10 C2: Heath-1 average 20 mm\n',
  );
  const released = room.stock.broods.get('Heath-1')?.released ?? null;
  expect(released?.high ?? null).not.toBeNull();
  expect(released?.high ?? 0).toBeLessThan(dayFromIso('2026-03-20') ?? 0);
});

it('so they are juveniles with a length, and nobody asks what became of the wrigglers', () => {
  const measured = roomOf('2026-05-10 A1: Rowan-1 average 20 mm');
  const [row] = broods(measured).broods;
  expect(row).toMatchObject({ name: 'Rowan-1', stage: 'juvenile' });
  expect(row?.size?.low).toBeGreaterThan(18);
  const asked = (room: ReturnType<typeof roomOf>): number => lostBroods({ room, events: [], today: room.on }).length;
  expect(asked(roomOf())).toBe(1);
  expect(asked(measured)).toBe(0);
});

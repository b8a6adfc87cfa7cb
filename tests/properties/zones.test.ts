/** No answer depends on where the machine stands: every command, in zones from -12 to +14, on days that clocks dislike. */
import process from 'node:process';
import { afterEach, describe, expect, it } from 'vitest';
import { SAMPLE } from '../support/sample.ts';
import { tankside } from '../support/run.ts';

/** The signs of Etc zones are the other way round: GMT+12 is 12 hours behind. */
const ZONES = ['UTC', 'Etc/GMT+12', 'Etc/GMT-14', 'Europe/Dublin', 'America/St_Johns', 'Australia/Lord_Howe'] as const;
/** Clocks go forward and back, a leap day, a year's last and first day. */
const DAYS = ['2026-03-29', '2026-10-25', '2028-02-29', '2025-12-31', '2026-01-01', '2026-02-15'] as const;
const ASKED = [
  ['due'],
  ['due', '--json'],
  ['walk'],
  ['tanks', '--free'],
  ['loops', '--json'],
  ['broods', '--json'],
  ['pairs', '--json'],
  ['sale', '--json', '--ahead', '14'],
  ['holds'],
  ['promises'],
  ['cultures'],
  ['water'],
  ['money', '--json'],
  ['history', '--since', '2026-03-01', '--until', '2026-03-31'],
  ['check'],
] as const;

const home = process.env['TZ'];

afterEach(() => {
  if (home === undefined) delete process.env['TZ'];
  else process.env['TZ'] = home;
});

describe.each(DAYS)('on %s', (on) => {
  it('every answer is the same in every zone', { timeout: 120_000 }, async () => {
    const world = { today: on, files: { '/room/fishroom.txt': SAMPLE } };
    for (const words of ASKED) {
      const answers = new Set<string>();
      for (const zone of ZONES) {
        process.env['TZ'] = zone;
        const { status, out, err } = await tankside([...words, '--on', on], world);
        answers.add(JSON.stringify([status, out, err]));
      }
      expect(answers.size, `${words.join(' ')} on ${on}`).toBe(1);
    }
  });
});

describe('the test itself', () => {
  it('does move the machine from zone to zone', () => {
    const hours = ['Etc/GMT+12', 'Etc/GMT-14'].map((zone) => {
      process.env['TZ'] = zone;
      return new Date(2026, 0, 1).getTimezoneOffset() / 60;
    });
    expect(hours).toEqual([12, -14]);
  });
});

/** Files that are written for the keeper: pages, calendars, spreadsheets; what is there already, and whose names are in them. */
import ICAL from 'ical.js';
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { tankside, type Ran } from '../support/run.ts';

// The first command loads the parser and the plan, which may take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const WORKSHOP = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const ON = '2026-11-22';

function ask(words: readonly string[], files: Record<string, string> = {}, more = ''): Promise<Ran> {
  return tankside([...words, '--on', ON], { files: { '/room/fishroom.txt': WORKSHOP + more, ...files }, today: ON });
}

function entriesOf(text: string): readonly string[] {
  const found: unknown = ICAL.parse(text);
  if (!Array.isArray(found)) throw new Error('no calendar');
  return new ICAL.Component(found)
    .getAllSubcomponents('vevent')
    .map((one) => new ICAL.Event(one))
    .map(({ uid, startDate }) => `${startDate.toString()} ${uid}`);
}

describe('a page for the printer', () => {
  const PAGE = ['sale', '--for', 'Winter', '--html', 'winter.html'];

  test('is written, again over itself, and never over anything else', async () => {
    const { status, out, files } = await ask(PAGE);
    expect([status, out]).toEqual([0, 'winter.html is written\n']);
    const page = files['/room/winter.html'] ?? '';
    expect(page).toMatch(/^<!doctype html>/);
    expect((await ask(PAGE, { '/room/winter.html': page })).status).toBe(0);
    const kept = await ask(PAGE, { '/room/winter.html': '<!doctype html><p>my own page' });
    expect([kept.status, kept.out]).toEqual([3, '']);
    expect(kept.err).toContain('winter.html is there already and is no page of ours: it is left as it is');
    expect(kept.files['/room/winter.html']).toBe('<!doctype html><p>my own page');
  });

  test('goes to standard output for -', async () => {
    const { out, files } = await ask(['sale', '--for', 'Winter', '--html', '-']);
    expect(out).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
    expect(Object.keys(files)).toEqual(['/room/fishroom.txt']);
  });

  test('needs nothing from outside and runs nothing', async () => {
    const { out } = await ask(['sale', '--for', 'Winter', '--html', '-']);
    expect(out).not.toMatch(/<script|<link|<img|<iframe|src=|url\(|@import|https?:/);
    expect(out).toContain(`default-src 'none'`);
  });

  test('has no name of a buyer unless they are asked for', async () => {
    const told = 'R. by the harbour';
    expect(WORKSHOP).toContain(told);
    expect((await ask(['sale', '--for', 'Winter', '--html', '-'])).out).not.toContain(told);
    expect((await ask(['sale', '--for', 'Winter', '--html', '-', '--with-names'])).out).toContain(told);
  });

  test('shows text of the journal as text', async () => {
    const more = `2026-11-21 species anomala: <b>"bold"</b>
2026-11-21 group Ash: hongsloi; 12; in Q1; age 30 weeks; line "</style><script>alert(1)</script>"
2026-11-21 Q1: average 40 mm; quarantine over
`;
    const { out } = await ask(['sale', '--for', 'Winter', '--html', '-', '--with-names'], {}, more);
    expect(out).not.toContain('<script>');
    expect(out.match(/<\/style>/g)).toHaveLength(1);
  });
});

describe('a calendar', () => {
  test('of the days before an auction, and of what is due, share their entries', async () => {
    const sale = await ask(['sale', '--for', 'Winter', '--ics', 'winter.ics']);
    expect([sale.status, sale.out]).toEqual([0, 'winter.ics is written\n']);
    const days = entriesOf(sale.files['/room/winter.ics'] ?? '');
    expect(days).toContain('2026-12-05 winter-bag@tankside.invalid');
    expect(days.find((one) => one.includes('catch'))).toBe('2026-12-01 winter-catch@tankside.invalid');
    const due = await ask(['due', '--days', '14', '--ics', '-']);
    const all = entriesOf(due.out);
    expect(all).toContain('2026-12-05 winter-bag@tankside.invalid');
    expect(all.length).toBe(new Set(all.map((one) => one.slice(11))).size);
    expect(all.filter((one) => one < ON)).toEqual([]);
  });

  test('is never written over another calendar', async () => {
    const mine = 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//mine//EN\r\nEND:VCALENDAR\r\n';
    const { status, files } = await ask(['due', '--ics', 'mine.ics'], { '/room/mine.ics': mine });
    expect(status).toBe(3);
    expect(files['/room/mine.ics']).toBe(mine);
  });

  test('names no buyer', async () => {
    expect((await ask(['due', '--days', '28', '--ics', '-'])).out).not.toContain('harbour');
    const dosed = '2026-11-10 W1: treat "salt of R. by the harbour" 2 g/L, 1 dose, wait 14 days\n';
    const { out } = await ask(['sale', '--for', 'Winter', '--ics', '-'], {}, dosed);
    expect(out.replace(/\r\n /g, '')).toContain('clear of salt of … from');
  });
});

describe('a spreadsheet', () => {
  test('of lots says what to mind of each, and names no buyer in what stands in the way', async () => {
    const held = '2026-11-20 W1: hold "sent back by R. by the harbour"\n';
    const { out } = await ask(['sale', '--for', 'Winter', '--csv', '-'], {}, held);
    const rows: readonly Record<string, string>[] = parse(out, { columns: true });
    expect(rows.find(({ tank }) => tank === 'W1')).toMatchObject({ 'in the way': 'on hold: sent back by …' });
    expect(rows.find(({ tank, ready }) => tank === 'S3' && ready === 'yes')?.['take care']).toContain('last counted');
  });

  test('with --plan has a row for each bag, as the labels number them', async () => {
    const { out } = await ask(['sale', '--for', 'Winter', '--plan', '--csv', '-']);
    const [head, ...rows] = parse(out);
    expect(head?.[0]).toBe('lot');
    expect(rows.map(([lot]) => Number(lot))).toEqual(rows.map((_, i) => i + 1));
    const page = (await ask(['sale', '--for', 'Winter', '--html', '-'])).out;
    const labels = new Set([...page.matchAll(/data-lot="(\d+)"/g)].map(([, lot]) => Number(lot)));
    expect([...labels]).toEqual(rows.map((_, i) => i + 1));
  });
});

describe('awards', () => {
  test('as text, as JSON and as a sheet to sign', async () => {
    const text = await ask(['awards', 'Birch-3']);
    expect(text.out).toContain('Birch-3');
    expect(text.out).toMatch(/jot {2}\S/);
    const json: unknown = JSON.parse((await ask(['awards', 'Birch-3', '--json'])).out);
    expect(json).toMatchObject({ version: 1, on: ON, broods: [{ name: 'Birch-3', state: 'can be claimed' }] });
    const sheet = await ask(['awards', 'Birch-3', '--html', 'birch.html']);
    expect([sheet.status, sheet.out]).toEqual([0, 'birch.html is written\n']);
    expect(sheet.files['/room/birch.html']).toContain('Anomalochromis thomasi');
  });

  test('a name that is none gets one that is near', async () => {
    const { status, err } = await ask(['awards', 'Birch3']);
    expect(status).toBe(2);
    expect(err).toContain('tankside awards Birch-3');
  });
});

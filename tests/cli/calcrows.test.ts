/** Several rows at once: every step and every caution says of which row it is. */
import { expect, it } from 'vitest';
import { tankside } from '../support/run.ts';

const ROWS = 'tan,ph,temp\n0.5,7.4,26C\n1.0,8.0,24C\n1.0,8.0,24C\n';
const HARM = '0.05 mg/L N harms fish: change water, feed less, look for the cause';

async function calc(...flags: readonly string[]): Promise<string> {
  return (await tankside(['calc', 'ammonia', ...flags], { input: ROWS })).out;
}

it('as text, each answer under its row', async () => {
  const [, first = '', second = '', third = ''] = (await calc()).split(/^row \d\n/mu);
  expect(first).toContain('! below 0.02 mg/L N');
  expect(first).not.toContain(HARM);
  expect(second).toContain(`! ${HARM}`);
  expect(third.trim()).toBe(second.trim());
});

it('as JSON, before the words', async () => {
  const out = await calc('--json');
  expect(out).toContain(`"rows 2 and 3: ${HARM}"`);
  expect(out).toContain('"row 1: below 0.02 mg/L N, from which it may harm"');
  expect(out).toContain('"row 1: 0.5 mg/L N × share = 0.00753 mg/L N"');
});

it('as CSV, beside its first result', async () => {
  const lines = (await calc('--csv')).split(/\r?\n/u);
  expect(lines[0]).toBe('row,name,value,unit,low,high,caution');
  const told = lines.filter((line) => line.includes(HARM));
  expect(told.map((line) => line.split(',').slice(0, 2).join())).toEqual(['2,toxic ammonia', '3,toxic ammonia']);
});

it('one row alone has no number before its words', async () => {
  const { out } = await tankside(['calc', 'ammonia', '--json', '--tan', '1', '--ph', '8', '--temp', '24C']);
  expect(out).toContain(`"${HARM}"`);
});

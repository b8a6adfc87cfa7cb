import { describe, expect, test } from 'vitest';
import { CALCULATORS } from '../../src/questions/calc/table.ts';
import { tankside } from '../support/run.ts';

interface Result {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  readonly row?: number;
}

function isResults(value: unknown): value is { version: number; results: Result[]; source: string } {
  return typeof value === 'object' && value !== null && 'results' in value && 'source' in value;
}

async function calc(argv: readonly string[], input?: string): Promise<Result[]> {
  const ran = await tankside(['calc', ...argv, '--json'], input === undefined ? {} : { input });
  expect(ran.err).toBe('');
  expect(ran.status).toBe(0);
  const json: unknown = JSON.parse(ran.out);
  if (!isResults(json)) throw new Error('no results');
  expect(json.version).toBe(1);
  expect(json.source).not.toBe('');
  return json.results;
}

const first = async (...argv: string[]): Promise<number> => (await calc(argv))[0]?.value ?? NaN;

describe('calc', () => {
  test('ammonia: worked example of UF/IFAS FA-16', async () => {
    expect(await first('ammonia', '--tan', '1mg/L', '--ph', '8.0', '--temp', '24C')).toBeCloseTo(0.0502, 4);
    expect(await first('ammonia', '--tan', '1', '--ph', '8', '--temp', '75.2F')).toBeCloseTo(0.0502, 4);
  });

  test('ammonia: as ions, and a range without temperature', async () => {
    // 1.287856 mg/L of NH4 hold 1 mg/L of N: molar masses.
    expect(await first('ammonia', '--tan', '1.287856mg/L NH4', '--ph', '8', '--temp', '24')).toBeCloseTo(0.0502, 4);
    const [toxic] = await calc(['ammonia', '--tan', '0.5', '--ph', '8']);
    expect(toxic?.value).toBeNull();
    expect(toxic?.low).toBeLessThan(toxic?.high ?? 0);
  });

  test('change and dose: the toxic ammonia that follows, or to test first', async () => {
    const args = ['change', '--from', '40', '--source', '5', '--fraction', '25%'];
    // Emerson et al. 1975 as UF/IFAS FA-16 prints it: 0.0502 at pH 8.0 and 24 C.
    const after = await calc([...args, '--tan', '1', '--temp', '24C', '--ph', '8.0']);
    expect(after.at(-1)?.value).toBeCloseTo(0.0502, 4);
    const untested = await tankside(['calc', ...args]);
    expect(untested.out.replace(/\s+/g, ' ')).toContain('TAN unknown: test first');
    expect(untested.out).not.toMatch(/\bsafe\b/i);
  });

  test('mass backwards, salinity from conductivity, degree-days', async () => {
    // 1 g is 36.36773 mm by W = 0.02 L^3.03; 30 days at 20 °C over a base of 10: 300 (Dictionary of Ichthyology).
    expect(await first('mass', '--weight', '1g')).toBeCloseTo(36.36773, 4);
    expect(await first('clock', '--days', '30days', '--temp', '20C', '--base', '10C')).toBe(300);
    expect(await first('clock', '--days', '10days', '--temp', '20.2C')).toBeCloseTo(202, 9);
    const fresh = await first('oxygen', '--temp', '25C');
    expect(await first('oxygen', '--temp', '25C', '--conductivity', '500uS/cm')).toBeLessThan(fresh);
  });

  test('oxygen: USGS memorandum values', async () => {
    expect(await first('oxygen', '--temp', '20C', '--pressure', '700mmHg')).toBeCloseTo(8.3581, 3);
    const both = await calc(['oxygen', '--temp', '25C', '--measured', '8.2635mg/L']);
    expect(both[1]?.value).toBeCloseTo(100, 2);
  });

  test.each([
    ['7dGH', 'mg/L CaCO3', 7 * 17.847959, 3e-4],
    ['1gpg', 'mg/L CaCO3', 17.118061, 1e-6],
    ['1meq/L', 'dKH', 2.80385, 3e-4],
    ['20mg/L NO3', 'mg/L NO3-N', 4.5181, 3e-4],
    ['1 US gal', 'L', 3.785411784, 1e-12],
    ['1imp gal', 'US gal', 1.2009499255, 1e-9],
    ['78F', 'C', 25.5556, 1e-5],
    ['29.92inHg', 'mmHg', 759.968, 1e-6],
    ['1lb/US gal', 'g/L', 119.826427, 1e-8],
  ])('convert %s to %s', async (from, to, expected, within) => {
    // Sources: NIST SP 811 App. B; CIAAW atomic weights; GNU units 2.22.
    expect(Math.abs((await first('convert', from, to)) / expected - 1)).toBeLessThan(within);
  });

  test('units that a shell parted are read as if they stood in quotes', async () => {
    expect(await first('convert', '20', 'mg/L', 'NO3-N', 'mg/L', 'NO3')).toBeCloseTo(88.53, 2);
    expect(await first('convert', '7', 'dGH', 'mg/L', 'CaCO3')).toBeCloseTo(124.9357, 3);
    expect(await first('convert', '5', 'US', 'gal', 'L')).toBeCloseTo(18.92705892, 8);
    expect(await first('convert', '26', 'C', 'F')).toBeCloseTo(78.8, 9);
  });

  test('dose: worked examples', async () => {
    expect(await first('dose', 'NaHCO3', '--raise', '4dKH', '--volume', '180L')).toBeCloseTo(21.572, 2);
    expect(await first('dose', 'MgSO4.7H2O', '--raise', '1.5dGH', '--volume', '200L')).toBeCloseTo(13.185, 2);
  });

  test('dose of what can raise pH tells the ammonia that would follow, or that it must be tested', async () => {
    const blind = await tankside(['calc', 'dose', 'NaHCO3', '--raise', '3dKH', '--volume', '240L']);
    expect(blind.out).toContain('TAN unknown: test first');
    const known = await tankside([
      'calc',
      'dose',
      'NaHCO3',
      '--raise',
      '3dKH',
      '--volume',
      '240L',
      '--tan',
      '0.5',
      '--temp',
      '26C',
    ]);
    expect(known.out).toContain('toxic ammonia if pH goes to 8.3');
    expect(blind.out + known.out).not.toMatch(/\bsafe\b/i);
  });

  test('volume: measures of the MSD manual and a hexagon', async () => {
    expect(await first('volume', 'box', '30x12x20cm')).toBeCloseTo(7.2, 9);
    expect(await first('volume', 'cylinder', '20x20')).toBeCloseTo(6.283185, 6);
    expect(await first('volume', 'box', '90x45x45', '--glass', '10mm', '--fill', '42cm')).toBeCloseTo(155.144, 6);
    expect(await first('volume', 'lying', '40x100', '--fill', '10cm')).toBeCloseTo(24.567394, 5);
    expect(await first('volume', 'box', '20x10x12in')).toBeCloseTo(39.3289536, 6);
    expect(await first('volume', 'box', '20', 'x', '10', 'x', '12', 'in')).toBeCloseTo(39.3289536, 6);
    expect(await first('volume', 'box', '20x10x12', 'in')).toBeCloseTo(39.3289536, 6);
  });

  test('change: values of the dilution formulas', async () => {
    expect(await first('change', '--from', '40', '--source', '5', '--fraction', '25%', '--times', '3')).toBeCloseTo(
      19.765625,
      9,
    );
    expect(await first('change', '--from', '40', '--source', '5', '--target', '20', '--times', '3')).toBeCloseTo(
      24.6053,
      3,
    );
    expect(await first('change', '--rise', '7', '--source', '5', '--fraction', '30%')).toBeCloseTo(28.33333, 5);
    expect(await first('change', '--from', '1', '--flow', '2L/min', '--days', '20min', '--volume', '90L')).toBeCloseTo(
      1 - 0.35882,
      5,
    );
  });

  test('nitrogen and mass: published values', async () => {
    expect(await first('nitrogen', '--feed', '100g/day', '--protein', '35%')).toBeCloseTo(3.22, 9);
    expect(await first('mass', '--length', '30mm', '--a', '0.02', '--b', '3.03')).toBeCloseTo(0.558094, 6);
  });

  test('bag stays far below published farm loads', async () => {
    // Dupree & Huner 1984: 83.9 g/L for 1–2 in fingerlings over 24 h, oxygen-packed and cool: a limit, not advice.
    const results = await calc(['bag', '--length', '30mm', '--count', '6', '--hours', '8', '--temp', '24C']);
    expect(results.find(({ unit }) => unit === 'g/L')?.value).toBeLessThan(83.9 / 4);
  });

  test('clock: Q10 moves the usual time', async () => {
    const [warm, cool] = [
      await calc(['clock', '--stage', 'hatch', '--guild', 'cave', '--temp', '28C']),
      await calc(['clock', '--stage', 'hatch', '--guild', 'cave', '--temp', '24C']),
    ];
    // Worked: 72 h at 26 °C and Q10 2.5 is 59.9438 h at 28 °C.
    expect(warm[0]?.value).toBeCloseTo(59.9438 / 24, 5);
    expect(cool[0]?.value).toBeGreaterThan(3);
  });

  test('reads rows from standard input', async () => {
    const rows = await calc(['ammonia'], 'tan,ph,temp\n0.5,7.4,26C\n1.0,8.0,24C\n');
    expect(
      rows.filter(({ name }) => name === 'toxic ammonia').map(({ row, value }) => [row, Number(value?.toFixed(4))]),
    ).toEqual([
      [1, 0.0075],
      [2, 0.0502],
    ]);
  });
});

describe('calc, as a keeper reads it', () => {
  const text = async (...argv: string[]): Promise<string> => (await tankside(['calc', ...argv])).out;

  // At 1 to 2 degrees a day four degrees take 2 to 4 days, whatever the conversion makes of the fourth.
  test.each([
    ['4dKH', 2, 4],
    ['2dKH', 1, 2],
    ['1dKH', 1, 1],
    ['2.1dKH', 2, 3],
  ])('a rise of %s is spread over %i to %i days', async (raise, low, high) => {
    const rows = await calc(['dose', 'NaHCO3', '--raise', raise, '--volume', '180L']);
    expect(rows.find(({ unit }) => unit === 'days')).toMatchObject({ low, high });
  });

  test('a change is told in litres as well where the water is', async () => {
    // 1 − (20 − 5) ÷ (40 − 5) = 57.14 % of 200 L; four quarters of it are 50 L each.
    const args = ['change', '--from', '40', '--source', '5', '--volume', '200L'];
    expect((await calc([...args, '--target', '20']))[1]).toMatchObject({ unit: 'L' });
    expect((await calc([...args, '--target', '20']))[1]?.value).toBeCloseTo(114.2857, 4);
    expect((await calc([...args, '--fraction', '25%', '--times', '4']))[1]?.value).toBe(50);
    expect((await calc(['change', '--rise', '7', '--fraction', '30%', '--volume', '200L']))[2]?.value).toBe(60);
  });

  test('a drip of a day is one of 1 day, and what it leaves of nothing is nothing', async () => {
    const out = await text('change', '--from', '40', '--volume', '90L', '--flow', '2880L/day', '--days', '1');
    expect(out).toMatch(/^after 1 day of drip  0 mg\/L$/mu);
  });

  test('a dry salt says what it is sold as', async () => {
    const rise = ['--raise', '1dGH', '--volume', '100L'];
    // 246.466 ÷ 120.361 = 2.05: molar masses, CIAAW 2021.
    expect(await text('dose', 'MgSO4', ...rise)).toContain('of Epsom salt, MgSO4.7H2O, it takes about twice');
    expect(await text('dose', 'MgSO4.7H2O', ...rise)).not.toContain('Epsom salt');
  });

  test('a volume says up to where it was filled', async () => {
    const out = await text('volume', 'box', '90x45x45', '--glass', '10mm', '--fill', '42');
    // Outside 90×45×45, 10 mm glass, filled to 42 from the outside base: 88×43×41 = 155.144 L.
    expect(out).toMatch(/^volume +155\.1 L$/mu);
    expect(out.replace(/\s+/g, ' ')).toContain('less 10 mm of glass, filled to 42 cm from under the floor');
  });

  test('columns of the CSV are options in any case; a strange one is named', async () => {
    const rows = await calc(['ammonia'], 'TAN,pH,Temp\n1.0,8.0,24C\n');
    expect(rows[0]?.value).toBeCloseTo(0.0502, 4);
    const ran = await tankside(['calc', 'ammonia'], { input: 'tan,ph,warmth\n1.0,8.0,24C\n' });
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('calc ammonia takes no column «warmth»');
  });

  test('the help says what each option is', async () => {
    const { out } = await tankside(['calc', '--help']);
    const plain = out.replace(/\s+/g, ' ');
    for (const { options } of CALCULATORS) {
      for (const name of options.filter((one) => one !== 'oxygen')) {
        expect(plain).toMatch(new RegExp(`--${name} VALUE \\S`));
      }
    }
    expect(plain).not.toContain('a number (');
    expect(plain).toContain('--fill VALUE how high the water stands, from under the floor: 14in (volume)');
  });
});

describe('calc refuses what cannot be', () => {
  test.each([
    [['ammonia', '--tan', '0.5', '--ph', '15', '--temp', '25C'], '--ph 15'],
    [['ammonia', '--tan=-1', '--ph', '7', '--temp', '25C'], 'less than none'],
    [['ammonia', '--tan', '1', '--ph', '7', '--temp', '25L'], 'no unit of temperature'],
    [['change', '--from', '40', '--source', '20', '--target', '15'], 'no change brings 40 to 15'],
    [['change', '--from', '40', '--source', '20', '--fraction', '130%'], '--fraction 130%'],
    [['convert', '5gal', 'L'], 'two sizes'],
    [['convert', '44mg/L', 'NO3', 'N'], '«N» is no unit'],
    [['convert', '26C'], 'the unit to convert to is missing'],
    [['convert', '1e308dGH', 'mg/L CaCO3'], 'beyond what can be worked out'],
    [['dose', 'NaHCO3', '12', '--raise', '3dKH', '--volume', '240L'], '«12» is not read here'],
    [['convert', '5kg', 'L'], 'unit of mass'],
    [['dose', 'salt', '--raise', '1dKH', '--volume', '10L'], 'is none of'],
    [['dose', 'CaCl2', '--raise', '1dKH', '--volume', '10L'], 'does not raise KH'],
    [['volume', 'box', '30x20'], 'three measures'],
    [['volume', 'pyramid', '30x20'], 'is none of box'],
    [['clock', '--stage', 'swim', '--guild', 'livebearer'], 'has no such stage'],
    [['mass', '--length', '-3mm'], '--length'],
    [['amonia'], 'no calculation'],
    [['oxygen', '--ph', '7'], 'takes no --ph'],
    [['change', '--from', '40', '--fraction', '0.5'], '--fraction 0.5 may be 0.5 % or 50 %: write 0.5% or 50%'],
    [['nitrogen', '--feed', '10g/day', '--protein', '0.47'], 'write 0.47% or 47%'],
    [['clock', '--guild', 'cave'], '--stage is missing: hatch, swim or release'],
    [['clock', '--stage', 'hatch'], '--guild is missing, one of substrate'],
  ])('%j', async (argv, says) => {
    const ran = await tankside(['calc', ...argv]);
    expect(ran.status).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err).toContain(says);
    expect(ran.err).toMatch(/write: /);
  });

  test('and every example of its help works', async () => {
    for (const { example } of CALCULATORS) {
      const argv = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? '').slice(1);
      const ran = await tankside(argv);
      expect([example, ran.status, ran.err]).toEqual([example, 0, '']);
    }
  });
});

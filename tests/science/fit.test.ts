import { describe, expect, test } from 'vitest';
import { fitCurve, fitLine, gompertz, logistic, vonBertalanffy, type Curve, type Fit } from '../../src/science/fit.ts';

const points = (text: string) =>
  text.split(';').map((pair) => {
    const [x = NaN, y = NaN] = pair.split(',').map(Number);
    return { x, y };
  });

/** Largest relative error of the fit's parameters. */
const worst = (fit: Fit | null, expected: readonly number[]): number =>
  Math.max(...expected.map((value, i) => Math.abs((fit?.parameters[i] ?? NaN) / value - 1)));

const near = (actual: number | undefined, expected: number): void =>
  expect(Math.abs((actual ?? NaN) / expected - 1)).toBeLessThan(1e-3);

describe('certified curves', () => {
  // Source: NIST StRD nonlinear regression, Misra1a (lower difficulty) and Rat42 (higher), from both starts.
  const misra = points(
    '77.6,10.07; 114.9,14.73; 141.1,17.94; 190.8,23.93; 239.9,29.61; 289,35.18; 332.8,40.02; 378.4,44.82; 434.8,50.76; 477.3,55.05; 536.8,61.01; 593.1,66.4; 689.1,75.47; 760,81.78',
  );
  const rising: Curve =
    ([a = NaN, b = NaN]) =>
    (x) =>
      a * (1 - Math.exp(-b * x));

  test.each([[[500, 0.0001]], [[250, 0.0005]]])('Misra1a from %s to six digits', (start) => {
    const fit = fitCurve(misra, rising, start);
    expect(worst(fit, [2.3894212918e2, 5.5015643181e-4])).toBeLessThan(1e-6);
    expect(fit?.errors?.[0]).toBeCloseTo(2.7070075241, 5);
    expect(fit?.rss).toBeCloseTo(1.2455138894e-1, 9);
    expect(fit?.sd).toBeCloseTo(1.018787633e-1, 9);
    expect(fit?.df).toBe(12);
  });

  test('Misra1a limits', () => {
    // Source: R nls with investr's predFit, and SciPy with the delta method; both agree.
    const fit = fitCurve(misra, rising, [250, 0.0005]);
    const at = fit?.limits(400, 0.95);
    [46.9637, 47.4335].forEach((value, i) => near(at?.reading[i], value));
    [47.1218, 47.2754].forEach((value, i) => near(at?.mean[i], value));
    const beyond = fit?.limits(1000, 0.8);
    [100.856, 101.356].forEach((value, i) => near(beyond?.reading[i], value));
  });

  test.each([[[100, 1, 0.1]], [[75, 2.5, 0.07]]])('Rat42 from %s to six digits', (start) => {
    const rat = points('9,8.93; 14,10.8; 21,18.59; 28,22.33; 42,39.35; 57,56.11; 63,61.73; 70,64.62; 79,67.08');
    const curve: Curve =
      ([a = NaN, b = NaN, c = NaN]) =>
      (x) =>
        a / (1 + Math.exp(b - c * x));
    const fit = fitCurve(rat, curve, start);
    expect(worst(fit, [7.2462237576e1, 2.6180768402, 6.7359200066e-2])).toBeLessThan(1e-6);
    expect(fit?.errors?.[2]).toBeCloseTo(3.4465663377e-3, 8);
    expect(fit?.rss).toBeCloseTo(8.0565229338, 7);
    const at = fit?.limits(50, 0.95);
    [45.7828, 52.6432].forEach((value, i) => near(at?.reading[i], value));
    [47.2825, 51.1434].forEach((value, i) => near(at?.mean[i], value));
  });
});

describe('growth curves', () => {
  test('von Bertalanffy on Kimura’s Pacific hake', () => {
    // Source: Kimura 1980, Fish. Bull. 77:765 (data as CRAN fishmethods holds them); his own estimates 61.23, 0.296, −0.057.
    const hake = points(
      '1,15.4; 2,28.03; 3.3,41.18; 4.3,46.2; 5.3,48.23; 6.3,50.26; 7.3,51.82; 8.3,54.27; 9.3,56.98; 10.3,58.93; 11.3,59; 12.3,60.91; 13.3,61.83',
    );
    const fit = fitCurve(hake, vonBertalanffy, [65, 0.2, 0]);
    expect(worst(fit, [61.2333, 0.29625325, -0.057264439])).toBeLessThan(1e-4);
    [28.3243, 36.731].forEach((value, i) => near(fit?.limits(2.5, 0.95)?.reading[i], value));
  });

  test('Gompertz on six readings, the sparse case', () => {
    // Source: R dataset Loblolly, seed 307 (Kung 1986), R nls.
    const fit = fitCurve(points('3,3.91; 5,9.48; 10,25.66; 15,39.07; 20,50.78; 25,59.07'), gompertz, [70, 3, 0.1]);
    expect(worst(fit, [67.042051, 3.849147, 0.13352109])).toBeLessThan(1e-4);
    [26.1043, 35.6453].forEach((value, i) => near(fit?.limits(12, 0.95)?.reading[i], value));
  });

  test('von Bertalanffy on six readings, the sparse case', () => {
    // Source: R dataset Loblolly, seed 301 (Kung 1986), R nls with investr's predFit.
    const fit = fitCurve(
      points('3,4.51; 5,10.89; 10,28.72; 15,41.74; 20,52.7; 25,60.92'),
      vonBertalanffy,
      [100, 0.05, 1],
    );
    expect(worst(fit, [95.666965, 0.044317196, 2.0456533])).toBeLessThan(1e-4);
    expect(fit?.sd).toBeCloseTo(0.62747735, 5);
    expect(fit?.rss).toBeCloseTo(1.1811835, 5);
    [5.79574, 0.00436369, 0.154662].forEach((value, i) => near(fit?.errors?.[i], value));
    [31.7073, 36.542].forEach((value, i) => near(fit?.limits(12, 0.95)?.reading[i], value));
    [54.9401, 57.374].forEach((value, i) => near(fit?.limits(22, 0.8)?.reading[i], value));
  });

  test('the logistic fits chick 6 better than Gompertz', () => {
    // Source: R dataset ChickWeight, chick 6 (Crowder & Hand 1990), R nls: RSS 326.68479 against 582.7997.
    const chick = points('0,41; 2,49; 4,59; 6,74; 8,97; 10,124; 12,141; 14,148; 16,155; 18,160; 20,160; 21,157');
    const s = fitCurve(chick, logistic, [170, 6, 4]);
    expect(worst(s, [168.00718, 6.1507753, 4.2300418])).toBeLessThan(1e-4);
    expect(s?.rss).toBeCloseTo(326.68479, 3);
    expect(fitCurve(chick, gompertz, [180, 2, 0.15])?.rss).toBeCloseTo(582.7997, 2);
  });

  test('with as many readings as parameters has no limits', () => {
    const fit = fitCurve(points('1,15; 3,30; 6,40'), vonBertalanffy, [45, 0.3, 0]);
    expect(fit?.at(3)).toBeCloseTo(30, 6);
    expect(fit?.limits(4, 0.8)).toBeNull();
    expect(fit?.sd).toBeNull();
  });

  test('with fewer is refused', () => {
    expect(fitCurve(points('1,15; 3,30'), vonBertalanffy, [45, 0.3, 0])).toBeNull();
  });
});

describe('straight lines', () => {
  test('Norris to nine digits', () => {
    // Source: NIST StRD linear regression, Norris.
    const norris = points(
      '0.2,0.1; 337.4,338.8; 118.2,118.1; 884.6,888; 10.1,9.2; 226.5,228.1; 666.3,668.5; 996.3,998.5; 448.6,449.1; 777,778.9; 558.2,559.2; 0.4,0.3; 0.6,0.1; 775.5,778.1; 666.9,668.8; 338,339.3; 447.5,448.9; 11.6,10.8; 556,557.7; 228.1,228.3; 995.8,998; 887.6,888.8; 120.2,119.6; 0.3,0.3; 0.3,0.6; 556.8,557.6; 339.1,339.3; 887.2,888; 999,998.5; 779,778.9; 11.1,10.2; 118.3,117.6; 229.2,228.9; 669.1,668.4; 448.9,449.2; 0.5,0.2',
    );
    const fit = fitLine(norris);
    expect(worst(fit, [-0.262323073774029, 1.00211681802045])).toBeLessThan(1e-9);
    expect(fit?.sd).toBeCloseTo(0.884796396144373, 9);
    expect(fit?.errors?.[1]).toBeCloseTo(0.429796848199937e-3, 12);
    // Limits: R predict and statsmodels.
    [498.97179, 502.62038].forEach((value, i) => near(fit?.limits(500, 0.95)?.reading[i], value));
    [500.53991, 501.05226].forEach((value, i) => near(fit?.limits(500, 0.9)?.mean[i], value));
  });

  test('Anscombe’s first set', () => {
    // Source: Anscombe 1973, R dataset anscombe.
    const fit = fitLine(
      points('10,8.04; 8,6.95; 13,7.58; 9,8.81; 11,8.33; 14,9.96; 6,7.24; 4,4.26; 12,10.84; 7,4.82; 5,5.68'),
    );
    expect(worst(fit, [3.0000909091, 0.5000909091])).toBeLessThan(1e-9);
    expect(fit?.errors?.[0]).toBeCloseTo(1.1247467908, 9);
  });

  test('levels of a prefilter, and where they reach the lip', () => {
    // Source: own data; R lm, predict and investr's calibrate.
    const fit = fitLine(points('0,12; 3,17; 5,21; 8,26; 11,33; 14,38; 17,44; 21,52; 24,57; 28,66'));
    expect(worst(fit, [11.35314996, 1.927240461])).toBeLessThan(1e-8);
    expect(fit?.sd).toBeCloseTo(0.5272099303, 9);
    expect(fit?.at(30)).toBeCloseTo(69.1703638, 6);
    [67.7003458, 70.6403818].forEach((value, i) => expect(fit?.limits(30, 0.95)?.reading[i]).toBeCloseTo(value, 4));
    [77.2177232, 80.395409].forEach((value, i) => expect(fit?.limits(35, 0.95)?.reading[i]).toBeCloseTo(value, 4));
    expect((80 - 11.35314996) / 1.927240461).toBeCloseTo(35.61924, 4);
  });

  test('a perfect line leaves nothing over, and its limits meet', () => {
    const fit = fitLine(points('0,1; 1,3; 2,5; 3,7'));
    expect(fit?.sd).toBe(0);
    expect(fit?.limits(10, 0.95)?.reading).toEqual([21, 21]);
  });

  test('two points make a line and no limits, one makes none', () => {
    expect(fitLine(points('0,1; 2,5'))?.limits(1, 0.95)).toBeNull();
    expect(fitLine(points('0,1; 0,5'))).toBeNull();
  });
});

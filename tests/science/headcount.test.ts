import { describe, expect, it } from 'vitest';
import {
  atLeast,
  below,
  counted,
  fit,
  guessed,
  spreadOf,
  sum,
  thinned,
  together,
  without,
} from '../../src/science/headcount.ts';
import { KINDS, learntLoss, livesOn, usualLoss } from '../../src/science/losses.ts';

const GUESS = guessed(40, spreadOf(30, 50));

describe('a belief about a number', () => {
  it('holds the truth within the bounds of a guess four times of five, the guess in the middle', () => {
    // exp(±1.2816 × spread) is the factor to either bound.
    const factor = Math.sqrt(50 / 30);
    expect(below(GUESS, 40)).toBeCloseTo(0.5, 3);
    expect(below(GUESS, 40 * factor) - below(GUESS, 40 / factor)).toBeCloseTo(0.8, 3);
  });
  it('weighs two guesses by their precision', () => {
    // Equal spreads: the geometric mean, with the spread divided by √2.
    const both = together(guessed(40, 0.2), guessed(90, 0.2));
    expect(below(both, 60)).toBeCloseTo(0.5, 6);
    expect(Math.log1p(both.variance / both.mean ** 2)).toBeCloseTo(0.02, 9);
    expect(together(guessed(40, 0.2), counted(37))).toEqual(counted(37));
  });
  it('is thinned by chance and by a share that is not certain', () => {
    // Binomial: mean np, variance np(1 − p).
    expect(thinned(counted(100), { mean: 0.9, variance: 0 })).toEqual({ mean: 90, variance: 100 * 0.9 * (1 - 0.9) });
    expect(thinned(counted(100), { mean: 0.9, variance: 0.01 }).variance).toBeCloseTo(9 + 100, 9);
  });
  it('keeps what went and what stayed together', () => {
    expect(without(counted(40), counted(12))).toEqual(counted(28));
    expect(sum(counted(28), counted(12))).toEqual(counted(40));
  });
  it('cut off below, has the moments that integration gives', () => {
    // Numerically: mean of a log-normal (median 40, log-sd 0.2) above 45.
    const free = guessed(40, 0.2);
    let weight = 0;
    let first = 0;
    for (let x = 45; x < 200; x += 0.01) {
      const density = Math.exp(-((Math.log(x / 40) / 0.2) ** 2) / 2) / x;
      weight += density;
      first += density * x;
    }
    expect(atLeast(free, 45).mean).toBeCloseTo(first / weight, 2);
    expect(atLeast(free, 0)).toBe(free);
    expect(atLeast(free, 400).mean).toBeGreaterThanOrEqual(400);
  });
  it('fits best what it foretold', () => {
    expect(fit(GUESS, 40, 0.1)).toBeGreaterThan(fit(GUESS, 80, 0.1));
  });
});

describe('what goes unseen', () => {
  it('follows kinds of brood whose shares come to one', () => {
    expect(KINDS.reduce((all, { weight }) => all + weight, 0)).toBeCloseTo(1, 12);
  });
  it('comes near a single rate where the time is short', () => {
    // A log-normal rate has mean exp(σ²/2) times its median; 0.8² / 2 = 0.32.
    expect(livesOn(0.0001, 1).mean).toBeCloseTo(1 - 0.0001 * Math.exp(0.32), 6);
  });
  it('is learnt from the room, drawn towards the usual', () => {
    expect(learntLoss(0.001, 0, 0)).toBeCloseTo(0.001, 12);
    expect(learntLoss(0.001, 18, 2000)).toBeCloseTo(20 / 4000, 12);
    expect(usualLoss('livebearer', 'egg')).toBe(0);
    expect(usualLoss('cave spawner', 'fry')).toBe(0.008);
  });
});

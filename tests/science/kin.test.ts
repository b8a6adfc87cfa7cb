import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { effectiveBreeders, inOrder, kinship, type Pedigreed } from '../../src/science/kin.ts';

const animal = (id: string, sire: string | null = null, dam: string | null = null): Pedigreed => ({ id, sire, dam });
const F = (pedigree: Pedigreed[], id: string): number => kinship(pedigree)?.inbreeding.get(id) ?? NaN;

describe('the tabular method', () => {
  test('gives the published table of Mrode', () => {
    // Source: Mrode 2005, Table 2.1, as CRAN pedigreemm and nadiv hold it.
    const mrode = [
      animal('1'),
      animal('2'),
      animal('3', '1', '2'),
      animal('4', '1'),
      animal('5', '4', '3'),
      animal('6', '5', '2'),
    ];
    expect(['1', '2', '3', '4', '5', '6'].map((id) => F(mrode, id))).toEqual([0, 0, 0, 0, 0.125, 0.125]);
    const kin = kinship(mrode);
    expect(kin?.of('5', '3')).toBeCloseTo(0.625 / 2, 12);
    expect(kin?.of('6', '4')).toBeCloseTo(0.3125 / 2, 12);
    expect(kin?.of('6', '5')).toBeCloseTo(0.6875 / 2, 12);
    expect(kin?.of('6', '6')).toBeCloseTo(1.125 / 2, 12);
  });

  test('gives Wright’s coefficients of usual matings', () => {
    // Source: Wright 1922; Falconer & Mackay 1996, ch. 5 (table from memory).
    const sibs = [animal('s'), animal('d'), animal('a', 's', 'd'), animal('b', 's', 'd'), animal('x', 'a', 'b')];
    expect(F(sibs, 'x')).toBe(0.25);
    const half = [
      animal('s'),
      animal('d'),
      animal('e'),
      animal('a', 's', 'd'),
      animal('b', 's', 'e'),
      animal('x', 'a', 'b'),
    ];
    expect(F(half, 'x')).toBe(0.125);
    const parent = [animal('s'), animal('d'), animal('a', 's', 'd'), animal('x', 's', 'a')];
    expect(F(parent, 'x')).toBe(0.25);
    const cousins = [
      ...sibs.slice(0, 4),
      animal('p'),
      animal('q'),
      animal('c1', 'a', 'p'),
      animal('c2', 'b', 'q'),
      animal('x', 'c1', 'c2'),
    ];
    expect(F(cousins, 'x')).toBe(0.0625);
  });

  test('follows the full-sib series', () => {
    // Source: Falconer & Mackay 1996, ch. 5: F by generation of full-sib mating (from memory, recomputed).
    const pedigree = [animal('m0'), animal('f0')];
    const series: number[] = [];
    for (let t = 1; t <= 10; t += 1) {
      pedigree.push(animal(`m${t}`, `m${t - 1}`, `f${t - 1}`), animal(`f${t}`, `m${t - 1}`, `f${t - 1}`));
      series.push(F(pedigree, `m${t}`));
    }
    const printed = [0, 0.25, 0.375, 0.5, 0.59375, 0.671875, 0.734375, 0.785156, 0.826172, 0.859375];
    series.forEach((value, i) => expect(value).toBeCloseTo(printed[i] ?? NaN, 6));
  });

  test('refuses an animal that is its own ancestor', () => {
    expect(inOrder([animal('a', 'b'), animal('b', 'a')])).toBeNull();
    expect(kinship([animal('a', 'a')])).toBeNull();
  });

  test('is symmetric and never negative', () => {
    const pedigrees = fc
      .array(fc.tuple(fc.nat(30), fc.nat(30), fc.boolean()), { minLength: 2, maxLength: 20 })
      .map((rows) =>
        rows.map(([s, d, founder], i) => (founder || i < 2 ? animal(`${i}`) : animal(`${i}`, `${s % i}`, `${d % i}`))),
      );
    fc.assert(
      fc.property(pedigrees, fc.nat(19), fc.nat(19), (pedigree, i, j) => {
        const kin = kinship(pedigree);
        const [a, b] = [`${i % pedigree.length}`, `${j % pedigree.length}`];
        expect(kin?.of(a, b)).toBe(kin?.of(b, a));
        expect(kin?.of(a, b)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

test('effective number of breeders', () => {
  // Source: USFWS Inland Salmonid Broodstock Handbook; Tave, FAO Fisheries Technical Paper 392.
  expect(
    [effectiveBreeders(1, 1), effectiveBreeders(1, 3), effectiveBreeders(2, 6), effectiveBreeders(5, 5)].map(
      (x) => x.ne,
    ),
  ).toEqual([2, 3, 6, 10]);
  const added = [effectiveBreeders(1, 1), effectiveBreeders(1, 3), effectiveBreeders(2, 6), effectiveBreeders(5, 5)];
  [0.25, 0.166667, 0.083333, 0.05].forEach((value, i) => expect(added[i]?.deltaF).toBeCloseTo(value, 6));
});

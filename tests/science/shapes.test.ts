import { expect, test } from 'vitest';
import {
  boxInsideLitres,
  boxLitres,
  cylinderLitres,
  hexagonLitres,
  lyingCylinderLitres,
} from '../../src/science/shapes.ts';
import { condition, lengthFor, weightOf } from '../../src/science/weight.ts';

const INCH = 2.54;

test('volumes of tanks', () => {
  // Source: MSD Veterinary Manual, "Formulae to calculate tank volumes" (the first two); inches by NIST SP 811.
  expect(boxLitres(30, 12, 20)).toBeCloseTo(7.2, 9);
  expect(cylinderLitres(10, 20)).toBeCloseTo(6.283185, 6);
  expect(boxLitres(90, 45, 45)).toBeCloseTo(182.25, 9);
  expect(boxLitres(20 * INCH, 10 * INCH, 12 * INCH)).toBeCloseTo(39.3289536, 7);
  expect(boxLitres(48 * INCH, 13 * INCH, 21 * INCH)).toBeCloseTo(214.736087, 6);
  expect(cylinderLitres(12 * INCH, 30 * INCH)).toBeCloseTo(222.399993, 6);
  expect(hexagonLitres(25, 50)).toBeCloseTo(81.18988, 5);
  expect(lyingCylinderLitres(20, 100, 10)).toBeCloseTo(24.567394, 6);
  expect(lyingCylinderLitres(20, 100, 20)).toBeCloseTo(62.831853, 6);
});

test('outside measures hold less than they seem to', () => {
  // Worked: 90 × 45 × 45 outside, 10 mm glass, filled to 42: 88 × 43 × 41.
  expect(boxInsideLitres(90, 45, 45, 1, 42)).toBeCloseTo(155.144, 9);
});

test('weight from length', () => {
  // Sources: Hillman 1982 bluegill, Willis et al. 1991 yellow perch, Henson 1991 largemouth bass, as FSA's WSlit prints
  // them (mm, g, log10 intercepts); Froese 2006 for b = 3.03.
  expect(weightOf(150, 10 ** -5.374, 3.316)).toBeCloseTo(69.4894, 2);
  expect(weightOf(200, 10 ** -5.386, 3.23)).toBeCloseTo(111.2569, 2);
  expect(weightOf(300, 10 ** -5.528, 3.273)).toBeCloseTo(379.855, 1);
  expect(weightOf(2)).toBeCloseTo(0.163362, 6);
  expect(weightOf(3)).toBeCloseTo(0.558094, 6);
  expect(weightOf(5)).toBeCloseTo(2.623669, 6);
  expect(lengthFor(1)).toBeCloseTo(3.636773, 5);
  expect(condition(weightOf(3), 3)).toBeCloseTo(2.067015, 5);
});

test('further volumes, in gallons of both sizes', () => {
  // Source: formulas of the MSD Veterinary Manual; 231 in³ a US gallon, 4.54609 L an imperial one (NIST SP 811).
  const US = 3.785411784;
  const gallons = [
    [boxLitres(30, 12, 20), 1.90204],
    [boxLitres(60, 30, 36), 17.1183],
    [boxLitres(90, 45, 45), 48.1454],
    [boxLitres(24 * INCH, 12 * INCH, 16 * INCH), 19.94805],
    [boxLitres(48 * INCH, 13 * INCH, 21 * INCH), 56.72727],
    [cylinderLitres(10, 20), 1.65984],
    [cylinderLitres(12 * INCH, 30 * INCH), 58.75186],
    [hexagonLitres(25, 50), 21.4481],
  ];
  for (const [litres = NaN, printed = NaN] of gallons) expect(litres / US).toBeCloseTo(printed, 4);
  // A 6 × 3 × 3 ft box: 336 imperial gallons in an old table.
  expect(boxLitres(72 * INCH, 36 * INCH, 36 * INCH) / 4.54609).toBeCloseTo(336.357, 3);
});

test('lying, filled to the brim or half, a cylinder is one that stands', () => {
  expect(lyingCylinderLitres(20, 100, 40)).toBeCloseTo(cylinderLitres(20, 100), 9);
  expect(lyingCylinderLitres(20, 100, 20)).toBeCloseTo(cylinderLitres(20, 100) / 2, 9);
});

test('weight back and forth', () => {
  // Source: Hillman 1982 in inches and pounds as FSA's WSlit prints it; Froese 2006 for b = 3.03.
  expect(weightOf(6, 10 ** -3.371, 3.316)).toBeCloseTo(0.161938, 5);
  expect(weightOf(4)).toBeCloseTo(1.334356, 6);
  for (const [cm, grams] of [
    [2, 0.163362],
    [3, 0.558094],
    [4, 1.334356],
    [5, 2.623669],
  ] as const)
    expect(lengthFor(grams)).toBeCloseTo(cm, 5);
});

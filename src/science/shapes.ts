/**
 * Volume of tanks from inside dimensions. All lengths in cm, answers in litres (1 L = 1000 cm³).
 * Source: MSD Veterinary Manual, "Formulae to calculate tank volumes".
 */

export function boxLitres(length: number, width: number, height: number): number {
  return (length * width * height) / 1000;
}

/** An upright cylinder. */
export function cylinderLitres(radius: number, height: number): number {
  return (Math.PI * radius ** 2 * height) / 1000;
}

/** A regular hexagon of side `side`. */
export function hexagonLitres(side: number, height: number): number {
  return (((3 * Math.sqrt(3)) / 2) * side ** 2 * height) / 1000;
}

/** A cylinder lying on its side, filled to `depth` (0 to 2 r). */
export function lyingCylinderLitres(radius: number, length: number, depth: number): number {
  const d = Math.min(Math.max(depth, 0), 2 * radius);
  const area = radius ** 2 * Math.acos((radius - d) / radius) - (radius - d) * Math.sqrt(2 * radius * d - d ** 2);
  return (length * area) / 1000;
}

/** Water in a box measured outside, with `glass` cm of wall and floor, filled to `fill` cm above the outside base. */
export function boxInsideLitres(length: number, width: number, height: number, glass: number, fill = height): number {
  return boxLitres(length - 2 * glass, width - 2 * glass, Math.max(0, Math.min(fill, height) - glass));
}

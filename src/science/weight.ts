/** Weight from length, and condition. W = a · L^b; lengths in cm, weights in g. Froese 2006, J. Appl. Ichthyol. 22:241. */

/** b: median over many species (Froese 2006). a: deep-bodied juveniles, total length in cm (ours: a setting). */
export const USUAL_WEIGHT = { a: 0.02, b: 3.03 };

/** Grams at a total length in cm. */
export function weightOf(lengthCm: number, a = USUAL_WEIGHT.a, b = USUAL_WEIGHT.b): number {
  return a * lengthCm ** b;
}

/** Total length in cm at so many grams. */
export function lengthFor(weight: number, a = USUAL_WEIGHT.a, b = USUAL_WEIGHT.b): number {
  return (weight / a) ** (1 / b);
}

/** Fulton's condition, 100 · W / L³. */
export function condition(weight: number, lengthCm: number): number {
  return (100 * weight) / lengthCm ** 3;
}

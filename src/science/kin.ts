/**
 * Inbreeding and kinship by the tabular method (Wright 1922; Falconer & Mackay 1996, ch. 5).
 * Unknown parents count as unrelated founders, so every figure is a lower bound and must be said to be one.
 */

export interface Pedigreed {
  readonly id: string;
  readonly sire: string | null;
  readonly dam: string | null;
}

export interface Kinship {
  /** Inbreeding coefficient F of each. */
  readonly inbreeding: ReadonlyMap<string, number>;
  /** Coefficient of kinship of two: the F that their young would have. */
  of(a: string, b: string): number;
}

/** Parents before young; null where an animal is its own ancestor. */
export function inOrder(pedigree: readonly Pedigreed[]): readonly Pedigreed[] | null {
  const byId = new Map(pedigree.map((animal) => [animal.id, animal]));
  const state = new Map<string, 'open' | 'done'>();
  const order: Pedigreed[] = [];
  const visit = (animal: Pedigreed): boolean => {
    const seen = state.get(animal.id);
    if (seen === 'done') return true;
    if (seen === 'open') return false;
    state.set(animal.id, 'open');
    for (const parent of [animal.sire, animal.dam]) {
      const known = parent === null ? undefined : byId.get(parent);
      if (known !== undefined && !visit(known)) return false;
    }
    state.set(animal.id, 'done');
    order.push(animal);
    return true;
  };
  return pedigree.every(visit) ? order : null;
}

/** Additive relationships of everyone with everyone; null where the pedigree bites its own tail. */
export function kinship(pedigree: readonly Pedigreed[]): Kinship | null {
  const order = inOrder(pedigree);
  if (order === null) return null;
  const index = new Map(order.map((animal, i) => [animal.id, i]));
  const a: number[][] = [];
  const cell = (i: number | undefined, j: number | undefined): number =>
    i === undefined || j === undefined ? 0 : (a[Math.max(i, j)]?.[Math.min(i, j)] ?? 0);
  const place = (id: string | null): number | undefined => (id === null ? undefined : index.get(id));
  order.forEach((animal, i) => {
    const sire = place(animal.sire);
    const dam = place(animal.dam);
    const row: number[] = [];
    for (let j = 0; j < i; j += 1) row.push((cell(j, sire) + cell(j, dam)) / 2);
    row.push(1 + cell(sire, dam) / 2);
    a.push(row);
  });
  return {
    inbreeding: new Map(order.map((animal, i) => [animal.id, cell(i, i) - 1])),
    of: (one, other) => cell(index.get(one), index.get(other)) / 2,
  };
}

/** Effective number of breeders, 4 · Nm · Nf / (Nm + Nf), and the inbreeding that one generation adds, 1 / (2 Ne). */
export function effectiveBreeders(males: number, females: number): { ne: number; deltaF: number } {
  const ne = males + females === 0 ? 0 : (4 * males * females) / (males + females);
  return { ne, deltaF: ne === 0 ? 1 : 1 / (2 * ne) };
}

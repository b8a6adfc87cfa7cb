/** Journals that are far too big in one way; each must be read in time that grows with its length alone. */
const HEAD = '2026-01-04 tank A1: 54 L; alone\n2026-01-04 krib colony\n';

export interface Giant {
  readonly name: string;
  /** Made when wanted; `size` 1 is the whole giant. */
  readonly journal: (size?: number) => string;
}

const many = (size: number, times: number): number => Math.max(1, Math.round(size * times));

export const GIANTS: readonly Giant[] = [
  { name: 'one line of 10 MB', journal: (size = 1) => `${HEAD}2026-02-01 A1: note ${'x'.repeat(many(size, 1e7))}\n` },
  {
    name: 'a line of 1,000,000 clauses',
    journal: (size = 1) => `${HEAD}2026-02-01 A1: ${'all well; '.repeat(many(size, 1e6))}\n`,
  },
  { name: '1,000,000 quotes', journal: (size = 1) => `${HEAD}2026-02-01 A1: ${'"'.repeat(many(size, 1e6))}\n` },
  {
    name: 'a name of 1,000,000 letters',
    journal: (size = 1) => `${HEAD}2026-02-01 ${'A'.repeat(many(size, 1e6))}: all well\n`,
  },
  { name: '200,000 empty lines and comments', journal: (size = 1) => HEAD + '\n# x\n'.repeat(many(size, 1e5)) },
  { name: '20,000 lines that are no lines', journal: (size = 1) => HEAD + 'what is this\n'.repeat(many(size, 2e4)) },
  {
    name: '20,000 times the same line',
    journal: (size = 1) => HEAD + '2026-02-01 A1: water change 30 %\n'.repeat(many(size, 2e4)),
  },
  {
    name: '5,000 tanks',
    journal: (size = 1) =>
      HEAD + Array.from({ length: many(size, 5000) }, (_, n) => `2026-01-04 tank T${n}: 54 L; alone\n`).join(''),
  },
  {
    name: '20,000 subjects in one heading',
    journal: (size = 1) => `${HEAD}2026-02-01 ${'A1 '.repeat(many(size, 2e4))}: all well\n`,
  },
];

/** The journal that commands are killed on. */

/** Commands on one journal, each finding what the one before it left. */
export const IN_ONE_JOURNAL = 20;

/** A room in its usual form already, and small, so that reading it takes next to nothing. */
export function small(): string {
  const auctions = Array.from({ length: IN_ONE_JOURNAL }, (_, n) => `2026-03-01 auction S${n + 1}: on 2026-05-16\n`);
  return `2026-01-01 room: units metric; currency EUR
2026-01-01 tank A1: 54 L; alone
2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-01-01 group Ash: krib; 3000; in A1
${auctions.join('')}`;
}

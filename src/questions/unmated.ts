/** Eggs of females that had no male with them on record: until somebody sees them hatch they may not be fertile. */
import { linesOf } from '../core/span.ts';
import type { SeenBrood } from '../state/bodies.ts';
import { reached } from '../state/broodlife.ts';
import { rowId } from './id.ts';
import type { BroodWarning } from './danger.ts';

/** What is said beside all that is expected of them; null for eggs that a male may have fertilised, and once they hatched. */
export function unmatedWords(brood: SeenBrood): string | null {
  if (!brood.unmated || brood.ended !== null || reached(brood, 'hatched')) return null;
  return `no male on record in ${brood.natal ?? 'the tank'} when they were laid: the eggs may not be fertile`;
}

/** The same as a warning of the brood's row. */
export function unmatedWarning(brood: SeenBrood): BroodWarning[] {
  const words = unmatedWords(brood);
  if (words === null) return [];
  const lines = linesOf(brood.lines.slice(0, 1));
  return [
    {
      id: rowId(brood.name, 'fertile'),
      weight: 'watch',
      younger: brood,
      text: `${brood.name}: ${words}`,
      because: {
        rule: 'eggs of females without a male on record are a brood, and nothing is promised of them before they are seen to hatch; livebearers, which store, are left out',
        source: 'common practice, no source',
        steps: [words],
        lines,
      },
      lines,
    },
  ];
}

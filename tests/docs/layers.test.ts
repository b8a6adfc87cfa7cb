/** The table of layers that developers read is the one that `npm run layers` enforces: no row more, none less. */
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

interface Rule {
  readonly name: string;
  readonly from: { readonly path?: string; readonly pathNot?: unknown };
  readonly to: { readonly pathNot?: unknown };
}

const FOLDER = /^\^(?<folder>[\w/]+)\/$/;
const ROW = /^\| `(?<layer>[\w/]+)` \| (?<imports>[^|]*) \| (?<packages>[^|]*) \|$/u;

const PAGE = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
const RULES = enforced(createRequire(import.meta.url)('../../.dependency-cruiser.cjs'));

/** What the page says of a layer: short names as it has them. */
const TOLD = PAGE.split('\n').flatMap((line) => {
  const row = ROW.exec(line)?.groups;
  return row === undefined
    ? []
    : [{ layer: row['layer'] ?? '', imports: row['imports'] ?? '', packages: row['packages'] ?? '' }];
});

function enforced(config: unknown): readonly Rule[] {
  const { forbidden } = isConfig(config) ? config : { forbidden: [] };
  return forbidden;
}

function isConfig(value: unknown): value is { readonly forbidden: readonly Rule[] } {
  return typeof value === 'object' && value !== null && 'forbidden' in value && Array.isArray(value.forbidden);
}

/** `^src/core/` as `core`. */
function short(pattern: unknown): string {
  return (FOLDER.exec(String(pattern))?.groups?.['folder'] ?? '').replace('src/', '');
}

function shorts(patterns: unknown): readonly string[] {
  return Array.isArray(patterns) ? patterns.map(short) : [];
}

/** Layers that a row of the page names, sorted; `types of questions` is a layer too. */
function words(cell: string): readonly string[] {
  return cell
    .split(/[,;]\s*/u)
    .map((word) => word.trim().replace('types of ', ''))
    .filter((word) => word !== '–')
    .toSorted();
}

describe('the table of layers', () => {
  const layered = RULES.filter(({ name }) => name.endsWith('-stays-in-its-layer'));
  const housed = RULES.filter(({ name }) => name.endsWith('-has-its-place'));

  test('names every layer, and the edge that may import everything', () => {
    const layers = layered.map(({ from }) => short(from.path));
    expect(TOLD.map(({ layer }) => layer.replace('src/', ''))).toEqual([...layers, 'cli']);
    expect(TOLD.find(({ layer }) => layer === 'src/cli')?.imports).toBe('everything');
  });

  test.each(layered.map((rule) => [short(rule.from.path), rule] as const))('%s imports what it says', (layer, rule) => {
    const row = TOLD.find((told) => told.layer.replace('src/', '') === layer);
    const allowed = shorts(rule.to.pathNot).filter((other) => other !== layer);
    expect(words(row?.imports ?? '')).toEqual(allowed.toSorted());
  });

  test('says of every package where it may be used', () => {
    const told = TOLD.flatMap(({ layer, packages }) =>
      words(packages)
        .filter((name) => name !== "Node's own modules")
        .map((name) => `${name} in ${layer.replace('src/', '')}`),
    );
    const allowed = housed.flatMap(({ name, from }) =>
      shorts(from.pathNot).map((layer) => `${name.replace('-has-its-place', '')} in ${layer}`),
    );
    expect(told.toSorted()).toEqual(allowed.toSorted());
  });
});

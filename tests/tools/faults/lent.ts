/**
 * When Node 20 builds a startup snapshot its engine has not yet given arrays what ES2023 added to them; it does
 * so when the snapshot is started. This lends them in between, and is imported before all that may call them.
 */
import v8 from 'node:v8';

type Compare = (a: unknown, b: unknown) => number;

function toSorted(this: readonly unknown[], compare: Compare): readonly unknown[] {
  return [...this].sort(compare);
}

function toReversed(this: readonly unknown[]): readonly unknown[] {
  return [...this].reverse();
}

const lent = [toSorted, toReversed].filter(({ name }) => building() && !(name in Array.prototype));

export function building(): boolean {
  return v8.startupSnapshot.isBuildingSnapshot();
}

for (const value of lent) Object.defineProperty(Array.prototype, value.name, { value, configurable: true });

/** Takes back what was lent: the engine refuses to start where its place is taken. */
export function takeBack(): void {
  for (const { name } of lent) Reflect.deleteProperty(Array.prototype, name);
}

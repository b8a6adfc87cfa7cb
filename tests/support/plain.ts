/** Data that may be opened late, with maps that are nothing but maps: what compares looks at how a thing was made. */
export function plain(value: unknown): unknown {
  if (value instanceof Map) return new Map([...value].map(([key, one]) => [plain(key), plain(one)]));
  if (value instanceof Set) return new Set([...value].map(plain));
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  const all = {};
  for (const [key, one] of Object.entries(value)) {
    Object.defineProperty(all, key, { value: plain(one), enumerable: true, writable: true, configurable: true });
  }
  return all;
}

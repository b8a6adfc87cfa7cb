type Plain = string | number | boolean | bigint | symbol | null | undefined;

/** A view through which nothing can be changed, all the way down. */
export type DeepReadonly<T> = T extends Plain
  ? T
  : T extends Map<infer K, infer V>
    ? ReadonlyMap<K, DeepReadonly<V>>
    : T extends Set<infer V>
      ? ReadonlySet<V>
      : { readonly [P in keyof T]: DeepReadonly<T[P]> };

/** Which fish a clause without a name is about: the candidates for which it is possible by kind, stage and number. */

/** The fish that a clause was found to be about. */
export type Resolved =
  { readonly kind: 'group'; readonly group: string } | { readonly kind: 'brood'; readonly brood: string };

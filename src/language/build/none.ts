/** `no white spot`, `no wrigglers`, `none holding`: words that tell the opposite of their clause. */
import type { Clause } from '../clause.ts';

/** Asks such words back, with what they say; a note keeps them. */
export function noneTold(clause: Clause, tells: string): void {
  const none = clause.rest.some(
    (each) =>
      each.type === 'quantity' && (each.word?.sense === 'none' || /^(?:0|zero|nil)$/iu.test(clause.written(each))),
  );
  if (!none) return;
  const words = clause.written(clause.node);
  clause.fault('does-not-belong', clause.node, `«${words}» ${tells}: a note keeps it`, `note ${words}`);
}

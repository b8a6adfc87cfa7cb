/** `no white spot`, `no wrigglers`, `none holding`: words that tell the opposite of their clause. */
import type { Clause } from '../clause.ts';

/** `fs?`, `wrigglers?`: whether it is so; behind a comma `?` is a number that nobody knows. */
export function askedOnly(clause: Clause): void {
  const { head } = clause.node;
  const asked = clause.rest.some(
    (each) =>
      each.type === 'quantity' &&
      each.word?.sense === '?' &&
      each.from >= head.to &&
      clause.written({ from: head.to, to: each.from }).trim() === '',
  );
  if (!asked) return;
  const words = clause.written(clause.node);
  const says = `«${words}» is asked and not told: a note keeps it, or \`${clause.phrase()}, ?\` where only the number is not known`;
  clause.fault('does-not-belong', clause.node, says, `note ${words}`);
}

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

/** Builds what tanks shared without any fish: a net used in both, a sponge brought over. */
import type { DetailNode, LinkValue } from '../../../grammar/syntax.ts';
import type { Clause } from '../clause.ts';
import { lookUp, TANK } from '../line.ts';
import type { Body, Task } from './table.ts';

/** `shared net with C1`, `brought sponge from A1`; of several tanks in the heading `shared net` alone will do. */
export function shared({ clause, among }: Task): Body {
  const { head } = clause.node;
  const inHead = IN_HEAD.exec(clause.written(head).toLowerCase());
  const [along, from, to] = [clause.linked('with'), clause.linked('from'), clause.linked('to')];
  const link = along ?? from ?? to;
  const after = link?.at.from ?? (inHead === null ? Infinity : head.to);
  const listed = clause.takeAll((detail): detail is Listed => detail.from >= after && isListed(detail));
  const thing = inHead?.[1] ?? inHead?.[2] ?? clause.needText('net');
  while (clause.flag('and'));
  const tanks = [...(link === null ? [] : [link.value]), ...listed].flatMap((value) => tanksIn(clause, value));
  const brought = clause.sense === 'brought';
  const bare = !brought && link === null && inHead === null && among > 1;
  if (tanks.length === 0 && !bare) clause.missing('the other tank', brought ? 'from A1' : 'with A1');
  const way = to !== null || inHead?.[3] === 'to' ? 'to' : brought || from !== null ? 'from' : 'both';
  return { kind: 'shared', thing, tanks, way };
}

/** A thing that its phrase names: `sponge from`, `net shared with`, `same net as`. */
const IN_HEAD = /^(?:same (\w+) as|(\w+) (?:shared with|(from|to)))$/;

type Listed = Extract<DetailNode, { type: 'name' | 'text' | 'quantity' }>;

/** What may name tanks: names, bare words, and numbers, since a tank may be called 12. */
function isListed(detail: DetailNode): boolean {
  return detail.type === 'name' || detail.type === 'text' || (detail.type === 'quantity' && !detail.ago);
}

/** The tanks that words list: `C1 and C2`. */
function tanksIn(clause: Clause, value: LinkValue): string[] {
  if (value.type === 'name') return [clause.named(value, TANK)];
  return [...clause.written(value).matchAll(/[^\s,&"“”]+/gu)].flatMap(({ 0: word, index }) => {
    if (/^(?:and|tanks?)$/i.test(word)) return [];
    const from = value.from + index;
    return lookUp(clause.line, word, { from, to: from + word.length }, TANK)?.name ?? [];
  });
}

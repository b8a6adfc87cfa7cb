/**
 * The part of the reference that is made from the vocabulary: under each clause the words that are read
 * for it. Everything between `<!-- words -->` and `<!-- /words -->` is written by this.
 */
import { CLAUSES, CLAUSE_KINDS } from '../../grammar/phrases.ts';
import type { ClauseKind } from '../../grammar/phrases.ts';

const SECTION = /^### .*<!-- event: (?<kind>[^>]+?) -->$/u;
const BLOCK = /<!-- words -->\n(?:[^]*?\n)?<!-- \/words -->/u;

/** The reference with its word lists as the vocabulary has them today. */
export function withWords(reference: string): string {
  return reference
    .split(/^(?=#{1,3} )/mu)
    .map((section) => {
      const kind = SECTION.exec(section.split('\n')[0] ?? '')?.groups?.['kind'];
      return kind === undefined ? section : section.replace(BLOCK, () => block(kind));
    })
    .join('');
}

function block(eventKind: string): string {
  const clauses = CLAUSE_KINDS.filter((kind) => CLAUSES[kind].makes.includes(eventKind));
  const words = clauses.flatMap(wordsOf);
  // One phrase without another spelling stands in the example already.
  const shown = words.length > 1 || words.some((word) => word.includes('('));
  return ['<!-- words -->', ...(shown ? ['', `Read: ${words.join(' · ')}.`, ''] : []), '<!-- /words -->'].join('\n');
}

/** `water change` (`wc`, `changed water`), one string a meaning. */
function wordsOf(kind: ClauseKind): readonly string[] {
  const { says, also = {} } = CLAUSES[kind];
  const senses = [...new Set([...Object.keys(says), ...Object.keys(also)])];
  return senses
    .map((sense) => [says[sense], also[sense]].filter((words) => words !== undefined && words !== '').join('|'))
    .filter((words) => words !== '')
    .map((words) => {
      const [usual = '', ...others] = words.split('|').map((phrase) => `\`${phrase}\``);
      return others.length === 0 ? usual : `${usual} (${others.join(', ')})`;
    });
}

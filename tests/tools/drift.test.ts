import { describe, expect, it } from 'vitest';
import { JournalParser } from '../../grammar/parser.ts';
import { grammarFiles } from './grammarfiles.ts';
import type { Production } from './grammarfiles.ts';
import { drifted, madeFiles } from './grammar.ts';
import { withWords } from './reference.ts';

const rules: readonly Production[] = new JournalParser().getSerializedGastProductions();

/** What would be made if the first rule of the grammar ended with one more comma. */
function afterAChange(): ReadonlyMap<string, string> {
  const [first, ...others] = rules;
  if (first === undefined) throw new Error('the grammar has no rules');
  const comma: Production = { type: 'Terminal', name: 'Comma', label: ',' };
  const changed = { ...first, definition: [...(first.definition ?? []), comma] };
  return new Map([...madeFiles(), ...grammarFiles([changed, ...others])]);
}

describe('what is made from the grammar', () => {
  it('is up to date (else: npm run grammar)', () => {
    expect(drifted(madeFiles())).toEqual([]);
  });

  it('is out of date as soon as a rule changes', () => {
    expect(drifted(afterAChange())).toEqual(['grammar.json', 'diagrams/quantity.svg']);
  });

  it('is out of date where a drawing has lost its rule', () => {
    const fewer = new Map([...madeFiles()].filter(([path]) => path !== 'diagrams/heading.svg'));
    expect(drifted(fewer)).toEqual(['diagrams/heading.svg']);
  });

  it('lists in the reference the words of each clause', () => {
    const section = '### Mixed <!-- event: mixed -->\n\n<!-- words -->\nold\n<!-- /words -->\n';
    expect(withWords(section)).toBe(
      '### Mixed <!-- event: mixed -->\n\n<!-- words -->\n\nRead: `mixed` (`merged`).\n\n<!-- /words -->\n',
    );
  });
});

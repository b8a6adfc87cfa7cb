import { describe, expect, it } from 'vitest';
import { grammarFiles } from './grammarfiles.ts';
import type { Production } from './grammarfiles.ts';

const word: Production = { type: 'Terminal', name: 'Word', label: 'a <word>' };
const rule: Production = {
  type: 'Rule',
  name: 'entry',
  definition: [
    { type: 'Option', definition: [word] },
    {
      type: 'RepetitionMandatoryWithSeparator',
      definition: [{ type: 'NonTerminal', name: 'clause' }],
      separator: { type: 'Terminal', name: 'Semicolon', label: ';' },
    },
    {
      type: 'Alternation',
      definition: [
        { type: 'Alternative', definition: [word] },
        { type: 'Alternative', definition: [] },
      ],
    },
  ],
};

describe('files made from the grammar', () => {
  it('are the rules as JSON and one picture a rule', () => {
    expect([...grammarFiles([rule]).keys()]).toEqual(['grammar.json', 'diagrams/entry.svg']);
  });

  it('draw every part of a rule, text escaped', () => {
    const svg = grammarFiles([rule]).get('diagrams/entry.svg') ?? '';
    expect(svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(svg).toContain('<title>entry</title>');
    expect(svg).toContain('a &#60;word>');
    expect(svg).toContain('>clause</text>');
    expect(svg).toContain('>;</text>');
  });

  it('change when a rule changes', () => {
    const other: Production = { ...rule, definition: [word] };
    expect(grammarFiles([other]).get('grammar.json')).not.toBe(grammarFiles([rule]).get('grammar.json'));
    expect(grammarFiles([other]).get('diagrams/entry.svg')).not.toBe(grammarFiles([rule]).get('diagrams/entry.svg'));
  });

  it('are the same for the same rules', () => {
    expect([...grammarFiles([rule])]).toEqual([...grammarFiles([rule])]);
  });

  it('refuse a production that nobody knows how to draw', () => {
    expect(() => grammarFiles([{ type: 'Rule', name: 'x', definition: [{ type: 'Loop' }] }])).toThrow('Loop');
  });
});

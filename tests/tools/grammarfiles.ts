/**
 * What is made from the grammar: `grammar/grammar.json`, the rules as the parser serialises them, and one
 * railroad diagram a rule. Pure, so that a test can tell whether the files that stand there are still true.
 */
import railroad from 'railroad-diagrams';
import type { Shape } from 'railroad-diagrams';

/** A production as Chevrotain serialises it. Which fields there are depends on the type. */
export interface Production {
  readonly type: string;
  readonly name?: string;
  readonly nonTerminalName?: string;
  readonly label?: string;
  readonly definition?: readonly Production[];
  readonly separator?: Production;
}

/** Text by path within `grammar/`. */
export function grammarFiles(rules: readonly Production[]): ReadonlyMap<string, string> {
  const files = new Map([['grammar.json', `${JSON.stringify(rules.map(plain), null, 1)}\n`]]);
  for (const rule of rules) files.set(`diagrams/${rule.name ?? 'rule'}.svg`, diagram(rule));
  return files;
}

/** A production without the source text of its rule, which changes with every formatting. */
function plain(production: Production): object {
  const kept = Object.entries(production).filter(([key]) => key !== 'orgText' && key !== 'pattern');
  return Object.fromEntries(kept.map(([key, value]): [string, unknown] => [key, plainValue(value)]));
}

function plainValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainValue);
  return isProduction(value) ? plain(value) : value;
}

function isProduction(value: unknown): value is Production {
  return typeof value === 'object' && value !== null && 'type' in value;
}

function diagram(rule: Production): string {
  const drawn = railroad
    .Diagram(sequence(rule.definition ?? []))
    .format()
    .toString();
  const head = drawn.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ');
  const at = head.indexOf('>') + 1;
  return `${head.slice(0, at)}\n<title>${rule.name ?? ''}</title>\n<style>${STYLE}</style>${head.slice(at)}\n`;
}

const STYLE = [
  'path{stroke-width:2;stroke:#555;fill:none}',
  'rect{stroke-width:1.5;stroke:#555;fill:#fff}',
  'text{font:13px monospace;text-anchor:middle;fill:#222}',
].join('');

function sequence(items: readonly Production[]): Shape {
  const [first] = items;
  if (first === undefined) return railroad.Skip();
  return items.length === 1 ? shape(first) : railroad.Sequence(...items.map(shape));
}

function shape(production: Production): Shape {
  const inner = (): Shape => sequence(production.definition ?? []);
  const between = production.separator === undefined ? undefined : shape(production.separator);
  switch (production.type) {
    case 'Terminal':
      return railroad.Terminal((production.label ?? production.name ?? '').replaceAll('`', ''));
    case 'NonTerminal':
      return railroad.NonTerminal(production.name ?? '');
    case 'Option':
      return railroad.Optional(inner());
    case 'Repetition':
      return railroad.ZeroOrMore(inner());
    case 'RepetitionWithSeparator':
      return railroad.ZeroOrMore(inner(), between);
    case 'RepetitionMandatory':
      return railroad.OneOrMore(inner());
    case 'RepetitionMandatoryWithSeparator':
      return railroad.OneOrMore(inner(), between);
    case 'Alternation':
      return railroad.Choice(0, ...(production.definition ?? []).map(shape));
    case 'Alternative':
    case 'Flat':
    case 'Rule':
      return inner();
    default:
      throw new Error(`the grammar has a kind of production that no diagram is drawn for: ${production.type}`);
  }
}

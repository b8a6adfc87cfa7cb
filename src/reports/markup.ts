/** Text inside HTML, SVG and XML: nothing from a journal can become mark-up. */

/** A text as the content or an attribute of an element; control characters are dropped, XML has none. */
export function escaped(text: string): string {
  return text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/** A template whose values are escaped: markup`<b>${name}</b>`. Lists are joined; `Markup` values pass as they are. */
export function markup(parts: TemplateStringsArray, ...values: readonly MarkupValue[]): Markup {
  return new Markup(parts.reduce((text, part, i) => `${text}${i === 0 ? '' : asText(values[i - 1] ?? '')}${part}`, ''));
}

/** Letters of a word that is still kept whole: a longer one may be wider than its column. */
const WHOLE_LETTERS = 20;

/** A text whose short hyphened words, names of broods above all, no end of a line breaks. */
export function unbroken(text: string): Markup {
  const words = text.split(' ').map((word) => {
    const keeps = word.includes('-') && word.length <= WHOLE_LETTERS;
    return keeps ? markup`<span class="word">${word}</span>`.text : escaped(word);
  });
  return new Markup(words.join(' '));
}

export type MarkupValue = string | number | Markup | readonly Markup[];

/** Text that is mark-up already. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

function asText(value: MarkupValue): string {
  if (typeof value === 'string') return escaped(value);
  if (typeof value === 'number') return String(value);
  if (value instanceof Markup) return value.text;
  return value.map(({ text }) => text).join('');
}

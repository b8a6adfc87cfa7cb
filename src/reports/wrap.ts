/** Cuts text into lines of a display width, between words where it can. */
import { widthOf } from './width.ts';

/** Columns where no terminal says how many it has. */
export const USUAL_WIDTH = 80;

/** Lines of at most `width` columns; a word longer than that is cut, or stays whole. Never an empty list. */
export function wrap(text: string, width: number, long: 'cut' | 'whole' = 'cut'): readonly string[] {
  const room = Math.max(1, width);
  const words = text.split(' ');
  const [first = '', ...others] = long === 'whole' ? words : words.flatMap((word) => pieces(word, room));
  const lines: string[] = [];
  let line = first;
  for (const word of others) {
    const longer = `${line} ${word}`;
    if (widthOf(longer) <= room) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

function pieces(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const cut: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && widthOf(piece + sign) > width) {
      cut.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...cut, piece];
}

/** A paragraph of at most `width` columns, its later lines set in by `indent`. */
export function paragraph(text: string, width: number, indent = 0): string {
  const [first = '', ...others] = wrap(text, width - indent);
  const margin = ' '.repeat(indent);
  return [first, ...others.map((line) => margin + line)].join('\n');
}

/** A label and, beside it from column `left` on, its text; the text's later lines stand below each other. */
export function labelled(label: string, text: string, left: number, width: number): string {
  const head = label + ' '.repeat(Math.max(1, left - widthOf(label)));
  return wrap(text, width - left)
    .map((line, index) => (index === 0 ? head : ' '.repeat(left)) + line)
    .join('\n');
}

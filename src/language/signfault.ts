/** Signs that no line can hold, in a keeper's words, with what would be read in their place. */
import type { Piece } from '../../grammar/syntax.ts';
import { endOf, Hash, InchMark, Joined, Minus, OpenQuote, Quote, Unknown } from '../../grammar/tokens.ts';
import type { Token } from '../../grammar/tokens.ts';
import { asRemark, fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

/** What is wrong with such a sign, wherever it stands; null for any other. */
export function signFault(line: LineContext, token: Token): Fault | null {
  const at = { from: token.startOffset, to: endOf(token) };
  switch (token.tokenType) {
    case Hash: {
      const word = /^#\S*/.exec(line.text.slice(at.from))?.[0] ?? '#';
      const whole = wordAround(line.text, at.from, at.from + word.length);
      const quoted = `"${line.text.slice(whole.from, whole.to)}"`;
      return fault('hash', whole, 'a `#` without a blank after it starts no comment: put such words in quotes', quoted);
    }
    case InchMark:
      return fault(
        'inch-mark',
        at,
        'a quote straight after a number may be inches: write `in`, or a blank before the remark',
        ' in',
      );
    case Quote:
      return emptyQuote(line, at);
    case OpenQuote:
      return { ...fault('open-quote', at, 'this quote is never closed'), edit: { from: at.to, to: at.to, text: '"' } };
    case Joined:
      return joinedNumber(line, at);
    case Minus: {
      const number = /^[-\u2212][\d.,]*\d/.exec(line.text.slice(at.from))?.[0] ?? '-';
      const whole = { from: at.from, to: at.from + number.length };
      return fault('below-none', whole, `nothing here is less than none: «${number}»`, number.slice(1));
    }
    case Unknown:
      if (line.text[at.from] === GAP) return fault('something-missing', at, UNFILLED, '');
      if (printable(line.text, at) === '(' || printable(line.text, at) === ')') return inBrackets(line, at);
      return (
        percentGlued(line, at) ??
        fault(
          'unknown-sign',
          at,
          `the sign «${printable(line.text, at)}» means nothing here`,
          joins(line, at) ? null : '',
        )
      );
    default:
      return null;
  }
}

/** What stands in an offered line for what nobody has read yet. */
const GAP = '…';
const UNFILLED = '«…» stands for what you read, counted or know: put that in, or leave it out';

/** `photo "…"`; only whom fish went to may be left open. */
function emptyQuote(line: LineContext, at: Piece): Fault | null {
  const isEmpty = line.text.slice(at.from + 1, at.to - 1).trim() === GAP;
  return isEmpty && !/(?<!\p{L})to\s*$/iu.test(line.text.slice(0, at.from))
    ? fault('something-missing', at, UNFILLED, '')
    : null;
}

/** `wc30%`: a number that hangs on its word. */
function percentGlued({ text }: LineContext, { from, to }: Piece): Fault | null {
  const [, word, number] =
    (text[from] === '%' ? /(?<!\p{L})(wc|change|changed)(\d+)$/iu.exec(text.slice(0, from)) : null) ?? [];
  if (word === undefined || number === undefined) return null;
  const at = { from: from - word.length - number.length, to };
  return fault(
    'unknown-sign',
    at,
    `«${text.slice(at.from, to)}» lacks a blank before its number`,
    `${word} ${number}%`,
  );
}

/** `(bent spine)`: a remark in brackets instead of quotes. */
function inBrackets(line: LineContext, at: Piece): Fault | null {
  const { text } = line;
  const [opens, closes] = [text.indexOf('('), text.indexOf(')', at.from)];
  if (text[at.from] === ')' && opens >= 0 && opens < at.from) return null;
  const says = 'words in brackets are none of a clause: a remark stands in quotes';
  if (text[at.from] === ')' || closes < 0) return fault('unknown-sign', at, says, '');
  const inner = text.slice(at.from + 1, closes);
  // A number or a name there may be a fact.
  const tells = /[("]/u.test(inner) || (!/^was\s/iu.test(inner) && (/\d/u.test(inner) || namesIn(line, inner)));
  return fault('unknown-sign', { from: at.from, to: closes + 1 }, says, tells ? null : asRemark(inner));
}

function namesIn({ names }: LineContext, text: string): boolean {
  return text.split(/[^\p{L}\p{N}_'-]+/u).some((word) => names.isName(word));
}

/** Whether two numbers would be one without what stands between them: `6=24`. */
function joins({ text }: LineContext, { from, to }: Piece): boolean {
  return /\d$/.test(text.slice(0, from)) && /^\d/.test(text.slice(to));
}

/** The run of non-blanks around a place. */
function wordAround(text: string, from: number, to: number): Piece {
  let start = from;
  while (start > 0 && /[^\s;,:"]/.test(text[start - 1] ?? ' ')) start -= 1;
  let end = to;
  while (end > from + 1 && /[;,:"]/.test(text[end - 1] ?? '')) end -= 1;
  return { from: start, to: end };
}

function printable(text: string, at: Piece): string {
  const code = text.codePointAt(at.from) ?? 0;
  const seen = text.slice(at.from, at.to);
  return /^[\p{L}\p{N}\p{P}\p{S}]$/u.test(seen) ? seen : `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}

function joinedNumber(line: LineContext, at: Piece): Fault {
  const text = line.text.slice(at.from, at.to);
  const parts = text.split(',');
  if (parts.length > 2) return fault('joined-numbers', at, `«${text}»: put a blank after each comma`, parts.join(', '));
  const says = `«${text}» may be ${parts.join('')} or ${parts.join('.')}`;
  return fault('number-comma', at, says, parts.join(''));
}

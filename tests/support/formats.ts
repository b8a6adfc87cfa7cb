/** What must hold of a file for other programs, whatever the journal says: each judged by a reader that is not ours. */
import ICAL from 'ical.js';
import { parse } from 'csv-parse/sync';
import { parse as parseHtml, type DefaultTreeAdapterTypes } from 'parse5';

/** Elements and attributes that our pages and pictures are made of; whatever else is found came from the journal. */
const ELEMENTS = new Set(
  (
    'html head meta title style body section article header h1 h2 p span div br dl dt dd table thead tbody tr th td ul ol li ' +
    'svg path line rect circle text g'
  ).split(' '),
);
const ATTRIBUTES = new Set(
  (
    'lang charset name content http-equiv class colspan data-lot data-pack xmlns viewBox width height role aria-label ' +
    'd cx cy r x y x1 x2 y1 y2 fill fill-opacity font-family font-size font-weight paint-order stroke stroke-dasharray ' +
    'stroke-width text-anchor transform points stroke-linejoin'
  ).split(' '),
);
/** Signs that act when a file is shown at a terminal. */
const CONTROL = /[^\P{Cc}\r\n\t]/u;

export function isJson(text: string): boolean {
  try {
    return typeof JSON.parse(text) === 'object';
  } catch {
    return false;
  }
}

/** What is wrong with a page, or with a picture in SVG. */
export function htmlFaults(text: string): readonly string[] {
  const faults: string[] = [];
  if (text.startsWith('<!doctype')) {
    parseHtml(text, { onParseError: ({ code, startLine }) => faults.push(`${code} in line ${String(startLine)}`) });
  }
  const walk = (node: DefaultTreeAdapterTypes.Node): void => {
    if ('tagName' in node) {
      if (!ELEMENTS.has(node.tagName)) faults.push(`an element of the journal's: ${node.tagName}`);
      for (const { name } of node.attrs)
        if (!ATTRIBUTES.has(name)) faults.push(`an attribute of the journal's: ${name}`);
    }
    if (node.nodeName === '#comment') faults.push('a comment');
    if ('childNodes' in node) node.childNodes.forEach(walk);
  };
  walk(parseHtml(text));
  if (CONTROL.test(text)) faults.push('a control sign in a page');
  return faults;
}

/** What is wrong with a calendar: RFC 5545 3.1 for its lines, ical.js for the rest. */
export function icsFaults(text: string): readonly string[] {
  const faults: string[] = [];
  const lines = text.split('\r\n');
  if (lines.at(-1) !== '') faults.push('no line end at the end of the calendar');
  if (lines.some((line) => Buffer.byteLength(line) > 75)) faults.push('a calendar line of more than 75 octets');
  if (CONTROL.test(text) || /[\r\n]/u.test(lines.join(''))) faults.push('a control sign in a calendar');
  try {
    const parsed: unknown = ICAL.parse(text);
    if (!Array.isArray(parsed)) return [...faults, 'no calendar'];
    const events = new ICAL.Component(parsed).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    const ids = new Set(events.map(({ uid }) => uid));
    if (ids.size !== events.length) faults.push('two entries of one UID');
    for (const { startDate, endDate, summary } of events) {
      if (startDate.compare(endDate) >= 0) faults.push(`an entry that ends before it begins: ${summary}`);
      if (summary === '') faults.push('an entry without a title');
    }
    if (events.length !== text.split('\r\n').filter((line) => line === 'BEGIN:VEVENT').length)
      faults.push('an entry that the journal made');
  } catch (error) {
    faults.push(`no calendar: ${error instanceof Error ? error.message : String(error)}`);
  }
  return faults;
}

/** Cells that a spreadsheet would reckon instead of showing; rows that are not of one width. */
export function csvFaults(text: string): readonly string[] {
  const rows: unknown = parse(text);
  const cells = Array.isArray(rows) ? rows.flat() : [];
  const formulas = cells.filter((cell) => typeof cell === 'string' && /^[=+@\t\r]|^-(?!\d+(?:\.\d+)?$)/u.test(cell));
  return [
    ...formulas.map((cell) => `a formula: ${String(cell)}`),
    ...(CONTROL.test(text) ? ['a control sign in a spreadsheet'] : []),
  ];
}

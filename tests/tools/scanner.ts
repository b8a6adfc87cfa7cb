/**
 * The limit that the benchmark measures against: a scanner written by hand that cuts a journal into lines
 * and clauses, reads dates and the first word of each clause, and counts. It understands nothing.
 */
import { readFileSync } from 'node:fs';

const text = readFileSync(process.argv[2] ?? '', 'utf8');
const days = new Map<string, number>();
const words = new Map<string, number>();
for (let from = 0; from < text.length;) {
  const newline = text.indexOf('\n', from);
  const end = newline < 0 ? text.length : newline;
  const day = text.slice(from, from + 10);
  days.set(day, (days.get(day) ?? 0) + 1);
  for (let at = text.indexOf(':', from) + 1; at > 0 && at < end;) {
    const semicolon = text.indexOf(';', at);
    const stop = semicolon < 0 || semicolon > end ? end : semicolon;
    let first = at;
    while (first < stop && text.charCodeAt(first) === 32) first += 1;
    const blank = text.indexOf(' ', first);
    const word = text.slice(first, blank < 0 || blank > stop ? stop : blank);
    words.set(word, (words.get(word) ?? 0) + 1);
    at = stop + 1;
  }
  from = end + 1;
}
console.log(days.size, words.size);

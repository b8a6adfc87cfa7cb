/** Cells of a results sheet as people and spreadsheets fill them in: whole fish, money, what became of the unsold. */
import type { Unsold } from '../../questions/settle/result.ts';

/** A value, or what is wrong with the cell in words. */
export type Cell<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly says: string };

const NOT_SOLD = new Set(['', '-', '–', '—', 'unsold', 'no sale', 'not sold', 'no bid']);
const STAYED = new Set(['stayed', 'not brought', 'stayed home']);
const GIVEN = new Set(['given', 'gave away', 'given away']);

/** The text of a cell in one line, without the apostrophe that keeps a spreadsheet from running it. */
export function plain(text: string): string {
  return text
    .replace(/[\s\p{Cc}\u00a0]+/gu, ' ')
    .trim()
    .replace(/^'(?=[=+\-@])/, '');
}

/** A whole number of fish, 1 to 9999. */
export function fishCell(text: string): Cell<number> {
  if (/^[1-9]\d{0,3}$/.test(text)) return { ok: true, value: Number(text) };
  if (text === '') return { ok: false, says: 'no number of fish' };
  return { ok: false, says: `«${short(text)}» is no whole number of fish from 1 to 9999` };
}

/** What a lot fetched; null where it was not sold. `1,50` and `1.50` are the same, `1,500` might be two things. */
export function moneyCell(text: string, currency: string | null): Cell<number | null> {
  if (NOT_SOLD.has(text.toLowerCase())) return { ok: true, value: null };
  const bare = withoutCurrency(text, currency);
  if (/^\d{1,3}[.,]\d{3}$/.test(bare)) {
    const says = `«${short(text)}» may be ${bare.replace(/[.,]/, '')} or ${bare.replace(',', '.')}: write it without the mark, or with two decimals`;
    return { ok: false, says };
  }
  if (!/^\d{1,6}(?:[.,]\d{1,2})?$/.test(bare)) return { ok: false, says: `«${short(text)}» is no sum of money` };
  const value = Number(bare.replace(',', '.'));
  if (value > 0) return { ok: true, value };
  return {
    ok: false,
    says: `${short(text)} is no price: empty if it was not sold, «given» under «back to» if it was given`,
  };
}

function withoutCurrency(text: string, currency: string | null): string {
  const sign = /^\p{Sc}\s?|\s?\p{Sc}$/u;
  const bare = text.replace(sign, '');
  if (currency === null) return bare;
  const code = currency.toLowerCase();
  const lower = bare.toLowerCase();
  if (lower.startsWith(code)) return bare.slice(code.length).trim();
  return lower.endsWith(code) ? bare.slice(0, -code.length).trim() : bare;
}

/** Null where the cell says nothing. Any other word is a tank. */
export function unsoldCell(text: string): Unsold | null {
  const word = text.toLowerCase();
  // A dash crosses a cell out.
  if (/^[-–—]*$/u.test(word)) return null;
  if (STAYED.has(word)) return { how: 'stayed' };
  if (GIVEN.has(word)) return { how: 'gave away' };
  if (word === 'died' || word === 'dead') return { how: 'died' };
  return { how: 'back', tank: text.replace(/^tank /i, '') };
}

/** A cell may hold anything; a message shows its beginning. */
function short(text: string): string {
  return text.length > 30 ? `${text.slice(0, 30)}…` : text;
}

/**
 * The daily list as the last line that was jotted left it: the next one is told against it, so that the list of
 * before need not be worked out again. Kept for one text of the journal and one day, beside the footing.
 */
import type { Day } from '../../core/day.ts';
import { sumOf } from '../../files/cache/chest.ts';
import type { Chest } from '../../files/cache/chest.ts';
import { imageOf } from '../../files/cache/image/make.ts';
import { openImage } from '../../files/cache/image/open.ts';
import { Pages } from '../../files/cache/pages.ts';
import type { DueRow } from '../../questions/due.ts';

export interface KeptRows {
  /** The rows of the journal that holds this text behind its footing, on a day; null where they are not known. */
  of(text: string, on: Day): readonly DueRow[] | null;
  /** `lines` are what has come behind that text. */
  keep(text: string, lines: string, on: Day, rows: readonly DueRow[]): void;
}

/** For the journal at that path. `under` tells one state of all that is read beside such texts from another. */
export function rowsKept(chest: Chest, path: string, under: string): KeptRows {
  const key = (text: string, on: Day, lines = ''): string =>
    sumOf([under, String(on), `${text}${lines}`]).toString('hex');
  return {
    of(text, on) {
      const bytes = chest.get('rows', path);
      if (bytes === null) return null;
      const image = openImage(Pages.of(bytes));
      const rows = image('key') === key(text, on) ? image('rows') : null;
      return isRows(rows) ? rows : null;
    },
    keep(text, lines, on, rows) {
      chest.put('rows', path, imageOf({ key: key(text, on, lines), rows }));
    },
  };
}

/** The chest has proved the bytes: only their outline is looked at. */
function isRows(value: unknown): value is readonly DueRow[] {
  return Array.isArray(value);
}

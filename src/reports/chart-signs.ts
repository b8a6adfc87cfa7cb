/** The signs of an SVG chart, the same in the picture and in its legend. */
import { markup, type Markup } from './markup.ts';

export const BAND = '#9ec4d8';
export const LINE = '#1c5d7a';

/** A reading of the first, second or third series: a full dot, an open one, a square. */
export function dot(index: number, x: number, y: number): Markup {
  switch (index % 3) {
    case 0:
      return markup`<circle cx="${x}" cy="${y}" r="4" fill="#000000"/>
`;
    case 1:
      return markup`<circle cx="${x}" cy="${y}" r="4" fill="#ffffff" stroke="#000000" stroke-width="1.5"/>
`;
    default:
      return markup`<rect x="${x - 3.5}" y="${y - 3.5}" width="7" height="7" fill="#ffffff" stroke="#000000" stroke-width="1.5"/>
`;
  }
}

/** Something that happened on a day, under the foot: a full triangle, then an open one. */
export function moment(index: number, x: number, y: number): Markup {
  const fill = index % 2 === 0 ? '#000000' : '#ffffff';
  return markup`<path d="${`M${x} ${y - 5}L${x + 5} ${y + 5}L${x - 5} ${y + 5}Z`}" fill="${fill}" stroke="#000000"/>
`;
}

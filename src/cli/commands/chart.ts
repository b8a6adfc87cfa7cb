/** `tankside chart WORDS`: growth, prefilter level, survival or a reading as a picture, in the terminal or as SVG. */
import { chartOf } from '../../questions/chart/ask.ts';
import { chartJson } from '../../reports/chart-json.ts';
import { chartSvg } from '../../reports/chart-svg.ts';
import { chartText } from '../../reports/chart-text.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { readPastDate } from '../dates.ts';
import { misuse } from '../exit.ts';
import { textFlag } from '../flags.ts';
import { writeOut } from '../outfile.ts';

const SVG = textFlag('--svg FILE', 'the picture as SVG in a file (- for standard output)');
const SINCE = textFlag('--since DATE', 'from that day on (levels and readings: half a year back, where left out)');

export const command: Command = {
  takes: 'WORDS...',
  about:
    'A picture: growth of a brood or group with its readings and sale size, the level of a prefilter with its cleans ' +
    'and the days on which it will spill, the survival of a brood, or one reading of a water. Words in any order.',
  flags: [SVG, SINCE],
  examples: [
    'tankside chart growth Rowan-1',
    'tankside chart level Long',
    'tankside chart survival Rowan-1',
    'tankside chart water C1 NO3 --svg nitrate.svg',
  ],
  run: (context, get, words) =>
    answer(context, get, {
      ask(room, { today }) {
        const since = get(SINCE);
        const charted = chartOf(room, words, since === null ? null : readPastDate(since, today, '--since'));
        if (!charted.ok) throw misuse(charted.says, charted.write);
        const { chart } = charted;
        const file = get(SVG);
        const svg = file === null ? null : chartSvg(chart);
        if (file !== null && svg !== null && file !== '-') {
          writeOut(context, { file, text: svg, kind: 'SVG', isLike: (text) => text.startsWith('<svg ') });
        }
        return { chart, file, svg };
      },
      text({ chart, file, svg }, look) {
        if (svg === null) return chartText(chart, look);
        return file === '-' ? svg : `${file ?? ''} is written: ${chart.title}\n`;
      },
      json: ({ chart }) => chartJson(chart),
    }),
};

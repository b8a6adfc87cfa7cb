/** `tankside loops`: prefilters, spills and cleans. */
import { loops } from '../../questions/loops.ts';
import { loopsJson, loopsText } from '../../reports/loops.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';

export const command: Command = {
  takes: '',
  about:
    'How each loop stands: the level in its prefilter and when it will spill, the last clean and what it ' +
    'bought, when the full clean is due, which tanks share its water and which are valved off.',
  flags: [],
  examples: ['tankside loops', 'tankside loops --on +14'],
  run: (context, get) => answer(context, get, { ask: loops, text: loopsText, json: loopsJson }),
};

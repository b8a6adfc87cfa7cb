/** `tankside tanks`: every tank, or with `--free` those to move a brood into. */
import { tanks } from '../../questions/tanks.ts';
import { tanksJson, tanksText } from '../../reports/tanks.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { flag } from '../flags.ts';

const FREE = flag('--free', 'only tanks that are free or will come free, soonest first');

export const command: Command = {
  takes: '',
  about:
    'Every tank in walking order: its water and litres, who lives in it, what is rigged or broken. Litres ' +
    'are live water: as stated, or 10 to 20 % less than the size says.',
  flags: [FREE],
  examples: ['tankside tanks', 'tankside tanks --free', 'tankside tanks --free --on +28'],
  run: (context, get) =>
    answer(context, get, { ask: (room) => tanks(room, { free: get(FREE) }), text: tanksText, json: tanksJson }),
};

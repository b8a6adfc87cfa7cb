/** `tankside holds`: how far each hold reaches and when it is clear. */
import { holds } from '../../questions/holds.ts';
import { holdsJson, holdsText } from '../../reports/holds.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { NAMES } from '../flags.ts';

export const command: Command = {
  takes: '',
  about:
    'Every hold with the tanks that its water and fish can have reached, each by which way; the tanks that were off the ' +
    'loop in time; fish that were moved or sold since; and the day on which all is clear. Also what is sick, treated or in quarantine.',
  flags: [NAMES],
  examples: ['tankside holds', 'tankside holds --on +28', 'tankside holds --json --with-names'],
  run: (context, get) =>
    answer(context, get, { ask: holds, text: holdsText, json: (found) => holdsJson(found, get(NAMES)) }),
};

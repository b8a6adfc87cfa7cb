/** `tankside money`: what each brood, pair and species earned, and what each week of glass. */
import { money, moneyNames } from '../../questions/money.ts';
import { moneyJson, moneyText } from '../../reports/money.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { readPastDate } from '../dates.ts';
import { textFlag } from '../flags.ts';
import { unknownName } from '../unknown.ts';

const SINCE = textFlag('--since DATE', 'sales, spending and tank-weeks from that day on');

export const command: Command = {
  takes: '[NAME]',
  about:
    'What each species, pair and brood brought in after the part that an auction keeps, how many weeks of a whole ' +
    'tank it took (a tank that three stocks share counts a third for each), and so what a tank-week earned. With ' +
    "the name of a species, pair or brood: that one. Buyers' names are never part of it.",
  flags: [SINCE],
  examples: ['tankside money', 'tankside money Rowan', 'tankside money --since 2026-01-01 --json'],
  run: (context, get, words) =>
    answer(context, get, {
      ask(room, journal) {
        const since = get(SINCE);
        const asked = words.length === 0 ? null : words.join(' ');
        const found = money(room, since === null ? null : readPastDate(since, journal.on, '--since'), asked);
        if (found !== null) return found;
        const names = moneyNames(room);
        throw unknownName({ what: 'species, pair or brood', asked: asked ?? '', names, all: 'tankside money' });
      },
      text: moneyText,
      json: moneyJson,
    }),
};

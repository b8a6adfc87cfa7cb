/** `tankside history`: the lines that match. */
import type { Day } from '../../core/day.ts';
import { broodsCalled, history, isOfKind, tankCalled } from '../../questions/history.ts';
import type { HistoryOptions } from '../../questions/history.ts';
import { THEMES } from '../../questions/history/themes.ts';
import { groupsCalled } from '../../questions/pairs.ts';
import { historyJson, historyText } from '../../reports/history.ts';
import type { Room } from '../../state/draft.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { readPastDate } from '../dates.ts';
import { misuse } from '../exit.ts';
import { NAMES, textFlag } from '../flags.ts';
import type { Journal } from '../journal.ts';
import { unknownName } from '../unknown.ts';

const PAIR = textFlag('--pair NAME', 'lines about that pair or group, or that fish of one');
const TANK = textFlag('--tank NAME', 'lines about that tank');
const BROOD = textFlag('--brood NAME', 'lines about that brood');
const KIND = textFlag('--kind KIND', `lines of that kind: ${THEMES.join(', ')}, or the words of a clause`);
const SINCE = textFlag('--since DATE', 'from that day on');
const UNTIL = textFlag('--until DATE', 'up to that day');

export const command: Command = {
  takes: '[WORDS...]',
  about:
    'The lines of the journal that hold all the words, or are about what they name, oldest first. ' +
    'The lines of one dispute stand together. Without words: everything that the options leave.',
  flags: [PAIR, TANK, BROOD, KIND, SINCE, UNTIL, NAMES],
  examples: [
    'tankside history Rowan spawned',
    'tankside history --pair Rowan --kind dispute',
    'tankside history --tank A1 --since 2026-02-01 --until 2026-02-28',
  ],
  run(context, get, words) {
    return answer(context, get, {
      ask(room, journal) {
        const date = (option: typeof SINCE, name: string): Day | null => {
          const text = get(option);
          return text === null ? null : readPastDate(text, journal.on, name);
        };
        const asked = { words, pair: get(PAIR), tank: get(TANK), brood: get(BROOD), kind: get(KIND) };
        expectKnown(room, journal, asked);
        return history(room, journal.reading.entries, {
          ...asked,
          since: date(SINCE, '--since'),
          until: date(UNTIL, '--until'),
        });
      },
      text: historyText,
      json: historyJson,
    });
  },
};

function nobody(what: 'pair' | 'tank' | 'brood', asked: string, names: Iterable<string>): Error {
  return unknownName({
    what: what === 'pair' ? 'pair or fish' : what,
    asked,
    names,
    all: `tankside ${what}s`,
    typed: (name) => `tankside history --${what} ${name}`,
  });
}

/** A name that is none is wrong use, not an empty answer. */
function expectKnown(room: Room, journal: Journal, asked: Omit<HistoryOptions, 'since' | 'until'>): void {
  const { pair, tank, brood, kind } = asked;
  if (pair !== null && groupsCalled(room, pair).length === 0) throw nobody('pair', pair, room.stock.groups.keys());
  if (tank !== null && tankCalled(room, tank) === null) throw nobody('tank', tank, room.plumbing.tanks.keys());
  if (brood !== null && broodsCalled(room, brood).length === 0)
    throw nobody(
      'brood',
      brood,
      [...room.stock.broods.values()].map(({ name }) => name),
    );
  const known = kind === null || THEMES.some((theme) => theme === kind.toLowerCase());
  if (!known && !journal.reading.events.some((event) => isOfKind(event, kind))) {
    throw misuse(`no line of a kind called «${kind}»`, `one of ${THEMES.join(', ')}`);
  }
}

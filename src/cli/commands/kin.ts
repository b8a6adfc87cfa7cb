/** `tankside kin`: parents and shared parents. */
import { kin, kinNames, kinOfOne, kinOfTwo, type KinAnswer } from '../../questions/kin.ts';
import { kinJson, kinText } from '../../reports/kin.ts';
import type { Room } from '../../state/draft.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { unknownName } from '../unknown.ts';

export const command: Command = {
  takes: '[NAME] [NAME]',
  about:
    'Whom the journal gives as parents. Alone: every pair with the inbreeding F of its young, the lines that hang ' +
    'on one fish, and the best pairings among holdbacks and other young. With a name: its parents and theirs. With ' +
    'two: what their young would be. Founders are unknown, so F is "at least", and blank records never make two ' +
    'fish "unrelated": say "no shared parents on record" when you sell. The line of a pair says where its fish come ' +
    'from: from Rowan-1 (both), from Rowan-1 and Sedge-2 (one of each).',
  flags: [],
  examples: ['tankside kin', 'tankside kin Rowan-1', 'tankside kin Rowan-1 Sedge-2', 'tankside kin --json'],
  run: (context, get, words) => answer(context, get, { ask: (room) => ask(room, words), text: kinText, json: kinJson }),
};

/** A name may hold blanks (`krib of 2 May`): every way of cutting the words is tried. */
function ask(room: Room, words: readonly string[]): KinAnswer {
  if (words.length === 0) return kin(room);
  const whole = kinOfOne(room, words.join(' '));
  if (whole !== null) return whole;
  for (let cut = 1; cut < words.length; cut += 1) {
    const two = kinOfTwo(room, words.slice(0, cut).join(' '), words.slice(cut).join(' '));
    if (two !== null) return two;
  }
  const wrong = words.find((word) => kinOfOne(room, word) === null) ?? words.join(' ');
  const mended = (name: string): string => words.map((word) => (word === wrong ? name : word)).join(' ');
  throw unknownName({
    what: 'pair, brood or fish',
    asked: wrong,
    names: kinNames(room),
    all: 'tankside kin',
    typed: (name) => `tankside kin ${mended(name)}`,
  });
}

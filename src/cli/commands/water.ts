/** `tankside water [PLACE]`: readings, toxic ammonia, trends, and what reaches a target. */
import { exactly, type Interval } from '../../core/interval.ts';
import { AIMS, type Target } from '../../questions/target.ts';
import { water } from '../../questions/water.ts';
import { powerCut, USUAL_AIR } from '../../questions/powercut.ts';
import { cutJson, cutText } from '../../reports/powercut.ts';
import { waterJson, waterText } from '../../reports/water.ts';
import { answer } from '../answer.ts';
import type { Command } from '../command.ts';
import { misuse } from '../exit.ts';
import { flag, textFlag } from '../flags.ts';
import { unknownName } from '../unknown.ts';

const TARGET = textFlag('--target "NO3 20"', 'the change or dose that brings it there, counted as your kit counts');
const TAP = textFlag('--tap NUMBER', 'what your new water has of it (none, where left out)');
const CUT = flag('--cut', 'which tank goes first in a power cut, and how fast it cools');
const AIR = textFlag('--air NUMBER', 'C in the room while the heating is away, for --cut (15 to 20, where left out)');

export const command: Command = {
  takes: '[PLACE]',
  about:
    'The water of each loop and of each tank by itself, or all about one of them: last readings, toxic ' +
    'ammonia (a range where pH or temperature is missing), trends, changes and doses of four weeks.',
  flags: [TARGET, TAP, CUT, AIR],
  only: [
    { of: [TAP], beside: [TARGET] },
    { of: [AIR], beside: [CUT] },
  ],
  apart: [{ of: [TARGET], beside: [CUT] }],
  examples: [
    'tankside water',
    'tankside water Long',
    'tankside water C1 --target "NO3 20" --tap 5',
    'tankside water --cut --air 16',
  ],
  run(context, get, words) {
    const place = words.length === 0 ? null : words.join(' ');
    const air = airOf(get(AIR));
    if (get(CUT) && place !== null)
      throw misuse(`--cut ranks every tank of the room, and got «${place}»`, 'tankside water --cut');
    if (get(CUT)) return answer(context, get, { ask: (room) => powerCut(room, air), text: cutText, json: cutJson });
    const target = targetOf(get(TARGET), get(TAP));
    return answer(context, get, {
      ask(room) {
        const known = [...room.plumbing.loops.keys(), ...room.plumbing.tanks.keys()];
        const named = known.find((name) => name.toLowerCase() === place?.toLowerCase()) ?? place;
        const rows = water(room, { place: named, target });
        if (rows !== null) return rows;
        throw unknownName({ what: 'tank or loop', asked: place ?? '', names: known, all: 'tankside water' });
      },
      text: waterText,
      json: waterJson,
    });
  },
};

function targetOf(text: string | null, tap: string | null): Target | null {
  if (text === null) return null;
  const match = /^\s*(\p{L}+\d?)\s*[= ]\s*(\d+(?:\.\d+)?)\s*$/u.exec(text);
  const of = AIMS[match?.[1]?.toLowerCase() ?? ''];
  if (match === null || of === undefined) {
    throw misuse(`--target takes a thing and a number, not «${text}»`, '--target "NO3 20" (TAN, NO2, NO3, KH, GH)');
  }
  if (tap !== null && !/^\d+(\.\d+)?$/.test(tap)) throw misuse(`--tap takes a number, not «${tap}»`, '--tap 5');
  return { of, value: Number(match[2]), tap: tap === null ? null : Number(tap) };
}

function airOf(text: string | null): Interval {
  if (text === null) return USUAL_AIR;
  const celsius = Number(/^\s*(-?\d+(?:\.\d+)?)\s*C?\s*$/iu.exec(text)?.[1] ?? NaN);
  if (celsius >= -20 && celsius <= 45) return exactly(celsius);
  throw misuse(`--air takes a temperature in C, not «${text}»`, '--air 16');
}

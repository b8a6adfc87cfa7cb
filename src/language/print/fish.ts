/** Clauses about fish: bond, disputes, spawning, broods, counts, moves, losses. */
import { FISH } from '../../../grammar/vocabulary/fish.ts';
import type { EventOf, Stage } from '../../journal/event.ts';
import type { FishRef, Subject } from '../../journal/subject.ts';
import type { Prints } from './table.ts';
import * as w from './words.ts';

type About = { readonly fish: FishRef; readonly subject: Subject };

/** A clause that is nothing but a phrase, perhaps after the fish's name. */
function phrase(says: string): (event: About) => string {
  return (event) => w.words(w.who(event), w.first(says));
}

export const FISH_PRINTS: Prints<
  | 'bonded'
  | 'dispute sign'
  | 'calmer'
  | 'shimmying'
  | 'made up'
  | 'split up'
  | 'resting'
  | 'member back'
  | 'new mate'
  | 'parents chase fry'
  | 'about to spawn'
  | 'no eggs'
  | 'spawned'
  | 'eggs white'
  | 'eggs gone'
  | 'stage seen'
  | 'counted'
  | 'sized'
  | 'moved'
  | 'mixed'
  | 'lost'
> = {
  bonded: phrase(FISH.bonded.says.bonded),
  'dispute sign': sign,
  calmer: phrase(FISH.calmer.says.calmer),
  shimmying: phrase(FISH.shimmying.says.shimmying),
  'made up': phrase(FISH['made up'].says['made up']),
  'split up': phrase(FISH['split up'].says['split up']),
  resting: phrase(FISH.resting.says.resting),
  'member back': phrase(FISH.back.says.back),
  'new mate': (event) =>
    w.words(
      w.who(event),
      w.first(FISH['new mate'].says[event.sex]),
      event.name !== null && `as ${event.name}`,
      event.from !== null && `from ${event.from}`,
    ),
  'parents chase fry': phrase(FISH['parents chase fry'].says.parents),
  'about to spawn': phrase(FISH['about to spawn'].says.about),
  'no eggs': phrase(FISH['no eggs'].says.none),
  spawned,
  'eggs white': (event) => w.words(w.who(event), w.first(FISH['eggs white'].says.white), w.howMany(event.count)),
  'eggs gone': phrase(FISH['eggs gone'].says.gone),
  'stage seen': stage,
  counted: (event) => w.words(w.who(event), w.first(FISH.counted.says.counted), w.heads(event.heads)),
  sized: (event, voice) => w.words(w.who(event), w.sizes(event.sizes, voice)),
  moved,
  mixed: (event) => `${w.first(FISH.mixed.says.mixed)} ${w.fish(event.a)} and ${w.fish(event.b)}`,
  lost: (event) => w.words(w.who(event), w.first(FISH.lost.says[event.how]), w.howMany(event.count)),
};

/** `Rowan chasing, male on female`; `male chasing Fern`, `Fern pinned, male on Fern` where who stands there is a side. */
function sign(event: EventOf<'dispute sign'>): string {
  const { fish, doer, sufferer, subject } = event;
  const [phrase, who] = [w.first(FISH.sign.says[event.sign]), w.who(event)];
  if (sufferer === null || fish.kind === 'brood') return w.words(who, phrase);
  const own = fish.kind === 'group' ? fish.member : null;
  const isSide = own !== null && own.name !== null && (own.name === doer?.name || own.name === sufferer.name);
  // Under the name of another fish the one that it is about has to stand there again.
  const isSaid = isSide && (subject.kind !== 'group' || subject.member === null);
  if (doer === null) {
    const group = isSide && fish.kind === 'group' ? fish.group : who;
    return w.words(!isSaid && group, phrase, w.member(sufferer));
  }
  if (isSide && event.sign === 'chasing') return w.words(w.member(doer), phrase, w.member(sufferer));
  if (!isSide && own !== null && own.name === doer.name && own.sex === doer.sex) {
    return w.words(who, phrase, w.member(sufferer));
  }
  return w.details(w.words(!isSaid && who, phrase), `${w.member(doer)} on ${w.member(sufferer)}`);
}

function spawned(event: EventOf<'spawned'>): string {
  return w.words(w.who(event), w.first(FISH.spawned.says[event.as]), event.brood !== null && `brood ${event.brood}`);
}

/** The eggs counted stand after `when`, as its own detail: `spawned 2-4 days ago, about 80 eggs`. */
export function eggs(event: EventOf<'spawned'>): string {
  return event.eggs === null ? '' : `${w.heads(event.eggs)} eggs`;
}

function stage(event: EventOf<'stage seen'>): string {
  const number = event.count === null ? '' : w.heads(event.count);
  const words = w.words(w.who(event), w.first(FISH.stage.says[event.stage]));
  const bare: readonly Stage[] = ['fry seen', 'born', 'stripped'];
  if (event.brood === null && bare.includes(event.stage)) return w.words(words, number);
  return w.details(w.words(words, event.brood !== null && `brood ${event.brood}`), number);
}

/** A count of fish and which fish, in the order that `moved`, `sold` and their like want. */
export function lot(event: Lot): string {
  const { which } = event;
  return w.lot(event.count, w.words(which !== undefined && which !== 'any' && which, w.who(event)));
}

interface Lot {
  readonly fish: FishRef;
  readonly subject: Subject;
  readonly count: EventOf<'moved'>['count'];
  readonly which?: EventOf<'moved'>['which'];
}

function moved(event: EventOf<'moved'>): string {
  const { fish } = event;
  const alone = fish.kind === 'group' && fish.member !== null && fish.member.name === null && event.count === 'unsaid';
  const who = alone ? `the ${w.who(event)}` : lot(event);
  return w.details(
    w.words(w.first(FISH.moved.says.moved), who, `to ${w.tank(event.to)}`, event.with !== null && `with ${event.with}`),
    event.restStay && 'rest stay',
  );
}

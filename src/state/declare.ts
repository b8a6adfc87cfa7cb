/** Setting tanks up, amending them, and retiring them. */
import { isoDay } from '../core/day.ts';
import type { EventOf } from '../journal/event.ts';
import { listWords } from '../core/words.ts';
import type { Draft } from './draft.ts';
import { fishIn } from './places.ts';
import type { Plumbed, Tank } from './plumbing.ts';
import { unclosedRigs } from './rigs.ts';
import { holderOf, orderOf } from './tanks.ts';

/** Declares a tank, or amends it: what a later line leaves out stays as it was. */
export function declareTank(draft: Draft, event: EventOf<'tank declared'>): void {
  const { plumbing } = event;
  const on = plumbing === null || plumbing === 'alone' ? null : plumbing.on;
  if (on !== null && !draft.plumbing.loops.has(on)) {
    draft.problems.push({
      kind: 'unknown-loop',
      weight: 'stops',
      says: `no loop ${on} is set up by that day`,
      write: `${isoDay(event.day)} loop ${on}: sump 200 L; prefilter 4 layers`,
      at: event.place,
      also: [],
    });
    return;
  }
  const known = draft.plumbing.tanks.get(event.tank);
  const tank = known ?? newTank(event);
  const hung = tank.inTank;
  tank.size = event.size ?? tank.size;
  tank.nominal = event.nominal ?? tank.nominal;
  tank.live = event.live ?? tank.live;
  tank.filter = event.filter ?? tank.filter;
  tank.quarantine = event.quarantine ?? tank.quarantine;
  tank.inTank = event.inTank ?? tank.inTank;
  tank.heated = event.heated ?? tank.heated;
  tank.hides = event.hides ?? tank.hides;
  tank.retired = null;
  draft.plumbing.tanks.set(event.tank, tank);
  if (known === undefined && goesLast(draft, tank)) draft.plumbing.order.push(tank.name);
  else if (known === undefined || tank.inTank !== hung) draft.plumbing.order = orderOf(draft);
  if (plumbing === null && known) return;
  closeOffLoop(draft, tank, event);
  tank.plumbed.push(entry(event, on));
}

/** Whether a new tank's place in the walk is behind all others, so that the order need not be made anew for each. */
function goesLast(draft: Draft, tank: Tank): boolean {
  if (tank.inTank !== null || draft.settings.walk.includes(tank.name)) return false;
  const last = draft.plumbing.order.at(-1);
  if (last === undefined) return true;
  for (const { inTank } of draft.plumbing.tanks.values()) if (inTank === tank.name) return false;
  // Trays of tanks that are not declared stay behind all tanks.
  const holder = holderOf(draft, last);
  return draft.plumbing.tanks.get(holder)?.inTank === null;
}

function newTank(event: EventOf<'tank declared'>): Tank {
  return {
    name: event.tank,
    since: event.day,
    declared: event.place,
    size: null,
    nominal: null,
    live: null,
    filter: null,
    quarantine: false,
    inTank: null,
    heated: null,
    hides: null,
    retired: null,
    plumbed: [],
  };
}

function entry(event: EventOf<'tank declared'>, loop: string | null): Plumbed {
  return { day: event.day, minute: event.minute, home: loop, on: loop, until: null, place: event.place };
}

/** New plumbing settles for good what a valve had shut for a while. */
function closeOffLoop(draft: Draft, tank: Tank, event: EventOf<'tank declared'>): void {
  for (const rig of unclosedRigs(draft)) {
    if (rig.where !== tank.name || rig.kind !== 'off the loop') continue;
    rig.closed = { day: event.day, minute: event.minute, place: event.place };
  }
}

/** A retired tank is out of use: what was rigged up in it is over, and fish still on record there are doubted. */
export function retireTank(draft: Draft, event: EventOf<'tank retired'>): void {
  const tank = draft.plumbing.tanks.get(event.tank);
  if (tank === undefined) return;
  if (tank.retired !== null) {
    draft.problems.push({
      kind: 'retired-twice',
      weight: 'doubt',
      says: `${tank.name} was retired before`,
      write: 'nothing, or take one of the two lines back',
      at: event.place,
      also: [tank.retired.place],
    });
    return;
  }
  const fish = fishIn(draft, tank.name);
  if (fish.length > 0) {
    draft.problems.push({
      kind: 'fish-in-retired-tank',
      weight: 'doubt',
      says: `${listWords(fish)} ${fish.length === 1 ? 'is' : 'are'} still on record in ${tank.name}`,
      write: `${tank.name}: moved all ${fish[0] ?? ''} to …, before it is retired`,
      at: event.place,
      also: [],
    });
  }
  tank.retired = { day: event.day, place: event.place };
  const closed = { day: event.day, minute: event.minute, place: event.place };
  for (const rig of unclosedRigs(draft)) if (rig.where === tank.name) rig.closed = closed;
}

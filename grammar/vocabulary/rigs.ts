/** Clauses of what is rigged up for a while and undone again, and of what breaks. */
import type { ClauseRule } from './rule.ts';

/** `pump failed`, `heater dead`: each thing with each word for its being broken. */
function failing(things: string): string {
  const words = ['failed', 'dead', 'died', 'broken', 'broke', 'gone', 'packed up', 'not working', 'failing'];
  return things
    .split('|')
    .flatMap((thing) => words.map((word) => `${thing} ${word}`))
    .join('|');
}

export const RIGS = {
  rig: {
    says: {
      'off the loop': 'off the loop|off loop|valved off|taken off the loop',
      'air filter': 'air filter in|air sponge in|on air|on air sponge|on an air filter',
      'lights off': 'lights off|light off|lights out|light out',
      'rocks out': 'rocks out|rock out',
      divider: 'divider in',
      'pump off': 'pump off|return off|return pump off',
      'heater off': 'heater off',
      'heat raised': 'heat to|heat up to|raised heat to',
      'breeder net': 'breeder net in|breeder box in',
    },
    also: {
      'off the loop':
        'valved off loop|valved off the loop|valve shut|valve closed|shut off from the loop|off the system|off system|isolated from loop|isolated from the loop',
      'air filter': 'battery air on|battery air on loop|battery air|on battery air|on air sponges|on air filter',
      divider:
        'put divider in|put a divider in|put in divider|put the divider in|put divider back in|put the divider back in|divider back in|divider up|mesh divider in|mesh in|egg crate in|eggcrate in',
      'rocks out': 'all rocks out|rocks all out',
      'breeder net': 'net breeder in|fry trap in|breeder trap in|breeding box in',
      'pump off': 'pumps off|pump switched off|turned pump off',
      'heat raised':
        'heat raised to|raised temp to|raised temperature to|temp raised to|temperature raised to|raised to|heater up to|heater turned up to|turned heater up to|turned up to',
    },
    under: ['tank', 'loop', 'room', 'row'],
    takes: ['until', 'for', 'stays'],
    continues: ['stays'],
    makes: ['measure begun', 'measure stays'],
  },
  unrig: {
    says: {
      'off the loop': 'back on the loop|back on loop|on the loop|on loop|valved on',
      'air filter': 'air filter out|air sponge out|off air|air filter off|air sponge off|air filter gone',
      'lights off': 'lights on|light on|lights back on',
      'rocks out': 'rocks in|rocks back|rocks back in',
      divider: 'divider out',
      'pump off': 'pump on|return on|return pump on|pump back on',
      'heater off': 'heater on|heater back on',
      'heat raised': 'heat normal|heat back to normal|heat down',
      'breeder net': 'breeder net out|breeder box out',
    },
    also: {
      'off the loop': 'valve open|valve opened|valve open again|valve reopened|back on the system|back on system',
      'lights off': 'light back on',
      'breeder net': 'net breeder out|fry trap out|breeder trap out|breeding box out',
      'air filter': 'battery air off|off battery air',
      divider:
        'divider removed|removed divider|removed the divider|took divider out|took the divider out|took out divider|took out the divider|divider taken out|divider down|divider gone',
      'pump off':
        'return pump back on|pumps on|pumps back on|pump restarted|pump running|pump running again|return running|return back on',
      'heat raised': 'heat back to|heater back to|heat back down|heat back down to',
    },
    under: ['tank', 'loop', 'room', 'row'],
    takes: [],
    makes: ['measure undone'],
  },
  'rig stays': {
    says: {
      'off the loop': 'off the loop stays|stays off the loop',
      'air filter': 'air filter stays|air filter in stays',
      'lights off': 'lights off stays|lights stay off',
      'rocks out': 'rocks out stays|rocks stay out',
      divider: 'divider stays|divider in stays',
      'pump off': 'pump off stays|pump stays off',
      'heater off': 'heater off stays|heater stays off',
      'heat raised': 'heat raised stays|heat stays',
      'breeder net': 'breeder net stays|breeder net in stays',
    },
    under: ['tank', 'loop', 'room', 'row'],
    takes: [],
    makes: ['measure stays'],
  },
  'everything undone': {
    says: { undone: 'everything undone|all undone|everything back to normal|everything back' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: [],
    makes: ['everything undone'],
  },

  fault: {
    says: { fault: 'fault|faulty' },
    also: {
      named: `${failing('pump|return pump|heater|air pump|filter|timer|float valve')}|${
        'valve seized|valve stuck|valve weeping|valve leaking|valve jammed|valve blocked|bulkhead weeping|bulkhead leaking|bulkhead dripping|' +
        'filter stopped|air pump stopped|lights not working|light not working|light failed|pump noisy|pump seized|pump blocked|pump clogged|return blocked|filter blocked|filter clogged|glass cracked|cracked glass|cracked'
      }`,
    },
    under: ['tank', 'loop', 'room', 'row'],
    takes: ['text'],
    text: 'any',
    makes: ['fault'],
  },
  fixed: {
    says: { fixed: 'fixed|repaired' },
    also: { mended: 'leak fixed|leak stopped|leak sealed|leak repaired|leak mended' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: ['text'],
    text: 'any',
    makes: ['fixed'],
  },
  overflowed: {
    says: { overflowed: 'overflowed|overflow|overflowing|flooded' },
    also: { overflowed: 'sump overflow|sump overflowed|sump overflowing|sump flooded' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: [],
    makes: ['overflowed'],
  },
  leak: {
    says: { leak: 'leak|leaking|leaks' },
    also: { leak: 'slow leak|small leak|bad leak|tank leaking|still leaking' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: ['where'],
    makes: ['leak'],
  },
  'power off': {
    says: { off: 'power off|power cut|no power|power out' },
    also: {
      off: 'power outage|outage|blackout|power failure|power failed|lost power|power lost|power went|power gone',
    },
    under: ['room', 'loop', 'tank', 'row'],
    takes: ['for'],
    makes: ['power off'],
  },
  'power on': {
    says: { on: 'power on|power back|power back on' },
    also: { on: 'power restored|power returned' },
    under: ['room', 'loop', 'tank', 'row'],
    takes: [],
    makes: ['power on'],
  },
  'heater stuck': {
    says: { stuck: 'heater stuck|heater stuck on' },
    under: ['tank', 'loop', 'row'],
    takes: ['at'],
    makes: ['heater stuck'],
  },
} as const satisfies Readonly<Record<string, ClauseRule>>;

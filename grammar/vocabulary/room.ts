/** Clauses of the daily round: looking, chores, water, filters, notes. */
import type { ClauseRule } from './rule.ts';

export const ROOM = {
  'all well': {
    says: { well: 'all well|all ok|all fine|all good|looked all well' },
    also: { well: 'ok|okay|everything fine|everything ok|everything well' },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'row'],
    takes: [],
    fish: 'any',
    makes: ['all well'],
  },
  away: {
    says: { away: 'away' },
    also: { away: 'holiday|holidays|on holiday|gone', back: 'back|back home|home again' },
    under: ['room'],
    takes: ['until', 'for'],
    makes: ['away'],
  },

  chore: {
    says: {
      'clean prefilter': 'clean prefilter|clean the prefilter',
      'clean media': 'clean media|clean the media',
      'rinse sponge': 'rinse sponge|rinse the sponge|squeeze sponge',
      'top up': 'top up',
      feed: 'feed',
      harvest: 'harvest',
      restart: 'restart',
      own: '',
    },
    under: ['room', 'tank', 'loop', 'culture', 'row'],
    takes: ['every', 'above', 'takes', 'text'],
    continues: ['takes', 'above'],
    text: 'words',
    makes: ['chore set'],
  },
  'stop chore': {
    says: { stop: 'stop' },
    under: ['room', 'tank', 'loop', 'culture', 'row'],
    takes: ['action', 'text'],
    text: 'any',
    makes: ['chore stopped'],
  },
  'to do': {
    says: { todo: 'to do|todo|to-do' },
    also: {
      todo: "must|need to|needs to|needs|have to|has to|plan|plan to|planning to|remember|remember to|reminder|don't forget|don't forget to|dont forget",
    },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'row'],
    takes: ['text'],
    text: 'any',
    makes: ['to do'],
  },
  did: {
    says: { did: 'did|done' },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'row'],
    takes: ['action', 'text'],
    text: 'any',
    makes: ['did'],
  },
  'put off': {
    says: { 'put off': 'put off|postpone|postponed', keep: 'keep' },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'row'],
    takes: ['action', 'measure', 'text', 'until', 'for'],
    text: 'any',
    makes: ['put off'],
  },

  level: {
    says: { level: 'level' },
    also: {
      level:
        'level at|level is|level now|level down to|level dropped to|level fell to|level up to|level rose to|lvl|prefilter level|prefilter at|prefilter level at',
    },
    under: ['loop'],
    takes: ['belowLip'],
    makes: ['level'],
  },
  'layers cleaned': {
    says: {
      layers: 'cleaned|cleaned prefilter|cleaned the prefilter|prefilter cleaned|sump sponges|rinsed layers',
    },
    also: {
      layers:
        'sponges out|sponges rinsed|sponges cleaned|sponges squeezed|layers out|layers rinsed|layers cleaned|prefilter done|full clean|prefilter rinsed|rinsed|squeezed',
    },
    under: ['loop'],
    takes: ['of', 'layers', 'rinsed', 'whichLayers'],
    continues: ['rinsed'],
    counted: true,
    makes: ['layers cleaned'],
  },
  'media cleaned': {
    says: { media: 'cleaned media|cleaned the media|media cleaned|cleaned bio media|cleaned biological media' },
    under: ['loop', 'tank', 'row'],
    takes: [],
    makes: ['media cleaned'],
  },
  'sponge rinsed': {
    says: {
      rinsed:
        'rinsed sponge|rinsed the sponge|sponge rinsed|squeezed sponge|sponge squeezed|rinsed one sponge|one sponge squeezed|cleaned sponge',
    },
    also: {
      rinsed:
        'cleaned sf|cleaned the sf|sf cleaned|rinsed sf|sf rinsed|squeezed sf|sf squeezed|cleaned sponge filter|sponge filter cleaned|sponge filter rinsed|rinsed sponge filter|sponge cleaned',
    },
    under: ['tank', 'loop', 'row'],
    takes: [],
    makes: ['sponge rinsed'],
  },
  'water change': {
    says: { change: "water change|wc|wc'd|changed water|changed|water changed" },
    also: { change: 'w / c' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: ['every', 'takes', 'above', 'of', 'water', 'newWater'],
    counted: true,
    continues: ['takes'],
    yields: 'wc',
    makes: ['water changed', 'chore set'],
  },
  'topped up': {
    says: { topped: 'topped up|topped|top-up' },
    also: { topped: 'topped off' },
    under: ['tank', 'loop', 'row'],
    takes: ['with', 'newWater'],
    makes: ['topped up'],
  },
  test: {
    says: { test: 'test|tested|water test', reading: '' },
    under: ['tank', 'loop', 'room', 'row'],
    takes: [
      'pH',
      'KH',
      'GH',
      'TAN',
      'NO2',
      'NO3',
      'temperature',
      'conductivity',
      'salinity',
      'oxygen',
      'chlorine',
      'asN',
      'asIon',
      'every',
      'takes',
      'and',
    ],
    continues: [
      'pH',
      'KH',
      'GH',
      'TAN',
      'NO2',
      'NO3',
      'temperature',
      'conductivity',
      'salinity',
      'oxygen',
      'chlorine',
      'asN',
      'asIon',
      'takes',
    ],
    makes: ['tested', 'chore set'],
  },
  dosed: {
    says: { dosed: 'dosed|dose|added' },
    under: ['tank', 'loop', 'row'],
    takes: ['text', 'ofWhat'],
    text: 'words',
    makes: ['dosed'],
  },

  note: {
    says: { note: '' },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'auction', 'species', 'row'],
    takes: [],
    fish: 'any',
    makes: ['note'],
  },
  photo: {
    says: { photo: 'photo|pic|picture' },
    under: ['room', 'tank', 'loop', 'group', 'brood', 'culture', 'auction', 'species', 'row'],
    takes: ['text'],
    text: 'any',
    fish: 'any',
    makes: ['photo'],
  },
} as const satisfies Readonly<Record<string, ClauseRule>>;

/** Ways of breeding, as the trade groups them; the usual numbers of each stand in `science/guilds.ts`. */
export type Guild =
  | 'substrate spawner'
  | 'open spawner'
  | 'cave spawner'
  | 'shell spawner'
  | 'rock spawner'
  | 'mouthbrooder'
  | 'livebearer'
  | 'egg scatterer'
  | 'bubble nester';

export const GUILDS: readonly Guild[] = [
  'substrate spawner',
  'open spawner',
  'cave spawner',
  'shell spawner',
  'rock spawner',
  'mouthbrooder',
  'livebearer',
  'egg scatterer',
  'bubble nester',
];

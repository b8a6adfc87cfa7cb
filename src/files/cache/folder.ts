/** Where this system keeps what a program may lose at any time. Nothing there is ever needed. */
import path from 'node:path';

export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly home: string;
}

/**
 * The folder for remembered answers; null where the keeper wants none (`TANKSIDE_CACHE=off`). A path in
 * that variable is used as it stands; else what XDG (Base Directory 0.8), macOS or Windows say.
 */
export function cacheFolder({ env, platform, home }: Surroundings): string | null {
  const told = env['TANKSIDE_CACHE'];
  if (told === 'off') return null;
  if (told !== undefined && told !== '') return path.isAbsolute(told) ? told : null;
  const usual = usualFolder(env, platform, home);
  return path.isAbsolute(usual) ? path.join(usual, 'tankside') : null;
}

function usualFolder(env: Surroundings['env'], platform: string, home: string): string {
  if (platform === 'win32') return env['LOCALAPPDATA'] ?? '';
  if (platform === 'darwin') return path.join(home, 'Library', 'Caches');
  const xdg = env['XDG_CACHE_HOME'] ?? '';
  return path.isAbsolute(xdg) ? xdg : path.join(home, '.cache');
}

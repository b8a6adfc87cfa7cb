import { expect, test } from 'vitest';
import { cacheFolder } from '../../../src/files/cache/folder.ts';

const on = (platform: string, env: Record<string, string>, home = '/home/k'): string | null =>
  cacheFolder({ env, platform, home });

test('answers are kept where the system keeps what may be lost', () => {
  expect(on('linux', {})).toBe('/home/k/.cache/tankside');
  expect(on('linux', { XDG_CACHE_HOME: '/var/k' })).toBe('/var/k/tankside');
  expect(on('darwin', {})).toBe('/home/k/Library/Caches/tankside');
});

test('a relative XDG_CACHE_HOME is ignored, as the XDG Base Directory Specification 0.8 says', () => {
  expect(on('linux', { XDG_CACHE_HOME: 'var' })).toBe('/home/k/.cache/tankside');
});

test('the keeper may name the folder, or want none', () => {
  expect(on('linux', { TANKSIDE_CACHE: '/mine' })).toBe('/mine');
  expect(on('linux', { TANKSIDE_CACHE: 'off' })).toBeNull();
  expect(on('linux', { TANKSIDE_CACHE: 'here' })).toBeNull();
});

test('without a home there is none', () => {
  expect(on('linux', {}, '')).toBeNull();
  expect(on('win32', {}, '')).toBeNull();
});

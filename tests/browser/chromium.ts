/** A headless Chromium found on the path, which reaches for nothing by itself; null where there is none. */
import { accessSync, constants } from 'node:fs';
import path from 'node:path';
import { chromium, type Browser } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const ARGUMENTS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function findBrowser(): string | null {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter).filter((folder) => folder !== '');
  const files = folders.flatMap((folder) => NAMES.map((name) => path.join(folder, name)));
  return files.find(isProgram) ?? null;
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export function openBrowser(executablePath: string): Promise<Browser> {
  return chromium.launch({ executablePath, args: ARGUMENTS });
}

import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser'];
const PROGRAM = PLACES.find(existsSync);

/** Whether there is a browser to try the page in; tests that want one are skipped by name where there is none. */
export const noBrowser = PROGRAM === undefined;
export const wants = noBrowser ? ' (skipped: wants chromium)' : '';

const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launchProgram = (): Promise<Browser> =>
  chromium.launch({ executablePath: PROGRAM!, headless: true, args: ARGUMENTS });

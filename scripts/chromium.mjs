// Finds Chromium for the browser tests, or installs Debian's when it may.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { run } from './packages.mjs';

const usual = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

export function findChromium() {
  const named = process.env.LAYDOWN_CHROMIUM ?? process.env.CHROMIUM_PATH;
  if (named) return existsSync(named) ? named : undefined;
  return usual.find((path) => existsSync(path));
}

/** Path of a Chromium, or undefined after saying how to get one. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  if (process.env.LAYDOWN_CHROMIUM) {
    console.error(`LAYDOWN_CHROMIUM names ${process.env.LAYDOWN_CHROMIUM}, which does not exist.`);
    return undefined;
  }
  const isRoot = process.getuid?.() === 0;
  if (isRoot && spawnSync('apt-get', ['--version']).status === 0) {
    console.log('Installing Chromium from Debian’s packages …');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-q'], { env, stdio: 'ignore' });
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], { env, stdio: ['ignore', 'ignore', 'inherit'] });
    const installed = findChromium();
    if (installed) return installed;
  }
  console.error('The browser tests need Chromium. Install it (on Debian: apt-get install chromium) or set LAYDOWN_CHROMIUM to its path.');
  return undefined;
}

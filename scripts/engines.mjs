// Firefox and WebKit from Debian's packages, for the tests of every engine a studio has. Without them those tests are passed over.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { run } from './packages.mjs';

const wanted = [
  ['/usr/bin/firefox-esr', 'firefox-esr'],
  ['/usr/bin/WebKitWebDriver', 'webkit2gtk-driver'],
  ['/usr/bin/Xvfb', 'xvfb'],
];
const missing = () => wanted.filter(([path]) => !existsSync(path)).map(([, name]) => name);

/** Installs what is missing where it may; says what is left out. */
export function ensureEngines() {
  if (missing().length === 0) return;
  if (process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0) {
    console.log('Installing Firefox and WebKit from Debian’s packages …');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-q'], { env, stdio: 'ignore' });
    for (const name of missing()) run('apt-get', ['install', '-y', '-q', '--no-install-recommends', name], { env, stdio: 'ignore' });
  }
  if (missing().length > 0) console.log(`Without ${missing().join(', ')} the tests in other engines than Chromium are passed over.`);
}

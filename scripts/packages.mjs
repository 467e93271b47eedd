// Installs the npm packages when they are missing or older than the lockfile. Used by every other script.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Runs a command in the project's folder; output goes to the terminal. Returns the exit code. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32', ...options });
  if (result.error) console.error(`${command} could not be run: ${result.error.message}`);
  return result.status ?? 1;
}

export function ensurePackages() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Laydown needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  const stamp = `${root}node_modules/.package-lock.json`;
  const lock = `${root}package-lock.json`;
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= statSync(lock).mtimeMs - 1000) return;
  console.log('Installing the npm packages …');
  if (run('npm', ['ci', '--no-audit', '--no-fund']) !== 0) {
    console.error('The packages could not be installed. Check the connection to the npm registry and try again.');
    process.exit(1);
  }
}

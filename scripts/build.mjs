// Builds dist/: the library with tsc, the command line and the Workbench with Vite. Skips what is up to date.
import { copyFileSync, existsSync, mkdirSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensurePackages, root, run } from './packages.mjs';

function newest(folder) {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}

export function build({ force = false } = {}) {
  ensurePackages();
  const stamp = `${root}dist/.built`;
  const sources = Math.max(
    newest(`${root}src`),
    newest(`${root}assets`),
    ...['package-lock.json', 'tsconfig.json', 'tsconfig.build.json', 'vite.config.ts', 'vite.command.config.ts'].map(
      (f) => statSync(root + f).mtimeMs,
    ),
  );
  if (!force && existsSync(stamp) && statSync(stamp).mtimeMs >= sources) return;
  console.log('Building …');
  if (run(process.execPath, ['node_modules/typescript7/bin/tsc', '-p', 'tsconfig.build.json']) !== 0) process.exit(1);
  // Made by others, so the compiler passes it by.
  for (const [folder, files] of [
    ['core/image/lcms', ['lcms.js', 'lcms.wasm', 'LICENSE.md']],
    ['core/image/faces', ['faces.bin', 'LICENSE.md']],
  ]) {
    mkdirSync(`${root}dist/${folder}`, { recursive: true });
    for (const file of files) copyFileSync(`${root}src/${folder}/${file}`, `${root}dist/${folder}/${file}`);
  }
  for (const config of ['vite.config.ts', 'vite.command.config.ts'])
    if (run(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--config', config, '--logLevel', 'warn']) !== 0) process.exit(1);
  writeFileSync(stamp, '');
  utimesSync(stamp, new Date(), new Date(Math.max(Date.now(), sources)));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) build({ force: process.argv.includes('--force') });

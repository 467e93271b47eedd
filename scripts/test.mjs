// npm test: types, lint, then unit, property, outside and browser tests. Ends with “N passed, N failed”.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, mkdirSync, openSync, readFileSync, rmSync } from 'node:fs';
import { build } from './build.mjs';
import { ensureChromium } from './chromium.mjs';
import { ensureEngines } from './engines.mjs';
import { ensurePackages, root, run } from './packages.mjs';

let passed = 0;
let failed = 0;
const count = (name, ok) => {
  if (ok) passed++;
  else failed++;
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${name}`);
};

const node = process.execPath;
mkdirSync(`${root}out`, { recursive: true });
ensurePackages();
// Lint reads sources on one core while the other builds from them; what it says is shown when it is done.
const said = `${root}out/lint.txt`;
const saying = openSync(said, 'w');
const lint = spawn(node, ['node_modules/eslint/bin/eslint.js', '.'], { cwd: root, stdio: ['ignore', saying, saying] });
const linted = once(lint, 'exit');
build();
const chromium = ensureChromium();
if (chromium) ensureEngines();
const types = (project) => run(node, ['node_modules/typescript7/bin/tsc', '-p', project]) === 0;
count('types of core', types('tsconfig.core.json'));
count('types', types('.'));
const [lintCode] = await linted;
closeSync(saying);
process.stdout.write(readFileSync(said));
count('lint', lintCode === 0);
count('format', run(node, ['node_modules/@biomejs/biome/bin/biome', 'format', '.']) === 0);

const report = `${root}out/test-report.json`;
rmSync(report, { force: true });
const only = chromium ? [] : ['--exclude', 'test/browser/**'];
const code = run(
  node,
  [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...only,
    ...process.argv.slice(2),
  ],
  { env: { ...process.env, ...(chromium ? { LAYDOWN_CHROMIUM: chromium } : {}) } },
);
let suites = { numPassedTests: 0, numFailedTests: 0, numFailedTestSuites: 0, testResults: [] };
try {
  suites = JSON.parse(readFileSync(report, 'utf8'));
} catch {
  failed++;
  console.error('The test runner left no report.');
}
passed += suites.numPassedTests;
failed += suites.numFailedTests;
// A file that could not even be loaded has no failed test in it, yet it failed.
failed += suites.testResults.filter((file) => file.status === 'failed' && file.assertionResults.every((t) => t.status !== 'failed')).length;
if (!chromium) count('browser tests (no Chromium)', false);
if (code !== 0 && failed === 0) failed++;
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

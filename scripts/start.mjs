// npm start [-- JOB] [--no-serve] [--port N] [--share]: builds, makes the packet, opens the Workbench with that job.
import { existsSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from './build.mjs';
import { root, run } from './packages.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { 'no-serve': { type: 'boolean', default: false }, port: { type: 'string' }, share: { type: 'boolean', default: false } },
});
const job = positionals[0] ? resolve(positionals[0]) : `${root}examples/tide-pool`;
if (!existsSync(job)) {
  console.error(`There is no job at ${positionals[0]}. Give a folder with job.json in it, or a .laydown file.`);
  process.exit(1);
}

build();
const main = `${root}dist/cli/main.js`;
const out = `${root}out/${basename(job).replace(/\.laydown$/, '')}`;
const made = run(process.execPath, [main, 'packet', job, '--out', out, '--replace']);
if (made !== 0) process.exit(made);
if (!values['no-serve'])
  process.exit(
    run(process.execPath, [main, 'serve', job, ...(values.port ? ['--port', values.port] : []), ...(values.share ? ['--share'] : [])]),
  );

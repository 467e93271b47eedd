import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { encode as encodePng } from 'fast-png';
import { notAsWritten } from '../../src/cli/disk/written-list.ts';
import { readShelf } from '../../src/core/ink/index.ts';
import { parseJob, readJobFile, writeJob } from '../../src/core/job/index.ts';
import { registerTestSheet, testTable } from '../../src/core/press/index.ts';
import { seeded } from '../../src/core/random.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import type { Wish } from './inputs.ts';
import { Tally } from './tally.ts';

const main = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));

/** A command that writes, where to, and whether what lies there is whole. */
interface Written {
  readonly kind: string;
  readonly out: string;
  readonly args: readonly string[];
  /** It never replaces: what it wrote is taken away before it runs again, and a kill may leave nothing. */
  readonly anew?: true;
  whole(path: string): boolean;
}

/**
 * Kills commands that write, at moments drawn by lot over their whole run. After each kill what was there before must be there still, or the new one,
 * whole; the maker's own files must be as they were; and at the end the command must succeed and leave nothing of the killed ones behind.
 */
export async function attackCommands({ seed, times, until }: Wish): Promise<Tally[]> {
  const random = seeded(seed);
  const base = mkdtempSync(join(tmpdir(), 'laydown-kills-'));
  try {
    const commands = prepareFolder(base);
    const own = printOf(join(base, 'job'));
    const tallies: Tally[] = [];
    for (const [k, command] of commands.entries()) {
      const tally = new Tally(`kills: ${command.kind}`);
      const share = Date.now() + (until - Date.now()) / (commands.length - k);
      const begun = Date.now();
      if ((await run(command.args, Infinity)) !== 0 || !command.whole(command.out)) tally.tell('did not succeed unharmed');
      const usualMs = Date.now() - begun;
      for (let i = 0; i < Math.ceil(times / commands.length) && Date.now() < share; i++) {
        tally.tried++;
        if (command.anew) rmSync(command.out, { force: true });
        // Half of them in the last third, where the writing is.
        const at = random.next() < 0.5 ? random.next() : 0.66 + random.next() * 0.4;
        await run(command.args, at * usualMs);
        const there = [command.out, ...leftBy(command.out).filter((name) => /\.(old|before)-/.test(name))].some(
          (path) => existsSync(path) && command.whole(path),
        );
        const nothing = command.anew === true && !existsSync(command.out);
        const kept = printOf(join(base, 'job')) === own;
        if ((there || nothing) && kept) tally.survived++;
        else {
          tally.lost++;
          tally.tell(`${i}, killed at ${(at * usualMs).toFixed(0)} ms: ${kept ? 'nothing whole is left' : 'the job was touched'}`);
        }
      }
      if (command.anew) rmSync(command.out, { force: true });
      const ended = await run(command.args, Infinity);
      const left = leftBy(command.out).filter((name) => !/\.before-/.test(name));
      if (ended !== 0 || !command.whole(command.out) || left.length > 0) {
        tally.dead++;
        tally.tell(`afterwards: ended with ${ended}; left ${left.join(', ')}`);
      }
      tallies.push(tally);
    }
    return tallies;
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
}

function prepareFolder(base: string): Written[] {
  const job = join(base, 'job');
  mkdirSync(job);
  const { papers, forms, inks } = smallJob().job;
  const image = { widthMm: 120, heightMm: 90 };
  const bundle = smallJob({ image, forms, inks, papers: [{ ...papers[0], widthMm: 160, heightMm: 130 }] });
  for (const [path, bytes] of writeJob(bundle)) writeFileSync(join(job, path), bytes);
  const picture = join(base, 'picture.png');
  const data = Uint8Array.from({ length: 60 * 45 * 3 }, (_, i) => ((((i / 3) | 0) % 60) * 4 + (i % 3) * 40) & 255);
  writeFileSync(picture, encodePng({ width: 60, height: 45, channels: 3, data }));
  const table = join(base, 'readings.csv');
  const { places } = registerTestSheet([image.widthMm, image.heightMm], {});
  const [heading, ...rows] = testTable(places, 6);
  const random = seeded(5);
  const filled = rows.map((row) => row.map((cell, i) => (cell === '' && i >= 2 ? String(Math.round(random.normal() * 2)) : cell)));
  writeFileSync(table, [heading, ...filled].map((row) => row.join(',')).join('\n'));
  const asWritten = (path: string): boolean => {
    const { kind, foreign, changed } = notAsWritten(path);
    return kind !== null && foreign.length + changed.length === 0;
  };
  const sound = (read: () => unknown): boolean => {
    try {
      read();
      return true;
    } catch {
      return false;
    }
  };
  const at = (name: string): string => join(base, name);
  return [
    { kind: 'packet', out: at('packet'), args: ['packet', job, '--out', at('packet'), '--replace'], whole: asWritten },
    {
      kind: 'separate',
      out: at('made'),
      args: ['separate', picture, '--with', job, '--out', at('made'), '--replace', '--layers', '2', '--effort', '0.05', '--seed', '1'],
      whole: (path) => asWritten(path) && sound(() => parseJob(JSON.parse(readFileSync(join(path, 'job.json'), 'utf8')))),
    },
    {
      kind: 'register',
      out: at('tested.laydown'),
      args: ['register', job, table, '--out', at('tested.laydown')],
      anew: true,
      whole: (path) => sound(() => readJobFile(new Uint8Array(readFileSync(path)))),
    },
    {
      kind: 'shelf',
      out: at('shelf.json'),
      args: ['shelf', '--from', job, '--out', at('shelf.json'), '--replace'],
      whole: (path) => sound(() => readShelf(readFileSync(path, 'utf8'), 'shelf.json')),
    },
  ];
}

/** Paths beside an output that Laydown made on the way to it. */
function leftBy(out: string): string[] {
  const [folder, name] = [join(out, '..'), out.slice(join(out, '..').length + 1)];
  return readdirSync(folder)
    .filter((entry) => entry.startsWith(`${name}.`) || entry.startsWith(`.${name}.laydown-`))
    .map((entry) => join(folder, entry));
}

function printOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).sort()) hash.update(name).update(readFileSync(join(folder, name)));
  return hash.digest('hex');
}

/** Runs `laydown`, ended for good after a while; the exit code, null where it was killed. */
function run(args: readonly string[], killAfterMs: number): Promise<number | null> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [main, ...args], { stdio: 'ignore' });
    const timer = killAfterMs === Infinity ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    child.on('exit', (code) => {
      clearTimeout(timer);
      resolve(code);
    });
  });
}

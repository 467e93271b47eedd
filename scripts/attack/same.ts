import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Wish } from './inputs.ts';
import { prepare } from '../../src/cli/assets.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { openBench, openBrowser, serveBench } from '../../test/browser/bench-page.ts';
import { packetInBrowser, packetInNode } from '../../test/browser/worker-packet.ts';
import { Tally } from './tally.ts';

const root = new URL('../../', import.meta.url);
const main = fileURLToPath(new URL('dist/cli/main.js', root));

/** Machines as they differ: where they stand, what they speak, how much memory they give. */
const machines: readonly { readonly env: Readonly<Record<string, string>>; readonly node: readonly string[] }[] = [
  { env: { TZ: 'UTC', LANG: 'C' }, node: [] },
  { env: { TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' }, node: ['--max-old-space-size=1200'] },
  { env: { TZ: 'America/St_Johns', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' }, node: ['--max-semi-space-size=2'] },
];

/** Fingerprint of every file of a folder, by path. */
export function printsOf(folder: string): Map<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    files
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path.slice(folder.length + 1), createHash('sha256').update(readFileSync(path)).digest('hex')]),
  );
}

const examples = (): string[] =>
  readdirSync(new URL('examples/', root), { withFileTypes: true })
    .filter((e) => e.isDirectory() || e.name.endsWith('.laydown'))
    .map((e) => e.name);

/** The same job gives the same bytes of plan, PDF, SVG, DXF, PNG and CSV, wherever it is planned: on machines as they differ, and in a browser. */
export async function attackSameness(wish: Wish): Promise<Tally[]> {
  return [onMachines(wish), await inBrowser(wish)];
}

async function inBrowser({ until }: Wish): Promise<Tally> {
  const tally = new Tally('same bytes: browser');
  await prepare();
  const [browser, server] = [await openBrowser(), await serveBench(readJobAt(fileURLToPath(new URL('examples/letters', root))))];
  try {
    const { page } = await openBench(browser, `${server.url}?job=open#laydown`);
    const script = server.requests.find((path) => /\/worker-[^/]*\.js$/.test(path))!;
    for (const name of examples()) {
      if (Date.now() > until) break;
      const bundle = readJobAt(fileURLToPath(new URL(`examples/${name}`, root)));
      const [here, there] = [await packetInNode(bundle), await packetInBrowser(page, script, bundle)];
      compare(tally, `${name}/`, 'in the browser', new Map(Object.entries(here)), new Map(Object.entries(there)));
    }
  } finally {
    await browser.close();
    await server.close();
  }
  return tally;
}

function compare(
  tally: Tally,
  before: string,
  where: string,
  wanted: ReadonlyMap<string, string>,
  found: ReadonlyMap<string, string>,
): void {
  for (const name of new Set([...wanted.keys(), ...found.keys()])) {
    tally.tried++;
    if (found.get(name) === wanted.get(name)) tally.survived++;
    else {
      tally.lost++;
      tally.tell(`${before}${name} differs ${where}`);
    }
  }
}

function onMachines({ until }: Wish): Tally {
  const tally = new Tally('same bytes: machines');
  const base = mkdtempSync(join(tmpdir(), 'laydown-same-'));
  try {
    for (const name of examples()) {
      let first: Map<string, string> | null = null;
      for (const [i, { env, node }] of machines.entries()) {
        if (Date.now() > until) break;
        const out = join(base, `${name}-${i}`);
        const path = fileURLToPath(new URL(`examples/${name}`, root));
        const { status } = spawnSync(process.execPath, [...node, main, 'packet', path, '--out', out, '--lang', 'en'], {
          env: { ...process.env, ...env },
          stdio: 'ignore',
        });
        if (status !== 0) {
          tally.dead++;
          tally.tell(`${name} on machine ${i}: ended with ${status}`);
          continue;
        }
        const prints = printsOf(out);
        first ??= prints;
        compare(tally, `${name}/`, `on machine ${i}`, first, prints);
      }
    }
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
  return tally;
}

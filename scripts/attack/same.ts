import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Wish } from './inputs.ts';
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

/** The same job gives the same bytes of plan, PDF, SVG, DXF, PNG and CSV, wherever it is planned. Another in the browser: `test/browser/workbench.test.ts`. */
export async function attackSameness({ until }: Wish): Promise<Tally[]> {
  const tally = new Tally('same bytes');
  const base = mkdtempSync(join(tmpdir(), 'laydown-same-'));
  try {
    for (const job of readdirSync(new URL('examples/', root), { withFileTypes: true }).filter(
      (e) => e.isDirectory() || e.name.endsWith('.laydown'),
    )) {
      let first: Map<string, string> | null = null;
      for (const [i, { env, node }] of machines.entries()) {
        if (Date.now() > until) break;
        const out = join(base, `${job.name}-${i}`);
        const path = fileURLToPath(new URL(`examples/${job.name}`, root));
        const { status } = spawnSync(process.execPath, [...node, main, 'packet', path, '--out', out, '--lang', 'en'], {
          env: { ...process.env, ...env },
          stdio: 'ignore',
        });
        if (status !== 0) {
          tally.dead++;
          tally.tell(`${job.name} on machine ${i}: ended with ${status}`);
          continue;
        }
        const prints = printsOf(out);
        first ??= prints;
        for (const [name, print] of first) {
          tally.tried++;
          if (prints.get(name) === print) tally.survived++;
          else {
            tally.lost++;
            tally.tell(`${job.name}/${name} differs on machine ${i}`);
          }
        }
      }
    }
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
  return [tally];
}

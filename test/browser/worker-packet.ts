import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { readFonts } from '../../src/cli/assets.ts';
import { writeJobFile, type JobBundle } from '../../src/core/job/index.ts';
import { plan, readyBundle } from '../../src/core/plan/index.ts';
import { makePacket } from '../../src/packet/index.ts';

/** Fingerprint of each file of a packet, by path. */
export type Prints = Readonly<Record<string, string>>;

export async function packetInNode(bundle: JobBundle): Promise<Prints> {
  const files = await makePacket(bundle, plan(await readyBundle(bundle)), {
    language: 'en',
    fonts: readFonts(),
    printer: { page: 'a4', marginMm: 12 },
  });
  return Object.fromEntries(files.map(({ path, bytes }) => [path, createHash('sha256').update(bytes).digest('hex')]));
}

/** The same packet, planned and made by the Workbench's worker (`script`: its address) in a browser's page. */
export function packetInBrowser(page: Page, script: string, bundle: JobBundle): Promise<Prints> {
  return page.evaluate(
    async ([url, file]) => {
      const worker = new Worker(url as string, { type: 'module' });
      // A method, because a function with a name of its own does not outlive the way into the page everywhere.
      const engine = {
        ask<A>(id: number, question: string, what: unknown): Promise<A> {
          return new Promise((resolve, reject) => {
            worker.addEventListener('message', ({ data }) => {
              if (data.id !== id || data.kind === 'progress') return;
              if (data.kind === 'answer') resolve(data.answer);
              else reject(new Error(JSON.stringify(data)));
            });
            worker.postMessage({ id, question, ask: what });
          });
        },
      };
      const job = await engine.ask(1, 'openJob', { file: Uint8Array.from(file as number[]), name: 'job' });
      await engine.ask(2, 'plan', job);
      const { files } = await engine.ask<{ files: { path: string; bytes: Uint8Array<ArrayBuffer> }[] }>(3, 'packet', {
        page: 'a4',
        language: 'en',
      });
      worker.terminate();
      const prints: Record<string, string> = {};
      for (const { path, bytes } of files) {
        const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
        prints[path] = [...digest].map((b) => b.toString(16).padStart(2, '0')).join('');
      }
      return prints;
    },
    [script, [...writeJobFile(bundle)]] as const,
  );
}

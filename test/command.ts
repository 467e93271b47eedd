import { createHash } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import { vi } from 'vitest';
import type * as Threads from '../src/cli/threads/thread.ts';
import type * as Planning from '../src/core/plan/index.ts';

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** The command line, called here and not as a process of its own; what it writes comes back. */
export async function calling(args: readonly string[], environment: NodeJS.ProcessEnv = { LC_ALL: 'C' }): Promise<Answer> {
  const { laydown } = await import('../src/cli/laydown.ts');
  const said = { out: '', err: '' };
  const spies = [
    vi.spyOn(console, 'log').mockImplementation((line) => void (said.out += `${line}\n`)),
    vi.spyOn(console, 'error').mockImplementation((line) => void (said.err += `${line}\n`)),
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => ((said.out += text), true)),
  ];
  try {
    return { code: await laydown(args, environment), ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * The same Job gives the same Plan: it is made once for all that is asked about it in one file of tests, and of a Job that was
 * changed only the parts that read the change. For `vi.mock`.
 */
export async function plannedOnce(original: () => Promise<typeof Planning>): Promise<typeof Planning> {
  const real = await original();
  const planner = real.createPlanner();
  const made = new Map<string, Planning.Plan>();
  // Every command reads the files anew; what is the same in them is the same to the planner.
  const read = new Map<string, object>();
  const plan: typeof real.plan = (bundle) => {
    const { job, ...rest } = bundle;
    const files = [...bundle.attachments].map(([name, bytes]) => [name, digestOf(bytes)]);
    const same = JSON.stringify(files);
    if (!read.has(same)) read.set(same, rest);
    const key = JSON.stringify([job, files]),
      known = made.get(key) ?? planner.plan({ ...bundle, ...read.get(same), job });
    made.set(key, known);
    return known;
  };
  // A picture is decoded in a thread of its own, which each call would start anew: the same bytes are decoded once.
  const bytesOf = new Map<string, Uint8Array>();
  const readyBundle: typeof real.readyBundle = (bundle, decode) => {
    const attachments = [...bundle.attachments].map(([name, bytes]) => {
      const digest = digestOf(bytes);
      bytesOf.set(digest, bytesOf.get(digest) ?? bytes);
      return [name, bytesOf.get(digest)!] as const;
    });
    return real.readyBundle({ ...bundle, attachments: new Map(attachments) }, decode);
  };
  return { ...real, plan, readyBundle };
}

/** Threads as they were built: from the sources each of them would first have to learn how to read TypeScript. For `vi.mock`. */
export function builtThreads(): typeof Threads {
  return {
    startThread: (name, resourceLimits) => new Worker(new URL(`../dist/cli/threads/${name}.js`, import.meta.url), { resourceLimits }),
  };
}

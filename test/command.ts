import { createHash } from 'node:crypto';
import { vi } from 'vitest';
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
    const files = [...bundle.attachments].map(([name, bytes]) => [name, createHash('sha256').update(bytes).digest('hex')]);
    const same = JSON.stringify(files);
    if (!read.has(same)) read.set(same, rest);
    const key = JSON.stringify([job, files]),
      known = made.get(key) ?? planner.plan({ ...bundle, ...read.get(same), job });
    made.set(key, known);
    return known;
  };
  return { ...real, plan };
}

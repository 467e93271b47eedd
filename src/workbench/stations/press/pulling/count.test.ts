import { signal } from '@preact/signals';
import { describe, expect, test } from 'vitest';
import { currentSchemaVersion, parseJob, type Job } from '../../../../core/job/index.ts';
import type { Attachments } from '../../../engine/protocol.ts';
import { createCount } from './count.ts';
import type { CountKeep } from './count-keep.ts';

/** Lines on this machine, in memory: only what the job on the bench held is lost. */
function keepInMemory(): CountKeep {
  const lines: { job: string; readonly line: string }[] = [];
  return {
    write: async (job, line) => (lines.push({ job, line }), 'both' as const),
    linesOf: async (job) => ({ lines: lines.filter((one) => one.job === job).map((one) => one.line), all: true }),
    putAway: async (job, as) => lines.filter((one) => one.job === job).forEach((one) => (one.job = as)),
  };
}

function benchWith(job: Job) {
  const attachments = signal<Attachments>(new Map());
  return {
    job: signal<Job | null>(job),
    attachments,
    carry(path: string, bytes: Uint8Array) {
      attachments.value = new Map([...attachments.value, [path, bytes]]);
    },
  };
}

const heron = (more: object = {}): Job =>
  parseJob({ schemaVersion: currentSchemaVersion, title: 'Heron', image: { widthMm: 100, heightMm: 100 }, ...more });
const clock = (): string => '2026-03-01T10:00:00Z';
const read = async (job: Job, keep: CountKeep) => {
  const count = createCount(benchWith(job), keep, clock);
  await expect.poll(() => count.ready.value).toBe(true);
  return count;
};

describe('whose count it is', () => {
  test('two prints of one title, one size and no run yet do not share theirs; the same print finds its own again, renamed too', async () => {
    const keep = keepInMemory();
    const first = await read(heron({ print: 'a1' }), keep);
    expect(await first.tap({ kind: 'pull', run: 'sky', sheet: 'paper 1' })).toBe(true);
    expect((await read(heron({ print: 'b2' }), keep)).lines.value).toEqual([]);
    expect((await read(heron({ print: 'a1', title: 'Grey heron' }), keep)).lines.value).toEqual(first.lines.value);
  });

  test('a job from before prints had an identity finds what was counted of it', async () => {
    const keep = keepInMemory();
    // As earlier editions named it.
    await keep.write('["Heron",100,100,[],[]]', (await counted(keep)).lines.value[0].trimEnd());
    expect((await read(heron(), keep)).lines.value).toHaveLength(1);
  });
});

async function counted(keep: CountKeep) {
  const count = await read(heron({ print: 'other' }), keep);
  await count.tap({ kind: 'pull', run: 'sky', sheet: 'paper 1' });
  return count;
}

import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { refusalOfAsync } from '../../../test/said.ts';
import { Cancelled } from '../../core/task.ts';
import { readyBundle, createPlanner } from '../../core/plan/index.ts';
import { smallJob } from '../../packet/packet-jobs.ts';
import type { AskOptions, WorkerClient } from '../engine/client.ts';
import { createPacker } from '../engine/parcel.ts';
import { showPlan } from '../engine/answers/plan.ts';
import type { Ask, OpenedJob } from '../engine/protocol.ts';
import { keepPlanned } from './planning.ts';

/** A worker that answers when it is told to. */
function slowWorker(): { client: WorkerClient; answer: () => Promise<void>; asked: () => number } {
  const planner = createPlanner();
  let packer = createPacker();
  const waiting: (() => Promise<void>)[] = [];
  const ends: (() => void)[] = [];
  const restarted: (() => void)[] = [];
  let asked = 0;
  const client = {
    ask: (question: string, ask: unknown, options?: AskOptions) => {
      if (question === 'drawn') return Promise.resolve(planner.drawn({ job: (ask as Ask<'drawn'>).job, attachments: new Map() }));
      if (question !== 'plan') return Promise.resolve(null);
      asked++;
      return new Promise((resolve, reject) => {
        ends.push(() => reject(new Cancelled()));
        waiting.push(async () => {
          const { job } = ask as Ask<'plan'>;
          const plan = planner.plan(await readyBundle({ job, attachments: new Map() }), (share, note) =>
            options?.onProgress?.(share, note),
          );
          resolve(packer.pack(showPlan(plan)).parcel);
        });
      });
    },
    onRestart: (listener: () => void) => restarted.push(listener),
    end() {
      packer = createPacker();
      waiting.length = 0;
      for (const end of ends.splice(0)) end();
      for (const listener of restarted) listener();
    },
  } as unknown as WorkerClient;
  const soon = (): Promise<void> => new Promise((resolve) => setTimeout(() => setTimeout(resolve)));
  return {
    client,
    asked: () => asked,
    async answer() {
      await expect.poll(() => waiting.length).toBeGreaterThan(0);
      await waiting.shift()!();
      await soon();
    },
  };
}

test('what is in sight says whether it fits the job; an old print never stands beside a new one', async () => {
  const first = smallJob();
  const wanted = signal<OpenedJob | null>(first);
  const worker = slowWorker();
  const planning = keepPlanned(worker.client, wanted, signal('white'));
  expect([planning.plan.value, planning.working.value, planning.fit.value]).toEqual([null, true, 'old']);
  const seen = new Set<string>();
  const stop = planning.making.subscribe((now) => now?.what && seen.add(now.what.key));
  await worker.answer();
  stop();
  expect([...seen]).toEqual(['plan.makingForms', 'plan.makingStencils', 'plan.makingColours', 'plan.makingRegister']);
  expect([planning.plan.value?.job.title, planning.fit.value, planning.making.value]).toEqual(['Two squares', 'whole', null]);

  // A stencil is not made in a moment: what is in sight is old until it is.
  const wider = { ...first, job: { ...first.job, image: { widthMm: 90, heightMm: 60 } } };
  wanted.value = wider;
  expect([planning.plan.value?.job.image.widthMm, planning.fit.value]).toEqual([80, 'old']);
  await worker.answer();
  expect([planning.plan.value?.job.image.widthMm, planning.fit.value]).toEqual([90, 'whole']);

  // Another strength is coloured at once; grams and hours come when the hand rests.
  wanted.value = { ...wider, job: { ...wider.job, layers: wider.job.layers.map((l) => ({ ...l, strength: 0.5 })) } };
  expect(planning.fit.value).toBe('colours');
  await worker.answer();
  expect(planning.fit.value).toBe('whole');

  // Another print, while the one before is still being planned: that Plan is not shown any more.
  const before = worker.asked();
  wanted.value = { ...wider, job: { ...wider.job, image: { widthMm: 70, heightMm: 60 } } };
  await expect.poll(worker.asked).toBe(before + 1);
  planning.forget();
  wanted.value = smallJob({ title: 'Heron' });
  expect(planning.plan.value).toBe(null);
  await worker.answer();
  expect(planning.plan.value).toBe(null);
  await worker.answer();
  expect([planning.plan.value?.job.title, planning.fit.value]).toEqual(['Heron', 'whole']);
});

test('a Plan that takes too long can be stopped: what is in sight stays and is old, until it is made after all or the job changes', async () => {
  const first = smallJob();
  const wanted = signal<OpenedJob | null>(first);
  const worker = slowWorker();
  const planning = keepPlanned(worker.client, wanted, signal('white'));
  await worker.answer();
  const wide = (widthMm: number): OpenedJob => ({ ...first, job: { ...first.job, image: { widthMm, heightMm: 60 } } });
  wanted.value = wide(90);
  await expect.poll(worker.asked).toBe(2);
  planning.stop();
  await expect.poll(() => planning.working.value).toBe(false);
  expect([planning.stopped.value, planning.fit.value, planning.plan.value?.job.image.widthMm, worker.asked()]).toEqual([
    true,
    'old',
    80,
    2,
  ]);
  // What needs the Plan is refused in words, and nothing is asked behind the back.
  expect(await refusalOfAsync(() => planning.upToDate())).toContain('You stopped the working out');
  planning.goOn();
  await worker.answer();
  expect([planning.stopped.value, planning.failure.value, planning.fit.value, planning.plan.value?.job.image.widthMm]).toEqual([
    false,
    null,
    'whole',
    90,
  ]);

  wanted.value = wide(100);
  await expect.poll(worker.asked).toBe(4);
  planning.stop();
  await expect.poll(() => planning.stopped.value && !planning.working.value).toBe(true);
  wanted.value = wide(110);
  await worker.answer();
  expect([planning.stopped.value, planning.fit.value, planning.plan.value?.job.image.widthMm]).toEqual([false, 'whole', 110]);
});

test('the print as it is drawn is in sight before its Plan, follows every slider, and gives way to the Plan', async () => {
  const first = smallJob();
  const wanted = signal<OpenedJob | null>(first);
  const worker = slowWorker();
  const planning = keepPlanned(worker.client, wanted, signal('white'));
  await expect.poll(() => planning.drawn.value?.layers.length).toBe(2);
  expect([planning.plan.value, planning.working.value]).toEqual([null, true]);
  const before = planning.drawn.value!.papers[0].palette;
  const weaker = { ...first, job: { ...first.job, layers: first.job.layers.map((l) => ({ ...l, strength: 0.2 })) } };
  wanted.value = weaker;
  expect(planning.drawn.value?.papers[0].palette).not.toEqual(before);
  // Another stencil is not drawn yet: nothing old stands for it.
  wanted.value = { ...first, job: { ...first.job, image: { widthMm: 90, heightMm: 60 } } };
  expect(planning.drawn.value).toBeNull();
  await worker.answer();
  expect([planning.drawn.value, planning.plan.value?.job.image.widthMm]).toEqual([null, 80]);
  await worker.answer();
  expect([planning.drawn.value, planning.plan.value?.job.image.widthMm, planning.fit.value]).toEqual([null, 90, 'whole']);
  // Another print: drawn anew, and what comes for the one before is not shown.
  planning.forget();
  wanted.value = smallJob({ title: 'Heron' });
  await expect.poll(() => planning.drawn.value?.job.title).toBe('Heron');
  wanted.value = null;
  await expect.poll(() => planning.drawn.value).toBeNull();
});

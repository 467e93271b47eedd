import { expect, test } from 'vitest';
import { refusalOfAsync } from '../../../test/said.ts';
import { ProblemError, problem } from '../../core/problem.ts';
import { Cancelled } from '../../core/task.ts';
import { say } from '../../words/index.ts';
import { faultsOf } from './faults.ts';
import { openLine } from './line.ts';

/** A worker that says only what the test puts in its mouth. */
class Puppet {
  readonly heard: { id: number; question: string }[] = [];
  ended = false;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { preventDefault(): void }) => void) | null = null;
  postMessage(message: { id: number; question: string }): void {
    this.heard.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: unknown): void {
    this.onmessage?.({ data });
  }
  fall(): void {
    this.onerror?.({ preventDefault: () => undefined });
  }
}

function opened(): {
  readonly line: ReturnType<typeof openLine<{ id: number; kind: 'progress'; share: number }>>;
  readonly workers: Puppet[];
  readonly lost: () => number;
} {
  const workers: Puppet[] = [];
  let lost = 0;
  const line = openLine<{ id: number; kind: 'progress'; share: number }>(
    () => (workers.push(new Puppet()), workers[workers.length - 1] as unknown as Worker),
    say('engine.workerLost'),
    () => {
      lost++;
    },
  );
  return { line, workers, lost: () => lost };
}

test('each answer comes to the one who asked, whatever the order, and news on the way', async () => {
  const {
    line,
    workers: [worker],
  } = opened();
  const shares: number[] = [];
  const first = line.ask('plan', {}, ({ share }) => shares.push(share)),
    second = line.ask('packet', {}, () => undefined);
  const [a, b] = worker.heard.map(({ id }) => id);
  worker.say({ id: b, kind: 'answer', answer: 'two' });
  worker.say({ id: a, kind: 'progress', share: 0.5 });
  worker.say({ id: a, kind: 'answer', answer: 'one' });
  worker.say({ id: a, kind: 'progress', share: 0.9 });
  expect(await first.answer).toBe('one');
  expect(await second.answer).toBe('two');
  expect(shares).toEqual([0.5]);
});

test('what can be mended, what nobody foresaw and what was stopped are three things', async () => {
  const {
    line,
    workers: [worker],
  } = opened();
  const asked = [1, 2, 3].map(() => line.ask('plan', {}, () => undefined));
  asked[2].stop();
  const [a, b, c, stop] = worker.heard;
  expect(stop).toEqual({ id: c.id, question: 'stop' });
  const open = problem('error', 'layer-open', 'layers[#sky].ink', say('asks.openNothingToMix'), say('asks.chooseInk'));
  worker.say({ id: a.id, kind: 'failed', problems: [open] });
  worker.say({ id: b.id, kind: 'failed', problems: faultsOf(new Error('out of memory')) });
  worker.say({ id: c.id, kind: 'stopped' });
  await expect(asked[0].answer).rejects.toEqual(new ProblemError([open]));
  expect(await refusalOfAsync(() => asked[1].answer)).toMatch(/^the Workbench: Something went wrong .* out of memory$/);
  await expect(asked[2].answer).rejects.toBeInstanceOf(Cancelled);
});

test('a worker that falls over is started again; whoever waited learns of it, and the next question goes to the new one', async () => {
  const { line, workers, lost } = opened();
  const waiting = line.ask('plan', {}, () => undefined).answer;
  workers[0].fall();
  expect(await refusalOfAsync(() => waiting)).toContain('stopped and was started again');
  expect([workers.length, workers[0].ended, lost()]).toEqual([2, true, 1]);
  const next = line.ask('plan', {}, () => undefined).answer;
  workers[1].say({ id: workers[1].heard[0].id, kind: 'answer', answer: 'again' });
  expect(await next).toBe('again');
});

test('what takes too long once it was begun is ended and told; waiting in line is no fault', async () => {
  const { line, workers } = opened();
  const { answer } = line.ask('read', {}, () => undefined, 20);
  const refused = refusalOfAsync(() => answer);
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(workers[0].ended).toBe(false);
  workers[0].say({ id: workers[0].heard[0].id, kind: 'progress', share: 0 });
  await expect(refused).resolves.toBeDefined();
  expect([workers[0].ended, workers.length]).toEqual([true, 2]);
});

test('a worker that can not be had is not started for ever', async () => {
  const { workers } = opened();
  for (let i = 0; i < 10; i++) workers.at(-1)!.fall();
  expect(workers.length).toBe(3);
});

test('work that no one wants to wait for is ended in its middle, and the next question goes to a new worker', async () => {
  const { line, workers, lost } = opened();
  const waiting = expect(line.ask('plan', {}, () => undefined).answer).rejects.toBeInstanceOf(Cancelled);
  line.end();
  await waiting;
  expect([workers.length, workers[0].ended, lost()]).toEqual([2, true, 1]);
  const next = line.ask('plan', {}, () => undefined).answer;
  workers[1].say({ id: workers[1].heard[0].id, kind: 'answer', answer: 'again' });
  expect(await next).toBe('again');
});

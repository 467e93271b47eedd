import { expect, test } from 'vitest';
import { ProblemError, problem } from '../../core/problem.ts';
import { Cancelled } from '../../core/task.ts';
import { openLine } from './line.ts';

/** A worker that says only what it is told to say. */
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
    'It stopped and was started again.',
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

test('what can be mended, what can not and what was stopped are told apart', async () => {
  const {
    line,
    workers: [worker],
  } = opened();
  const asked = [1, 2, 3].map(() => line.ask('plan', {}, () => undefined));
  asked[2].stop();
  const [a, b, c, stop] = worker.heard;
  expect(stop).toEqual({ id: c.id, question: 'stop' });
  worker.say({ id: a.id, kind: 'failed', message: '', problems: [problem('error', 'x', 'here', 'Wrong.', 'Mend it.')] });
  worker.say({ id: b.id, kind: 'failed', message: 'out of memory', problems: [] });
  worker.say({ id: c.id, kind: 'stopped' });
  await expect(asked[0].answer).rejects.toBeInstanceOf(ProblemError);
  await expect(asked[1].answer).rejects.toThrow('out of memory');
  await expect(asked[2].answer).rejects.toBeInstanceOf(Cancelled);
});

test('a worker that falls over is started again; whoever waited is told, and the next question goes to the new one', async () => {
  const { line, workers, lost } = opened();
  const waiting = line.ask('plan', {}, () => undefined).answer;
  workers[0].fall();
  await expect(waiting).rejects.toThrow('It stopped and was started again.');
  expect([workers.length, workers[0].ended, lost()]).toEqual([2, true, 1]);
  const next = line.ask('plan', {}, () => undefined).answer;
  workers[1].say({ id: workers[1].heard[0].id, kind: 'answer', answer: 'again' });
  expect(await next).toBe('again');
});

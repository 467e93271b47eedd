import type { Worker } from 'node:worker_threads';
import { expect, test, vi } from 'vitest';
import { benchShelf } from '../../../bench/separate-shelf.ts';
import { doErrand, type Errand } from '../../core/separate/index.ts';
import { quietTask } from '../../core/task.ts';
import { hireHands } from './hands.ts';

const started: Worker[] = [];
vi.mock('./thread.ts', async () => {
  const { startThread } = (await import('../../../test/command.ts')).builtThreads();
  return {
    startThread: (name: string) => {
      const thread = startThread(name);
      started.push(thread);
      return thread;
    },
  };
});

test('threads do the errands, and give what would be found without them', async () => {
  const { paper, surface, shelf } = benchShelf();
  const pots = new Map(shelf.slice(0, 4).map((pot) => [pot.id, pot.ink]));
  const wishes = [{}, {}],
    codes = [0, 1, 2, 3];
  const errand: Errand = {
    kind: 'pool',
    seed: 1,
    starts: 2,
    kicks: 2,
    setup: { wishes, shelf: pots, mostInPot: 1, paper, surface, deposit: 1, below: [], codes, leastShare: 0.01 },
    targets: {
      lab: Float64Array.of(90, 0, 2, 60, 20, 40),
      weight: Float64Array.of(0.6, 0.4),
      form: Float64Array.of(1, 1, 0, 1, 1, 1, 0, 1),
      count: 2,
    },
  };
  const hands = hireHands(2)!;
  const answered: number[] = [];
  started.forEach((thread, i) => thread.on('message', () => answered.push(i)));
  const [here, ...there] = await Promise.all([doErrand(errand), hands.ask(errand, quietTask), hands.ask(errand, quietTask)]);
  expect(there).toEqual([here, here]);
  expect(answered.sort()).toEqual([0, 1]);
  hands.dismiss();

  // Whoever asked and waits takes what nobody has begun.
  const pair = hireHands(1)!;
  let sent = 0;
  started.at(-1)!.on('message', () => sent++);
  const both = [pair.ask(errand, quietTask), pair.ask(errand, quietTask)];
  await pair.help(both[1], quietTask);
  expect(await Promise.all(both)).toEqual([here, here]);
  expect(sent).toBe(1);
  pair.dismiss();
});

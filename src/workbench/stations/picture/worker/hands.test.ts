import { expect, test } from 'vitest';
import { benchShelf } from '../../../../../bench/separate-shelf.ts';
import { doErrand, type Errand } from '../../../../core/separate/index.ts';
import { Cancelled, quietTask } from '../../../../core/task.ts';
import { hireHands, type FromHand, type HandWorker, type ToHand } from './hands.ts';

function errand(seed: number): Errand {
  const { paper, surface, shelf } = benchShelf();
  const few = shelf.slice(0, 4);
  return {
    kind: 'pool',
    seed,
    starts: 2,
    kicks: 2,
    setup: {
      wishes: [{}, {}],
      shelf: new Map(few.map((pot) => [pot.id, pot.ink])),
      mostInPot: 1,
      paper,
      surface,
      deposit: 1,
      below: [],
      codes: [0, 1, 2, 3],
      leastShare: 0.01,
    },
    targets: {
      lab: Float64Array.of(90, 0, 2, 60, 20, 40, 40, 10, 10),
      weight: Float64Array.of(0.4, 0.4, 0.2),
      form: Float64Array.of(1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 0, 1),
      count: 3,
    },
  };
}

/** A hand that works in this thread; `kind`: does its work, falls over at the first errand, or sits on it until stopped. */
function hand(kind: 'works' | 'falls' | 'sits', told: ToHand[]): HandWorker {
  const self: HandWorker = {
    onmessage: null,
    onerror: null,
    terminate: () => undefined,
    postMessage(message) {
      told.push(message);
      const send = (data: FromHand): void => self.onmessage?.({ data } as MessageEvent<FromHand>);
      if (message === 'stop') queueMicrotask(() => send(null));
      else if (kind === 'works') void doErrand(message).then(send);
      else if (kind === 'falls') queueMicrotask(() => self.onerror?.({ preventDefault: () => undefined } as ErrorEvent));
    },
  };
  return self;
}

test('whoever does the errands, and whoever falls over at it, the plans found are the same', async () => {
  const alone = await Promise.all([1, 2, 3].map((seed) => doErrand(errand(seed))));
  for (const kind of ['works', 'falls'] as const) {
    const told: ToHand[] = [],
      hands = hireHands(() => hand(kind, told), 2);
    expect(await Promise.all([1, 2, 3].map((seed) => hands.ask(errand(seed), quietTask)))).toEqual(alone);
    expect(told).toHaveLength(kind === 'works' ? 3 : 2);
  }
});

test('who stops is heard at once, and the thread is told to leave it and is free for the next', async () => {
  const told: ToHand[] = [];
  const hands = hireHands(() => hand('sits', told), 1);
  let looks = 0;
  const stopping = {
    report: () => undefined,
    async pause() {
      if (++looks > 2) throw new Cancelled();
    },
  };
  await expect(hands.ask(errand(1), stopping)).rejects.toThrow(Cancelled);
  expect(told.at(-1)).toBe('stop');
  await expect(hands.ask(errand(2), stopping)).rejects.toThrow(Cancelled);
  expect(told.filter((message) => message !== 'stop')).toHaveLength(2);
});

import { encode as encodePng } from 'fast-png';
import { beforeAll, expect, test } from 'vitest';
import { benchShelf } from '../../bench/separate-shelf.ts';
import { prepareReaders } from '../../bench/separate-tools.ts';
import { hireHands } from '../../src/cli/threads/hands.ts';
import { readPicture, separate, separated, type SeparateRequest, type Separation } from '../../src/core/separate/index.ts';
import { defaultMaterials } from '../../src/core/stencil/index.ts';
import { Cancelled, quietTask } from '../../src/core/task.ts';
import { isSaying } from '../../src/words/say.ts';

beforeAll(prepareReaders);

const width = 120,
  height = 90;

/** Three bands of tone and a round light. */
async function request(): Promise<SeparateRequest> {
  const data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const light = Math.exp(-((x - 80) ** 2 + (y - 30) ** 2) / 300),
        band = Math.floor(y / 30);
      for (let c = 0; c < 3; c++)
        data[(y * width + x) * 3 + c] = Math.min(
          255,
          [
            [120, 160, 210],
            [80, 120, 90],
            [70, 50, 40],
          ][band][c] +
            light * [130, 80, 0][c],
        );
    }
  const picture = await readPicture(encodePng({ width, height, data, channels: 3 }), 'bands.png');
  return {
    picture,
    sizeMm: { width: 60, height: 45 },
    ...benchShelf(),
    layers: 3,
    material: defaultMaterials.find((m) => m.id === 'film')!,
    seed: 3,
    rasterMm: 0.5,
    effort: 0.2,
  };
}

test('two threads find the very stencils that one finds', async () => {
  const alone = await separated(await request(), quietTask);
  const hands = hireHands(1)!;
  const shared = await separated(await request(), quietTask, hands);
  hands.dismiss();
  expect(shared.setup).toEqual(alone.setup);
  expect(shared.layers.map((l) => l.parts)).toEqual(alone.layers.map((l) => l.parts));
  expect([...shared.codes]).toEqual([...alone.codes]);
  // Cutting is shared out as well, and so is what it is compared with.
  expect(shared.layers.map((l) => l.stencil)).toEqual(alone.layers.map((l) => l.stencil));
  expect([shared.figures, shared.curve, shared.baseline]).toEqual([alone.figures, alone.curve, alone.baseline]);
});

test('when a thread is lost its work is done all the same', async () => {
  const hands = hireHands(1)!;
  hands.dismiss();
  const left = await separated(await request(), quietTask, hands);
  expect([...left.codes]).toEqual([...(await separated(await request(), quietTask)).codes]);
});

/** Stopped once so many plans have been compared; 0: right after the sketch. */
async function stoppedAfter(plans: number): Promise<Separation> {
  let compared = 0,
    begun = false;
  const drafts = separate(
    { ...(await request()), effort: 1 },
    {
      report(_share, note) {
        if (isSaying(note) && note.key === 'separate.choosingInks') compared++;
      },
      async pause() {
        if (begun && compared >= plans) throw new Cancelled();
      },
    },
  );
  await drafts.next();
  begun = true;
  const last = await drafts.next();
  expect(last.done).toBe(true);
  return last.value as Separation;
}

test('stopped while it compares plans, the best of those compared is cut, not the sketch', async () => {
  const sketch = await stoppedAfter(0),
    compared = await stoppedAfter(1);
  expect(sketch.stoppedEarly && compared.stoppedEarly).toBe(true);
  expect(compared.figures.inRegister.mean).toBeLessThan(sketch.figures.inRegister.mean * 0.98);
});

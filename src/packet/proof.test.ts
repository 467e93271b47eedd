import { expect, test } from 'vitest';
import { plan } from '../core/plan/index.ts';
import { smallJob } from './packet-jobs.ts';
import { proofImage, smallProof, type ProofImage } from './proof.ts';

const rgbAt = (image: ProofImage, i: number): readonly number[] =>
  image.kind === 'indexed' ? image.image.palette[image.image.data[i]] : [...image.rgb.subarray(i * 3, i * 3 + 3)];

test('a small proof is the mean of the large one, not every second pixel of it', () => {
  const made = plan(smallJob());
  const paper = made.papers[0];
  const large = proofImage(made, paper),
    small = smallProof(made, paper, made.layers.length, 2);
  const { width, height } = made.codes;
  const across = Math.ceil(width / 2);
  let edges = 0;
  for (let y = 0; y < Math.floor(height / 2); y++)
    for (let x = 0; x < Math.floor(width / 2); x++) {
      const four = [0, 1, width, width + 1].map((d) => rgbAt(large, y * 2 * width + x * 2 + d));
      const mean = [0, 1, 2].map((c) => Math.round(four.reduce((sum, p) => sum + p[c], 0) / 4));
      if (new Set(four.map(String)).size > 1) edges++;
      expect(rgbAt(small, y * across + x)).toEqual(mean);
    }
  expect(edges).toBeGreaterThan(100);
});
